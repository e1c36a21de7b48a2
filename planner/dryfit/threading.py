"""In which order parts go on the cable, over which end, and before which joint; or why not."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from planner.dryfit.cable_tree import CableTree
from planner.dryfit.parking import Parking, row_mm
from planner.dryfit.routes import Blocked, Resting, Way, resting
from planner.dryfit.threading_order import (
    Choosing,
    Chosen,
    Going,
    Node,
    Settled,
    all_before,
    smallest_order,
)
from planner.model.part import Part
from planner.model.plan import PartUse, Plan

HindranceKind = Literal["cannot-pass", "threaded-too-late", "shrink-misfit"]


@dataclass(frozen=True, slots=True)
class Route:
    """How one part gets to its place.

    `ends` are all ends that go through it, `comes_from` the first. `sections` are slid over, from
    that end to where the part rests. `tag` is the end's letter and the place in the queue there.
    """

    use: PartUse
    part: Part
    at: str
    comes_from: str
    ends: tuple[str, ...]
    sections: tuple[str, ...]
    before_joint_of: tuple[str, ...]
    after_joint: bool
    tag: str


@dataclass(frozen=True, slots=True)
class Hindrance:
    """Why a part can't be where it is planned, with the figure that it has and the one it needs.

    `ways` says for each way what closes it, the planned one first.
    """

    kind: HindranceKind
    use: PartUse
    part: Part
    over: str
    has_mm: float
    needs_mm: float
    ways: tuple[Blocked, ...] = ()


@dataclass(frozen=True, slots=True)
class Threading:
    """The parts in threading order, what hinders others as they are planned, and where they wait.

    `parked` has a row for each end that parts have to be on the cable for while it is soldered.
    """

    routes: tuple[Route, ...]
    hindrances: tuple[Hindrance, ...]
    parked: tuple[Parking, ...]

    def at_end(self, end: str) -> tuple[Route, ...]:
        """Return the queue of parts at an end, the first to go on first.

        What opens is laid round the cable at last and stands in no queue.
        """
        return tuple(it for it in self.routes if it.comes_from == end and not it.part.opens)

    def route_of(self, use: str) -> Route | None:
        """Return the route of a part by the id of its use; None where it has none."""
        return next((route for route in self.routes if route.use.id == use), None)


def thread(plan: Plan, *, stays_on: frozenset[str] = frozenset()) -> Threading:
    """Plan how every part gets to its place; the builder's own plan stays where it works.

    `stays_on` names ends whose plugs are soldered already; nothing else is on the cable yet.
    """
    tree = CableTree(plan)
    parts = resting(plan, tree)
    choosing = Choosing(tree, [Going(tree, part, stays_on) for part in parts])
    settled = choosing.settle()
    routes = _routes(plan, choosing, settled.chosen)
    hindered = _hindered(choosing, settled)
    parked = _parked(plan, choosing, settled.chosen)
    return Threading(routes, (*hindered, *_misfits(tree, parts)), tuple(parked))


def hindrances(plan: Plan) -> tuple[Hindrance, ...]:
    """Return what hinders the parts of a plan; a part not chosen yet is passed over."""
    return thread(plan).hindrances


def _routes(plan: Plan, choosing: Choosing, chosen: Chosen) -> tuple[Route, ...]:
    ends = {end.id: at for at, end in enumerate(plan.ends)}
    ranks: dict[Node, tuple[int, ...]] = {end: (1, at) for end, at in ends.items()}
    for at, way in chosen.items():
        ranks[at] = _rank(choosing.goings[at].part, way, ends[way.comes_from], at)
    counts = dict.fromkeys(ends, 0)
    routes = []
    for node in smallest_order(choosing.edges(chosen), ranks):
        if isinstance(node, int):
            way = chosen[node]
            counts[way.comes_from] += 1
            routes.append(_route(choosing.goings[node].part, way, counts[way.comes_from]))
    return tuple(routes)


def _rank(part: Resting, way: Way, end: int, at: int) -> tuple[int, ...]:
    """Return what sorts the parts where the order is free: by end, what goes farthest first."""
    place = -part.place if way.from_near else part.place
    return (0, end, int(part.part.opens), -len(way.sections), place, at)


def _route(part: Resting, way: Way, count: int) -> Route:
    return Route(
        part.use,
        part.part,
        part.use.at,
        way.comes_from,
        way.ends,
        way.sections,
        way.before,
        way.after_joint,
        tag_of(way.comes_from, count),
    )


def tag_of(end: str, count: int) -> str:
    """Return the tag of a part: end and number, apart where the end's own label ends in a digit."""
    return f"{end}.{count}" if end[-1:].isdigit() else f"{end}{count}"


def _hindered(choosing: Choosing, settled: Settled) -> Iterator[Hindrance]:
    for at in settled.late:
        part = choosing.goings[at].part
        closed = tuple(_closed(choosing, settled, at))
        kind: HindranceKind = "cannot-pass" if at in settled.stuck else "threaded-too-late"
        figures = (closed[0].over, closed[0].has_mm, closed[0].needs_mm)
        yield Hindrance(kind, part.use, part.part, *figures, closed)


def _closed(choosing: Choosing, settled: Settled, at: int) -> Iterator[Blocked]:
    """Yield what closes each way of a part: the planned one as others are planned, then more."""
    for index, way in enumerate(choosing.goings[at].ways):
        closed = choosing.why_not(at, way, settled.chosen if index else settled.kept)
        if closed is not None:
            yield closed


def _parked(plan: Plan, choosing: Choosing, chosen: Chosen) -> Iterator[Parking]:
    edges = choosing.edges(chosen)
    for end, section in plan.section_at.items():
        waited = all_before(edges, end)
        here = [it.part for at, it in enumerate(choosing.goings) if at in waited]
        row = [it for it in here if it.section == section.id]
        if row:
            row.sort(key=lambda it: it.place, reverse=section.near != end)
            uses = tuple(it.use.id for it in row)
            yield Parking(end, section.id, uses, row_mm(row), section.length_mm)


def _misfits(tree: CableTree, parts: tuple[Resting, ...]) -> Iterator[Hindrance]:
    """Recovered shrink must grip what it rests on (NASA-STD-8739.4 9.8.1)."""
    for it in parts:
        grips = tree.section(it.section) if it.section else None
        if it.part.kind == "heat-shrink" and grips and it.part.recovered_mm >= grips.thick_mm > 0:
            has, needs = it.part.recovered_mm, grips.thick_mm
            yield Hindrance("shrink-misfit", it.use, it.part, grips.over, has, needs)
