"""Boxes on the page, and finding a free spot for a name beside a contact."""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from planner.drawing.face import contact_point, contact_radius_mm
from planner.drawing.primitives import Point
from planner.geometry.views import half_turn_deg
from planner.model.connector import Connector

_CLEARER = 1.4  # how many times nearer a name stands to its own contact than to any other


@dataclass(frozen=True, slots=True)
class Box:
    """An upright box; or, with `line`, the corridor round a line, `margin` wide on each side."""

    left: float
    top: float
    right: float
    bottom: float
    line: tuple[Point, Point] | None = None
    margin: float = 0.0

    @classmethod
    def round_point(cls, at: Point, half_width: float, half_height: float) -> "Box":
        """Return the box round a point."""
        x, y = at
        return cls(x - half_width, y - half_height, x + half_width, y + half_height)

    @classmethod
    def round_line(cls, start: Point, stop: Point, margin: float = 150.0) -> "Box":
        """Return the corridor round a line."""
        xs, ys = sorted((start[0], stop[0])), sorted((start[1], stop[1]))
        return cls(xs[0], ys[0], xs[1], ys[1], (start, stop), margin)

    @property
    def middle(self) -> Point:
        """The middle of the box."""
        return ((self.left + self.right) / 2, (self.top + self.bottom) / 2)

    @property
    def corners(self) -> tuple[Point, ...]:
        """The four corners."""
        return (
            (self.left, self.top),
            (self.right, self.top),
            (self.right, self.bottom),
            (self.left, self.bottom),
        )

    def nearest(self, point: Point) -> Point:
        """Return the point of an upright box that is nearest to a point."""
        x, y = point
        return (min(max(x, self.left), self.right), min(max(y, self.top), self.bottom))

    def meets(self, other: "Box", gap: float = 0.0) -> bool:
        """Tell whether an upright box and another (or a corridor) share more than an edge."""
        gap += other.margin
        apart = (
            self.right + gap <= other.left
            or other.right + gap <= self.left
            or self.bottom + gap <= other.top
            or other.bottom + gap <= self.top
        )
        if apart or other.line is None:
            return not apart
        return self._meets_line(other.line, gap)

    def _meets_line(self, line: tuple[Point, Point], margin: float) -> bool:
        (x0, y0), (x1, y1) = line
        pieces = max(int(math.dist(*line) / 100), 1)
        for index in range(pieces + 1):
            x = x0 + (x1 - x0) * index / pieces
            y = y0 + (y1 - y0) * index / pieces
            near_x = min(max(x, self.left), self.right)
            near_y = min(max(y, self.top), self.bottom)
            if math.dist((x, y), (near_x, near_y)) < margin:
                return True
        return False


def contact_boxes(connector: Connector, centre: Point, scale: float, turn_deg: float) -> list[Box]:
    """Return the round space that each contact takes as it is drawn."""
    found = []
    for contact in connector.contacts:
        at = contact_point(connector, contact.id, centre=centre, scale=scale, turn_deg=turn_deg)
        found.append(Box.round_line(at, at, contact_radius_mm(contact) * scale + 30))
    return found


def _gap(other: Box) -> float:
    """Return how far a name keeps off: more from names, whose tails hang below their box."""
    return 80.0 if other.line is None else 10.0


def free_spot(
    at: Point,
    start: float,
    size: tuple[float, float],
    first_rad: float,
    taken: Sequence[Box],
    *,
    rivals: Sequence[Point] = (),
    fits: Callable[[Box], bool] = lambda _: True,
) -> Box | None:
    """Find a box of `size` beside `at` that meets none of `taken` and `fits`.

    Near `first_rad` is better, and so is far from `rivals`: a name must not seem another's.
    """
    width, height = size
    found: list[tuple[float, Box]] = []
    for turn in range(0, 360, 15):
        angle = first_rad + math.radians(turn)
        for extra in (70.0, 180.0):
            reach_x, reach_y = start + width / 2 + extra, start + height / 2 + extra
            middle = (at[0] + math.cos(angle) * reach_x, at[1] + math.sin(angle) * reach_y)
            box = Box.round_point(middle, width / 2, height / 2)
            own = math.dist(middle, at)
            others = min((math.dist(middle, spot) for spot in rivals if spot != at), default=1e9)
            free = own * _CLEARER < others and fits(box)
            if free and not any(box.meets(other, _gap(other)) for other in taken):
                found.append((others - 1.5 * own - abs(half_turn_deg(turn)), box))
    best = max(found, key=lambda pair: pair[0], default=None)
    return best[1] if best else None
