"""The threading strip: the parts that go on at an end, waiting in a queue at its cut end.

The first to go on stands nearest to the cable, so reading order is threading order at every end,
whichever way the end lies in the lead. Sizes are mm times `scale`, on paper and on the screen.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from planner.drawing.cores import strip
from planner.drawing.looks import Look
from planner.drawing.metrics import clipped, text_width, wrapped
from planner.drawing.part_shapes import part_shape
from planner.drawing.primitives import (
    Circle,
    DrawList,
    Point,
    Poly,
    Rect,
    Style,
    Text,
    centred_baseline,
    owned,
)
from planner.dryfit.threading import Route, Threading
from planner.model.cable import Core
from planner.model.plan import Plan

ROW_MM = 27.0
END_MM = 45.0  # the end of the cable and the arrow
CELL_MM = 29.0  # a part's place in the queue, at least
_BODY_MM, _TAG_MM = 3.44, 4.81  # ems of capitals of 2.5 and 3.5 mm
_TAG_HIGH_MM, _BOX_MM, _PAD_MM = 5.6, 4.7, 1.0
_AXIS_MM, _WORDS_MM, _PITCH_MM = 12.6, 21.2, 4.4

Words = Callable[[Route], Sequence[str]]


@dataclass(frozen=True, slots=True)
class _Pen:
    """Where a strip is drawn and how: all figures in mm from its top left corner."""

    origin: Point
    scale: float
    look: Look

    def at(self, x_mm: float, y_mm: float) -> Point:
        return (self.origin[0] + x_mm * self.scale, self.origin[1] + y_mm * self.scale)

    def line(self, width_mm: float, dash_mm: tuple[float, ...] = ()) -> Style:
        dash = tuple(length * self.scale for length in dash_mm)
        return Style(stroke=self.look.ink, width=width_mm * self.scale, dash=dash)

    def text(
        self, x_mm: float, y_mm: float, text: str, em_mm: float, *, bold: bool = False
    ) -> Text:
        base = self.at(x_mm, centred_baseline(y_mm, em_mm))
        return Text(base, text, em_mm * self.scale, self.look.ink, bold=bold)


def strip_height(threading: Threading, *, end: str, width: float, scale: float) -> float:
    """Return how high the strip of an end is; 0 where nothing goes on there."""
    count = len(threading.at_end(end))
    rows = math.ceil(count / _columns(width / scale))
    return rows * ROW_MM * scale


def threading_strip(  # noqa: PLR0913 - all but four have a default or are where it stands
    plan: Plan,
    threading: Threading,
    *,
    end: str,
    origin: Point,
    width: float,
    look: Look,
    scale: float = 100.0,
    alike: Sequence[str] = (),
    words: Words | None = None,
) -> DrawList:
    """Draw the queue of parts at an end, in rows of `width`; nothing where there are none.

    `alike` names other ends with the same queue, whose tags stand beside. `words` gives the lines
    below a part, pieces between two `*` bold; the part's own title where it is left out.
    """
    columns = _columns(width / scale)
    queues = [threading.at_end(each) for each in (end, *alike)]
    items: list[DrawList] = []
    for start in range(0, len(queues[0]), columns):
        corner = (origin[0], origin[1] + start / columns * ROW_MM * scale)
        pen = _Pen(corner, scale, look)
        cell_mm = (width / scale - END_MM) / columns
        shown = queues[0][start : start + columns]
        items.append(_head(pen, plan, (end, *alike), END_MM + cell_mm * len(shown)))
        for at, route in enumerate(shown):
            tags = [queue[start + at].tag for queue in queues if start + at < len(queue)]
            lines = words(route) if words else (route.part.title,)
            cell = _cell(pen, route, tags, lines, (END_MM + at * cell_mm, cell_mm))
            items.append(owned(cell, f"part/{route.use.id}"))
    return tuple(item for each in items for item in each)


def _columns(width_mm: float) -> int:
    return max(1, int((width_mm - END_MM) / CELL_MM))


def _head(pen: _Pen, plan: Plan, ends: Sequence[str], right_mm: float) -> DrawList:
    """Draw the cut ends, the arrow on to them, and the line on which the parts wait."""
    axis = (pen.at(26.5, _AXIS_MM), pen.at(right_mm, _AXIS_MM))
    shown = ends[:1] if len(ends) > 2 else ends
    pitch_mm = 10.5
    top_mm = _AXIS_MM - pitch_mm * (len(shown) - 1) / 2
    drawn = [_cut_end(pen, plan, end, top_mm + at * pitch_mm) for at, end in enumerate(shown)]
    return (
        Poly(axis, pen.line(0.25, (4, 0.8, 0.8, 0.8))),
        *(item for each in drawn for item in each),
        _arrow(pen),
    )


def _arrow(pen: _Pen) -> Poly:
    shape = ((27, 0), (34, -5.8), (34, -3), (42, -3), (42, 3), (34, 3), (34, 5.8))
    points = tuple(pen.at(x, _AXIS_MM + y) for x, y in shape)
    return Poly(points, Style(fill=pen.look.ink), closed=True)


def _cut_end(pen: _Pen, plan: Plan, end: str, axis_mm: float) -> DrawList:
    """Draw the letter of an end, the jacket and the cores that come out of it."""
    em_mm = min(5.6, 5.6 * 7 / max(text_width(end, 5.6, bold=True), 0.1))
    left = 4 - text_width(end, em_mm, bold=True) / 2
    letter = pen.text(left, axis_mm, end, em_mm, bold=True)
    cores = [part for _, run in plan.conductors_at.get(end, ()) if (part := plan.part_of(run))]
    jacket = Style(fill=pen.look.insulator, stroke=pen.look.ink, width=0.5 * pen.scale)
    size = 8 * pen.scale
    return (
        *_cores(pen, [it for it in cores if isinstance(it, Core)], axis_mm),
        Rect(pen.at(8, axis_mm - 2.6), 9.5 * pen.scale, 5.2 * pen.scale, jacket),
        Rect(pen.at(0, axis_mm - 4), size, size, Style(fill=pen.look.ink)),
        Text(letter.at, end, letter.size, pen.look.paper, bold=True),
    )


def _cores(pen: _Pen, cores: Sequence[Core], axis_mm: float) -> DrawList:
    pitch_mm = 4.4 / max(len(cores), 2)
    items: list[DrawList] = []
    for at, core in enumerate(cores):
        y_mm = axis_mm + (at - (len(cores) - 1) / 2) * pitch_mm
        points = (pen.at(17, y_mm), pen.at(24.5, y_mm))
        items.append(strip(points, core.colours, 0.62 * pitch_mm * pen.scale, pen.look))
    return tuple(item for each in items for item in each)


def _cell(
    pen: _Pen, route: Route, tags: Sequence[str], lines: Sequence[str], span_mm: tuple[float, float]
) -> DrawList:
    left, wide = span_mm
    middle = left + wide / 2
    shape = part_shape(
        route.part,
        centre=pen.at(middle, _AXIS_MM),
        scale=pen.scale,
        look=pen.look,
        wide_first=len(route.ends) == 1,
    )
    rule = Poly((pen.at(left, 0.6), pen.at(left, ROW_MM - 1.4)), pen.line(0.25))
    return (rule, *_tags(pen, tags, left + _PAD_MM), *shape, *_said(pen, lines, left, wide))


def _tags(pen: _Pen, tags: Sequence[str], left_mm: float) -> DrawList:
    """Draw the box to tick and the tags; of many only the first and the last."""
    side = _BOX_MM * pen.scale
    top = 0.6 + (_TAG_HIGH_MM - _BOX_MM) / 2
    frame = Style(fill=pen.look.paper, stroke=pen.look.ink, width=0.5 * pen.scale)
    items: list[DrawList] = [(Rect(pen.at(left_mm, top), side, side, frame),)]
    x_mm, shown = left_mm + _BOX_MM + 1, [*tags[:1], *tags[1:][-1:]]
    em_mm = _TAG_MM if len(shown) == 1 else _BODY_MM
    for at, tag in enumerate(shown):
        if at and len(tags) > 2:
            items.append((pen.text(x_mm, 0.6 + _TAG_HIGH_MM / 2, "\u2026", em_mm),))
            x_mm += em_mm
        items.append(_tag(pen, tag, x_mm, em_mm))
        x_mm += _tag_mm(tag, em_mm) + 0.5
    return tuple(item for each in items for item in each)


def _tag_mm(tag: str, em_mm: float) -> float:
    return text_width(tag, em_mm, bold=True) + 0.9 * em_mm


def _tag(pen: _Pen, tag: str, left_mm: float, em_mm: float) -> DrawList:
    middle, half = 0.6 + _TAG_HIGH_MM / 2, _TAG_HIGH_MM / 2
    right, point = left_mm + _tag_mm(tag, em_mm), left_mm + 0.35 * em_mm
    outline = ((left_mm, 0), (point, -half), (right, -half), (right, half), (point, half))
    pen_of_tag = Style(fill=pen.look.paper, stroke=pen.look.ink, width=0.35 * pen.scale)
    eye = Circle(pen.at(left_mm + 0.43 * em_mm, middle), 0.11 * em_mm * pen.scale, pen.line(0.35))
    return (
        Poly(tuple(pen.at(x, middle + y) for x, y in outline), pen_of_tag, closed=True),
        eye,
        pen.text(left_mm + 0.68 * em_mm, middle, tag, em_mm, bold=True),
    )


def _said(pen: _Pen, lines: Sequence[str], left_mm: float, wide_mm: float) -> DrawList:
    room = wide_mm - 2 * _PAD_MM
    broken = [piece for line in lines for piece in wrapped(line, _BODY_MM, room)]
    shown = (
        broken if len(broken) <= 2 else [broken[0], clipped(" ".join(broken[1:]), _BODY_MM, room)]
    )
    return tuple(
        pen.text(left_mm + _PAD_MM, _WORDS_MM + at * _PITCH_MM - 1.2, line, _BODY_MM)
        for at, line in enumerate(shown)
    )
