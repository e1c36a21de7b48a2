"""Along a drawn line: lengths, points with directions, parts, offsets, curves, arcs."""

import math
from bisect import bisect_right
from collections.abc import Sequence
from functools import lru_cache
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

    def at(self, along: float) -> Point:
        """Return the point `along` the line from its start; beyond its ends, its ends."""
        # Called for every hatch line of every core: plain comparisons, no calls.
        points, marks = self.points, self._marks
        if along <= 0.0:
            return points[0]
        if along >= marks[-1]:
            return points[-1]
        place = bisect_right(marks, along) - 1
        start = marks[place]
        share = (along - start) / (marks[place + 1] - start)
        (x0, y0), (x1, y1) = points[place], points[place + 1]
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
    (x0, y0), (x1, y1), (x2, y2), (x3, y3) = start, leaving, arriving, stop
    return tuple(
        (a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3)
        for a, b, c, d in _cubic_weights(pieces)
    )


@lru_cache(maxsize=32)
def _cubic_weights(pieces: int) -> tuple[tuple[float, float, float, float], ...]:
    """Return the weights of the four control points at each point of a cubic curve."""
    shares = (index / pieces for index in range(pieces + 1))
    return tuple(
        ((1 - t) ** 3, 3 * (1 - t) * (1 - t) * t, 3 * (1 - t) * t * t, t * t * t) for t in shares
    )


def arc(
    centre: Point, radius: float, from_deg: float, to_deg: float, pieces: int = 0
) -> tuple[Point, ...]:
    """Return points on a circle; angles counter-clockwise as seen, y down."""
    count = pieces or max(int(abs(to_deg - from_deg) / 5), 2)
    x, y = centre
    return tuple(
        (x + radius * cos, y - radius * sin) for cos, sin in _turns(from_deg, to_deg, count)
    )


@lru_cache(maxsize=512)
def _turns(from_deg: float, to_deg: float, count: int) -> tuple[Point, ...]:
    """Return (cos, sin) of evenly spaced angles: the same few arcs are drawn over and over."""
    step = (to_deg - from_deg) / count
    angles = (math.radians(from_deg + step * index) for index in range(count + 1))
    return tuple((math.cos(angle), math.sin(angle)) for angle in angles)


def ring(centre: Point, radius: float, pieces: int = 96) -> tuple[Point, ...]:
    """Return a circle as a polygon, its first point not repeated."""
    return arc(centre, radius, 0, 360, pieces)[:-1]
