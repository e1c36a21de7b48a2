"""sleeve-too-tight: no sleeve in stock goes over the joint and grips what is behind it."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.sleeved import sleeves_that, splices_open


@rule(
    code="sleeve-too-tight",
    title="No sleeve goes over the joint",
    why="Heat-shrink must pass over the thickest and grip the thinnest place (NASA-STD-8739.4, "
    "9.8.1): one that does not is stuck at the joint, or slides off it.",
    weight="caution",
)
def sleeve_too_tight(context: Context) -> Iterator[Found]:
    """Report each sleeve of the plan for which there is no size, over joints in splits too."""
    yield from sleeves_that(context, lambda use: not use.goes_over)
    yield from splices_open(context)
