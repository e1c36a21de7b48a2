"""Distances between segments and capsules in space, and crossings in the plane."""

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]


def segment_distances(p0: Array, p1: Array, q0: Array, q1: Array) -> Array:
    """Return the distance of each pair of segments p0-p1 and q0-q1; arrays of shape (n, 3), mm.

    By cases: the smallest of the four end-to-segment distances, or the distance of the two lines
    where both feet lie inside. Points (segments of no length) are allowed.
    """
    best = np.minimum(
        np.minimum(_point_segment(p0, q0, q1), _point_segment(p1, q0, q1)),
        np.minimum(_point_segment(q0, p0, p1), _point_segment(q1, p0, p1)),
    )
    u, v, w = p1 - p0, q1 - q0, p0 - q0
    normal = _cross(u, v)
    area2 = _dot(normal, normal)
    # |u x v|^2 keeps its precision where a*c - b*b cancels.
    safe = np.where(area2 > 0, area2, 1.0)
    s = _dot(_cross(v, w), normal) / safe
    t = _dot(_cross(u, w), normal) / safe
    inside = (area2 > 0) & (s >= 0) & (s <= 1) & (t >= 0) & (t <= 1)
    lines = np.abs(_dot(w, normal)) / np.sqrt(safe)
    return np.asarray(np.where(inside, np.minimum(best, lines), best))


def _dot(a: Array, b: Array) -> Array:
    return np.asarray(np.einsum("ij,ij->i", a, b))


def _cross(a: Array, b: Array) -> Array:
    """Return the cross products by columns, several times as fast as numpy's general form."""
    found = np.empty_like(a)
    found[:, 0] = a[:, 1] * b[:, 2] - a[:, 2] * b[:, 1]
    found[:, 1] = a[:, 2] * b[:, 0] - a[:, 0] * b[:, 2]
    found[:, 2] = a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]
    return found


def _point_segment(point: Array, start: Array, end: Array) -> Array:
    along, away = end - start, point - start
    length2 = _dot(along, along)
    foot = _dot(away, along) / np.where(length2 > 0, length2, 1.0)
    rest = away - np.clip(foot, 0.0, 1.0)[:, None] * along
    return np.asarray(np.sqrt(_dot(rest, rest)))


def cross_in_plane(
    a: tuple[float, float],
    b: tuple[float, float],
    c: tuple[float, float],
    d: tuple[float, float],
) -> bool:
    """Tell whether segments ab and cd cross in the plane; touching ends do not count."""

    def side(p: tuple[float, float], q: tuple[float, float], r: tuple[float, float]) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0
