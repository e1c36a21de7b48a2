"""Trace over a scan or a photo: two points of known distance give its scale."""

import math

from pydantic import Field

from planner.model.base import Line, Record
from planner.problem import EditRefused
from planner.units import rounded

Point = tuple[float, float]
_LEAST_PX = 4.0


class Tracing(Record):
    """A picture under the drawing. Its pixels: x right, y down, from the top left corner.

    `axis_px` is where the plug's axis goes through it, `mm_per_px` its scale, `turn_deg` how far it
    is turned counter-clockwise under the drawing. `digest` names the document in the library.
    """

    digest: Line = ""
    name: Line = ""
    axis_px: Point = (0.0, 0.0)
    mm_per_px: float = Field(default=0.1, gt=0, le=100)
    turn_deg: float = Field(default=0.0, ge=-360, le=360)

    def to_mm(self, px: Point) -> Point:
        """Return where a pixel lies, mm from the axis, x right, y up, as looked at."""
        x, y = px[0] - self.axis_px[0], self.axis_px[1] - px[1]
        cos, sin = self._direction()
        return (self.mm_per_px * (x * cos - y * sin), self.mm_per_px * (x * sin + y * cos))

    def to_px(self, mm: Point) -> Point:
        """Return the pixel of a place."""
        x, y = mm[0] / self.mm_per_px, mm[1] / self.mm_per_px
        cos, sin = self._direction()
        return (self.axis_px[0] + x * cos + y * sin, self.axis_px[1] + x * sin - y * cos)

    def _direction(self) -> tuple[float, float]:
        angle = math.radians(self.turn_deg)
        return math.cos(angle), math.sin(angle)


def scaled(tracing: Tracing, one_px: Point, other_px: Point, apart_mm: float) -> Tracing:
    """Scale a picture by two of its points and their true distance."""
    apart_px = math.dist(one_px, other_px)
    if apart_px < _LEAST_PX:
        raise EditRefused("the two points lie on each other", "Click two points far apart.")
    if not 0 < apart_mm <= 1000:
        raise EditRefused(
            f"{apart_mm:g} mm can't be their distance", "Write the distance in mm, above 0."
        )
    return tracing.evolve(mm_per_px=apart_mm / apart_px)


def levelled(tracing: Tracing, one_px: Point, other_px: Point, along_deg: float = 0.0) -> Tracing:
    """Turn a picture so that the line from one point to another runs in a direction."""
    if math.dist(one_px, other_px) < _LEAST_PX:
        raise EditRefused("the two points lie on each other", "Click two points far apart.")
    now = math.degrees(math.atan2(one_px[1] - other_px[1], other_px[0] - one_px[0]))
    turn = (along_deg - now + 180) % 360 - 180
    return tracing.evolve(turn_deg=rounded(turn, 6))


def centred(tracing: Tracing, axis_px: Point) -> Tracing:
    """Say where the plug's axis goes through the picture."""
    return tracing.evolve(axis_px=axis_px)
