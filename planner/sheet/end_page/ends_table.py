"""Ends that are alike in a table: a row an end with its badge, flags, signals, a box a joint."""

from collections.abc import Sequence

from planner.drawing.fitting.discs import order_disc
from planner.drawing.looks import PRINT
from planner.drawing.metrics import text_width
from planner.drawing.primitives import DrawList
from planner.sheet.badge import badge
from planner.sheet.end_page.panel import Panel
from planner.sheet.end_page.table import HEAD_ROW, Manner
from planner.sheet.facts import EndFacts, Flag, Joint
from planner.sheet.flags import draw_flag, flag_width
from planner.sheet.lettering import BODY, HAIR, HEAD, cap, rule, say, tick_box
from planner.sheet.stack import joined

_BADGE, _FLAG, _BOX, _DISC = 440.0, 440.0, 470.0, 230.0
_GAP = 110.0
_NAMED = 1300.0  # what disc and contact take where they stand in each cell

Cell = tuple[Joint, Flag]


def ends_table(ends: Sequence[EndFacts], manner: Manner) -> Panel:
    """Draw the table: one line an end where that has room, else its cells under one another."""
    rows = [_cells(end) for end in ends]
    room = manner.width - _start(ends)
    wide = max(_needed(cell) for row in rows for cell in row)
    level = wide * len(rows[0]) <= room
    columns = len(rows[0]) if level else max(int(room / (wide + _NAMED)), 1)
    step = room / columns
    items: list[DrawList] = [_head(ends, rows[0], manner, step, level=level)]
    y = HEAD_ROW
    for end, row in zip(ends, rows, strict=True):
        drawn = _row(end, row, manner, (_start(ends), step, columns), level=level)
        items.append(drawn.at(0, y))
        y += drawn.height
    return Panel(joined(items), y)


def _start(ends: Sequence[EndFacts]) -> float:
    """Return where the cells start: right of the widest badge and the head over it."""
    head = text_width(ends[0].words("end.ends_column"), BODY)
    return max(head, *(badge(end.end.id, (0, 0), _BADGE)[1] for end in ends)) + 150


def _cells(end: EndFacts) -> tuple[Cell, ...]:
    joints = sorted((one for one in end.joints if one.number), key=lambda one: one.number)
    return tuple((joint, flag) for joint in joints for flag in joint.flags)


def _needed(cell: Cell) -> float:
    joint, flag = cell
    return flag_width(flag, _FLAG) + text_width(joint.carries, BODY) + _BOX + 3 * _GAP


def _head(
    ends: Sequence[EndFacts], cells: Sequence[Cell], manner: Manner, step: float, *, level: bool
) -> DrawList:
    """Name the contacts over their columns, with their discs; or say only what the rows are."""
    base, words = HEAD_ROW - 150, manner.words
    items: list[DrawList] = [(say((0, base), words("end.ends_column")),)]
    for place, (joint, _) in enumerate(cells if level else ()):
        x, middle = _start(ends) + place * step, base - cap(HEAD) / 2
        hidden = not manner.boxes
        items.append(order_disc((x + _DISC, middle), joint.number, _DISC, PRINT, withheld=hidden))
        items.append((say((x + 2 * _DISC + _GAP, base), joint.contact.id, HEAD, bold=True),))
    return (*joined(items), rule(0, manner.width, HEAD_ROW))


def _row(
    end: EndFacts,
    cells: Sequence[Cell],
    manner: Manner,
    grid: tuple[float, float, int],
    *,
    level: bool,
) -> Panel:
    start, step, columns = grid
    mark, _ = badge(end.end.id, (0, (manner.pitch - _BADGE) / 2), _BADGE)
    items: list[DrawList] = [mark]
    for place, cell in enumerate(cells):
        line, column = divmod(place, columns)
        drawn = _cell(cell, manner, step, level=level)
        items.append(drawn.at(start + column * step, line * manner.pitch))
    height = manner.pitch * -(-len(cells) // columns)
    return Panel((*joined(items), rule(0, manner.width, height, HAIR)), height)


def _cell(cell: Cell, manner: Manner, step: float, *, level: bool) -> Panel:
    (joint, flag), middle = cell, manner.pitch / 2
    x, items = 0.0, []
    if not level:
        hidden = not manner.boxes
        items.append(order_disc((_DISC, middle), joint.number, _DISC, PRINT, withheld=hidden))
        x = 2 * _DISC + _GAP
        items.append((say((x, middle + cap(BODY) / 2), joint.contact.id, bold=True),))
        x += text_width(joint.contact.id, BODY, bold=True) + _GAP
    items.append(draw_flag(flag, (x, middle - _FLAG / 2), _FLAG))
    x += flag_width(flag, _FLAG) + _GAP
    items.append((say((x, middle + cap(BODY) / 2), joint.carries),))
    if manner.boxes:
        items.append((tick_box((step - _BOX, middle - _BOX / 2), _BOX),))
    return Panel(joined(items), manner.pitch)
