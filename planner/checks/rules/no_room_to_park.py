"""no-room-to-park: see the rule's own words."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.dryfit.parking import FROM_IRON_MM
from planner.model.place import Place
from planner.units import number


@rule(
    code="no-room-to-park",
    title="No room for the parts that wait",
    why="A part that lies at the joint is in the way of the iron, and heat-shrink shrinks there.",
    weight="caution",
)
def no_room_to_park(context: Context) -> Iterator[Found]:
    """Report each end whose parts in a row need more cable than there is."""
    parts = {use.id: use.part for use in context.plan.parts}
    kinds = {part.id: part.kind for part in context.plan.definitions.parts}
    for row in context.threading.parked:
        if not row.fits:
            shrinks = any(kinds[parts[use]] == "heat-shrink" for use in row.uses)
            clear = f", heat-shrink {number(FROM_IRON_MM)} mm from the iron" * shrinks
            needs, has = number(row.needs_mm), number(row.has_mm)
            what = f"While {row.end} is soldered, its parts wait in a row of {needs} mm{clear}"
            mend = f"Make {row.section} {needs} mm or longer, or use a part that opens."
            where = tuple(Place(end=row.end, part=use) for use in row.uses)
            yield Found(f"{what}; {row.section} is {has} mm long.", mend, where)
