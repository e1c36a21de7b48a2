"""The way of a lead in space: a curve from the cable's cut end down to a terminal."""

from typing import TypeAlias

import numpy as np

from planner.geometry.segments import Array

Vector: TypeAlias = tuple[float, float, float]

PIECES = 8


def _weights(pieces: int) -> list[tuple[float, float, float, float]]:
    """Return for each corner the weights of start and end: across the face, then in height.

    A cubic curve whose two handles lie straight below its start and straight above its end, both
    half-way in height, so that it never turns back upwards.
    """
    found = []
    for step in range(pieces + 1):
        t = step / pieces
        u = 1 - t
        found.append(
            (u * u * (3 - 2 * u), t * t * (3 - 2 * t), u**3 + 1.5 * u * t, t**3 + 1.5 * u * t)
        )
    return found


_WEIGHTS = _weights(PIECES)
_FROM = np.array([(a, a, c) for a, _, c, _ in _WEIGHTS])
_TO = np.array([(b, b, d) for _, b, _, d in _WEIGHTS])


def lead_curve(start: Vector, end: Vector) -> tuple[Vector, ...]:
    """Return the corners of a lead that leaves `start` and meets `end` along the axis, mm.

    Its projection on the face is the straight line from the one to the other: crossings counted on
    straight lines are those of the drawn leads.
    """
    (x0, y0, z0), (x1, y1, z1) = start, end
    return tuple((a * x0 + b * x1, a * y0 + b * y1, c * z0 + d * z1) for a, b, c, d in _WEIGHTS)


def lead_curves(starts: Array, ends: Array) -> Array:
    """Return the corners of many leads at once: (n, 3) and (n, 3) give (n, PIECES + 1, 3), mm."""
    return np.asarray(starts[:, None, :] * _FROM + ends[:, None, :] * _TO)
