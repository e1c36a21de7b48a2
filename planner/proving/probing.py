"""How to probe a lead with a hand meter: the fewest readings that show it joined and apart."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import product

from planner.model.plan import Plan
from planner.proving.colouring import coloured
from planner.proving.expected import Path, Sweep, expected_sweep
from planner.proving.methods import METHODS, Method
from planner.proving.nearness import NearPair, near_pairs, stop_line_mm
from planner.proving.reading import Contact, Pair
from planner.proving.unseen import (
    CONTINUITY_UNSEEN,
    StopLine,
    hidden_opens,
    isolation_unseen,
    unreached,
)
from planner.wiring.graph import Wiring

# So many pairs are all measured, and nothing is left out.
FEW_PAIRS = 15

CAUTION = (
    "Unplug every end first: nothing may be plugged in while a meter is on the lead. An amplifier "
    "can harm the meter and you, and what is plugged in is read instead of the lead."
)
ORDER = "Isolation comes after continuity: behind a break a bridge does not show."


@dataclass(frozen=True, slots=True)
class Probe:
    """One reading, between two sides; contacts of one side are clipped together.

    `path` says what to expect of a joined one. `gap_mm` is how near the two come to each other
    where that is known.
    """

    one: tuple[Contact, ...]
    other: tuple[Contact, ...]
    joined: bool
    path: Path | None = None
    gap_mm: float | None = None

    @property
    def pair(self) -> tuple[Contact, Contact] | None:
        """The two contacts where each side is one; None where something is clipped together."""
        return (self.one[0], self.other[0]) if len(self.one) == len(self.other) == 1 else None


@dataclass(frozen=True, slots=True)
class IsolationPlan:
    """The readings by which no bridge is shown. `unseen` is what they can't see, in words.

    `stop_after` is the line beyond which nothing is measured; None where every bridge is in reach.
    `fewest` where no plan of this kind with fewer readings has the same reach.
    """

    method: Method
    probes: tuple[Probe, ...]
    stop_after: StopLine | None
    unseen: tuple[str, ...]
    fewest: bool = True

    @property
    def count(self) -> int:
        """How many readings it takes."""
        return len(self.probes)

    @property
    def clips(self) -> int:
        """How many contacts are clipped together at most, on both sides."""
        sides = [len(it.one) + len(it.other) for it in self.probes]
        return max((most for most in sides if most > 2), default=0)

    @property
    def pairs(self) -> frozenset[Pair]:
        """Every two contacts that a reading of the plan covers."""
        return frozenset(
            frozenset(pair) for probe in self.probes for pair in product(probe.one, probe.other)
        )


@dataclass(frozen=True, slots=True)
class ProbePlan:
    """Continuity first, then isolation; `unseen` is what continuity can't see, in words."""

    continuity: tuple[Probe, ...]
    isolation: IsolationPlan
    unseen: tuple[str, ...]
    caution: str = CAUTION


def probe_plan(plan: Plan, wiring: Wiring, method: Method = "pairs") -> ProbePlan:
    """Return the fewest readings of continuity, and those of isolation by a method.

    A net of s contacts takes s - 1 readings of continuity, from its first contact.
    """
    sweep = expected_sweep(plan, wiring)
    continuity = tuple(Probe((it.one,), (it.other,), True, it) for it in sweep.paths)
    unseen = (*hidden_opens(plan, sweep), *unreached(wiring, sweep), CONTINUITY_UNSEEN)
    isolation = _PLANS[method](_Nets(plan, wiring, sweep))
    return ProbePlan(continuity, isolation, unseen)


def isolation_plans(plan: Plan, wiring: Wiring) -> tuple[IsolationPlan, ...]:
    """Return the plans of isolation by each method, for comparison."""
    nets = _Nets(plan, wiring, expected_sweep(plan, wiring))
    return tuple(_PLANS[method](nets) for method in METHODS)


