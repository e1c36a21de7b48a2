"""Which lead lies over which, as seen from the cable: lower ones are drawn first."""

import math
from collections.abc import Sequence
from itertools import pairwise

from planner.dryfit.bodies import Lead

Flat = tuple[float, float]


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
    crossed = crossing_shares(one, other)
    if crossed is not None:
        return crossed
    found = [(share, _share_nearest(_on(one, share), other)) for share in (0.0, 1.0)]
    found += [(_share_nearest(_on(other, share), one), share) for share in (0.0, 1.0)]
    return min(found, key=lambda pair: math.dist(_on(one, pair[0]), _on(other, pair[1])))


def is_over(one: Lead, other: Lead) -> bool:
    """Tell whether a lead covers part of another as seen from the cable."""
    shares = _nearest_shares(one, other)
    apart = math.dist(_on(one, shares[0]), _on(other, shares[1]))
    if apart >= (one.covered_mm + other.covered_mm) / 2:
        return False
    return height_mm(one, shares[0]) > height_mm(other, shares[1]) + 1e-9


def from_below(leads: Sequence[Lead]) -> tuple[Lead, ...]:
    """Return the leads in the order of drawing: none before one that it covers.

    Leads that cover each other in a ring (it can be so) go by their middle heights.
    """
    left = sorted(leads, key=lambda lead: (height_mm(lead, 0.5), lead.landing.conductor))
    under = {
        id(lead): {id(other) for other in left if other is not lead and is_over(lead, other)}
        for lead in left
    }
    drawn: list[Lead] = []
    while left:
        waiting = {id(lead) for lead in left}
        ready = (lead for lead in left if not under[id(lead)] & waiting)
        chosen = next(ready, left[0])
        left.remove(chosen)
        drawn.append(chosen)
    return tuple(drawn)
