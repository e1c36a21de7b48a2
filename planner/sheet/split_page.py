"""The page of a split: what is metered, joined and closed there."""

from collections.abc import Iterator

from planner.sheet.block import flow
from planner.sheet.end_page.work import closed_after
from planner.sheet.lead_page.steps import step_blocks
from planner.sheet.leaf import Leaf, Making


def split_leaves(making: Making) -> Iterator[Leaf]:
    """Yield the pages of the splits with steps of their own; none with a stop.

    One that is only closed is in the steps of the end made before.
    """
    if making.stopped:
        return
    closed = closed_after(making).values()
    for split in (it for it in making.plan.splits if it.id not in closed):
        yield from _leaves(making, split.id, split.name)


def _leaves(making: Making, split: str, name: str) -> Iterator[Leaf]:
    paper, words = making.paper, making.words
    room = paper.body_bottom - paper.body_top
    steps = tuple(step_blocks(making, split, room, room))
    if not steps:
        return
    for body in flow(steps, paper, (paper.body_bottom, paper.body_bottom)):
        title = name[:1].upper() + name[1:] or words("split.title")
        yield Leaf(words("split.tab"), title, making.plan.title, split, body)