class _Nets:
    """The nets of a lead, and the pairs of them by risk: the nearest first."""

    def __init__(self, plan: Plan, wiring: Wiring, sweep: Sweep) -> None:
        self.firsts = tuple(net[0] for net in sweep.nets)
        self.near = near_pairs(plan, wiring, sweep)
        connectors = {end.id: plan.connector_of(end.id) for end in plan.ends}
        self.lines_mm = {end: stop_line_mm(it) for end, it in connectors.items() if it is not None}

    def by_risk(self) -> list[tuple[tuple[int, int], NearPair]]:
        """Return every two nets, the greatest risk first; those never at one end come last."""
        return sorted(self.near.items(), key=lambda it: (it[1].risk, it[0]))

    def beside(self) -> list[tuple[tuple[int, int], NearPair]]:
        """Return the pairs of nets that come within the stop line of their end, by risk."""
        return [it for it in self.by_risk() if it[1].beside]

    def stop(self, kept: int) -> StopLine | None:
        """Return the stop line with so many pairs within it; None where that is all."""
        left = len(self.near) - kept
        return StopLine(self.lines_mm, left) if left else None


def _by_pairs(nets: _Nets) -> IsolationPlan:
    """Measure two nets at a time, where they come nearest; of many only what is beside."""
    found = nets.by_risk() if len(nets.near) <= FEW_PAIRS else nets.beside()
    probes = tuple(Probe((it.one,), (it.other,), False, gap_mm=it.gap_mm) for _, it in found)
    stop = nets.stop(len(found))
    return IsolationPlan("pairs", probes, stop, isolation_unseen("pairs", stop))


def _against_the_rest(nets: _Nets) -> IsolationPlan:
    """Clip all together, then take one off after the other and measure it against the rest.

    The last is measured with the one before it, so it takes one reading less than there are nets.
    """
    probes = tuple(
        Probe((one,), nets.firsts[place + 1 :], False) for place, one in enumerate(nets.firsts[:-1])
    )
    words = isolation_unseen("against-the-rest", None)
    return IsolationPlan("against-the-rest", probes, None, words)


def _by_gangs(nets: _Nets) -> IsolationPlan:
    """Clip the nets into two gangs by each bit of their number: Kautz, IEEE Trans. C-23 (1974)."""
    probes = tuple(_gangs(nets.firsts, range(len(nets.firsts))))
    return IsolationPlan("gangs", probes, None, isolation_unseen("gangs", None))


def _by_gangs_of_near(nets: _Nets) -> IsolationPlan:
    """Gangs by the bits of a colour: nets that come near each other have different colours.

    ceil(log2 chi) readings: Harary, Hsu, Miller, J. Graph Theory 1 (1977) 131-133.
    """
    beside = nets.beside()
    found = coloured(len(nets.firsts), [pair for pair, _ in beside])
    probes = tuple(_gangs(nets.firsts, found.colours))
    stop = nets.stop(len(beside))
    words = isolation_unseen("gangs-of-near", stop)
    fewest = len(probes) == _bits(found.at_least)
    return IsolationPlan("gangs-of-near", probes, stop, words, fewest)


def _bits(kinds: int) -> int:
    """Return how many bits tell so many kinds apart: ceil(log2 kinds)."""
    return max(kinds - 1, 0).bit_length()


def _gangs(firsts: Sequence[Contact], codes: Sequence[int]) -> Iterator[Probe]:
    for bit in range(_bits(max(codes, default=-1) + 1)):
        sides: tuple[list[Contact], list[Contact]] = ([], [])
        for contact, code in zip(firsts, codes, strict=True):
            sides[code >> bit & 1].append(contact)
        yield Probe(tuple(sides[0]), tuple(sides[1]), False)


_PLANS: dict[Method, Callable[[_Nets], IsolationPlan]] = {
    "pairs": _by_pairs,
    "against-the-rest": _against_the_rest,
    "gangs": _by_gangs,
    "gangs-of-near": _by_gangs_of_near,
}
