"""The expected sweep and the probe plan as the JSON object that machines read."""

from planner.proving.expected import Path
from planner.proving.limits import RULES, SHORT_LEADS
from planner.proving.probing import IsolationPlan, Probe
from planner.proving.reading import Contact
from planner.services.sweeping import Swept
from planner.units import rounded

_OHM_DIGITS = 6
Values = dict[str, object]


def sweep_values(path: str, swept: Swept) -> Values:
    """Return the object; a figure that is not known is null. See docs/formats/sweep.md."""
    sweep, probes = swept.sweep, swept.probes
    return {
        "plan": path,
        "caution": probes.caution,
        "contacts": [
            {**_contact(it), "partners": _contacts(sweep.partners[it])} for it in sweep.contacts
        ],
        "paths": [_path(it) for it in sweep.paths],
        "limits": [
            {"rule": it.key, "words": it.words, "source": it.source} for it in RULES.values()
        ],
        "short_leads": SHORT_LEADS,
        "continuity": {
            "count": len(probes.continuity),
            "probes": [_probe(it) for it in probes.continuity],
            "unseen": list(probes.unseen),
        },
        "isolation": _isolation(probes.isolation),
        "methods": [
            {"method": it.method, "count": it.count, "clips": it.clips} for it in swept.methods
        ],
    }


def _contact(contact: Contact) -> Values:
    return {"end": contact[0], "contact": contact[1]}


def _contacts(contacts: tuple[Contact, ...]) -> list[Values]:
    return [_contact(it) for it in contacts]


def _path(path: Path) -> Values:
    return {
        "one": _contact(path.one),
        "other": _contact(path.other),
        "expected_ohm": None if path.ohm is None else rounded(path.ohm, _OHM_DIGITS),
        "limit_ohm": rounded(path.limit_ohm, _OHM_DIGITS),
        "rule": path.rule,
        "estimated": path.estimated,
    }


def _probe(probe: Probe) -> Values:
    sides: Values = {"one": _contacts(probe.one), "other": _contacts(probe.other)}
    return sides if probe.joined else {**sides, "gap_mm": probe.gap_mm}


def _isolation(isolation: IsolationPlan) -> Values:
    stop = isolation.stop_after
    return {
        "method": isolation.method,
        "count": isolation.count,
        "clips": isolation.clips,
        "fewest": isolation.fewest,
        "stop": stop
        and {"widest_mm": dict(stop.mm_by_end), "pairs_left": stop.left, "words": stop.words},
        "probes": [_probe(it) for it in isolation.probes],
        "unseen": list(isolation.unseen),
    }
