"""Along a drawn line: lengths, points with directions, parts, offsets, curves, arcs."""

import math
from bisect import bisect_right
from collections.abc import Sequence
from itertools import accumulate, pairwise

from planner.drawing.primitives import Point


class Run:
    """A polyline measured along itself, in the units of its points."""

    def __init__(self, points: Sequence[Point]) -> None:
        kept = [points[0]]
        kept += [there for here, there in pairwise(points) if math.dist(here, there) > 1e-9]
        self.points = tuple(kept)
        steps = [math.dist(here, there) for here, there in pairwise(self.points)]
        self._marks = (0.0, *accumulate(steps))

    @property
    def length(self) -> float:
        """The length along the line."""
        return self._marks[-1]

    def _segment(self, along: float) -> int:
        return min(max(bisect_right(self._marks, along) - 1, 0), max(len(self.points) - 2, 0))

    def at(self, along: float) -> Point:
        """Return the point `along` the line from its start; beyond its ends, its ends."""
        if len(self.points) == 1:
            return self.points[0]
        place = self._segment(along)
        start, stop = self._marks[place], self._marks[place + 1]
        share = min(max((along - start) / (stop - start), 0.0), 1.0)
        (x0, y0), (x1, y1) = self.points[place], self.points[place + 1]
        return (x0 + (x1 - x0) * share, y0 + (y1 - y0) * share)

    def direction(self, along: float) -> Point:
        """Return the unit vector of the line there, smoothed over its corners."""
        if len(self.points) == 1:
            return (1.0, 0.0)
        reach = max(self.length * 0.01, 1e-6)
        (x0, y0), (x1, y1) = self.at(along - reach), self.at(along + reach)
        size = math.hypot(x1 - x0, y1 - y0)
        return ((x1 - x0) / size, (y1 - y0) / size) if size > 0 else (1.0, 0.0)

    def beside(self, along: float, aside: float) -> Point:
        """Return the point `along` the line and `aside` to the right of its direction (y down)."""
        (x, y), (dx, dy) = self.at(along), self.direction(along)
        return (x - dy * aside, y + dx * aside)

    def part(self, start: float, stop: float) -> tuple[Point, ...]:
        """Return the points of the line from `start` to `stop` along it."""
        inner = (
            point
            for point, mark in zip(self.points, self._marks, strict=True)
            if start + 1e-9 < mark < stop - 1e-9
        )
        return (self.at(start), *inner, self.at(stop))

    def offset(self, aside: float, start: float, stop: float, pitch: float) -> tuple[Point, ...]:
        """Return a line `aside` of this one, in steps of about `pitch`."""
        count = max(math.ceil((stop - start) / pitch), 1)
        step = (stop - start) / count
        return tuple(self.beside(start + step * index, aside) for index in range(count + 1))


def curve(
    start: Point, leaving: Point, arriving: Point, stop: Point, pieces: int = 24
) -> tuple[Point, ...]:
    """Return the points of a cubic curve with control points `leaving` and `arriving`."""
    found = []
    for index in range(pieces + 1):
        t = index / pieces
        u = 1 - t
        weights = (u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t)
        spots = (start, leaving, arriving, stop)
        x = sum(weight * spot[0] for weight, spot in zip(weights, spots, strict=True))
        y = sum(weight * spot[1] for weight, spot in zip(weights, spots, strict=True))
        found.append((x, y))
    return tuple(found)


def arc(
    centre: Point, radius: float, from_deg: float, to_deg: float, pieces: int = 0
) -> tuple[Point, ...]:
    """Return points on a circle; angles counter-clockwise as seen, y down."""
    count = pieces or max(int(abs(to_deg - from_deg) / 5), 2)
    step = (to_deg - from_deg) / count
    angles = (math.radians(from_deg + step * index) for index in range(count + 1))
    x, y = centre
    return tuple((x + radius * math.cos(a), y - radius * math.sin(a)) for a in angles)


def ring(centre: Point, radius: float, pieces: int = 96) -> tuple[Point, ...]:
    """Return a circle as a polygon, its first point not repeated."""
    return arc(centre, radius, 0, 360, pieces)[:-1]
