"""Distances of segments against exact rational arithmetic, by another method."""

import math
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.geometry.segments import cross_in_plane, segment_distances

COORDINATE = st.integers(-40, 40)
POINT = st.tuples(COORDINATE, COORDINATE, COORDINATE)


def _dot(a, b):
    return sum(x * y for x, y in zip(a, b, strict=True))


def _sub(a, b):
    return tuple(x - y for x, y in zip(a, b, strict=True))


def exact_distance(p0, p1, q0, q1) -> float:
    """Minimise |P(s) - Q(t)|^2 over the square: its inside, four edges, four corners."""
    u, v, w = _sub(p1, p0), _sub(q1, q0), _sub(p0, q0)
    a, b, c, d, e = _dot(u, u), _dot(u, v), _dot(v, v), _dot(u, w), _dot(v, w)

    def clamp(x):
        return min(max(x, Fraction(0)), Fraction(1))

    candidates = [(Fraction(s), Fraction(t)) for s in (0, 1) for t in (0, 1)]
    ends = (Fraction(0), Fraction(1))
    candidates += [(s, clamp(Fraction(b * s + e) / c)) for s in ends if c]
    candidates += [(clamp(Fraction(b * t - d) / a), t) for t in ends if a]
    determinant = a * c - b * b
    if determinant:
        s, t = Fraction(b * e - c * d) / determinant, Fraction(a * e - b * d) / determinant
        if 0 <= s <= 1 and 0 <= t <= 1:
            candidates.append((s, t))
    return math.sqrt(
        min(
            sum((wx + s * ux - t * vx) ** 2 for wx, ux, vx in zip(w, u, v, strict=True))
            for s, t in candidates
        )
    )


@given(POINT, POINT, POINT, POINT)
def test_distance_equals_exact_arithmetic(p0, p1, q0, q1):
    arrays = [np.array([point], dtype=float) for point in (p0, p1, q0, q1)]
    assert segment_distances(*arrays)[0] == pytest.approx(exact_distance(p0, p1, q0, q1), abs=1e-9)


def test_crossing_needs_an_inner_point():
    assert cross_in_plane((0, 0), (2, 2), (0, 2), (2, 0))
    assert not cross_in_plane((0, 0), (1, 1), (1, 1), (2, 0))
    assert not cross_in_plane((0, 0), (1, 0), (0, 1), (1, 1))
