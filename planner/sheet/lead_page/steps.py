"""The numbered steps that belong to no end: cutting, threading, and closing a split."""

import math
from collections.abc import Iterator

from planner.sheet.block import Block
from planner.sheet.end_page.panel import Panel, titled
from planner.sheet.end_page.steps import HEAT_ROOM, PITCH, Line, runs_of, steps_panels
from planner.sheet.leaf import Making
from planner.sheet.paper import LIVE_WIDTH

_HEAD = 750.0


def step_blocks(making: Making, stage: str, first: float, room: float) -> Iterator[Block]:
    """Yield the steps of a stage over the live width, numbered as in the whole list.

    The first block is at most `first` high, the others `room`.
    """
    runs = runs_of(tuple(_lines(making, stage)), LIVE_WIDTH, PITCH)
    title = making.words("end.steps")
    pieces = steps_panels(runs, making.words, LIVE_WIDTH, (first - _HEAD, room - _HEAD))
    for place, piece in enumerate(panel for panel in pieces if panel.height):
        name = making.words("page.goes_on", title=title) if place else title
        yield _block(titled(name, LIVE_WIDTH, piece))


def steps_panel(making: Making, stage: str, width: float, pitch: float) -> Panel:
    """Draw all steps of a stage in one panel; nothing, without height, where there are none."""
    lines = tuple(_lines(making, stage))
    if not lines:
        return Panel((), 0.0)
    bar = HEAT_ROOM if any(line.heat for line in lines) else 0.0
    runs = runs_of(lines, width + HEAT_ROOM - bar, pitch)
    (piece,) = steps_panels(runs, making.words, width, (math.inf,))
    return titled(making.words("end.steps"), width, piece)


def _block(panel: Panel) -> Block:
    return Block(panel.items, panel.height, full=True)


def _lines(making: Making, stage: str) -> Iterator[Line]:
    for number, step in enumerate(making.steps, start=1):
        if step.stage == stage:
            text = making.words(f"steps.{step.kind}", **dict(step.values))
            yield Line(str(number), step.heat, text)
