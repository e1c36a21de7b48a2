"""The way of a lead in space: a curve from the cable's cut end down to a terminal."""

from typing import TypeAlias

Vector: TypeAlias = tuple[float, float, float]

PIECES = 8


def lead_curve(start: Vector, end: Vector, pieces: int = PIECES) -> tuple[Vector, ...]:
    """Return the corners of a lead that leaves `start` and meets `end` along the axis, mm.

    A cubic curve whose two handles lie straight below its start and straight above its end, so its
    projection on the face is the straight line from the one to the other: crossings counted on
    straight lines are those of the drawn leads.
    """
    (x0, y0, z0), (x1, y1, z1) = start, end
    found = []
    for step in range(pieces + 1):
        t = step / pieces
        across = t * t * (3 - 2 * t)
        # Handles half-way in height: the curve never turns back upwards.
        middle = (z0 + z1) / 2
        u = 1 - t
        z = u**3 * z0 + 3 * u * t * (u * middle + t * middle) + t**3 * z1
        found.append((x0 + across * (x1 - x0), y0 + across * (y1 - y0), z))
    return tuple(found)
