"""cannot-pass: see the rule's own words."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.hindered import hindered
from planner.checks.registry import Found, rule


@rule(
    code="cannot-pass",
    title="A part can't get to its place",
    why="A part that does not pass over the cable can't reach its place in any order.",
    weight="stop",
)
def cannot_pass(context: Context) -> Iterator[Found]:
    """Report each part of the plan so hindered."""
    yield from hindered(
        context,
        "cannot-pass",
        "Choose a part with a larger bore, or one that opens.",
    )
