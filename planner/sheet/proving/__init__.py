"""The proving pages: sweep, meter, wiggle, ear, signature. Not printed from a plan with a stop."""

from collections.abc import Iterator

from planner.drawing.primitives import DrawList, Rect, Style, centred_baseline
from planner.sheet.block import Block, flow
from planner.sheet.leaf import Leaf, Making
from planner.sheet.lettering import HEAD, INK, PAPER, say
from planner.sheet.paper import LIVE_WIDTH
from planner.sheet.proving.listen import listen_blocks
from planner.sheet.proving.meter import continuity_blocks, isolation_blocks
from planner.sheet.proving.panel import step_number
from planner.sheet.proving.sign import sign_block
from planner.sheet.proving.sweep import is_table, sweep_blocks
from planner.sheet.proving.touch import touch_blocks
from planner.sheet.proving.wiggle import wiggle_blocks

_BANNER = 800.0


def proving_leaves(making: Making) -> Iterator[Leaf]:
    """Yield the pages on which one built unit is proved."""
    if making.stopped or not making.plan.ends:
        return
    words, paper = making.words, making.paper
    bottoms = (paper.body_bottom, paper.body_bottom)
    for body in flow(tuple(_blocks(making)), paper, bottoms):
        subtitle = words("proving.subtitle")
        yield Leaf(words("proving.tab"), words("proving.title"), subtitle, "prove", body)


def _blocks(making: Making) -> Iterator[Block]:
    room = making.paper.body_bottom - making.paper.body_top
    yield _banner(making)
    yield from sweep_blocks(making)
    if not is_table(making):
        yield from touch_blocks(making)
    yield from continuity_blocks(making, room)
    yield from isolation_blocks(making, room)
    yield from wiggle_blocks(making, room)
    yield from listen_blocks(making)
    yield sign_block(making)


def _banner(making: Making) -> Block:
    number = step_number(making, "listen")
    words = making.words
    text = words("proving.unplug_until", step=number) if number else words("proving.unplug")
    ground = Rect((0, 0), LIVE_WIDTH, _BANNER, Style(fill=INK))
    base = centred_baseline(_BANNER / 2, HEAD)
    said = say((LIVE_WIDTH / 2, base), text, HEAD, bold=True, anchor="middle", colour=PAPER)
    items: DrawList = (ground, said)
    return Block(items, _BANNER, full=True)
