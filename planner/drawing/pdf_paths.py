"""Lines, fills and shapes as PDF operators; ISO 32000-1, 8.4 and 8.5."""

from collections.abc import Iterator, Sequence
from functools import singledispatch

from planner.drawing.primitives import Circle, Path, Point, Poly, Primitive, Rect, Style
from planner.units import rounded

# How far a cubic's control points stand off for a quarter circle, as a share of the radius.
_QUARTER = 0.5522847498


def number(value: float) -> str:
    """Print a figure for a PDF: at most three decimals, never an exponent."""
    return f"{rounded(value, 3):.3f}".rstrip("0").rstrip(".")


def colour(text: str) -> str:
    """Print `#rrggbb` as three shares."""
    return " ".join(number(int(text[place : place + 2], 16) / 255) for place in (1, 3, 5))


def paint_state(style: Style, opacities: Sequence[float]) -> list[str]:
    """Return the operators that set colours, pen and opacity; all are set each time."""
    lines = [f"/O{opacities.index(style.opacity)} gs"]
    if style.fill:
        lines.append(f"{colour(style.fill)} rg")
    if style.stroke:
        dash = " ".join(number(part) for part in style.dash)
        cap, join = int(style.cap == "round"), int(style.join == "round")
        lines.append(
            f"{colour(style.stroke)} RG {number(style.width)} w {cap} J {join} j [{dash}] 0 d"
        )
    return lines


def _painted(style: Style, *, closed: bool = True) -> str:
    fill, stroke = bool(style.fill) and closed, bool(style.stroke)
    return {(True, True): "B", (True, False): "f", (False, True): "S"}.get((fill, stroke), "n")


def _at(point: Point) -> str:
    return f"{number(point[0])} {number(point[1])}"


@singledispatch
def operators(item: Primitive) -> list[str]:
    """Return the operators that draw one primitive (text apart)."""
    msg = f"{type(item).__name__} is no shape of the draw list"
    raise TypeError(msg)


@operators.register
def _(item: Poly) -> list[str]:
    start, *rest = item.points
    lines = [f"{_at(start)} m", *(f"{_at(point)} l" for point in rest)]
    closing = ["h"] if item.closed else []
    return [*lines, *closing, _painted(item.style, closed=item.closed)]


@operators.register
def _(item: Path) -> list[str]:
    letters = {"M": "m", "L": "l", "C": "c", "Z": "h"}
    lines = [
        " ".join((*(number(figure) for figure in figures), letters[letter]))
        for letter, figures in item.commands
    ]
    return [*lines, _painted(item.style)]


@operators.register
def _(item: Circle) -> list[str]:
    x, y = item.centre
    radius = item.radius
    return [
        *_rounded_box((x - radius, y - radius), radius * 2, radius * 2, radius),
        _painted(item.style),
    ]


@operators.register
def _(item: Rect) -> list[str]:
    if item.radius <= 0:
        size = f"{number(item.width)} {number(item.height)}"
        return [f"{_at(item.corner)} {size} re", _painted(item.style)]
    radius = min(item.radius, item.width / 2, item.height / 2)
    return [*_rounded_box(item.corner, item.width, item.height, radius), _painted(item.style)]


def _rounded_box(corner: Point, width: float, height: float, radius: float) -> Iterator[str]:
    (x, y), off = corner, radius * (1 - _QUARTER)
    right, bottom = x + width, y + height
    yield f"{_at((x + radius, y))} m {_at((right - radius, y))} l"
    yield _curve((right - off, y), (right, y + off), (right, y + radius))
    yield f"{_at((right, bottom - radius))} l"
    yield _curve((right, bottom - off), (right - off, bottom), (right - radius, bottom))
    yield f"{_at((x + radius, bottom))} l"
    yield _curve((x + off, bottom), (x, bottom - off), (x, bottom - radius))
    yield f"{_at((x, y + radius))} l"
    yield _curve((x, y + off), (x + off, y), (x + radius, y))
    yield "h"


def _curve(leaving: Point, arriving: Point, stop: Point) -> str:
    return f"{_at(leaving)} {_at(arriving)} {_at(stop)} c"
