"""Which lead lies over which, as seen from the cable: lower ones are drawn first."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise

from planner.dryfit.bodies import Lead

Flat = tuple[float, float]
SAME_MM = 1e-6


def height_mm(lead: Lead, share: float) -> float:
    """Return how high a lead is, `share` of the way from its exit to its terminal as projected."""
    (x0, y0, _), (x1, y1, _) = lead.exit, lead.mouth
    length = math.dist((x0, y0), (x1, y1))
    if length < 1e-9:
        return (lead.exit[2] + lead.mouth[2]) / 2
    goal = share * length
    for one, other in pairwise(lead.way):
        start, stop = math.dist(one[:2], (x0, y0)), math.dist(other[:2], (x0, y0))
        if start <= goal <= stop:
            part = (goal - start) / (stop - start) if stop - start > 1e-12 else 0.5
            return one[2] + part * (other[2] - one[2])
    return lead.mouth[2]


def crossing_shares(one: Lead, other: Lead) -> tuple[float, float] | None:
    """Return how far along each lead they cross as projected, or None if they do not."""
    (ax, ay), (bx, by) = one.exit[:2], one.mouth[:2]
    (cx, cy), (dx, dy) = other.exit[:2], other.mouth[:2]
    area = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    if abs(area) < 1e-12:
        return None
    s = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / area
    t = ((cx - ax) * (by - ay) - (cy - ay) * (bx - ax)) / area
    return (s, t) if 0 <= s <= 1 and 0 <= t <= 1 else None


def crossing_point(one: Lead, other: Lead) -> Flat | None:
    """Return where two leads cross as projected, mm, or None if they do not."""
    shares = crossing_shares(one, other)
    if shares is None:
        return None
    (x0, y0), (x1, y1) = one.exit[:2], one.mouth[:2]
    return (x0 + (x1 - x0) * shares[0], y0 + (y1 - y0) * shares[0])


def _share_nearest(point: Flat, lead: Lead) -> float:
    (x0, y0), (x1, y1) = lead.exit[:2], lead.mouth[:2]
    length2 = (x1 - x0) ** 2 + (y1 - y0) ** 2
    if length2 < 1e-18:
        return 0.0
    along = ((point[0] - x0) * (x1 - x0) + (point[1] - y0) * (y1 - y0)) / length2
    return min(max(along, 0.0), 1.0)


def _on(lead: Lead, share: float) -> Flat:
    (x0, y0), (x1, y1) = lead.exit[:2], lead.mouth[:2]
    return (x0 + (x1 - x0) * share, y0 + (y1 - y0) * share)


def _nearest_shares(one: Lead, other: Lead) -> tuple[float, float]:
    """Return how far along each of two leads that do not cross they are nearest as projected."""
    found = [(share, _share_nearest(_on(one, share), other)) for share in (0.0, 1.0)]
    found += [(_share_nearest(_on(other, share), one), share) for share in (0.0, 1.0)]
    return min(found, key=lambda pair: math.dist(_on(one, pair[0]), _on(other, pair[1])))


@dataclass(frozen=True, slots=True, eq=False)
class Cover:
    """One lead lies over part of another as seen from the cable; `height_mm` of it there."""

    higher: Lead
    lower: Lead
    crosses: bool
    height_mm: float


def covers(leads: Sequence[Lead]) -> tuple[Cover, ...]:
    """Return which leads lie over which; leads of one height at one place do not count."""
    boxes = [_box(lead) for lead in leads]
    found = []
    for (one, here), (other, there) in combinations(zip(leads, boxes, strict=True), 2):
        apart = here[0] > there[2] or there[0] > here[2] or here[1] > there[3] or there[1] > here[3]
        cover = None if apart else _cover(one, other)
        if cover is not None:
            found.append(cover)
    return tuple(found)


def _box(lead: Lead) -> tuple[float, float, float, float]:
    (x0, y0), (x1, y1), half = lead.exit[:2], lead.mouth[:2], lead.covered_mm / 2
    return (min(x0, x1) - half, min(y0, y1) - half, max(x0, x1) + half, max(y0, y1) + half)


def _cover(one: Lead, other: Lead) -> Cover | None:
    crossed = crossing_shares(one, other)
    s, t = crossed or _nearest_shares(one, other)
    if math.dist(_on(one, s), _on(other, t)) >= (one.covered_mm + other.covered_mm) / 2:
        return None
    here, there = height_mm(one, s), height_mm(other, t)
    if abs(here - there) < SAME_MM:
        return None
    if here > there:
        return Cover(one, other, crossed is not None, here)
    return Cover(other, one, crossed is not None, there)


def from_below(leads: Sequence[Lead], found: Sequence[Cover]) -> tuple[Lead, ...]:
    """Return the leads in the order of drawing: where two cross, the higher one comes later.

    Beside that, a lead that only overlaps another's edge comes after it if it is higher there.
    Where leads cross each other in a ring (it can be so), see `to_lay_over`.
    """
    left = sorted(leads, key=lambda lead: (height_mm(lead, 0.5), lead.landing.conductor))
    weights: dict[int, dict[int, int]] = {id(lead): {} for lead in left}
    for cover in found:
        # A crossing outweighs any number of edges.
        weights[id(cover.higher)][id(cover.lower)] = 1000 if cover.crosses else 1
    drawn: list[Lead] = []
    while left:
        chosen = min(left, key=lambda lead: sum(weights[id(lead)].values()))
        left.remove(chosen)
        for under in weights.values():
            under.pop(id(chosen), None)
        drawn.append(chosen)
    return tuple(drawn)


def to_lay_over(ordered: Sequence[Lead], found: Sequence[Cover]) -> tuple[Cover, ...]:
    """Return the crossings to be drawn once more, in the order of drawing.

    Where leads cross in a ring, no order of whole leads shows all crossings: the lower lead of one
    is drawn later. A piece laid over mends it, and so do pieces of what lies over that piece.
    """
    place = {id(lead): number for number, lead in enumerate(ordered)}
    crossings = [cover for cover in found if cover.crosses]
    wrong = [it for it in crossings if place[id(it.higher)] < place[id(it.lower)]]
    lifted = {id(cover.higher) for cover in wrong}
    again = [it for it in crossings if id(it.lower) in lifted and it not in wrong]
    return tuple(sorted([*wrong, *again], key=lambda cover: cover.height_mm))


def overlap_mm(one: Lead, other: Lead) -> float:
    """Return how far to each side of their crossing a lead lies over another, along itself."""
    (ax, ay), (bx, by) = one.exit[:2], one.mouth[:2]
    (cx, cy), (dx, dy) = other.exit[:2], other.mouth[:2]
    area = abs((bx - ax) * (dy - cy) - (by - ay) * (dx - cx))
    along = abs((bx - ax) * (dx - cx) + (by - ay) * (dy - cy))
    sizes = math.dist((ax, ay), (bx, by)) * math.dist((cx, cy), (dx, dy))
    if area < 1e-9 * sizes:
        return math.dist((ax, ay), (bx, by))
    return (other.covered_mm * sizes + one.covered_mm * along) / 2 / area
