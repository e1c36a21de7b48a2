"""Which lead lies over which."""

import itertools
import math

import pytest

from planner.drawing.fitting.face import fitted_face
from planner.drawing.fitting.heights import covers, crossing_point, crossing_shares, height_mm
from planner.drawing.looks import LIGHT
from planner.drawing.primitives import Poly
from tests.drawing.fitting.samples import connector_named, fit_of


def test_a_lead_is_highest_at_its_exit_and_lowest_at_its_mouth():
    for lead in fit_of(connector_named("jack-4.4-five-pole")).leads:
        heights = [height_mm(lead, step / 10) for step in range(11)]
        assert heights[0] == pytest.approx(lead.exit[2])
        assert heights == sorted(heights, reverse=True)


@pytest.mark.parametrize("skip", [1, 2, 3])
@pytest.mark.parametrize("turn_deg", [0, 70, 200])
def test_the_higher_lead_is_on_top_wherever_two_cross(skip, turn_deg):
    connector = connector_named("dsub-9-male")
    fit = fit_of(connector, turn_deg=turn_deg, skip=skip)
    items = fitted_face(connector, fit, centre=(0, 0), scale=50, look=LIGHT, labels=False)
    cores = [lead for lead in fit.leads if not lead.is_shield]
    seen = 0
    for one, other in itertools.combinations(cores, 2):
        shares = crossing_shares(one, other)
        if shares is None or max(shares) > 0.5:
            continue  # the bare end is drawn thinner and need not reach so far
        x, y = crossing_point(one, other)
        if math.isclose(height_mm(one, shares[0]), height_mm(other, shares[1]), abs_tol=1e-6):
            continue
        higher = one if height_mm(one, shares[0]) > height_mm(other, shares[1]) else other
        assert topmost(items, (50 * x, -50 * y), (one, other)) == higher.landing.conductor
        seen += 1
    assert seen or skip == 1


def topmost(items, point, leads):
    """Return which of the leads' covered parts is drawn last at a point."""
    found = None
    bodies = {f"lead/{lead.landing.conductor}": lead for lead in leads}
    for item in items:
        lead = bodies.get(item.owner)
        if lead is None or not isinstance(item, Poly) or item.closed:
            continue
        is_body = item.style.width == pytest.approx(lead.part.insulation_mm * 50)
        if is_body and beside(point, item.points[0], item.points[-1]) < item.style.width / 2:
            found = lead.landing.conductor
    return found


def beside(point, start, stop):
    length2 = math.dist(start, stop) ** 2
    along = sum((p - a) * (b - a) for p, a, b in zip(point, start, stop, strict=True)) / length2
    if not -0.01 <= along <= 1.01:
        return math.inf
    foot = [a + along * (b - a) for a, b in zip(start, stop, strict=True)]
    return math.dist(point, foot)


def test_a_cover_says_the_higher_lead_first():
    fit = fit_of(connector_named("dsub-9-male"), skip=2, turn_deg=200)
    crossings = [cover for cover in covers(fit.leads) if cover.crosses]
    assert crossings
    for cover in crossings:
        s, t = crossing_shares(cover.higher, cover.lower)
        assert height_mm(cover.higher, s) > height_mm(cover.lower, t)
        assert height_mm(cover.higher, s) == cover.height_mm
