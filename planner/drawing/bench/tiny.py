"""The whole lead drawn very small: which end is which, and where each can be clicked."""

from collections.abc import Mapping
from dataclasses import dataclass

from planner.drawing.bench.tree import Tree
from planner.drawing.looks import Look
from planner.drawing.marks import MarkKind, mark
from planner.drawing.metrics import text_width
from planner.drawing.primitives import Circle, DrawList, Point, Poly, Style, Text
from planner.drawing.runs import curve

FACE_MOST_PX, FACE_LEAST_PX = 10.0, 2.4
_LETTER_PX, _SIDE_PX, _MARK_PX, _EDGE_PX = 8.0, 16.0, 6.0, 2.0


@dataclass(frozen=True, slots=True)
class TinyLead:
    """The drawing, with the centre of each end and the radius of the faces, px."""

    items: DrawList
    ends: dict[str, Point]
    radius: float


def tiny_lead(
    tree: Tree,
    width: float,
    height: float,
    look: Look,
    *,
    current: str = "",
    weights: Mapping[str, MarkKind] | None = None,
) -> TinyLead:
    """Draw the lead in a box of `width` by `height` px; `current` is the end that is shown."""
    if not tree.left:
        return TinyLead((), {}, 0.0)
    radius = _radius(tree, height)
    ends = _column(tree.left, _SIDE_PX, height)
    ends |= _column(tree.right, width - _SIDE_PX, height)
    nodes = ends | _splits(tree, ends, width)
    items: DrawList = ()
    for reach in tree.reaches:
        if reach.left in nodes and reach.right in nodes:
            trunk = reach.right not in ends
            items += _cable(nodes[reach.left], nodes[reach.right], look, trunk=trunk)
    for end, at in ends.items():
        items += _face(end, at, radius, look, current=end == current)
    for end, kind in (weights or {}).items():
        if end in ends:
            items += mark(kind, _beside(ends[end], radius, width), _MARK_PX, look)
    return TinyLead(items, ends, radius)


def _radius(tree: Tree, height: float) -> float:
    most = max(len(tree.left), len(tree.right), 1)
    return min(max((height - 2 * _EDGE_PX) / most / 2 - 0.6, FACE_LEAST_PX), FACE_MOST_PX)


def _column(names: tuple[str, ...], x: float, height: float) -> dict[str, Point]:
    pitch = (height - 2 * _EDGE_PX) / max(len(names), 1)
    return {name: (x, _EDGE_PX + pitch * (place + 0.5)) for place, name in enumerate(names)}


def _splits(tree: Tree, ends: Mapping[str, Point], width: float) -> dict[str, Point]:
    """Return where the splits lie: by their depth, level with the middle of the ends."""
    deepest = max(tree.depth.values(), default=0)
    left = [ends[end][1] for end in tree.left]
    y = sum(left) / len(left)
    return {split: (width * depth / (deepest + 1), y) for split, depth in tree.depth.items()}


def _cable(start: Point, end: Point, look: Look, *, trunk: bool) -> DrawList:
    half = (end[0] - start[0]) / 2
    way = curve(start, (start[0] + half, start[1]), (end[0] - half, end[1]), end, 14)
    colour = look.jacket if look.name == "light" else look.edge
    return (Poly(tuple(way), Style(stroke=colour, width=4.0 if trunk else 2.0, cap="round")),)


def _face(end: str, at: Point, radius: float, look: Look, *, current: bool) -> DrawList:
    pen = Style(
        fill=look.accent if current else look.insulator,
        stroke=look.accent if current else look.casing,
        width=1.6 if radius > _LETTER_PX else 1.0,
    )
    items: DrawList = (Circle(at, radius, pen),)
    if radius < _LETTER_PX or text_width(end, 12, bold=True) > 2 * radius - 3:
        return items
    ink = look.on_accent if current else look.ink
    return (*items, Text((at[0], at[1] + 4.36), end, 12, ink, bold=True, anchor="middle"))


def _beside(at: Point, radius: float, width: float) -> Point:
    """Return where an end's mark goes: on the side of the cable."""
    inward = 1 if at[0] < width / 2 else -1
    return (at[0] + inward * (radius + _MARK_PX + 3), at[1])
