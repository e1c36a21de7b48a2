"""What no meter can see on this lead, faulty or sound."""

from collections.abc import Sequence

from planner.model.plan import Plan
from planner.proving.diagnosing.records import Explanation
from planner.proving.expected import Sweep
from planner.proving.unseen import CONTINUITY_UNSEEN, hidden_opens, unreached
from planner.wiring.graph import Wiring

_EXCHANGE = "At which end two cores are exchanged: both ends read the same. The colours tell."
_BRIDGE = (
    "At which end a bridge is: a beep is the same at every end. Where the wire is long enough the "
    "resistance tells: it is lowest across the bridge."
)
_OPEN = "At which of its two joints a core is open, or whether it is broken between."
_DRIVERS = (
    "Which way round a driver or a capsule is connected inside: the polarity test or listening "
    "tells (common practice, no source)."
)


def unseen(
    plan: Plan, wiring: Wiring, sweep: Sweep, told: Sequence[Explanation]
) -> tuple[str, ...]:
    """Return what can't be seen: first what concerns the faults that were found."""
    kinds = {fault.kind for it in told for fault in it.faults if len(fault.ends) > 1}
    bridged = any(fault.kind == "bridge" for it in told for fault in it.faults)
    named = (
        _EXCHANGE if kinds & {"exchange", "polarity", "channels"} else "",
        _BRIDGE if bridged else "",
        _OPEN if kinds & {"open", "shield-open"} else "",
    )
    always = (*hidden_opens(plan, sweep), *unreached(wiring, sweep), CONTINUITY_UNSEEN, _DRIVERS)
    return tuple(text for text in (*named, *always) if text)
