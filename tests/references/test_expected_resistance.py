"""The expected figure of a path, from contact to contact, against the published tables of wire."""

import math

import pytest

from planner.proving.expected import expected_sweep
from planner.proving.limits import APART, FLAT, FLAT_OHM, OVER_WIRE, OVER_WIRE_OHM
from planner.units import awg_diameter_mm
from planner.wiring.graph import Wiring
from tests.building import PHONES, PHONES_IN, lead
from tests.checks.samples_electrical import with_length
from tests.references.test_resistance import AWG, CLASS_1_AND_2, CLASS_5, CONSTRUCTIONS


def path_of(strands, strand_mm, length_mm=1000.0, *, ends=2):
    """Return the path through a core of so many strands; with three ends it runs on in a leg."""
    fittings = {"A": PHONES, "B": PHONES_IN} | ({"C": PHONES_IN} if ends == 3 else {})
    stops = " ".join(f"{end}.T" for end in fittings)
    plan = with_length(lead(fittings, [f"RD {stops}"]), "trunk", length_mm)
    cable = plan.definitions.cables[0]
    core = cable.cores[0].evolve(strands=strands, strand_mm=strand_mm, insulation_mm=20)
    plan = plan.evolve(
        definitions=plan.definitions.evolve(cables=(cable.evolve(cores=(core,)),)),
        assumed=plan.assumed.evolve(temperature_c=20),
    )
    return expected_sweep(plan, Wiring(plan)).path(("A", "T"), ("B", "T"))


def of_area(strands, area_mm2):
    return strands, math.sqrt(4 * area_mm2 / math.pi / strands)


@pytest.mark.parametrize("area_mm2", CLASS_5)
def test_a_flexible_core_of_a_metre_keeps_within_class_5(area_mm2):
    """IEC 60228, class 5 plain, highest ohm/km at 20 C; nothing below 0.5 mm2 is listed."""
    highest_ohm = CLASS_5[area_mm2] / 1000
    assert 0.85 * highest_ohm < path_of(*of_area(28, area_mm2)).ohm < highest_ohm


@pytest.mark.parametrize("area_mm2", CLASS_1_AND_2)
def test_a_solid_core_of_ten_metres_keeps_within_class_1(area_mm2):
    """IEC 60228, class 1, highest ohm/km at 20 C."""
    highest_ohm = CLASS_1_AND_2[area_mm2] / 100
    assert 0.9 * highest_ohm < path_of(1, of_area(1, area_mm2)[1], 10_000).ohm < highest_ohm


@pytest.mark.parametrize("gauge", AWG)
def test_a_solid_gauge_of_a_metre(gauge):
    """ASTM B258 and IEC 60028, ohm per km, computed."""
    found = path_of(1, awg_diameter_mm(gauge)).ohm
    assert found == pytest.approx(AWG[gauge] / 1000, abs=0.006e-3)


@pytest.mark.parametrize("build", CONSTRUCTIONS)
def test_a_stranded_core_has_the_lay_besides(build):
    """Computed from geometry and IEC 60028; strands are 2 % longer (common practice, no source)."""
    found = path_of(*build).ohm
    assert found == pytest.approx(1.02 * CONSTRUCTIONS[build] / 1000, rel=1e-3)


def test_a_leg_that_leads_elsewhere_adds_nothing():
    straight, forked = path_of(7, 0.1, 1000), path_of(7, 0.1, 700, ends=3)
    assert forked.ohm == pytest.approx(straight.ohm)  # 700 of trunk and 300 of leg


def test_the_limits_are_those_quoted():
    """IPC/WHMA-A-620 rev. A, as quoted in a secondary page: 2 ohm, or 1 ohm plus the wire's own."""
    assert (FLAT_OHM, OVER_WIRE_OHM) == (2, 1)
    path = path_of(7, 0.1)
    assert path.limit_ohm - path.ohm == pytest.approx(1)
    assert all("A-620" in it.source for it in (FLAT, OVER_WIRE))


def test_isolation_says_what_the_published_rule_asks():
    """US Army SB 740-91-01: at least 100 Mohm at 200 to 1000 V dc; more than an ohmmeter can do."""
    assert "100 megohm at 200 to 1000 V" in APART.source
    assert "no source" in APART.source
