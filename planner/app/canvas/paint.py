"""The QPainter backend of the draw list: canvas, marks in panels, pictograms, icons."""

from functools import lru_cache
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFont,
    QFontMetricsF,
    QPainter,
    QPainterPath,
    QPen,
    QPolygonF,
)

from planner.drawing.primitives import Circle, DrawList, Path, Poly, Primitive, Rect, Style, Text

if TYPE_CHECKING:
    from collections.abc import Callable

FONT_FAMILY = "Inter"
_CAPS = {"butt": Qt.PenCapStyle.FlatCap, "round": Qt.PenCapStyle.RoundCap}
_JOINS = {"miter": Qt.PenJoinStyle.MiterJoin, "round": Qt.PenJoinStyle.RoundJoin}


@lru_cache(maxsize=2048)
def colour(code: str, opacity: float = 1.0) -> QColor:
    """Return the colour of `#rrggbb` at an opacity of 0 to 1."""
    made = QColor(code)
    made.setAlphaF(opacity)
    return made


@lru_cache(maxsize=2048)
def pen_of(style: Style) -> QPen:
    """Return the pen of a style; a style without stroke has no pen."""
    if style.stroke is None:
        return QPen(Qt.PenStyle.NoPen)
    pen = QPen(colour(style.stroke, style.opacity), style.width)
    pen.setCapStyle(_CAPS[style.cap])
    pen.setJoinStyle(_JOINS[style.join])
    if style.dash:
        width = style.width or 1.0
        even = style.dash if len(style.dash) % 2 == 0 else style.dash * 2
        pen.setDashPattern([length / width for length in even])
    return pen


@lru_cache(maxsize=2048)
def brush_of(style: Style) -> QBrush:
    """Return the brush of a style; a style without fill has no brush."""
    if style.fill is None:
        return QBrush(Qt.BrushStyle.NoBrush)
    return QBrush(colour(style.fill, style.opacity))


@lru_cache(maxsize=64)
def font_of(size: float, bold: bool) -> QFont:  # noqa: FBT001 - a cache key, never a switch
    """Return the bundled face at an em of `size` px, unhinted so that widths stay as measured."""
    font = QFont(FONT_FAMILY)
    # Pixel sizes are whole in Qt; a fraction (the sheet's preview) is reached by scaling.
    font.setPixelSize(max(1, round(size)))
    font.setBold(bold)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    return font


@lru_cache(maxsize=4096)
def _text_width(text: str, size: int, bold: bool) -> float:  # noqa: FBT001 - a cache key
    return QFontMetricsF(font_of(size, bold)).horizontalAdvance(text)


def path_of(item: Path) -> QPainterPath:
    """Return the painter path of a draw-list path."""
    made = QPainterPath()
    for command, figures in item.commands:
        if command == "M":
            made.moveTo(*figures)
        elif command == "L":
            made.lineTo(*figures)
        elif command == "C":
            made.cubicTo(*figures)
        else:
            made.closeSubpath()
    return made


def _poly(painter: QPainter, item: Poly) -> None:
    points = QPolygonF([QPointF(*point) for point in item.points])
    if item.closed:
        painter.drawPolygon(points)
    else:
        painter.drawPolyline(points)


def _circle(painter: QPainter, item: Circle) -> None:
    painter.drawEllipse(QPointF(*item.centre), item.radius, item.radius)


def _rect(painter: QPainter, item: Rect) -> None:
    box = QRectF(*item.corner, item.width, item.height)
    if item.radius:
        painter.drawRoundedRect(box, item.radius, item.radius)
    else:
        painter.drawRect(box)


def _path(painter: QPainter, item: Path) -> None:
    painter.drawPath(path_of(item))


def _text(painter: QPainter, item: Text) -> None:
    whole = max(1, round(item.size))
    painter.save()
    painter.setFont(font_of(whole, item.bold))
    painter.setPen(colour(item.colour))
    painter.translate(*item.at)
    if item.turn_deg:
        painter.rotate(item.turn_deg)
    if abs(item.size - whole) > 0.01:
        painter.scale(item.size / whole, item.size / whole)
    width = 0.0 if item.anchor == "start" else _text_width(item.text, whole, item.bold)
    left = {"start": 0.0, "middle": -width / 2, "end": -width}[item.anchor]
    painter.drawText(QPointF(left, 0.0), item.text)
    painter.restore()


_SHAPES = {Poly: _poly, Circle: _circle, Rect: _rect, Path: _path}


def _paint_one(painter: QPainter, item: Primitive) -> None:
    if isinstance(item, Text):
        _text(painter, item)
        return
    painter.setPen(pen_of(item.style))
    painter.setBrush(brush_of(item.style))
    draw = cast("Callable[[QPainter, Primitive], None]", _SHAPES[type(item)])
    draw(painter, item)


def paint(painter: QPainter, items: DrawList) -> None:
    """Paint a draw list in order, in the painter's own units."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for item in items:
        _paint_one(painter, item)
