"""Joints as they should look and as they should not: cut open, from the side, large."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from planner.drawing.looks import PRINT
from planner.drawing.primitives import Circle, DrawList, Path, Point, Poly, Primitive, Rect, Style
from planner.model.connector import TerminalKind
from planner.sheet.block import moved
from planner.sheet.lettering import HAIR, INK, PAPER, PEN, THIN

WIDTH, HEIGHT, LOW_HEIGHT = 3250.0, 1450.0, 1150.0
View = Literal["fill", "strands", "gap"]

_MIDDLE = HEIGHT / 2
_MOUTH, _FLOOR, _BACK = 1850.0, 2830.0, 2980.0  # a cup's mouth, floor and outside
_CUT = 1300.0  # where the insulation ends
_CORE, _WIRE, _BORE, _WALL = 270.0, 165.0, 330.0, 120.0  # halves, and a wall
_TIN = Style(fill=PRINT.tin)
_TAB_TOP = _MIDDLE + _WIRE + 10
_TAB = {"lug": 110.0, "post": 230.0}


@dataclass(frozen=True, slots=True)
class _Wire:
    """A wire from the left: where its insulation and its strands end."""

    cut: float = _CUT
    tip: float = _FLOOR - 60


def picture(kind: TerminalKind, view: View, *, good: bool, height: float = HEIGHT) -> DrawList:
    """Draw one picture in its frame, WIDTH by `height`, from a corner at 0, 0."""
    draw: Callable[[View, bool], DrawList] = _in_cup if kind == "cup" else _on_tab(kind)
    ground = Rect((0, 0), WIDTH, height, Style(fill=PAPER))
    edge = Rect((0, 0), WIDTH, height, Style(stroke=INK, width=PEN))
    return (ground, *moved(draw(view, good), (0, (height - HEIGHT) / 2)), edge)


# -- a cup ------------------------------------------------------------------------------------


def _in_cup(view: View, good: bool) -> DrawList:  # noqa: FBT001 - a state
    if view == "fill" and not good:
        return (*_half_full(), *_wire(_Wire(tip=2450.0)), *_cup())
    if view == "strands" and not good:
        return (*_full(), *_wire(_Wire()), *_cup(), *_stray(_MIDDLE - _BORE - _WALL))
    if view == "gap" and not good:
        return (*_full(), *_wire(_Wire(cut=2250.0)), *_cup())
    if view == "gap":
        return (*_full(), *_wire(_Wire()), *_cup(), *_measure(_CUT, _MOUTH))
    return (*_full(), *_wire(_Wire()), *_cup())


def _cup() -> DrawList:
    """Draw the walls of a cup, its upper lip cut away, and its stem."""
    outer = _BORE + _WALL
    points = (
        (_MOUTH + 330, _MIDDLE - outer),
        (_BACK, _MIDDLE - outer),
        (_BACK, _MIDDLE + outer),
        (_MOUTH, _MIDDLE + outer),
        (_MOUTH, _MIDDLE + _BORE),
        (_FLOOR, _MIDDLE + _BORE),
        (_FLOOR, _MIDDLE - _BORE),
        (_MOUTH + 330, _MIDDLE - _BORE),
    )
    stem = Rect((_BACK, _MIDDLE - 190), WIDTH - _BACK, 380, Style(fill=INK))
    return (Poly(points, Style(fill=INK), closed=True), stem)


def _full() -> DrawList:
    rising = (
        (_MOUTH, _MIDDLE + _BORE),
        (_MOUTH + 330, _MIDDLE - _BORE),
        (_FLOOR, _MIDDLE - _BORE),
        (_FLOOR, _MIDDLE + _BORE),
    )
    return (Poly(rising, _TIN, closed=True),)


def _half_full() -> DrawList:
    low = (
        (_MOUTH + 150, _MIDDLE + _BORE),
        (_MOUTH + 450, _MIDDLE + 190),
        (_FLOOR, _MIDDLE + 150),
        (_FLOOR, _MIDDLE + _BORE),
    )
    return (Poly(low, Style(fill=PRINT.tin, stroke=INK, width=HAIR), closed=True),)


# -- a lug or a post, from the side -----------------------------------------------------------


def _on_tab(kind: TerminalKind) -> Callable[[View, bool], DrawList]:
    """Return what draws a joint on a flat lug, or on a post, which is thicker."""
    tab = _tab(_TAB[kind])

    def draw(view: View, good: bool) -> DrawList:  # noqa: FBT001 - a state
        wire = _wire(_Wire(cut=2150.0 if view == "gap" and not good else _CUT, tip=_BACK - 250))
        if view == "fill" and not good:
            return (*tab, *wire, *_ball())
        if view == "strands" and not good:
            return (*_fillet(), *tab, *wire, *_stray(_MIDDLE - _WIRE))
        measured = _measure(_CUT, _MOUTH) if view == "gap" and good else ()
        return (*_fillet(), *tab, *wire, *measured)

    return draw


def _tab(thick: float) -> DrawList:
    return (Rect((_MOUTH, _TAB_TOP), WIDTH - _MOUTH, thick, Style(fill=INK)),)


def _fillet() -> DrawList:
    """Draw solder that has flowed: it rises from the metal on both sides of the wire."""
    low, high = _TAB_TOP, _MIDDLE - _WIRE - 60
    points = (
        (_MOUTH + 30, low),
        (_MOUTH + 260, high + 60),
        (_MOUTH + 450, high),
        (_BACK - 480, high),
        (_BACK - 200, high + 90),
        (_BACK + 30, low),
    )
    return (Poly(points, _TIN, closed=True),)


def _ball() -> DrawList:
    """Draw solder that has not flowed: a ball on the wire, apart from the metal."""
    pen = Style(fill=PRINT.tin, stroke=INK, width=THIN)
    return (Circle((_BACK - 420, _MIDDLE - 120), 300, pen),)


# -- what all have ----------------------------------------------------------------------------


def _wire(wire: _Wire) -> DrawList:
    """Draw insulation from the left edge, and strands out of it."""
    top, high = _MIDDLE - _WIRE, 2 * _WIRE
    pen = Style(fill=PRINT.strand, stroke=INK, width=HAIR)
    lines = tuple(
        Poly(
            ((wire.cut, top + high * share), (wire.tip, top + high * share)),
            Style(stroke=INK, width=HAIR),
        )
        for share in (0.25, 0.5, 0.75)
    )
    core = Style(fill=PAPER, stroke=INK, width=PEN)
    insulation = Rect((0, _MIDDLE - _CORE), wire.cut, 2 * _CORE, core)
    return (Rect((wire.cut, top), wire.tip - wire.cut, high, pen), *lines, insulation)


def _stray(top: float) -> DrawList:
    """Draw one strand that has bent up and out, over a wall whose top is at `top`."""
    start: Point = (_CUT, _MIDDLE - _WIRE * 0.8)
    bend = (_CUT + 350, _MIDDLE - 250, _MOUTH, top - 80, _MOUTH + 900, top - 60)
    way = (("M", start), ("C", bend))
    found: tuple[Primitive, ...] = (
        Path(way, Style(stroke=INK, width=80)),
        Path(way, Style(stroke=PRINT.strand, width=36)),
    )
    return found


def _measure(start: float, stop: float) -> DrawList:
    """Draw a dimension over the wire: two level arrowheads between two upright lines."""
    y, high = 290.0, 80.0
    pen = Style(stroke=INK, width=THIN)
    heads = (
        Poly(
            ((start, y), (start + 130, y - 60), (start + 130, y + 60)), Style(fill=INK), closed=True
        ),
        Poly(((stop, y), (stop - 130, y - 60), (stop - 130, y + 60)), Style(fill=INK), closed=True),
    )
    uprights = tuple(Poly(((x, y - high), (x, _MIDDLE - _CORE - 30)), pen) for x in (start, stop))
    return (Poly(((start, y), (stop, y)), Style(stroke=INK, width=PEN)), *heads, *uprights)
