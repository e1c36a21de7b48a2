"""An end on the page: badge and title, the face in its frame, the landing table."""

from collections.abc import Iterator, Sequence
from itertools import zip_longest
from typing import Literal

from planner.drawing.face import shell_reach_mm
from planner.drawing.metrics import clipped
from planner.drawing.primitives import DrawList
from planner.model.connector import Connector
from planner.sheet.badge import badge
from planner.sheet.block import Block, moved
from planner.sheet.comb_panel import comb_panel
from planner.sheet.face_panel import MOST_ROUND, face_panel
from planner.sheet.facts import EndFacts
from planner.sheet.frame import true_size
from planner.sheet.landing_table import HEAD_ROW, ROW, row_parts, rows_of, table
from planner.sheet.lettering import HEAD, box, say, say_within
from planner.sheet.paper import COLUMN_GAP, HALF_WIDTH, LIVE_WIDTH
from planner.sheet.side_panel import side_panel
from planner.sheet.sides import LARGE, SMALL, WIDE, Sizes
from planner.sheet.stack import Part, chunked

Form = Literal["wide", "large", "small"]
_HEAD = 950.0
_TABLE_TOP = 700.0
_BADGE = 760.0
_TRUE_SIZE = 1700.0  # kept free for the true size under a side view
_SIDE_MOST, _SIDE_LESS = 5600.0, 4600.0


def end_blocks(facts: EndFacts, form: Form, *, boxes: bool, room: float) -> Iterator[Block]:
    """Yield the blocks of an end, none higher than `room` where that can be.

    One block holds face and table; where the table is too long, it goes on in further ones.
    """
    if facts.connector is None:
        yield _without_connector(facts)
        return
    if facts.connector.poles > MOST_ROUND:
        yield from _many(facts, facts.connector, boxes=boxes, room=room)
        return
    wide = _wide(facts, facts.connector, boxes=boxes) if form == "wide" else None
    if wide is not None and wide.height <= room:
        yield wide
    else:
        sizes = SMALL if form == "small" else LARGE
        yield from _half(facts, facts.connector, sizes, boxes=boxes, room=room)


def _head(facts: EndFacts, width: float) -> DrawList:
    mark, used = badge(clipped(facts.end.id, HEAD, 3000, bold=True), (0, 0), _BADGE)
    x = used + 200
    title = say_within((x, 350), facts.title, width - x, HEAD, bold=True)
    return (*mark, title, say_within((x, 760), facts.subtitle, width - x))


def _wide(facts: EndFacts, connector: Connector, *, boxes: bool) -> Block:
    """Set face left; right of it the side view with the table under both, or the table."""
    panel, height = face_panel(facts, connector, WIDE, withheld=not boxes)
    x = WIDE.width + 400
    width = LIVE_WIDTH - x
    side = side_panel(facts, connector, width, height - _TRUE_SIZE, withheld=not boxes)
    if side is not None:
        return _over_table(facts, (panel, height), side, boxes=boxes)
    parts = row_parts(rows_of(facts), width, under=True, boxes=boxes)
    rows, table_height = table(parts, width, boxes=boxes)
    height = max(height, table_height + 200 * shell_reach_mm(connector)[1] + 300)
    items = (
        *true_size(facts, connector, LIVE_WIDTH, _HEAD + height - 20),
        *_head(facts, LIVE_WIDTH),
        *moved(panel, (0, _HEAD)),
        *moved(rows, (x, _HEAD)),
    )
    return Block(items, _HEAD + height, full=True)


def _over_table(facts: EndFacts, panel: Part, side: Part, *, boxes: bool) -> Block:
    """Set face and side view beside each other, the table under them over the live width."""
    assert facts.connector is not None
    top = _HEAD + panel[1] + 100
    parts = row_parts(rows_of(facts), LIVE_WIDTH, under=False, boxes=boxes)
    rows, table_height = table(parts, LIVE_WIDTH, boxes=boxes)
    items = (
        *true_size(facts, facts.connector, LIVE_WIDTH, top - 120),
        *_head(facts, LIVE_WIDTH),
        *moved(panel[0], (0, _HEAD)),
        *moved(side[0], (WIDE.width + 400, _HEAD)),
        *moved(rows, (0, top)),
    )
    return Block(items, top + table_height, full=True)


def _half(
    facts: EndFacts, connector: Connector, sizes: Sizes, *, boxes: bool, room: float
) -> Iterator[Block]:
    panel, height = face_panel(facts, connector, sizes, withheld=not boxes)
    items = (*_head(facts, HALF_WIDTH), *moved(panel, (0, _HEAD)))
    top = _HEAD + height + 100
    most = _SIDE_LESS if sizes is SMALL else _SIDE_MOST
    side = side_panel(facts, connector, HALF_WIDTH, most, withheld=not boxes)
    if side is not None:
        items += moved(side[0], (0, top))
        top += side[1] + 100
    parts = row_parts(rows_of(facts), HALF_WIDTH, under=False, boxes=boxes)
    first = next(chunked(parts, room - top - HEAD_ROW), ())
    rows, table_height = table(first, HALF_WIDTH, boxes=boxes)
    yield Block((*items, *moved(rows, (0, top))), top + table_height)
    for chunk in chunked(parts[len(first) :], room - _TABLE_TOP - HEAD_ROW):
        rows, table_height = table(chunk, HALF_WIDTH, boxes=boxes)
        head = _table_head(facts, HALF_WIDTH)
        yield Block((*head, *moved(rows, (0, _TABLE_TOP))), _TABLE_TOP + table_height)


def _many(facts: EndFacts, connector: Connector, *, boxes: bool, room: float) -> Iterator[Block]:
    """Yield the face over the live width, then the table in two columns."""
    panel, height = comb_panel(facts, connector, withheld=not boxes)
    yield Block((*_head(facts, LIVE_WIDTH), *moved(panel, (0, _HEAD))), _HEAD + height, full=True)
    parts = row_parts(rows_of(facts), HALF_WIDTH, under=False, boxes=boxes)
    deep = room - _TABLE_TOP - HEAD_ROW
    half = sum(tall for _, tall in parts) / 2 + ROW
    columns = list(chunked(parts, min(half, deep)))
    for left, right in zip_longest(columns[::2], columns[1::2], fillvalue=()):
        yield _two_tables(facts, left, right, boxes=boxes)


def _table_head(facts: EndFacts, width: float) -> DrawList:
    mark, used = badge(clipped(facts.end.id, HEAD, 3000, bold=True), (0, 0), 560)
    x = used + 200
    return (*mark, say_within((x, 430), f"{facts.title}: landings", width - x, HEAD, bold=True))


def _two_tables(
    facts: EndFacts, left: Sequence[Part], right: Sequence[Part], *, boxes: bool
) -> Block:
    """Set rows as two tables side by side, under the badge of their end."""
    one, one_height = table(left, HALF_WIDTH, boxes=boxes)
    other, other_height = table(right, HALF_WIDTH, boxes=boxes) if right else ((), 0.0)
    items = (
        *_table_head(facts, LIVE_WIDTH),
        *moved(one, (0, _TABLE_TOP)),
        *moved(other, (HALF_WIDTH + COLUMN_GAP, _TABLE_TOP)),
    )
    return Block(items, _TABLE_TOP + max(one_height, other_height), full=True)


def _without_connector(facts: EndFacts) -> Block:
    frame = box((0, _HEAD), HALF_WIDTH, 1200)
    words = say((250, _HEAD + 730), "No connector is chosen for this end.")
    return Block((*_head(facts, HALF_WIDTH), frame, words), _HEAD + 1200)
