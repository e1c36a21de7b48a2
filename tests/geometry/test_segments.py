"""Distances of segments against exact rational arithmetic, by another method."""

import math
from decimal import Decimal, localcontext
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.geometry.segments import segment_distances

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


def _precise(p0, p1, q0, q1) -> Decimal:
    """Return the distance to 50 digits: the smallest over four edges, and inside if there is one.

    The floats are taken as the exact numbers that they are.
    """
    p0, p1, q0, q1 = (tuple(Decimal(float(x)) for x in point) for point in (p0, p1, q0, q1))
    u, v, w = _sub(p1, p0), _sub(q1, q0), _sub(p0, q0)
    a, b, c, d, e = _dot(u, u), _dot(u, v), _dot(v, v), _dot(u, w), _dot(v, w)
    zero, one = Decimal(0), Decimal(1)
    places = [(s, min(max((b * s + e) / c, zero), one) if c else zero) for s in (zero, one)]
    places += [(min(max((b * t - d) / a, zero), one) if a else zero, t) for t in (zero, one)]
    determinant = a * c - b * b
    if determinant > 0:
        s, t = (b * e - c * d) / determinant, (a * e - b * d) / determinant
        if zero <= s <= one and zero <= t <= one:
            places.append((s, t))
    square = min(
        sum((x + s * y - t * z) ** 2 for x, y, z in zip(w, u, v, strict=True)) for s, t in places
    )
    return square.sqrt()


def _pairs_of_segments(rng, count):
    """Return ends of random and degenerate pairs: points, one in the other, nearly parallel..."""
    p0, p1, q0, q1 = rng.uniform(-20, 20, (4, count, 3))
    kind = np.arange(count) % 8
    tiny = rng.uniform(-1, 1, (count, 3)) * 10.0 ** -rng.integers(1, 16, count)[:, None]
    share = rng.uniform(-0.5, 1.5, (2, count, 1))
    on_p = p0 + share[0] * (p1 - p0)
    q1 = np.where((kind == 1)[:, None], q0 + (p1 - p0), q1)  # parallel
    q1 = np.where((kind == 2)[:, None], q0 + (p1 - p0) + tiny, q1)  # nearly parallel
    p1 = np.where((kind == 3)[:, None], p0, p1)  # a point
    p1, q1 = (np.where((kind == 4)[:, None], start, end) for start, end in ((p0, p1), (q0, q1)))
    q0 = np.where((kind == 5)[:, None], on_p + tiny, q0)  # an end on or near the other
    q0 = np.where((kind == 6)[:, None], on_p, q0)  # on one line
    q1 = np.where((kind == 6)[:, None], p0 + share[1] * (p1 - p0), q1)
    q1 = np.where((kind == 7)[:, None], q0 + tiny, q1)  # very short
    return p0, p1, q0, q1


def test_distance_against_fifty_digits():
    """Lengths are those of bodies at an end, up to 35 mm; aimed at 7e-15 mm for plain pairs."""
    with localcontext() as context:
        context.prec = 50
        ends = _pairs_of_segments(np.random.default_rng(4), 4000)
        ours = segment_distances(*ends)
        exact = [_precise(*(end[k] for end in ends)) for k in range(len(ours))]
        errors = [abs(float(Decimal(float(x)) - y)) for x, y in zip(ours, exact, strict=True)]
    by_kind = [max(errors[kind::8]) for kind in range(8)]
    print("largest error mm by kind:", " ".join(f"{error:.1e}" for error in by_kind))  # noqa: T201 - a figure of proof
    assert max(errors) < 1e-13


def test_distance_does_not_hang_on_the_company():
    """A pair gives the same figure to the last bit alone as in a crowd."""
    ends = _pairs_of_segments(np.random.default_rng(5), 333)
    crowd = segment_distances(*ends)
    alone = [segment_distances(*(end[k : k + 1] for end in ends))[0] for k in range(333)]
    assert crowd.tolist() == alone
