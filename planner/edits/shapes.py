"""The shapes of a lead to begin with, and legs added to or taken from a split."""

from planner.edits.changing import changed, node_ids, the_end
from planner.edits.refusal import NotAllowed, NotThere
from planner.edits.settling import settled
from planner.edits.threads import fanned_legs, rebuild
from planner.model.plan import End, Plan, Section, ShieldPolicy, Split

TRUNK_MM = 1200.0
LEG_MM = 600.0
MOST_LEGS = 32
SPLIT = "split"
TRUNK = "trunk"


def one_to_one(
    *,
    title: str = "",
    order: str = "",
    length_mm: float = TRUNK_MM,
    policy: ShieldPolicy | None = "source-end",
) -> Plan:
    """Begin a lead with two ends, A and B."""
    line = _trunk("B", length_mm, policy)
    ends = (End(id="A"), End(id="B"))
    return changed(Plan(), title=title, order=order, ends=ends, sections=(line,))


def one_to_two(
    *,
    title: str = "",
    order: str = "",
    length_mm: float = TRUNK_MM,
    leg_mm: float = LEG_MM,
    policy: ShieldPolicy | None = "source-end",
) -> Plan:
    """Begin a lead from A through a split to L and R; the legs are the trunk's own cores."""
    far = (End(id="L", name="left"), End(id="R", name="right"))
    plan = changed(Plan(), title=title, order=order)
    return _split(plan, far, length_mm=length_mm, leg_mm=leg_mm, policy=policy)


def one_to_many(
    legs: int = 8,
    *,
    title: str = "",
    order: str = "",
    length_mm: float = TRUNK_MM,
    leg_mm: float = LEG_MM,
    policy: ShieldPolicy | None = "source-end",
) -> Plan:
    """Begin a loom from A through a split to B1, B2 and so on."""
    if not 2 <= legs <= MOST_LEGS:
        raise NotAllowed(f"A split has 2 to {MOST_LEGS} legs, not {legs}")
    far = tuple(End(id=f"B{number}", name=f"leg {number}") for number in range(1, legs + 1))
    plan = changed(Plan(), title=title, order=order)
    return _split(plan, far, length_mm=length_mm, leg_mm=leg_mm, policy=policy)


def _trunk(far: str, length_mm: float, policy: ShieldPolicy | None) -> Section:
    blank = Section(id=TRUNK, near="A", far=far, length_mm=TRUNK_MM)
    return changed(blank, length_mm=length_mm, shield_policy=policy)


def _leg(trunk: str, split: str, end: str, length_mm: float) -> Section:
    blank = Section(id=f"leg-{end}", near=split, far=end, fan_of=trunk, length_mm=LEG_MM)
    return changed(blank, length_mm=length_mm)


def _split(
    plan: Plan,
    far: tuple[End, ...],
    *,
    length_mm: float,
    leg_mm: float,
    policy: ShieldPolicy | None,
) -> Plan:
    trunk = _trunk(SPLIT, length_mm, policy)
    legs = tuple(_leg(TRUNK, SPLIT, end.id, leg_mm) for end in far)
    return plan.evolve(ends=(End(id="A"), *far), splits=(Split(id=SPLIT),), sections=(trunk, *legs))


def add_leg(
    plan: Plan, *, end: str, split: str = SPLIT, name: str = "", length_mm: float = LEG_MM
) -> Plan:
    """Add a leg to a split, with a new end; the trunk's free cores may be led there."""
    if split not in {known.id for known in plan.splits}:
        raise NotThere("This lead has no such split", "Begin with one to two, or one to many.")
    if end in node_ids(plan) or f"leg-{end}" in plan.section_by_id:
        raise NotAllowed(f"There is {end} already", "Choose another label.")
    trunk = _trunk_of(plan, split)
    if len(_touching(plan, split)) > MOST_LEGS:
        raise NotAllowed(f"A split has {MOST_LEGS} legs at most")
    new = changed(End(id="A"), id=end, name=name)
    leg = changed(_leg(trunk.id, split, new.id[:60], length_mm), far=new.id)
    grown = plan.evolve(ends=(*plan.ends, new), sections=(*plan.sections, leg))
    return rebuild(grown, anew={trunk.id} if _bare_legs(plan, trunk, split) else ())


def remove_leg(plan: Plan, *, end: str) -> Plan:
    """Take an end and its leg off a split, with its landings; its cores go to the other legs."""
    the_end(plan, end)
    leg = plan.section_at.get(end)
    split = {leg.near, leg.far} - {end} if leg else set()
    node = next(iter(split & {known.id for known in plan.splits}), "")
    if leg is None or not node or leg == _trunk_of(plan, node):
        raise NotAllowed(f"{end} is not at the end of a leg")
    if len(_touching(plan, node)) <= 3:
        raise NotAllowed("A split needs two legs", "Begin with one to one for a plain line.")
    fed = [it.id for it in plan.sections if it.fan_of == leg.id]
    if fed:
        raise NotAllowed(f"The cores of {leg.id} go on in {fed[0]}", "Give that a cable first.")
    trunk = _trunk_of(plan, node)
    smaller = plan.evolve(
        sections=tuple(it for it in plan.sections if it.id != leg.id),
        ends=tuple(it for it in plan.ends if it.id != end),
        links=tuple(it for it in plan.links if it.end != end),
        landings=tuple(it for it in plan.landings if it.end != end),
        caps=tuple(it for it in plan.caps if it.end != end),
    )
    return settled(rebuild(smaller, anew={trunk.id}))


def _touching(plan: Plan, node: str) -> tuple[Section, ...]:
    return tuple(it for it in plan.sections if node in {it.near, it.far})


def _trunk_of(plan: Plan, split: str) -> Section:
    """Return the section from which the others at a split go on."""
    touching = _touching(plan, split)
    fanned_from = {it.fan_of for it in touching}
    named = [it for it in touching if it.id in fanned_from]
    arriving = [it for it in touching if it.far == split]
    return (named or arriving or list(touching))[0]


def _bare_legs(plan: Plan, trunk: Section, split: str) -> bool:
    """Tell whether nothing is landed or capped beyond the legs of a split."""
    at_legs = {leg.far for leg in fanned_legs(plan, trunk, split)}
    used = {it.end for it in plan.landings} | {it.end for it in plan.caps}
    return not used & at_legs
