"""An end on the page: badge and title, the face in its frame, the landing table."""

from collections.abc import Iterator
from typing import Literal

from planner.drawing.face import shell_reach_mm
from planner.drawing.metrics import clipped, text_width
from planner.drawing.primitives import DrawList, Point, Rect, Style, centred_baseline
from planner.sheet.block import Block, moved
from planner.sheet.comb_panel import comb_panel
from planner.sheet.face_panel import LARGE, MOST_ROUND, SMALL, WIDE, face_panel
from planner.sheet.facts import EndFacts
from planner.sheet.frame import true_size
from planner.sheet.landing_table import Row, rows_of, table
from planner.sheet.lettering import HEAD, INK, PAPER, box, say, say_within
from planner.sheet.paper import COLUMN_GAP, HALF_WIDTH, LIVE_WIDTH

Form = Literal["wide", "large", "small"]
_HEAD = 950.0
_ROWS_A_COLUMN = 26
_BADGE = 760.0


def end_blocks(facts: EndFacts, form: Form, *, boxes: bool) -> Iterator[Block]:
    """Yield the blocks of an end: one, or the face and parts of its table where it has many."""
    if facts.connector is None:
        yield _without_connector(facts)
    elif facts.connector.poles > MOST_ROUND:
        yield from _many(facts, boxes=boxes)
    elif form == "wide":
        yield _wide(facts, boxes=boxes)
    else:
        yield _half(facts, form, boxes=boxes)


def badge(text: str, corner: Point, side: float) -> tuple[DrawList, float]:
    """Draw an end's badge, a solid square with a white letter; return it and its width."""
    size = side / 0.727 * 0.7
    width = max(side, text_width(text, size, bold=True) + side * 0.3)
    ground = Rect(corner, width, side, Style(fill=INK))
    middle = (corner[0] + width / 2, centred_baseline(corner[1] + side / 2, size))
    letter = say(middle, text, size, bold=True, anchor="middle", colour=PAPER)
    return (ground, letter), width


def _head(facts: EndFacts, width: float) -> DrawList:
    mark, used = badge(clipped(facts.end.id, HEAD, 3000, bold=True), (0, 0), _BADGE)
    x = used + 200
    title = say_within((x, 350), facts.title, width - x, HEAD, bold=True)
    return (*mark, title, say_within((x, 760), facts.subtitle, width - x))


def _wide(facts: EndFacts, *, boxes: bool) -> Block:
    assert facts.connector is not None
    panel, height = face_panel(facts, facts.connector, WIDE)
    x = WIDE.width + 400
    rows, table_height = table(rows_of(facts), LIVE_WIDTH - x, stacked=True, boxes=boxes)
    tall = 200 * shell_reach_mm(facts.connector)[1] + 300
    height = max(height, table_height + tall)
    items = (
        *true_size(facts, facts.connector, LIVE_WIDTH, _HEAD + height - 20),
        *_head(facts, LIVE_WIDTH),
        *moved(panel, (0, _HEAD)),
        *moved(rows, (x, _HEAD)),
    )
    return Block(items, _HEAD + height, full=True)


def _half(facts: EndFacts, form: Form, *, boxes: bool) -> Block:
    assert facts.connector is not None
    panel, height = face_panel(facts, facts.connector, LARGE if form == "large" else SMALL)
    rows, table_height = table(rows_of(facts), HALF_WIDTH, stacked=False, boxes=boxes)
    items = (
        *_head(facts, HALF_WIDTH),
        *moved(panel, (0, _HEAD)),
        *moved(rows, (0, _HEAD + height + 100)),
    )
    return Block(items, _HEAD + height + 100 + table_height)


def _many(facts: EndFacts, *, boxes: bool) -> Iterator[Block]:
    assert facts.connector is not None
    panel, height = comb_panel(facts, facts.connector)
    yield Block((*_head(facts, LIVE_WIDTH), *moved(panel, (0, _HEAD))), _HEAD + height, full=True)
    rows = rows_of(facts)
    for start in range(0, len(rows), 2 * _ROWS_A_COLUMN):
        yield _table_block(facts, rows[start : start + 2 * _ROWS_A_COLUMN], boxes=boxes)


def _table_block(facts: EndFacts, rows: tuple[Row, ...], *, boxes: bool) -> Block:
    """Set rows as two tables side by side, under the badge of their end."""
    half = (len(rows) + 1) // 2
    mark, used = badge(facts.end.id, (0, 0), 560)
    title = say_within((used + 200, 430), f"{facts.title}: landings", 12000, HEAD, bold=True)
    left, left_height = table(rows[:half], HALF_WIDTH, stacked=False, boxes=boxes)
    right, right_height = table(rows[half:], HALF_WIDTH, stacked=False, boxes=boxes)
    items = (
        *mark,
        title,
        *moved(left, (0, 700)),
        *(moved(right, (HALF_WIDTH + COLUMN_GAP, 700)) if rows[half:] else ()),
    )
    return Block(items, 700 + max(left_height, right_height), full=True)


def _without_connector(facts: EndFacts) -> Block:
    frame = box((0, _HEAD), HALF_WIDTH, 1200)
    words = say((250, _HEAD + 730), "No connector is chosen for this end.")
    return Block((*_head(facts, HALF_WIDTH), frame, words), _HEAD + 1200)
