"""threaded-too-late: see the rule's own words."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.hindered import hindered
from planner.checks.registry import Found, rule


@rule(
    code="threaded-too-late",
    title="Threaded too late",
    why="Once the plug is soldered on, the part no longer goes over it: the joint would be undone.",
    weight="stop",
)
def threaded_too_late(context: Context) -> Iterator[Found]:
    """Report each part of the plan so hindered."""
    yield from hindered(
        context,
        "threaded-too-late",
        "Thread it before the joint, or from the other end, or use a part that opens.",
    )
