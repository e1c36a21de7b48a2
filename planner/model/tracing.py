"""A picture that a connector was traced from: its scale, its turn, where the axis goes."""

from pydantic import Field

from planner.geometry.views import turned_point
from planner.model.base import Record
from planner.model.source import Digest

Point = tuple[float, float]


class Tracing(Record):
    """A picture under the drawing. Its pixels: x right, y down, from the top left corner.

    `axis_px` is where the plug's axis goes through it, `mm_per_px` its scale, `turn_deg` how far it
    is turned counter-clockwise under the drawing. `digest` names the document in the library.
    """

    digest: Digest
    axis_px: Point = (0.0, 0.0)
    mm_per_px: float = Field(default=0.1, gt=0, le=100)
    turn_deg: float = Field(default=0.0, ge=-360, le=360)

    def to_mm(self, px: Point) -> Point:
        """Return where a pixel lies, mm from the axis, x right, y up, as looked at."""
        x, y = turned_point(px[0] - self.axis_px[0], self.axis_px[1] - px[1], self.turn_deg)
        return (self.mm_per_px * x, self.mm_per_px * y)

    def to_px(self, mm: Point) -> Point:
        """Return the pixel of a place."""
        x, y = turned_point(mm[0] / self.mm_per_px, mm[1] / self.mm_per_px, -self.turn_deg)
        return (self.axis_px[0] + x, self.axis_px[1] - y)
