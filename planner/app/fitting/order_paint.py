"""How a joint is drawn in the list: number, contact, signal, cores, room for the iron, sleeve."""

from planner.app.fitting.rows import JointRow
from planner.app.fitting.words import room_words
from planner.app.panels.patch import patch
from planner.drawing.looks import Look
from planner.drawing.marks import mark
from planner.drawing.metrics import clipped, text_width
from planner.drawing.primitives import (
    Circle,
    DrawList,
    Rect,
    Style,
    Text,
    centred_baseline,
)

ROW_HIGH = 28
_DISC, _PATCH, _SLEEVE = 9.5, (22.0, 12.0), 22.0
_CONTACT_X, _CORE_X, _MARGIN_RIGHT, _FIGURE_WIDE = 28.0, 92.0, 32.0, 36.0


def row_items(row: JointRow, width: float, look: Look) -> DrawList:
    """Draw one row of the list, `width` px wide."""
    return (
        *_number(row, look),
        *_contact(row, look),
        *_cores(row, width, look),
        *_margin(row, width, look),
        *_sleeve(row, width, look),
    )


def _number(row: JointRow, look: Look) -> DrawList:
    middle = (12.0, ROW_HIGH / 2)
    at = (middle[0], centred_baseline(middle[1], 12.0))
    return (
        Circle(middle, _DISC, Style(fill=look.ink)),
        Text(at, str(row.number), 12.0, look.paper, bold=True, anchor="middle"),
    )


def _contact(row: JointRow, look: Look) -> DrawList:
    base = centred_baseline(ROW_HIGH / 2, 13.0)
    name = Text((_CONTACT_X, base), row.contact, 13.0, look.ink, bold=True)
    x = _CONTACT_X + text_width(row.contact, 13.0, bold=True) + 6
    said = clipped(row.signal, 13.0, _CORE_X - x - 4)
    return (name, Text((x, base), said, 13.0, look.ink2))


def _cores(row: JointRow, width: float, look: Look) -> DrawList:
    items: DrawList = ()
    x, room = _CORE_X, width - _MARGIN_RIGHT - _FIGURE_WIDE
    for code, part in zip(row.codes, row.parts, strict=True):
        wide = _PATCH[0] + 5 + text_width(code, 12.0, bold=True)
        if x + wide > room:
            more = Text((x, centred_baseline(ROW_HIGH / 2, 12.0)), "\u2026", 12.0, look.ink)
            return (*items, more)
        top = (ROW_HIGH - _PATCH[1]) / 2
        base = centred_baseline(ROW_HIGH / 2, 12.0)
        items += patch((x, top), _PATCH, part, look)
        items += (Text((x + _PATCH[0] + 5, base), code, 12.0, look.ink, bold=True),)
        x += wide + 8
    return items


def _margin(row: JointRow, width: float, look: Look) -> DrawList:
    right = width - _MARGIN_RIGHT
    figure = room_words(row.margin_mm)
    tone = look.stop if row.hidden else look.ink
    base = centred_baseline(ROW_HIGH / 2, 13.0)
    said = Text((right, base), figure, 13.0, tone, bold=row.hidden, anchor="end")
    if not row.hidden:
        return (said,)
    x = right - text_width(figure, 13.0, bold=True) - 12
    return (said, *mark("caution", (x, ROW_HIGH / 2), 7.0, look))


def _sleeve(row: JointRow, width: float, look: Look) -> DrawList:
    """Draw a dashed sleeve where the joint has one, a full drop where it has a dab."""
    middle = (width - 16.0, ROW_HIGH / 2)
    if row.dabbed:
        return (Circle(middle, 5.0, Style(fill=look.tin, stroke=look.casing, width=1.4)),)
    if not row.sleeved:
        return ()
    corner = (middle[0] - _SLEEVE / 2, middle[1] - 5.0)
    pen = Style(stroke=look.ink, width=1.5, dash=(3.0, 2.0))
    return (Rect(corner, _SLEEVE, 10.0, pen, radius=2.0),)
