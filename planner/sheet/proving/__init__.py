"""The proving pages: sweep, meter, wiggle, ear, signature. Not printed from a plan with a stop."""

from collections.abc import Iterator

from planner.drawing.primitives import DrawList, Rect, Style, centred_baseline
from planner.sheet.block import BLOCK_GAP, Block, flow, moved
from planner.sheet.leaf import Leaf, Making
from planner.sheet.lettering import HEAD, INK, PAPER, say
from planner.sheet.paper import LIVE_WIDTH
from planner.sheet.proving.continuity import continuity_blocks
from planner.sheet.proving.isolation import isolation_blocks
from planner.sheet.proving.listen import listen_blocks
from planner.sheet.proving.panel import step_number
from planner.sheet.proving.sign import sign_block
from planner.sheet.proving.sweep import is_table, sweep_blocks
from planner.sheet.proving.touch import touch_blocks
from planner.sheet.proving.wiggle import wiggle_blocks

_BANNER = 700.0
_UNDER = _BANNER + BLOCK_GAP  # where a page's blocks begin, under the banner


def proving_leaves(making: Making) -> Iterator[Leaf]:
    """Yield the pages on which one built unit is proved."""
    if making.stopped or not making.plan.ends:
        return
    words, paper = making.words, making.paper
    bottom = paper.body_bottom - _UNDER
    banner = moved(_banner(making), (paper.left, paper.body_top))
    for blocks in flow(tuple(_blocks(making)), paper, (bottom, bottom)):
        body = (*banner, *moved(blocks, (0, _UNDER)))
        subtitle = words("proving.subtitle")
        yield Leaf(words("proving.tab"), words("proving.title"), subtitle, "prove", body)


def _blocks(making: Making) -> Iterator[Block]:
    room = making.paper.body_bottom - making.paper.body_top - _UNDER
    yield from sweep_blocks(making, room)
    if not is_table(making):
        yield from touch_blocks(making)
    yield from continuity_blocks(making, room)
    yield from isolation_blocks(making, room)
    yield from wiggle_blocks(making, room)
    yield from listen_blocks(making)
    yield sign_block(making)


def _banner(making: Making) -> DrawList:
    """Draw the caution that stands on every page."""
    number = step_number(making, "listen")
    words = making.words
    text = words("proving.unplug_until", step=number) if number else words("proving.unplug")
    ground = Rect((0, 0), LIVE_WIDTH, _BANNER, Style(fill=INK))
    base = centred_baseline(_BANNER / 2, HEAD)
    said = say((LIVE_WIDTH / 2, base), text, HEAD, bold=True, anchor="middle", colour=PAPER)
    return (ground, said)
