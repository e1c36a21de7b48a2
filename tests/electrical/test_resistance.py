"""Resistance of conductors: sums along the lead, and what must hold for any length and metal."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.electrical.resistance import BUNCH_FILL, area_mm2, conductor_ohm, ohm_per_km, run_ohm
from planner.model.cable import Core, Shield
from planner.model.plan import Conductor, Run
from tests import building
from tests.building import lead

METALS = st.sampled_from(["copper", "tinned", "silver"])
SPLIT = {"A": building.PHONES, "L": (building.CUP, "L"), "R": (building.CUP, "R")}


def core(strands=7, strand_mm=0.1, **more):
    fields = {"id": "c", "colours": ("WH",), "insulation_mm": 20.0, "x_mm": 0, "y_mm": 0}
    return Core(**fields | {"strands": strands, "strand_mm": strand_mm} | more)


def with_assumed(plan, **changes):
    return plan.evolve(assumed=plan.assumed.evolve(**changes))


def with_lengths(plan, factor):
    sections = tuple(it.evolve(length_mm=it.length_mm * factor) for it in plan.sections)
    return plan.evolve(sections=sections)


def test_a_conductor_through_a_split_is_the_sum_of_its_runs():
    plan = lead(SPLIT, ["WH A.S L.S"])
    per_m = ohm_per_km(plan.definitions.cables[0].cores[0]) / 1000
    found = conductor_ohm(plan, "WH")
    assert [(it.section, it.length_mm) for it in found.runs] == [("trunk", 900), ("leg-L", 300)]
    assert [it.ohm for it in found.runs] == pytest.approx([0.9 * per_m, 0.3 * per_m])
    assert found.ohm == pytest.approx(1.2 * per_m)
    assert not found.estimated


def test_one_that_forks_has_no_single_figure():
    found = conductor_ohm(lead(SPLIT, ["WH A.S L.S R.S"]), "WH")
    assert found.ohm is None
    assert None not in {it.ohm for it in found.runs}


def test_runs_side_by_side_are_no_single_line():
    plan = lead({"A": building.PHONES, "B": building.PHONES_IN}, ["WH A.S B.S", "BU A.S B.S"])
    both = Conductor(
        id="WH", runs=(Run(section="trunk", core="WH"), Run(section="trunk", core="BU"))
    )
    assert conductor_ohm(plan.evolve(conductors=(both,), landings=()), "WH").ohm is None


def test_without_a_cable_it_is_not_known():
    plan = lead({"A": building.PHONES, "B": building.PHONES_IN}, ["WH A.S B.S"])
    bare = plan.evolve(sections=tuple(it.evolve(cable="") for it in plan.sections))
    assert conductor_ohm(bare, "WH").ohm is None
    assert run_ohm(bare, Run(section="no-such", core="WH")) is None
    assert run_ohm(plan, Run(section="trunk", core="no-such")) is None


def test_a_shield_is_an_estimate_from_its_tail():
    shield = Shield(id="SH", kind="braid", tail_mm=0.8)
    assert area_mm2(shield) == pytest.approx(BUNCH_FILL * 0.50265, rel=1e-4)
    plan = lead({"A": building.PHONES, "B": building.PHONES_IN}, ["WH A.T B.T", "SH A.S B.S"])
    assert conductor_ohm(plan, "SH").estimated


def test_a_solid_core_has_no_lay():
    assert ohm_per_km(core(7, 0.1)) / ohm_per_km(core(1, 0.1)) == pytest.approx(1.02 / 7)


@given(st.integers(1, 900), st.floats(0.05, 0.5), METALS, st.floats(-60, 199))
def test_more_strands_never_higher(strands, strand_mm, metal, temperature_c):
    less = core(strands, strand_mm, metal=metal, insulation_mm=20)
    more = core(strands + 1, strand_mm, metal=metal, insulation_mm=20)
    # From solid to stranded the lay adds 2 %; a second strand takes half away.
    assert ohm_per_km(more, temperature_c) < ohm_per_km(less, temperature_c)


@given(METALS, st.floats(-60, 199), st.floats(0.01, 1))
def test_hotter_never_lower(metal, temperature_c, rise_k):
    part = core(metal=metal)
    assert ohm_per_km(part, temperature_c + rise_k) > ohm_per_km(part, temperature_c) > 0


@given(st.floats(1, 100), st.floats(-60, 200))
def test_longer_never_lower(factor, temperature_c):
    plan = with_assumed(lead(SPLIT, ["WH A.S L.S"]), temperature_c=temperature_c)
    longer = conductor_ohm(with_lengths(plan, factor), "WH").ohm
    assert longer == pytest.approx(factor * conductor_ohm(plan, "WH").ohm)
