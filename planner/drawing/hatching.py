"""Hatch as explicit lines: scan lines cut to polygons by the even-odd rule."""

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from planner.drawing.primitives import Command, DrawList, Path, Point, Style

Outline = Sequence[Point]


def _turned(point: Point, cos: float, sin: float) -> Point:
    return (point[0] * cos + point[1] * sin, -point[0] * sin + point[1] * cos)


def _crossings(outlines: Sequence[Outline], level: float) -> list[float]:
    found = []
    for outline in outlines:
        for (x0, y0), (x1, y1) in pairwise((*outline, outline[0])):
            if (y0 <= level) != (y1 <= level):
                found.append(x0 + (level - y0) / (y1 - y0) * (x1 - x0))
    return sorted(found)


def cut_lines(
    outlines: Sequence[Outline], *, pitch: float, angle_deg: float
) -> Iterator[tuple[Point, Point]]:
    """Yield the pieces of parallel lines inside polygons (even-odd: a second one is a hole).

    `angle_deg` counts counter-clockwise as seen, y down; 0 is level. Lines keep to one raster, so
    neighbours that share an edge share their hatch.
    """
    angle = math.radians(-angle_deg)
    cos, sin = math.cos(angle), math.sin(angle)
    turned = [[_turned(point, cos, sin) for point in outline] for outline in outlines]
    levels = [y for outline in turned for _, y in outline]
    first, last = math.ceil(min(levels) / pitch), math.floor(max(levels) / pitch)
    for number in range(first, last + 1):
        level = number * pitch + 1e-7
        found = _crossings(turned, level)
        for start, stop in zip(found[::2], found[1::2], strict=True):
            yield _turned((start, level), cos, -sin), _turned((stop, level), cos, -sin)


def hatch(
    outlines: Sequence[Outline], *, pitch: float, angle_deg: float, style: Style, owner: str = ""
) -> DrawList:
    """Return the hatch of polygons as one path of line pieces; nothing if no line crosses them."""
    lines = cut_lines(outlines, pitch=pitch, angle_deg=angle_deg)
    commands: list[Command] = []
    for start, stop in lines:
        commands += [("M", start), ("L", stop)]
    return (Path(tuple(commands), style, owner),) if commands else ()
