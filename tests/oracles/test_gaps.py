"""Gaps against two libraries that know nothing of each other or of us."""

import numpy as np
import pytest

from planner.dryfit.bodies import Capsule
from planner.dryfit.gaps import pair_gaps_mm
from tests.dryfit.crowds import crowd, site

PAIRS = 2000


def capsule(rng, *, flat):
    """Return a capsule as it occurs at an end; `flat`: in the plane z = 0."""
    start = rng.uniform(-12, 12, 3)
    end = start + rng.normal(size=3) * rng.choice([0.0, 0.5, 3.0, 8.0])
    if flat:
        start[2] = end[2] = 0.0
    return Capsule(tuple(start), tuple(end), rng.uniform(0.1, 1.5), "core", "", "", bare=False)


def pairs(seed, *, flat=False):
    rng = np.random.default_rng(seed)
    return [(capsule(rng, flat=flat), capsule(rng, flat=flat)) for _ in range(PAIRS)]


def ours(two):
    bodies = [body for pair in two for body in pair]
    places = np.arange(len(two)) * 2
    return pair_gaps_mm(bodies, places, places + 1)


def as_fcl(fcl, body):
    """Return a capsule of fcl: along its own z axis, the middle at its origin."""
    start, end = np.array(body.start), np.array(body.end)
    length = float(np.linalg.norm(end - start))
    along = (end - start) / length if length else np.array([0.0, 0.0, 1.0])
    aside = np.cross([1.0, 0, 0] if abs(along[0]) < 0.9 else [0.0, 1, 0], along)
    aside /= np.linalg.norm(aside)
    turned = np.column_stack([aside, np.cross(along, aside), along])
    place = fcl.Transform(turned, (start + end) / 2)
    return fcl.CollisionObject(fcl.Capsule(body.radius_mm, length), place)


def test_disjoint_capsules_against_fcl():
    """fcl has a form of its own for two capsules; it does not measure how far bodies overlap."""
    fcl = pytest.importorskip("fcl")
    two = pairs(1) + [
        (one, other)
        for seed in range(8)
        for bodies in [site(crowd(seed, 8, shields=2)).at(20.0 * seed)]
        for one, other in zip(bodies, bodies[len(bodies) // 2 :], strict=False)
    ]
    gaps = ours(two)
    disjoint = np.flatnonzero(gaps > 1e-3)
    request = fcl.DistanceRequest(gjk_solver_type=fcl.GJKSolverType.GST_INDEP)
    theirs = [
        fcl.distance(*(as_fcl(fcl, it) for it in two[k]), request, fcl.DistanceResult())
        for k in disjoint
    ]
    errors = np.abs(gaps[disjoint] - theirs)
    wrong = int((errors > 1e-9).sum())
    print(f"fcl: {wrong} of {len(errors)} differ, largest {errors.max():.1e} mm")  # noqa: T201
    assert len(errors) > 1500
    assert wrong == 0


def test_flat_capsules_against_shapely():
    """In a plane the distance of two lines is that of GEOS."""
    shapely = pytest.importorskip("shapely")
    two = pairs(2, flat=True)
    theirs = [
        shapely.LineString([one.start[:2], one.end[:2]]).distance(
            shapely.LineString([other.start[:2], other.end[:2]])
        )
        - one.radius_mm
        - other.radius_mm
        for one, other in two
    ]
    errors = np.abs(ours(two) - theirs)
    print(f"shapely: largest of {len(errors)} {errors.max():.1e} mm")  # noqa: T201
    assert errors.max() < 1e-12
