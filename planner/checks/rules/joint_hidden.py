"""joint-hidden: in the order of soldering the iron does not reach a joint."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.model.place import Place
from planner.units import number


@rule(
    code="joint-hidden",
    title="Joint out of the iron's reach",
    why="An iron that has to lean on a neighbour melts it before the joint flows.",
    weight="caution",
)
def joint_hidden(context: Context) -> Iterator[Found]:
    """Report each joint that no direction of the iron reaches among what is there already."""
    for fit in context.fit:
        for way in fit.access:
            if way.margin_mm < 0:
                yield Found(
                    f"The joint of {way.conductor} on {way.contact} at {fit.end} is hidden by "
                    f"{way.blocker}: the iron would overlap it by {number(-way.margin_mm)} mm.",
                    f"Solder {way.conductor} before {way.blocker}, or bend the lead aside.",
                    (Place(end=fit.end, contact=way.contact, conductor=way.conductor),),
                )
