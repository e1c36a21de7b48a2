"""More conductors on a terminal than it takes."""

from collections import Counter
from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.wording import listed


@rule(
    code="crowded-contact",
    title="Too many cores on a contact",
    why="A crowded terminal holds the last core by solder alone, and strands stand out of it.",
    weight="caution",
)
def crowded_terminals(context: Context) -> Iterator[Found]:
    """Find each terminal with more on it than its definition says."""
    counts = Counter((landing.end, landing.contact) for landing in context.plan.landings)
    for (end, contact), count in sorted(counts.items()):
        connector = context.plan.connector_of(end) if end in context.plan.end_by_id else None
        known = connector.by_id.get(contact) if connector else None
        if known and count > known.terminal.takes:
            spot = context.words.spot(end, contact)
            landed = context.wiring.landed_on(end, contact)
            names = listed(context.words.conductor(each) for each in landed)
            yield Found(
                what=f"{spot} takes {known.terminal.takes}, and {count} are on it: {names}.",
                mend="Join them to one core before the terminal, or move one to another contact.",
                where=context.words.joint(end, contact),
                title=f"{spot} is crowded",
            )
