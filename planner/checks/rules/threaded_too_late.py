"""threaded-too-late: see the rule's own words."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.hindered import hindered, planned_way, rerouted
from planner.checks.registry import Found, rule


@rule(
    code="threaded-too-late",
    title="Threaded too late",
    why="Once the plug is soldered on, the part no longer goes over it: the joint would be undone.",
    weight="stop",
)
def threaded_too_late(context: Context) -> Iterator[Found]:
    """Report each part that can't go on as planned, but has another way."""
    for hindrance, place in hindered(context, "threaded-too-late"):
        remedy = rerouted(context.threading, hindrance)
        mend = f"{remedy.label}, or use a part that opens."
        title, why = ("", "") if hindrance.use.after_joint else _OTHERWISE
        yield Found(planned_way(hindrance), mend, (place,), title, why, remedy=remedy)


_OTHERWISE = (
    "Threaded from the wrong end",
    "On the way that is planned something is too thick for it; on another it gets to its place.",
)
