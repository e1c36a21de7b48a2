"""shrink-misfit: see the rule's own words."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.hindered import hindered
from planner.checks.registry import Found, rule
from planner.units import number


@rule(
    code="shrink-misfit",
    title="Heat-shrink does not grip",
    why="Recovered heat-shrink must be smaller than what it grips (NASA-STD-8739.4 9.8.1).",
    weight="caution",
)
def shrink_misfit(context: Context) -> Iterator[Found]:
    """Report each heat-shrink that stays loose where it rests."""
    for found, place in hindered(context, "shrink-misfit"):
        has, needs = number(found.has_mm), number(found.needs_mm)
        what = f"{found.part.title} recovers to {has} mm; {found.over} measures {needs} mm."
        mend = "Take the next smaller size, or one with a higher shrink ratio."
        yield Found(what, mend, (place,))
