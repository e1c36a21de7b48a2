"""Marks that say a weight or a state by their shape first, their colour second."""

import math
from collections.abc import Callable
from typing import Literal

from planner.drawing.looks import Look
from planner.drawing.primitives import (
    Circle,
    Command,
    DrawList,
    Path,
    Point,
    Poly,
    Primitive,
    Rect,
    Style,
)
from planner.drawing.runs import arc

MarkKind = Literal[
    "stop", "caution", "note", "clear", "empty", "landed", "hand", "nothing", "tick", "octagon"
]


def octagon(at: Point, radius: float, style: Style) -> Poly:
    """Return an octagon standing on a flat side, `radius` out to its corners."""
    angles = (math.radians(22.5 + 45 * index) for index in range(8))
    points = tuple((at[0] + radius * math.cos(a), at[1] + radius * math.sin(a)) for a in angles)
    return Poly(points, style, closed=True)


def _bar(at: Point, radius: float, colour: str) -> Rect:
    width, height = radius * 1.04, radius * 0.3
    corner = (at[0] - width / 2, at[1] - height / 2)
    return Rect(corner, width, height, Style(fill=colour), radius=height * 0.2)


def _stop(at: Point, radius: float, look: Look) -> DrawList:
    return (octagon(at, radius, Style(fill=look.stop)), _bar(at, radius, look.panel))


def _octagon(at: Point, radius: float, look: Look) -> DrawList:
    style = Style(fill=look.paper, stroke=look.stop, width=radius * 0.2)
    return (octagon(at, radius * 0.9, style), _bar(at, radius * 0.9, look.stop))


def _caution(at: Point, radius: float, look: Look) -> DrawList:
    x, y = at
    top, bottom, half = y - radius * 0.86, y + radius * 0.72, radius * 0.93
    pen = Style(fill=look.caution_fill, stroke=look.caution, width=max(radius * 0.12, 1.2))
    stroke = Style(stroke=look.caution_ink, width=radius * 0.18, cap="round")
    return (
        Poly(((x, top), (x + half, bottom), (x - half, bottom)), pen, closed=True),
        Poly(((x, y - radius * 0.3), (x, y + radius * 0.2)), stroke),
        Circle((x, y + radius * 0.47), radius * 0.115, Style(fill=look.caution_ink)),
    )


def _note(at: Point, radius: float, look: Look) -> DrawList:
    pen = Style(stroke=look.note, width=radius * 0.16)
    stem = Style(stroke=look.note, width=radius * 0.2, cap="round")
    x, y = at
    return (
        Circle(at, radius * 0.88, pen),
        Poly(((x, y - radius * 0.05), (x, y + radius * 0.42)), stem),
        Circle((x, y - radius * 0.4), radius * 0.13, Style(fill=look.note)),
    )


def _tick_line(at: Point, radius: float, colour: str, width: float) -> Primitive:
    x, y = at
    points = ((x - 0.45 * radius, y), (x - 0.12 * radius, y + 0.36 * radius))
    end = (x + 0.48 * radius, y - 0.36 * radius)
    return Poly((*points, end), Style(stroke=colour, width=width, cap="round"))


def _clear(at: Point, radius: float, look: Look) -> DrawList:
    disc = Circle(at, radius * 0.94, Style(fill=look.clear))
    return (disc, _tick_line(at, radius, look.panel, radius * 0.2))


def _tick(at: Point, radius: float, look: Look) -> DrawList:
    return (_tick_line(at, radius, look.clear, radius * 0.28),)


def _cup(at: Point, radius: float, style: Style) -> Poly:
    x, y = at
    half, top, knee = radius * 0.55, y - radius * 0.68, y + radius * 0.3
    bowl = arc((x, knee), half, 180, 360, 12)
    return Poly(((x - half, top), *bowl, (x + half, top)), style)


def _empty(at: Point, radius: float, look: Look) -> DrawList:
    return (_cup(at, radius, Style(stroke=look.ink2, width=radius * 0.2, cap="round")),)


def _landed(at: Point, radius: float, look: Look) -> DrawList:
    outline = _cup(at, radius, Style())
    pen = Style(fill=look.ink2, stroke=look.ink2, width=radius * 0.2)
    return (Poly(outline.points, pen, closed=True),)


def _hand(at: Point, radius: float, look: Look) -> DrawList:
    cup = _cup(at, radius, Style(stroke=look.accent, width=radius * 0.25, cap="round"))
    return (cup, Circle((at[0], at[1]), radius * 0.25, Style(fill=look.accent)))


def _nothing(at: Point, radius: float, look: Look) -> DrawList:
    dash = (radius * 0.32, radius * 0.22)
    return (Circle(at, radius * 0.92, Style(stroke=look.edge, width=radius * 0.12, dash=dash)),)


_MARKS: dict[str, Callable[[Point, float, Look], DrawList]] = {
    "stop": _stop,
    "caution": _caution,
    "note": _note,
    "clear": _clear,
    "empty": _empty,
    "landed": _landed,
    "hand": _hand,
    "nothing": _nothing,
    "tick": _tick,
    "octagon": _octagon,
}


def mark(kind: MarkKind, at: Point, radius: float, look: Look) -> DrawList:
    """Draw a mark round `at`, about `radius` out from it.

    `tick` is a tick without a disc, `octagon` an open octagon (a withheld order number).
    """
    return _MARKS[kind](at, radius, look)


def eye(at: Point, width: float, look: Look, *, on_ink: bool = False) -> DrawList:
    """Draw an eye, `width` across: the sign of a side that is looked at."""
    (x, y), half, rise = at, width / 2, width * 0.42
    lids: tuple[Command, ...] = (
        ("M", (x - half, y)),
        ("C", (x - half / 3, y - rise, x + half / 3, y - rise, x + half, y)),
        ("C", (x + half / 3, y + rise, x - half / 3, y + rise, x - half, y)),
        ("Z", ()),
    )
    pen = Style(fill=look.paper, stroke=look.paper if on_ink else look.ink, width=width * 0.07)
    glint = (x + width * 0.075, y - width * 0.075)
    return (
        Path(lids, pen),
        Circle(at, width * 0.22, Style(fill=look.ink)),
        Circle(glint, width * 0.065, Style(fill=look.paper)),
    )
