"""A definition with contact positions that does not say from which side they were seen."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.model.place import Place


@rule(
    code="side-unstated",
    title="Side not stated",
    why="Seen from the other side the numbering is mirrored: every joint may be on the wrong "
    "contact.",
    weight="stop",
)
def sides_unstated(context: Context) -> Iterator[Found]:
    """Find each connector in use whose side is not stated."""
    plan = context.plan
    for connector in plan.definitions.connectors:
        ends = tuple(end.id for end in plan.ends if end.connector == connector.id)
        if ends and connector.drawn_from == "unstated":
            yield Found(
                what=f"The definition of {connector.title} gives contact positions and does not "
                "say from which side they were seen.",
                mend='Hold the part against the drawing, then write view = "solder" or '
                'view = "mating" in the definition.',
                where=tuple(sorted(Place(end=end) for end in ends)),
                title=f"Side of {connector.title} not stated",
            )
