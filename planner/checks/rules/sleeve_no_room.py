"""sleeve-no-room: a sleeve has no room to park on its core before the joint is made."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.sleeved import sleeves_that


@rule(
    code="sleeve-no-room",
    title="No room for a sleeve",
    why="A sleeve goes on its core before the joint is made; one that sits in the heat shrinks "
    "there, and is found out when it is too late.",
    weight="caution",
)
def sleeve_no_room(context: Context) -> Iterator[Found]:
    """Report each sleeve that would go over its joint, but does not park before it."""
    yield from sleeves_that(context, lambda use: use.goes_over and not use.parks)
