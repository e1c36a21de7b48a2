"""The wall of the shell: how far bodies are from it, and where it is nearest."""

import math
from collections.abc import Callable

import numpy as np

from planner.dryfit.bodies import Capsule
from planner.geometry.curves import Vector
from planner.geometry.segments import Array
from planner.geometry.views import turned_point
from planner.model.connector import Shell


def wall_gaps_mm(shell: Shell, start: Array, end: Array, radius: Array, turn_deg: float) -> Array:
    """Return the gap in mm of each capsule to the wall; below 0 where it reaches into it.

    Ends of shape (n, 3), radii of shape (n,). A capsule is nearest to the wall at one of its ends:
    the inside of a round shell or of a D, taken as a rectangle, has no dents.
    """
    if shell.shape == "round":
        return np.asarray(shell.bore_mm / 2 - _farthest(np.hypot, start, end) - radius)
    cos, sin = math.cos(math.radians(turn_deg)), math.sin(math.radians(turn_deg))
    across = _farthest(lambda x, y: np.abs(x * cos + y * sin), start, end)
    up = _farthest(lambda x, y: np.abs(y * cos - x * sin), start, end)
    sides = np.minimum(shell.width_mm / 2 - across, shell.height_mm / 2 - up)
    return np.asarray(sides - radius)


def _farthest(measure: Callable[[Array, Array], Array], start: Array, end: Array) -> Array:
    return np.asarray(np.maximum(measure(start[:, 0], start[:, 1]), measure(end[:, 0], end[:, 1])))


def wall_spot(shell: Shell, body: Capsule, turn_deg: float) -> Capsule:
    """Return the point of the wall nearest to a body, as a body of its own."""
    ends = [body.start, body.end]
    points = [_nearest(shell, end, turn_deg) for end in ends]
    near = min(points, key=lambda point: min(math.dist(point, end) for end in ends))
    return Capsule(near, near, 0.0, "shell", "", "", bare=True)


def _nearest(shell: Shell, at: Vector, turn_deg: float) -> Vector:
    x, y, z = at
    if shell.shape == "round":
        reach = math.hypot(x, y)
        share = shell.bore_mm / 2 / reach if reach else 0.0
        return (x * share, y * share, z) if reach else (shell.bore_mm / 2, 0.0, z)
    across, up = turned_point(x, y, -turn_deg)
    half, high = shell.width_mm / 2, shell.height_mm / 2
    if half - abs(across) < high - abs(up):
        across = math.copysign(half, across)
    else:
        up = math.copysign(high, up)
    return (*turned_point(across, up, turn_deg), z)
