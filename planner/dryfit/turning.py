"""The best turn of a plug to its cable, and which of the alike cores goes to which contact."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from planner.dryfit.alike import Alike, alike_cores
from planner.dryfit.board import Placing
from planner.dryfit.choosing import Choice, Verdict, choose
from planner.dryfit.dial import Dial, dial_of
from planner.dryfit.grouping import Peers, group_peers, taken_places
from planner.dryfit.measuring import measured
from planner.dryfit.seats import CAP_MM, Seats
from planner.dryfit.site import Site, site_of
from planner.dryfit.watch import Progress, Watch
from planner.model.plan import Plan
from planner.wiring.graph import Wiring


@dataclass(frozen=True, slots=True)
class Exchange:
    """A core takes the place of another: at this end, or its part at all ends of the lead."""

    conductor: str
    place_of: str
    everywhere: bool


@dataclass(frozen=True, slots=True)
class GroupExchange:
    """A whole group, a pair in most cables, takes the place of another in the whole lead."""

    kind: Literal["pair", "group"]
    group: str
    place_of: str

    @property
    def words(self) -> str:
        """The exchange in words: `pair 3 takes the place of pair 5`."""
        return f"{self.kind} {self.group} takes the place of {self.kind} {self.place_of}"


@dataclass(frozen=True, slots=True)
class Turning:
    """The best turn of an end's plug, with what it gives and what there is before it.

    The gaps are the smallest of all, as in `EndFit.least_gap_mm`, at most 1 mm. What stays where it
    is in the plug may set them; the dial has the gap that turning changes, which is what turns are
    compared by.
    `swaps` are (conductor, contact it goes to at this end); `exchanges` say whose landing that was,
    and whether the core takes the other's part at all ends, so that the wiring stays what it is.
    `groups` are the whole groups among them; their own shields are in `exchanges` too.
    `dial` is for the landings after the swaps. `reason` says why no core changes its place.
    """

    end: str
    turn_deg: float
    swaps: tuple[tuple[str, str], ...]
    exchanges: tuple[Exchange, ...]
    crossings: int
    gap_mm: float
    before_crossings: int
    before_gap_mm: float
    verdict: Verdict
    dial: Dial
    reason: str = ""
    groups: tuple[GroupExchange, ...] = ()


def best_turn(
    plan: Plan,
    wiring: Wiring,
    end: str,
    *,
    free: bool = False,
    progress: Progress | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Turning | None:
    """Return the best turn of an end's plug, or None while nothing is landed there.

    In order: fewest crossings, widest smallest gap (capped at 1 mm), shortest leads, least turn.
    Cores that are alike may take each other's place; with `free` also those of other colours, and
    whole groups (pairs) of one make with their shields, but only where that gains something, since
    colours then change at all ends.
    `progress` is told the share done; raises `Cancelled` soon after `cancelled` returns True.
    """
    site = site_of(plan, wiring, end)
    if site is None:
        return None
    watch = Watch(progress, cancelled)
    present_deg = plan.end_by_id[end].turn_deg
    seats = Seats(site)
    groups = alike_cores(plan, site, seats.cores, free=free)
    peers = group_peers(plan, site, seats.cores) if free else ()
    best = choose(seats, groups, present_deg, watch.part(0.0, 0.9), peers=peers, keep=free)
    sweep = best.seats.sweep(watch.part(0.9, 0.91))
    dial = dial_of(best.seats, sweep, best.setting, watch.part(0.91, 1.0))
    return _told(plan, seats, best, dial, _Movable(groups, peers, free))


@dataclass(frozen=True, slots=True)
class _Movable:
    """What may take another place: alike cores, and with `free` whole groups."""

    groups: Sequence[Alike]
    peers: Sequence[Peers]
    free: bool

    @property
    def reason(self) -> str:
        """Why no core changes its place, if none does."""
        if self.groups or self.peers:
            return "No other placing of the alike cores is better."
        if self.free:
            return "No two cores of one make run the same way, in one pair and shield."
        return "No two cores are alike in make and colour, and none share a net here."


def _told(plan: Plan, seats: Seats, best: Choice, dial: Dial, movable: _Movable) -> Turning:
    """Say what the best choice gives, against the seats as they are."""
    end = seats.site.end
    present_deg = plan.end_by_id[end].turn_deg
    exchanges = tuple(_exchanges(seats, best.placing, movable))
    return Turning(
        end=end,
        turn_deg=best.setting.turn_deg,
        swaps=tuple(_swaps(seats, best.placing)),
        exchanges=exchanges,
        crossings=best.setting.crossings,
        gap_mm=_smallest_mm(best.seats.site, best.setting.turn_deg),
        before_crossings=seats.crossings(present_deg),
        before_gap_mm=_smallest_mm(seats.site, present_deg),
        verdict=best.verdict,
        dial=dial,
        reason="" if exchanges else movable.reason,
        groups=tuple(_group_exchanges(plan, end, best.placing, movable.peers)),
    )


def _smallest_mm(site: Site, turn_deg: float) -> float:
    """Return the smallest gap of all between different nets at a turn, capped, mm."""
    _, least_mm = measured(site, turn_deg)
    return round(min(least_mm, CAP_MM), 2)


def _exchanges(seats: Seats, placing: Placing, movable: _Movable) -> Iterator[Exchange]:
    everywhere = {core for group in movable.groups if group.everywhere for core in group.members}
    everywhere |= {core for each in movable.peers for unit in each.units for core in unit.members}
    for core, place in enumerate(placing):
        if core != place:
            one, other = (seats.cores[it].landing.conductor for it in (core, place))
            yield Exchange(one, other, core in everywhere)
    for unit, slot in taken_places(movable.peers, placing):
        for one, other in zip(unit.shields, slot.shields, strict=True):
            yield Exchange(one, other, everywhere=True)


def _group_exchanges(
    plan: Plan, end: str, placing: Placing, peers: Sequence[Peers]
) -> Iterator[GroupExchange]:
    cable = plan.cable_of(plan.section_at[end].id)
    kind: Literal["pair", "group"] = "pair" if cable and cable.groups == "pairs" else "group"
    for unit, slot in taken_places(peers, placing):
        yield GroupExchange(kind, unit.name, slot.name)


def _swaps(seats: Seats, placing: Placing) -> Iterator[tuple[str, str]]:
    for core, place in enumerate(placing):
        here, there = seats.cores[core].landing, seats.cores[place].landing
        if here.contact != there.contact:
            yield here.conductor, there.contact
