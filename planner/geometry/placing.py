"""Places of contacts by rule: a ring, a row, a grid. Millimetres, x right, y up, as looked at."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from planner.geometry.views import mirrored_point, turned_point

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Ring:
    """`count` contacts on a circle about the axis.

    The first stands at `start_deg`, counter-clockwise from x; each next one `step_deg` on, the
    other way round where `clockwise`. A step of 0 shares the whole circle out evenly.
    """

    count: int
    circle_mm: float
    start_deg: float = 90.0
    step_deg: float = 0.0
    clockwise: bool = False

    def places(self) -> tuple[Point, ...]:
        """Return the middles, mm; ValueError for a count below 1 or a circle below 0."""
        if self.count < 1 or self.circle_mm < 0:
            msg = "a ring needs at least one contact and a circle of 0 mm or more"
            raise ValueError(msg)
        step = self.step_deg or 360.0 / self.count
        turn = -step if self.clockwise else step
        return tuple(
            turned_point(self.circle_mm / 2, 0.0, self.start_deg + turn * at)
            for at in range(self.count)
        )


@dataclass(frozen=True, slots=True)
class Grid:
    """Rows of contacts, the first on top; each is centred unless `stagger_mm` moves it.

    `counts` are the contacts of each row, `pitch_mm` apart along it, `row_mm` from row to row.
    `stagger_mm` moves every second row to the right, from where it would be if its first contact
    stood under the first of the top row; None centres each row on the axis. `leftwards` counts
    from right to left.
    """

    counts: Sequence[int]
    pitch_mm: float
    row_mm: float = 0.0
    stagger_mm: float | None = None
    leftwards: bool = False

    def places(self) -> tuple[Point, ...]:
        """Return the middles row by row, mm, centred on the axis; ValueError for an empty row."""
        if not self.counts or min(self.counts) < 1:
            msg = "a grid needs at least one contact in each row"
            raise ValueError(msg)
        top = self.row_mm * (len(self.counts) - 1) / 2
        sign = -1.0 if self.leftwards else 1.0
        return tuple(
            (sign * (self._start_mm(row) + self.pitch_mm * at), top - self.row_mm * row)
            for row, count in enumerate(self.counts)
            for at in range(count)
        )

    def _start_mm(self, row: int) -> float:
        if self.stagger_mm is None:
            return -self.pitch_mm * (self.counts[row] - 1) / 2
        top = -self.pitch_mm * (self.counts[0] - 1) / 2
        return top + (self.stagger_mm if row % 2 else 0.0)


def same_hand(seen: Sequence[Point], known: Sequence[Point]) -> bool | None:
    """Tell whether two sets of places, in the same order, match turned (True) or mirrored (False).

    None where neither is plainly the better: one row of contacts is its own mirror. With places as
    complex numbers about their middles, the sums of conj(p) q and of p q measure the best fit by a
    turn and by a mirror (orthogonal Procrustes problem in the plane, Schonemann 1966, from memory).
    """
    one, other = _about_middle(seen), _about_middle(known)
    turned = abs(sum(p.conjugate() * q for p, q in zip(one, other, strict=True)))
    flipped = abs(sum(p * q for p, q in zip(one, other, strict=True)))
    most = max(turned, flipped)
    if most == 0 or abs(turned - flipped) < 0.02 * most:
        return None
    return turned > flipped


def _about_middle(places: Sequence[Point]) -> list[complex]:
    points = [complex(*place) for place in places]
    middle = sum(points) / len(points) if points else 0
    return [point - middle for point in points]


def mirror_partners(places: Mapping[str, Point]) -> dict[str, str] | None:
    """Return for each named place the one that stands at its mirror image, x turned to -x.

    None where some image has no place near it (nearer than half of the least distance).
    """
    least = min(
        (math.dist(one, other) for one, other in combinations(places.values(), 2)), default=0.0
    )
    partners = {}
    for name, place in places.items():
        image = mirrored_point(*place)
        nearest = min(places, key=lambda other: (math.dist(places[other], image), other))
        if math.dist(places[nearest], image) > least / 2:
            return None
        partners[name] = nearest
    return partners if len(set(partners.values())) == len(places) else None
