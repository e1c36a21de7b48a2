"""Cores that come out at an end and lie there loose."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.model.place import Place


@rule(
    code="loose-conductor",
    title="Loose core",
    why="A bare end that is left loose in the shell touches a joint sooner or later.",
    weight="caution",
)
def loose_cores(context: Context) -> Iterator[Found]:
    """Find each core that is neither landed nor capped at an end."""
    for conductor in context.plan.conductors:
        if conductor.kind == "core":
            name = context.words.conductor(conductor.id)
            for end in context.reach.loose.get(conductor.id, ()):
                yield Found(
                    what=f"{name} lands on nothing at {end} and is not marked as spare and capped.",
                    mend=f"Land {name} on its contact at {end}, or mark it as spare and cap it.",
                    where=(Place(end=end, conductor=conductor.id),),
                    title=f"{name} is loose at {end}",
                    unfinished=True,
                )
