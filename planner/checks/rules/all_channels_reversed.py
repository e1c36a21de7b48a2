"""Legs that are exchanged in every channel of the lead."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.remedies import exchange, leg_swaps


@rule(
    code="all-channels-reversed",
    title="All channels reversed",
    why="The image holds, but absolute polarity is turned, and mixed with other leads it cancels.",
    weight="caution",
)
def everything_reversed(context: Context) -> Iterator[Found]:
    """Find the exchange of legs in every channel, once."""
    exchanges = context.exchanges
    if not exchanges.all_reversed:
        return
    group = exchanges.reversed
    one = len(exchanges.channels) == 1
    yield Found(
        what=" ".join(context.words.exchanged_legs(each) for each in group),
        mend="Exchange plus and minus, unless the turn is meant.",
        where=context.words.joints(spot for each in group for spot in each.wrong),
        title="Plus and minus reversed" if one else "All channels reversed",
        remedy=exchange(context.wiring, leg_swaps(context.joins, group)),
    )
