"""Small pictures of parts, one shape a kind, as they lie on the cable, its cut end at the right.

Not to scale: a long part is drawn longer and a thick one thicker, as far as there is room.
"""

from collections.abc import Callable

from planner.drawing.looks import Look
from planner.drawing.primitives import Command, DrawList, Path, Point, Poly, Style
from planner.model.part import Part

_LONG_MM, _THICK_MM = (11.0, 22.0), (4.4, 9.6)


class _Outline:
    """Lines and shapes round a centre, in mm, drawn with one pen."""

    def __init__(self, centre: Point, scale: float, look: Look, half: Point) -> None:
        self.centre, self.scale, self.look = centre, scale, look
        self.x, self.y = half
        width = 0.5 * scale
        self.body = Style(fill=look.paper, stroke=look.ink, width=width)
        self.line = Style(stroke=look.ink, width=width)
        self.heavy = Style(stroke=look.ink, width=3 * width)

    def at(self, x_mm: float, y_mm: float) -> Point:
        return (self.centre[0] + x_mm * self.scale, self.centre[1] + y_mm * self.scale)

    def shape(self, *points_mm: Point) -> Poly:
        return Poly(tuple(self.at(*point) for point in points_mm), self.body, closed=True)

    def stroke(self, *points_mm: Point, heavy: bool = False) -> Poly:
        pen = self.heavy if heavy else self.line
        return Poly(tuple(self.at(*point) for point in points_mm), pen)

    def tube(self) -> DrawList:
        """Draw a tube that is open at its left."""
        x, y, k = self.x, self.y, 0.5523 * self.y  # a quarter circle as a cubic curve
        lip = 0.3 * y
        left: tuple[Command, ...] = (
            ("M", self.at(-x, -y)),
            ("C", self._three((-x + lip, -y), (-x + lip, -k), (-x + lip, 0))),
            ("C", self._three((-x + lip, k), (-x + lip, y), (-x, y))),
            ("C", self._three((-x - lip, y), (-x - lip, k), (-x - lip, 0))),
            ("C", self._three((-x - lip, -k), (-x - lip, -y), (-x, -y))),
            ("Z", ()),
        )
        return (self.shape((-x, -y), (x, -y), (x, y), (-x, y)), Path(left, self.body))

    def _three(self, *points_mm: Point) -> tuple[float, ...]:
        return tuple(value for point in points_mm for value in self.at(*point))


def part_shape(
    part: Part, *, centre: Point, scale: float, look: Look, wide_first: bool = True
) -> DrawList:
    """Draw a part by its kind; what opens has a seam. `wide_first`: which way a cover lies."""
    half = (_within(part.length_mm, _LONG_MM) / 2, _within(part.outside_mm, _THICK_MM) / 2)
    outline = _Outline(centre, scale, look, half)
    drawn = _cover(outline, wide_first) if part.kind == "cover" else _SHAPES[part.kind](outline)
    if not part.opens:
        return drawn
    seam = outline.stroke((-outline.x, 0), (outline.x, 0), heavy=True)
    return (*drawn, seam)


def _within(value: float, limits: Point) -> float:
    return min(max(value, limits[0]), limits[1])


def _sleeve(it: _Outline) -> DrawList:
    it.y = min(it.y, 1.6)
    return it.tube()


def _liner(it: _Outline) -> DrawList:
    it.x, it.y = min(it.x, 7.5), min(it.y, 3.0)
    return (*it.tube(), it.stroke((-it.x + 0.3 * it.y, 0), (it.x, 0)))


def _label(it: _Outline) -> DrawList:
    bands = (it.stroke((x, -it.y), (x, it.y), heavy=True) for x in (0.0, it.x / 3))
    return (*it.tube(), *bands)


def _boot(it: _Outline) -> DrawList:
    """Draw a cone with grooves, its narrow end first on the cable."""
    x, y, narrow = it.x, it.y, 0.45 * it.y
    body = it.shape((-x, -narrow), (0.5 * x, -y), (x, -y), (x, y), (0.5 * x, y), (-x, narrow))
    grooves = []
    for share in (-0.7, -0.4, -0.1):
        at = share * x
        reach = 0.8 * (narrow + (y - narrow) * (at + x) / (1.5 * x))
        grooves.append(it.stroke((at, -reach), (at, reach)))
    return (body, *grooves)


def _shell(it: _Outline) -> DrawList:
    """Draw a barrel: chamfer first, thread last."""
    x, y, slope = it.x, it.y, 0.35 * it.y
    body = it.shape(
        (-x, -y + slope), (-x + 2.4, -y), (x, -y), (x, y), (-x + 2.4, y), (-x, y - slope)
    )
    turns = (it.stroke((at - 0.5, -y), (at + 0.5, y)) for at in (x - 3.6, x - 2.4, x - 1.2))
    return (body, *turns)


def _clamp(it: _Outline) -> DrawList:
    """Draw a collet: a cone slit from its thin end."""
    x, y = min(it.x, 7.0), it.y
    body = it.shape((-x, -0.6 * y), (x, -y), (x, y), (-x, 0.6 * y))
    slits = (it.stroke((-x, share * y), (0.3 * x, share * y)) for share in (-0.3, 0.0, 0.3))
    return (body, *slits)


def _cover(it: _Outline, wide_first: bool) -> DrawList:  # noqa: FBT001 - which way it lies
    """Draw a splitter cover, its wide end to the legs."""
    x, y, to = it.x, it.y, 1 if wide_first else -1
    points = ((-x, -y), (0.2 * x, -y), (x, -0.6 * y), (x, 0.6 * y), (0.2 * x, y), (-x, y))
    return (it.shape(*((to * px, py) for px, py in points)),)


_SHAPES: dict[str, Callable[[_Outline], DrawList]] = {
    "heat-shrink": _Outline.tube,
    "sleeve": _sleeve,
    "liner": _liner,
    "label": _label,
    "boot": _boot,
    "shell": _shell,
    "clamp": _clamp,
}
