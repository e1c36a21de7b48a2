"""The pointer on a plug or its dial: how far it has gone round, and which joint lies under it."""

import math
from collections.abc import Mapping

from planner.drawing.primitives import Point
from planner.geometry.views import half_turn_deg

LEAST_REACH_PX = 14.0  # a joint is hit within this at any scale
_DEAD_PX = 6.0  # nearer to the middle an angle says nothing


def angle_deg(centre: Point, at: Point) -> float | None:
    """Return the angle of a point round the centre, counter-clockwise from the right, degrees."""
    dx, dy = at[0] - centre[0], centre[1] - at[1]
    return math.degrees(math.atan2(dy, dx)) if math.hypot(dx, dy) > _DEAD_PX else None


def turned_by(centre: Point, start: Point, now: Point) -> float:
    """Return by how many degrees a hand went round the centre, counter-clockwise, -180 to 180."""
    one, other = angle_deg(centre, start), angle_deg(centre, now)
    if one is None or other is None:
        return 0.0
    return half_turn_deg(other - one)


def joint_at(joints: Mapping[str, Point], radii: Mapping[str, float], at: Point) -> str:
    """Return the contact that lies under a point, or empty."""
    best, least = "", math.inf
    for contact, spot in joints.items():
        away = math.dist(spot, at)
        if away <= max(radii.get(contact, 0.0), LEAST_REACH_PX) and away < least:
            best, least = contact, away
    return best
