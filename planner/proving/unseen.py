"""What a plan of readings can't see, in plain words."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from planner.model.plan import Conductor, Plan
from planner.proving.expected import Sweep
from planner.proving.reading import Contact
from planner.units import number
from planner.wiring.graph import Wiring, conductor_node
from planner.wiring.partners import expected_partners

CONTINUITY_UNSEEN = (
    "Which core was used, left from right, and polarity: a meter sees only what is joined."
)
_WHICH_END = "At which end a bridge is: what is joined is joined at every end."
_WEAK = "Weak insulation that gives way at a higher voltage, and a bridge that comes and goes."
_UNPROVED = (
    "A bridge on a contact that is cut off from its net: prove continuity first. Before that, "
    "exchanged cores can show as a bridge too."
)
_WHERE = {
    "pairs": "",
    "against-the-rest": (
        "With which of the rest a bridge is. One that shows joined: measure it against each of "
        "the rest alone."
    ),
    "gangs": "Between which contacts a bridge is, and how many. One that shows: measure pairs.",
    "gangs-of-near": (
        "Between which contacts a bridge is, and how many. One that shows: measure pairs."
    ),
}


@dataclass(frozen=True, slots=True)
class StopLine:
    """Where measuring stops: the widest gap measured at each end, mm, and the pairs left out."""

    mm_by_end: dict[str, float]
    left: int

    @property
    def ends_by_mm(self) -> dict[float, list[str]]:
        """The ends that share a line, by the line."""
        found: dict[float, list[str]] = {}
        for end, mm in self.mm_by_end.items():
            found.setdefault(mm, []).append(end)
        return found

    @property
    def lines(self) -> str:
        """The line of each end, in words."""
        said = [f"{number(mm)} mm at {_ends(ends)}" for mm, ends in self.ends_by_mm.items()]
        return said[0] if len(said) == 1 else f"{', '.join(said[:-1])} or {said[-1]}"

    @property
    def words(self) -> str:
        """The line and why it is there."""
        return (
            f"It stops where the metal is more than {self.lines} apart: half as far "
            "again as the nearest neighbours of any terminal there; solder and strands seldom "
            f"reach farther (common practice, no source). {self.left} pairs are left out."
        )


def _ends(ends: list[str]) -> str:
    if len(ends) > 3:
        return f"{ends[0]} to {ends[-1]}"
    return ends[0] if len(ends) == 1 else f"{', '.join(ends[:-1])} and {ends[-1]}"


def isolation_unseen(method: str, stop: StopLine | None) -> tuple[str, ...]:
    """Return what readings of isolation by a method can't see."""
    far = ""
    if stop is not None:
        far = (
            f"A bridge between joints farther apart than {stop.lines}, or in the "
            "cable: there the sweep with the beeper has to show nothing else joined."
        )
    return tuple(text for text in (far, _WHERE[method], _WHICH_END, _UNPROVED, _WEAK) if text)


def hidden_opens(plan: Plan, sweep: Sweep) -> tuple[str, ...]:
    """Tell which conductors have others in parallel: with one of them broken all is still joined.

    A conductor counts if its net stays whole without any one of its landings.
    """
    crowded = _sharing_a_net(plan)
    hidden = [it.id for it in crowded if _has_a_parallel(plan, sweep, it.id)]
    if not hidden:
        return ()
    return (
        f"A break in one of {', '.join(hidden)}: another way runs beside it, so it shows only as "
        "a little more resistance, if at all. Look at their joints.",
    )


def _sharing_a_net(plan: Plan) -> tuple[Conductor, ...]:
    """Return the conductors that have another one in their net."""
    wiring = Wiring(plan)
    nets = [wiring.net_of(conductor_node(it.id)) for it in plan.conductors]
    often = Counter(map(id, nets))
    return tuple(it for it, net in zip(plan.conductors, nets, strict=True) if often[id(net)] > 1)


def _has_a_parallel(plan: Plan, sweep: Sweep, conductor: str) -> bool:
    landings = [it for it in plan.landings if it.conductor == conductor]
    return len(landings) > 1 and any(
        expected_partners(Wiring(plan, without=(it,))) == sweep.partners for it in landings
    )


def unreached(wiring: Wiring, sweep: Sweep) -> tuple[str, ...]:
    """Tell which joints no reading reaches: a conductor that lands there and nowhere else."""
    spots = [_spot(it) for it in unreached_contacts(wiring, sweep)]
    if not spots:
        return ()
    return (f"The joint on {', '.join(spots)}: nothing else is joined to it. Look at it.",)


def unreached_contacts(wiring: Wiring, sweep: Sweep) -> Iterator[Contact]:
    """Yield each contact that is landed on but joined to no other."""
    for net in sweep.nets:
        if len(net) == 1 and wiring.landed_on(*net[0]):
            yield net[0]


def _spot(contact: Contact) -> str:
    return f"{contact[0]}.{contact[1]}"
