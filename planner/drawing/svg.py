"""The SVG backend: a draw list to one file in the safe subset, the same bytes each time.

svgwrite stands behind this file alone. Figures are whole numbers of the root's own unit (0.01 mm on
a sheet), so the same file looks alike in browsers, Qt, PDF converters and printers.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import singledispatch

import svgwrite
from svgwrite.base import BaseElement

from planner.drawing.primitives import (
    Circle,
    DrawList,
    Path,
    Point,
    Poly,
    Primitive,
    Rect,
    Style,
    Text,
)
from planner.units import rounded

FACE = "Inter"


@dataclass(frozen=True, slots=True)
class Group:
    """Items under one explicit id; svgwrite's own ids count up per process."""

    id: str
    items: DrawList


def whole(value: float) -> int:
    """Round to the nearest whole unit, halves up: the one rounding of drawn figures."""
    return int(rounded(value + 0.5, 6) // 1)


def plain_text(text: str) -> str:
    """Return `text` without characters that XML 1.0 forbids or that would break the line."""
    return "".join(mark for mark in text if _is_plain(ord(mark)))


def _is_plain(code: int) -> bool:
    if code < 0x20 or 0x7F <= code <= 0x9F:
        return False
    return not (0xD800 <= code <= 0xDFFF or code in {0xFFFE, 0xFFFF, 0x2028, 0x2029})


def svg_text(
    content: DrawList | Sequence[Group],
    *,
    width: int,
    height: int,
    unit_mm: float | None = None,
    title: str = "",
    desc: str = "",
    paper: str | None = None,
) -> str:
    """Return the text of an SVG file of `width` by `height` units, ending in a newline.

    With `unit_mm` the root is that many mm a unit, so it prints at true size; otherwise a unit is
    a px. `content` is a draw list, or groups with ids.
    """
    size = (f"{width}px", f"{height}px")
    if unit_mm is not None:
        size = (f"{rounded(width * unit_mm):g}mm", f"{rounded(height * unit_mm):g}mm")
    drawing = svgwrite.Drawing(size=size, debug=False, profile="full", id="sheet")
    drawing.viewbox(0, 0, width, height)
    drawing.attribs["font-family"] = FACE
    drawing.set_desc(title=plain_text(title) or None, desc=plain_text(desc) or None)
    if paper is not None:
        drawing.add(drawing.rect((0, 0), (width, height), fill=paper))
    for item in content:
        if isinstance(item, Group):
            group = drawing.g(id=item.id)
            for part in item.items:
                group.add(_element(part, drawing))
            drawing.add(group)
        else:
            drawing.add(_element(item, drawing))
    return _written(drawing)


def _written(drawing: svgwrite.Drawing) -> str:
    drawing.defs.elements.clear()
    text = str(drawing.tostring()).replace("<defs />", "").replace("<defs/>", "")
    lines = text.replace("><", ">\n<")
    return '<?xml version="1.0" encoding="utf-8"?>\n' + lines + "\n"


def _points(points: Sequence[Point]) -> list[tuple[int, int]]:
    return [(whole(x), whole(y)) for x, y in points]


def _paint(style: Style, *, closed: bool = True) -> dict[str, object]:
    look: dict[str, object] = {"fill": style.fill if style.fill and closed else "none"}
    if style.fill and closed and style.opacity < 1:
        look["fill_opacity"] = rounded(style.opacity)
    if style.stroke:
        look |= {"stroke": style.stroke, "stroke_width": max(whole(style.width), 1)}
        look |= _pen(style)
    return look


def _pen(style: Style) -> dict[str, object]:
    look: dict[str, object] = {}
    if style.opacity < 1:
        look["stroke_opacity"] = rounded(style.opacity)
    if style.cap == "round":
        look["stroke_linecap"] = "round"
    if style.join == "round":
        look["stroke_linejoin"] = "round"
    if style.dash:
        look["stroke_dasharray"] = " ".join(str(max(whole(part), 1)) for part in style.dash)
    return look


@singledispatch
def _element(item: Primitive, drawing: svgwrite.Drawing) -> BaseElement:  # noqa: ARG001 - the kinds below use it
    msg = f"{type(item).__name__} is no primitive of the draw list"
    raise TypeError(msg)


@_element.register
def _(item: Poly, drawing: svgwrite.Drawing) -> BaseElement:
    points = _points(item.points)
    make = drawing.polygon if item.closed else drawing.polyline
    return make(points, **_paint(item.style, closed=item.closed))


@_element.register
def _(item: Circle, drawing: svgwrite.Drawing) -> BaseElement:
    return drawing.circle(
        _points([item.centre])[0], max(whole(item.radius), 1), **_paint(item.style)
    )


@_element.register
def _(item: Rect, drawing: svgwrite.Drawing) -> BaseElement:
    (left, top), (right, bottom) = _points(
        [item.corner, (item.corner[0] + item.width, item.corner[1] + item.height)]
    )
    size = (right - left, bottom - top)
    radius = whole(item.radius) or None
    return drawing.rect((left, top), size, rx=radius, **_paint(item.style))


@_element.register
def _(item: Path, drawing: svgwrite.Drawing) -> BaseElement:
    steps = [
        f"{letter}{' '.join(str(whole(x)) for x in figures)}" for letter, figures in item.commands
    ]
    return drawing.path(d="".join(steps), **_paint(item.style))


@_element.register
def _(item: Text, drawing: svgwrite.Drawing) -> BaseElement:
    at = _points([item.at])[0]
    extra: dict[str, object] = {"font_size": whole(item.size), "fill": item.colour}
    if item.bold:
        extra["font_weight"] = "bold"
    if item.anchor != "start":
        extra["text_anchor"] = item.anchor
    if item.turn_deg:
        extra["transform"] = f"rotate({rounded(item.turn_deg):g} {at[0]} {at[1]})"
    return drawing.text(plain_text(item.text), insert=at, **extra)
