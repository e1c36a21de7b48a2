"""What stands on the pages on the whole lead, on one page where that can be."""

from collections.abc import Iterator, Sequence

from planner.sheet.block import BLOCK_GAP, Block, moved
from planner.sheet.end_page.steps import PITCH, TIGHT_PITCH
from planner.sheet.findings_panel import stops_blocks
from planner.sheet.lead_page.care import care_panel
from planner.sheet.lead_page.cuts import cut_rows, cut_table, run_blocks
from planner.sheet.lead_page.legend import end_flags, legend
from planner.sheet.lead_page.openings import openings_panel
from planner.sheet.lead_page.picture import lead_picture
from planner.sheet.lead_page.queues import queue_blocks
from planner.sheet.lead_page.steps import step_blocks, steps_panel
from planner.sheet.leaf import Making
from planner.sheet.paper import LIVE_WIDTH
from planner.sheet.stack import Part, chunked, piled

_LEFT, _GAP = 11800.0, 400.0
_RIGHT = LIVE_WIDTH - _LEFT - _GAP


def lead_blocks(making: Making, room: float) -> Iterator[Block]:
    """Yield the blocks in their order: picture, colours, cut list and steps, queues, the run.

    With a stop the stops stand in place of all that is done. What gives way to get all on one page
    is the pitch of the steps.
    """
    flags = end_flags(making)
    above = [lead_picture(making, flags, room)]
    above += legend(making, [flag for found in flags.values() for flag in found])
    yield from above
    left = room - _heights(above)
    if making.stopped:
        yield from stops_blocks(making, room, left)
        return
    queues = tuple(queue_blocks(making))
    yield from _cut_and_steps(making, left, left - _heights(queues), room)
    yield from queues
    yield from run_blocks(making, room)


def _heights(blocks: Sequence[Block]) -> float:
    """Return how high blocks over the live width are together, with the white between them."""
    return sum(block.height + BLOCK_GAP for block in blocks)


def _cut_and_steps(making: Making, left: float, wanted: float, room: float) -> Iterator[Block]:
    """Yield cut list and steps: in two columns where one page has room, else one after another.

    `left` is what the page has, `wanted` leaves room for the queues under them.
    """
    loose, tight = (_two_columns(making, pitch) for pitch in (PITCH, TIGHT_PITCH))
    best = tight if loose.height > wanted >= tight.height else loose
    if best.height <= left:
        yield best
        return
    cut = tuple(_cut_and_beside(making, room))
    yield from cut
    yield from step_blocks(making, "cut", max(left - _heights(cut), 0.0), room)


def _two_columns(making: Making, pitch: float) -> Block:
    """Set the cut list over the steps, and openings over cautions at their right."""
    steps = steps_panel(making, "cut", _LEFT, pitch)
    table = cut_table(making, cut_rows(making, _LEFT), _LEFT)
    items, height = _under((table, (steps.items, steps.height)))
    beside, least = _beside(making)
    return Block((*items, *moved(beside, (_LEFT + _GAP, 0))), max(height, least), full=True)


def _beside(making: Making) -> Part:
    return _under((openings_panel(making, _RIGHT), care_panel(making, _RIGHT)))


def _under(parts: Sequence[Part]) -> Part:
    """Put parts under one another with the white of blocks between."""
    there = [part for part in parts if part[1]]
    spaced = [(items, height + BLOCK_GAP) for items, height in there[:-1]]
    return piled([*spaced, *there[-1:]])


def _cut_and_beside(making: Making, room: float) -> Iterator[Block]:
    """Yield the cut list with openings and cautions at its right; a long list goes on alone."""
    beside, least = _beside(making)
    for place, rows in enumerate(chunked(cut_rows(making, _LEFT), room - 1000)):
        items, height = cut_table(making, rows, _LEFT, goes_on=place > 0)
        if place == 0:
            items = (*items, *moved(beside, (_LEFT + _GAP, 0)))
            height = max(height, least)
        yield Block(items, height, full=True)
