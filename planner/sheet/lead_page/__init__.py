"""The first page: the whole lead at a glance, what to cut and pick, what to thread."""

from collections.abc import Iterator, Sequence

from planner.sheet.block import BLOCK_GAP, Block, flow, moved
from planner.sheet.findings_panel import stops_blocks
from planner.sheet.lead_page.care import care_panel
from planner.sheet.lead_page.cuts import cut_rows, cut_table, run_blocks
from planner.sheet.lead_page.legend import end_flags, legend
from planner.sheet.lead_page.openings import openings_panel
from planner.sheet.lead_page.picture import lead_picture
from planner.sheet.lead_page.steps import step_blocks
from planner.sheet.leaf import Leaf, Making
from planner.sheet.paper import LIVE_WIDTH
from planner.sheet.stack import chunked
from planner.sheet.stop_band import free_above
from planner.units import length_text

_LEFT, _GAP = 11800.0, 400.0
_RIGHT = LIVE_WIDTH - _LEFT - _GAP


def lead_leaves(making: Making) -> Iterator[Leaf]:
    """Yield the pages on the whole lead; with a stop nothing is cut or threaded."""
    paper = making.paper
    stopped = free_above(paper) if making.stopped else (paper.body_bottom, paper.body_bottom)
    blocks = tuple(_blocks(making, min(stopped) - paper.body_top))
    title = making.plan.title or making.words("page.untitled")
    for body in flow(blocks, paper, stopped):
        yield Leaf(making.words("lead.tab"), title, subtitle(making), "cut", body)


def _blocks(making: Making, room: float) -> Iterator[Block]:
    flags = end_flags(making)
    above = [lead_picture(making, flags, room)]
    above += legend(making, [flag for found in flags.values() for flag in found])
    if making.stopped:
        yield from above
        yield from stops_blocks(making, room, _left(above, room))
        return
    above += _cut_and_beside(making, room)
    yield from above
    yield from step_blocks(making, "cut", max(_left(above, room), 0.0), room)
    yield from run_blocks(making, room)


def _left(blocks: Sequence[Block], room: float) -> float:
    """Return how much of a page blocks over the live width leave."""
    return room - sum(block.height + BLOCK_GAP for block in blocks)


def _cut_and_beside(making: Making, room: float) -> Iterator[Block]:
    """Yield the cut list with openings and cautions at its right; a long list goes on alone."""
    openings, used = openings_panel(making, _RIGHT)
    care, more = care_panel(making, _RIGHT)
    beside = (*openings, *moved(care, (0, used + (300 if used else 0))))
    least = used + (300 if used else 0) + more
    for place, rows in enumerate(chunked(cut_rows(making, _LEFT), room - 1000)):
        items, height = cut_table(making, rows, _LEFT, goes_on=place > 0)
        if place == 0:
            items = (*items, *moved(beside, (_LEFT + _GAP, 0)))
            height = max(height, least)
        yield Block(items, height, full=True)


def subtitle(making: Making) -> str:
    """Say the shape: how many ends, and the lengths."""
    words = making.words
    lengths = [length_text(section.length_mm) for section in making.plan.sections]
    ends = words.counted("lead.ends", len(making.plan.ends))
    if not lengths:
        return ends
    counted = [
        f"{lengths.count(one)} \u00d7 {one}" if lengths.count(one) > 1 else one
        for one in dict.fromkeys(lengths)
    ]
    return words("lead.shape", ends=ends, lengths=", ".join(counted))
