"""Channels that are exchanged while their legs are kept."""

from collections.abc import Iterator, Sequence

from planner.checks.context import Context
from planner.checks.finding import Remedy
from planner.checks.registry import Found, rule
from planner.checks.remedies import exchange
from planner.checks.wording import channels_text, headline
from planner.model.signals import sort_key
from planner.wiring.exchanges import Arrival
from planner.wording import listed


@rule(
    code="crossed-channels",
    title="Channels crossed",
    why="Each channel sounds where another should: left on the right, or one feed in place of "
    "another.",
    weight="stop",
)
def crossed(context: Context) -> Iterator[Found]:
    """Find each exchange of channels, once."""
    for group in context.exchanges.crossed:
        channels = sorted({each.channel for each in group}, key=lambda each: sort_key(f"{each}+"))
        ends = sorted({each.end for each in group})
        hub = context.exchanges.hub
        moves = listed(
            f"{each.comes_from} of {hub} comes out as {each.channel} at end {each.end}"
            for each in group
        )
        yield Found(
            what=f"{headline(channels_text(channels))} are crossed: {moves}.",
            mend=f"Exchange their cores at {ends[0] if len(ends) == 1 else hub}.",
            where=context.words.joints(spot for each in group for spot in each.wrong),
            title=headline(f"{channels_text(channels)} crossed"),
            remedy=_remedy(context, group, channels),
        )


def _remedy(context: Context, group: Sequence[Arrival], channels: Sequence[str]) -> Remedy | None:
    """Offer the exchange at the one end where it is seen, or else at the hub."""
    ends = {each.end for each in group}
    end = ends.pop() if len(ends) == 1 else context.exchanges.hub
    if len(channels) != 2:
        return None
    swaps = set()
    for leg in "+-":
        pair = [context.joins.contacts_of(end, channel + leg) for channel in channels]
        if all(len(contacts) == 1 for contacts in pair) and pair[0] != pair[1]:
            swaps.add((end, pair[0][0], pair[1][0]))
    return exchange(context.wiring, sorted(swaps))
