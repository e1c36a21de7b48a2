"""Distances between segments in space."""

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Columns = tuple[Array, Array, Array]


def segment_distances(p0: Array, p1: Array, q0: Array, q1: Array) -> Array:
    """Return the distance of each pair of segments p0-p1 and q0-q1; arrays of shape (n, 3), mm.

    By cases: the smallest of the four end-to-segment distances, or the distance between the feet of
    the common normal where both lie inside. Points (segments of no length) are allowed. All is
    done by columns, so that a pair gives the same figure to the last bit in whatever company.
    """
    a, b, c, d = _columns(p0), _columns(p1), _columns(q0), _columns(q1)
    u, v, w = _less(b, a), _less(d, c), _less(a, c)
    uu, vv = _dot(u, u), _dot(v, v)
    best = np.minimum(
        np.minimum(_point_segment2(w, v, vv), _point_segment2(_less(b, c), v, vv)),
        np.minimum(_point_segment2(_less(c, a), u, uu), _point_segment2(_less(d, a), u, uu)),
    )
    normal = _cross(u, v)
    # |u x v|^2 keeps its precision where a*c - b*b cancels.
    area2 = _dot(normal, normal)
    safe = np.where(area2 > 0, area2, 1.0)
    s = np.clip(_dot(_cross(v, w), normal) / safe, 0.0, 1.0)
    t = np.clip(_dot(_cross(u, w), normal) / safe, 0.0, 1.0)
    # Measured between the two feet, not as the distance of the lines: on nearly one line the feet
    # are noise, but a distance between points of the segments is never below the smallest.
    across = _less(_less(w, _scaled(v, t)), _scaled(u, -s))
    return np.asarray(np.sqrt(np.minimum(best, _dot(across, across))))


def _columns(points: Array) -> Columns:
    x, y, z = np.ascontiguousarray(points.T)
    return x, y, z


def _less(a: Columns, b: Columns) -> Columns:
    return a[0] - b[0], a[1] - b[1], a[2] - b[2]


def _scaled(a: Columns, by: Array) -> Columns:
    return a[0] * by, a[1] * by, a[2] * by


def _dot(a: Columns, b: Columns) -> Array:
    return np.asarray(a[0] * b[0] + a[1] * b[1] + a[2] * b[2])


def _cross(a: Columns, b: Columns) -> Columns:
    return (
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    )


def _point_segment2(away: Columns, along: Columns, length2: Array) -> Array:
    """Return the squared distance of a point, seen from a segment's start, to the segment."""
    foot = _dot(away, along) / np.where(length2 > 0, length2, 1.0)
    foot = np.clip(foot, 0.0, 1.0)
    rest = _less(away, _scaled(along, foot))
    return _dot(rest, rest)
