"""Views and handedness: one mirror between the solder side and the mating side.

Frame: mm, x right, y up, z towards the cable (towards the viewer of the solder side), angles
counter-clockwise. Turning a connector round its upright axis to look at the other side changes the
sign of x and of z and nothing else.
"""

import math


def mirrored_point(x_mm: float, y_mm: float) -> tuple[float, float]:
    """Return a point as seen from the other side. Two mirrors are the identity."""
    return (-x_mm + 0.0, y_mm)


def mirrored_angle_deg(angle_deg: float) -> float:
    """Return a direction as seen from the other side, in [-180, 180)."""
    return half_turn_deg(180.0 - angle_deg)


def half_turn_deg(angle_deg: float) -> float:
    """Return a direction or a turn in [-180, 180), whole turns left out."""
    return (angle_deg + 180.0) % 360.0 - 180.0


def turned_point(x_mm: float, y_mm: float, turn_deg: float) -> tuple[float, float]:
    """Return a point after turning the plug counter-clockwise by `turn_deg` round its axis."""
    cos, sin = math.cos(math.radians(turn_deg)), math.sin(math.radians(turn_deg))
    return (x_mm * cos - y_mm * sin, x_mm * sin + y_mm * cos)
