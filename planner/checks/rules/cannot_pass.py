"""cannot-pass: see the rule's own words."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.hindered import each_way, easiest, hindered
from planner.checks.registry import Found, rule
from planner.units import number


@rule(
    code="cannot-pass",
    title="A part can't get to its place",
    why="A part that does not pass over the cable can't reach its place in any order.",
    weight="stop",
)
def cannot_pass(context: Context) -> Iterator[Found]:
    """Report each part that has no way to its place, with what closes each side."""
    for hindrance, place in hindered(context, "cannot-pass"):
        least_mm = min(it.needs_mm for it in easiest(hindrance))
        mend = f"Choose a part with a bore of {number(least_mm)} mm or more, or one that opens."
        yield Found(each_way(hindrance), mend, (place,))
