"""Legs that are exchanged in some channels of the lead and not in all."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.remedies import exchange, leg_swaps
from planner.checks.wording import channels_text, headline


@rule(
    code="one-channel-reversed",
    title="One channel reversed",
    why="Against the other channels this one pushes where they pull: the image has no centre, as "
    "if from behind (common practice, no source).",
    weight="stop",
)
def reversed_channels(context: Context) -> Iterator[Found]:
    """Find each channel whose legs are exchanged while another's are not."""
    exchanges = context.exchanges
    if exchanges.all_reversed:
        return
    for channel in sorted({each.channel for each in exchanges.reversed}):
        group = [each for each in exchanges.reversed if each.channel == channel]
        ends = ", ".join(each.end for each in group)
        yield Found(
            what=" ".join(context.words.exchanged_legs(each) for each in group),
            mend=f"Exchange the two cores at {ends}.",
            where=context.words.joints(spot for each in group for spot in each.wrong),
            title=headline(f"{channels_text([channel])} reversed"),
            remedy=exchange(context.wiring, leg_swaps(context.joins, group)),
        )
