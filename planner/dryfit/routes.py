"""The ways by which a part can get round its section: over which ends, past what.

A part rests round one cut of the cable tree. It gets there over all ends of one side: over the
first end alone, then the others are put through it, each beside what it holds already.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field

from planner.dryfit.cable_tree import CableTree, Side, Thing, bundle_mm
from planner.dryfit.shrink_places import cut_mm
from planner.model.connector import Connector
from planner.model.part import Part
from planner.model.plan import PartUse, Plan, Section

# From its end or split outwards, what lies nearer comes first. Common practice, no source.
NEARNESS = ("liner", "sleeve", "clamp", "shell", "heat-shrink", "boot", "cover", "label")
_UNDER_ALL = -1


@dataclass(frozen=True, slots=True)
class Resting:
    """A part where it is to rest: round a section, at a place counted from the near node.

    `length_mm` is how long it is when it goes on: of shrink what is cut from the piece in stock.
    """

    use: PartUse
    part: Part
    section: str
    place: int
    length_mm: float


@dataclass(frozen=True, slots=True)
class Blocked:
    """Why one way is closed: what is too thick there, the bore that there is, the one needed."""

    ends: tuple[str, ...]
    over: str
    has_mm: float
    needs_mm: float


@dataclass(frozen=True, slots=True)
class Way:
    """One way to a part's place over `ends`, in that order.

    `sections` are slid over from the first end to where the part rests. `before` names the ends
    whose plugs would not go through afterwards. `alone` are sections that the part is round by
    themselves, `beside_mm` says for each other leg what lies beside it in the bore. `needs_mm` is
    the bore that passes, `over` what asks for it.
    """

    ends: tuple[str, ...]
    from_near: bool
    sections: tuple[str, ...]
    needs_mm: float
    over: str
    before: tuple[str, ...] = ()
    after_joint: bool = False
    alone: frozenset[str] = frozenset()
    beside_mm: dict[str, float] = field(default_factory=dict)

    @property
    def comes_from(self) -> str:
        """The end that the part is put on first."""
        return self.ends[0]

    def blocked(self, part: Part) -> Blocked | None:
        """Return what is too thick for a part on this way, or None."""
        if part.opens or self.needs_mm <= part.bore_mm:
            return None
        return Blocked(self.ends, self.over, part.bore_mm, self.needs_mm)


def resting(plan: Plan, tree: CableTree) -> tuple[Resting, ...]:
    """Return every part of the plan that is known, where it is to rest; in the plan's order.

    A part at a split rests round the section named, else the last on its way there.
    """
    parts = {part.id: part for part in plan.definitions.parts}
    uses = [use for use in plan.parts if use.part in parts]
    at = [_section_of(plan, tree, use) for use in uses]
    ranks = [_rank(plan, at[i], i, use, parts[use.part]) for i, use in enumerate(uses)]
    place = {
        index: place for place, index in enumerate(sorted(range(len(uses)), key=ranks.__getitem__))
    }
    return tuple(
        Resting(use, part, at[i], place[i], cut_mm(plan, use) or part.length_mm)
        for i, use in enumerate(uses)
        for part in (parts[use.part],)
    )


def _section_of(plan: Plan, tree: CableTree, use: PartUse) -> str:
    if use.at in plan.section_at:
        return plan.section_at[use.at].id
    if use.section in plan.section_by_id:
        return use.section
    path = tree.path(use.comes_from, use.at)
    return path[-1] if path else ""


def nearness(part: Part, connector: Connector | None) -> int:
    """Return a number that is the smaller the nearer to the joints a part rests at an end or split.

    A tube that passes no barrel lies on the jacket's end, under all else of the plug.
    """
    plug_mm = connector.barrel.outside_mm if connector is not None else 0.0
    if part.kind == "heat-shrink" and part.bore_mm < plug_mm:
        return _UNDER_ALL
    return NEARNESS.index(part.kind)


def _rank(plan: Plan, section: str, index: int, use: PartUse, part: Part) -> tuple[int, ...]:
    """Return what sorts the parts of one section from its near node to its far node.

    Of two of a kind the one listed first goes farther in: away from an end, up to a split.
    """
    at_end = use.at in plan.end_by_id
    connector = plan.connector_of(use.at) if at_end else None
    away = (nearness(part, connector), -index if at_end else index)
    if section and plan.section_by_id[section].far == use.at:
        return (1, -away[0], -away[1])
    return (0, *away)


def planned_way(tree: CableTree, part: Resting, stays_on: frozenset[str]) -> Way:
    """Return the way over the end that a part is planned to come from."""
    first, after = part.use.comes_from, part.use.after_joint
    if not part.section:
        return Way((first,), from_near=True, sections=(), needs_mm=0.0, over="")
    section = tree.plan.section_by_id[part.section]
    near = tree.side(section, section.near).ends
    ends = near if first in near else tree.side(section, section.far).ends
    return _way(tree, part, _in_turn(tree, first, ends, stays_on), stays_on, after_joint=after)


def other_ways(tree: CableTree, part: Resting, stays_on: frozenset[str]) -> Iterator[Way]:
    """Yield all other ways, none of them after a joint that is not made already.

    First from the end that is planned, then those over the fewest plugs.
    """
    if not part.section:
        return
    section = tree.plan.section_by_id[part.section]
    sides = (tree.side(section, node).ends for node in (section.near, section.far))
    starts = [(first, ends) for ends in sides for first in ends]
    planned = part.use.comes_from
    starts.sort(key=lambda start: (start[0] != planned, len(start[1])))
    for first, ends in starts:
        if first != planned or part.use.after_joint:
            yield _way(tree, part, _in_turn(tree, first, ends, stays_on), stays_on)


def _in_turn(
    tree: CableTree, first: str, ends: tuple[str, ...], stays_on: frozenset[str]
) -> tuple[str, ...]:
    rest = [end for end in ends if end != first]
    return (first, *_entering(tree, rest, stays_on))


def _entering(tree: CableTree, ends: list[str], fixed: frozenset[str]) -> list[str]:
    """Sort ends by when they go through: plugs that are on first, the thickest before others.

    Plug less leg, largest first, asks for the smallest bore (by exchange of two neighbours).
    """

    def less_leg_mm(end: str) -> float:
        leg = tree.plan.section_at[end].id
        return tree.plug(end).thick_mm - tree.section(leg).thick_mm

    on = sorted((end for end in ends if end in fixed), key=less_leg_mm, reverse=True)
    return [*on, *(end for end in ends if end not in fixed)]


def _way(
    tree: CableTree,
    part: Resting,
    ends: tuple[str, ...],
    stays_on: frozenset[str],
    *,
    after_joint: bool = False,
) -> Way:
    plan = tree.plan
    section = plan.section_by_id[part.section]
    from_near = ends[0] in tree.side(section, section.near).ends
    side = tree.side(section, section.near if from_near else section.far)
    beside = _beside_mm(tree, part.section, ends)
    fixed = stays_on | {ends[0]} if after_joint else stays_on
    things = [*_cables(tree, part.section, side, beside), *_plugs(tree, ends, fixed, beside)]
    worst = max(things, key=lambda thing: thing.thick_mm)
    others = {plan.section_at[end].id for end in ends[1:]}
    return Way(
        ends,
        from_near,
        _slid_over(tree, ends[0], section),
        worst.thick_mm,
        worst.over,
        tuple(_shut_out(tree, part, ends, fixed, beside)),
        after_joint,
        side.sections - others,
        {plan.section_at[end].id: beside[end] for end in ends[1:]},
    )


def _beside_mm(tree: CableTree, rest: str, ends: tuple[str, ...]) -> dict[str, float]:
    """Return what is in the bore already while each end goes through, mm.

    The last end may as well be folded back along the section where the part rests.
    """
    legs = [tree.section(tree.plan.section_at[end].id).thick_mm for end in ends]
    beside = {end: bundle_mm(legs[:index]) for index, end in enumerate(ends)}
    if len(ends) > 1:
        beside[ends[-1]] = min(beside[ends[-1]], tree.section(rest).thick_mm)
    return beside


def _cables(tree: CableTree, rest: str, side: Side, beside_mm: dict[str, float]) -> Iterator[Thing]:
    beside_leg = {tree.plan.section_at[end].id: mm for end, mm in beside_mm.items()}
    for name in (rest, *sorted(side.sections)):
        yield _with_beside(tree.section(name), beside_leg.get(name, 0.0))


def _plugs(
    tree: CableTree, ends: tuple[str, ...], fixed: frozenset[str], beside_mm: dict[str, float]
) -> Iterator[Thing]:
    for end in ends:
        if end in fixed:
            yield _with_beside(tree.plug(end), beside_mm[end])


def _with_beside(thing: Thing, beside_mm: float) -> Thing:
    if not beside_mm:
        return thing
    return Thing(f"{thing.over} with what lies beside it", thing.thick_mm + beside_mm)


def _shut_out(
    tree: CableTree,
    part: Resting,
    ends: tuple[str, ...],
    fixed: frozenset[str],
    beside_mm: dict[str, float],
) -> Iterator[str]:
    if part.part.opens:
        return
    for end in ends:
        if end not in fixed and tree.plug(end).thick_mm + beside_mm[end] > part.part.bore_mm:
            yield end


def _slid_over(tree: CableTree, end: str, rest: Section) -> tuple[str, ...]:
    """Return the sections from an end to and with the one where the part rests."""
    near, far = tree.path(end, rest.near), tree.path(end, rest.far)
    return far if rest.id in far else near


def goes_before(one: Resting, way: Way, other: Resting) -> bool:
    """Tell whether a part has to be on before another that would else be in its way.

    It need not where one of the two passes over the other. Beside other legs only the part itself
    can pass over: what is round one leg alone can't go over what is round two.
    """
    if one.part.opens or other.part.opens or one is other or not one.section:
        return False
    if other.section == one.section:
        first, last = (other, one) if way.from_near else (one, other)
        return first.place < last.place and not _either_passes(one.part, other.part)
    if other.section in way.alone:
        return not _either_passes(one.part, other.part)
    beside = way.beside_mm.get(other.section)
    return beside is not None and other.part.outside_mm + beside > one.part.bore_mm


def _either_passes(one: Part, other: Part) -> bool:
    return one.bore_mm >= other.outside_mm or other.bore_mm >= one.outside_mm
