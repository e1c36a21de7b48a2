"""The band across a page that must not be soldered from."""

import math

from planner.drawing.primitives import DrawList, Poly, Style, Text
from planner.sheet.lettering import INK, SHOUT, cap
from planner.sheet.paper import HALF_WIDTH, Paper

TURN_DEG = -20.0
_INNER, _OUTER = 1150.0, 1700.0
_SLOPE = math.tan(math.radians(-TURN_DEG))


def _rise(paper: Paper) -> float:
    return paper.width / 2 * _SLOPE


def _middle(paper: Paper) -> float:
    lowest = paper.foot_rule - 200
    return lowest - _rise(paper) - _OUTER / math.cos(math.radians(TURN_DEG))


def free_above(paper: Paper) -> tuple[float, float]:
    """Return the levels above which the left and the right column stay free of the band."""
    return free_at(paper, paper.left + HALF_WIDTH), free_at(paper, paper.right)


def free_at(paper: Paper, right: float) -> float:
    """Return the level above which what ends at `right` stays free of the band."""
    upper = _OUTER / math.cos(math.radians(TURN_DEG)) + 250
    return _middle(paper) - (right - paper.width / 2) * _SLOPE - upper


def stop_band(paper: Paper, warning: str) -> DrawList:
    """Draw a warning, such as NOT CLEAR TO SOLDER, between two solid stripes, edge to edge."""
    middle = _middle(paper)
    stripes = [_stripe(paper, middle, *span) for span in ((-_OUTER, -_INNER), (_INNER, _OUTER))]
    turn = math.radians(TURN_DEG)
    drop = cap(SHOUT) / 2
    at = (paper.width / 2 - drop * math.sin(turn), middle + drop * math.cos(turn))
    words = Text(at, warning, SHOUT, INK, bold=True, anchor="middle", turn_deg=TURN_DEG)
    return (*stripes, words)


def _stripe(paper: Paper, middle: float, start: float, stop: float) -> Poly:
    steep = math.cos(math.radians(TURN_DEG))
    rise = _rise(paper)
    low, high = start / steep, stop / steep
    points = (
        (0.0, middle + rise + low),
        (paper.width, middle - rise + low),
        (paper.width, middle - rise + high),
        (0.0, middle + rise + high),
    )
    return Poly(points, Style(fill=INK), closed=True)
