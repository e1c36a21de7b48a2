"""Trace over a scan or a photo: two points of known distance give its scale."""

import math

from planner.files.side import FIGURE_DIGITS
from planner.geometry.views import half_turn_deg
from planner.model.tracing import Point, Tracing
from planner.problem import EditRefused
from planner.units import rounded

_LEAST_PX = 4.0


def scaled(tracing: Tracing, one_px: Point, other_px: Point, apart_mm: float) -> Tracing:
    """Scale a picture by two of its points and their true distance."""
    apart_px = math.dist(one_px, other_px)
    if apart_px < _LEAST_PX:
        raise EditRefused("the two points lie on each other", "Click two points far apart.")
    if not 0 < apart_mm <= 1000:
        raise EditRefused(
            f"{apart_mm:g} mm can't be their distance", "Write the distance in mm, above 0."
        )
    return tracing.evolve(mm_per_px=rounded(apart_mm / apart_px, FIGURE_DIGITS))


def levelled(tracing: Tracing, one_px: Point, other_px: Point, along_deg: float = 0.0) -> Tracing:
    """Turn a picture so that the line from one point to another runs in a direction."""
    if math.dist(one_px, other_px) < _LEAST_PX:
        raise EditRefused("the two points lie on each other", "Click two points far apart.")
    now = math.degrees(math.atan2(one_px[1] - other_px[1], other_px[0] - one_px[0]))
    return tracing.evolve(turn_deg=rounded(half_turn_deg(along_deg - now), FIGURE_DIGITS))


def centred(tracing: Tracing, axis_px: Point) -> Tracing:
    """Say where the plug's axis goes through the picture."""
    return tracing.evolve(axis_px=(rounded(axis_px[0], 2), rounded(axis_px[1], 2)))
