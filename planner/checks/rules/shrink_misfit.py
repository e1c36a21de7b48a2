"""shrink-misfit: see the rule's own words."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.hindered import hindered
from planner.checks.registry import Found, rule


@rule(
    code="shrink-misfit",
    title="Heat-shrink does not grip",
    why="Recovered heat-shrink must be smaller than what it grips (NASA-STD-8739.4 9.8.1).",
    weight="caution",
)
def shrink_misfit(context: Context) -> Iterator[Found]:
    """Report each part of the plan so hindered."""
    yield from hindered(
        context,
        "shrink-misfit",
        "Take the next smaller size, or one with a higher shrink ratio.",
    )
