"""Capacitance of sections and channels, and the roll-off into a source."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.electrical.capacitance import (
    Between,
    between,
    capacitances,
    coax_pf_per_m,
    pair_pf_per_m,
    rolloff_hz,
    section_capacitances,
    shielded_pair_pf_per_m,
)
from planner.model.cable import Cable, Core, Shield
from planner.wiring.graph import Wiring
from tests import building
from tests.building import lead

PE = 2.3


def core(name, x_mm=0.0, y_mm=0.0, **more):
    fields = {"id": name, "colours": ("WH",), "strands": 1, "strand_mm": 0.5, "insulation_mm": 1.5}
    return Core(**fields | {"x_mm": x_mm, "y_mm": y_mm} | more)


def cable(*cores, shields=(), **more):
    fields = {"id": "cable", "title": "bench", "jacket_mm": 8, "permittivity": PE}
    return Cable(**fields | {"cores": cores, "shields": shields} | more)


def shield(name="SH", around=()):
    return Shield(id=name, kind="spiral", around=around, tail_mm=0.6)


def pf(one, **more):
    return figure(cable(*one, **more), one[0].id, one[1].id)


def figure(made, one, other):
    found = between(made, one, other)
    return found and found.pf_per_m


def test_a_pair_by_its_lay():
    two = (core("a", -0.75), core("b", 0.75))
    assert pf(two) == pytest.approx(pair_pf_per_m(0.5, 0.5, 1.5, PE))
    assert pf(two, permittivity=None) is None
    assert pf(two, pf_per_m=88) == 88


def test_a_core_in_the_middle_of_its_shield():
    coax = cable(core("a"), shields=(shield(),))
    assert figure(coax, "SH", "a") == pytest.approx(coax_pf_per_m(0.5, 1.5, PE))
    assert figure(coax, "a", "SH") == figure(coax, "SH", "a")


def test_a_core_off_the_middle_has_more():
    two = cable(core("a", -0.75), core("b", 0.75), shields=(shield(),))
    assert figure(two, "SH", "a") == pytest.approx(coax_pf_per_m(0.5, 3.0, PE, 0.75))
    assert figure(two, "SH", "a") > coax_pf_per_m(0.5, 3.0, PE)


def test_a_pair_in_a_shield_of_its_own_has_more():
    two = cable(core("a", -0.75), core("b", 0.75), shields=(shield(),))
    assert between(two, "a", "b") == Between(shielded_pair_pf_per_m(0.5, 1.5, 3.0, PE), "lay")
    assert figure(two, "a", "b") > pair_pf_per_m(0.5, 0.5, 1.5, PE)


def test_a_shield_round_more_than_the_pair_is_left_out_and_said():
    three = cable(core("a", -2), core("b"), core("c", 2), shields=(shield(),))
    assert between(three, "a", "b") == Between(pair_pf_per_m(0.5, 0.5, 2, PE), "no-shield")
    assert between(cable(*three.cores), "a", "b").basis == "lay"
    assert between(cable(*three.cores, pf_per_m=60), "a", "c") == Between(60, "printed")


def test_a_shield_that_is_not_round_a_core():
    two = cable(core("a", -0.75), core("b", 0.75), shields=(shield(around=("a",)), shield("S2")))
    assert figure(two, "SH", "b") is None
    assert figure(two, "SH", "S2") is None
    assert figure(two, "SH", "no such") is None


def test_cores_in_one_place_are_not_known():
    assert pf((core("a"), core("b"))) is None


def sections_of(made):
    plan = lead({"A": building.PHONES, "B": building.PHONES_IN}, ["RD A.T B.T"])
    return [
        (it.first, it.second)
        for it in section_capacitances(
            plan.evolve(
                conductors=(),
                landings=(),
                definitions=plan.definitions.evolve(cables=(made,)),
            ),
            "trunk",
        )
    ]


def test_which_circuits_a_section_has():
    pairs = [
        core(f"{pair}{leg}", x, pair, group=str(pair))
        for pair in (1, 3)
        for leg, x in (("a", 0), ("b", 2))
    ]
    assert sections_of(cable(*pairs)) == [("1a", "1b"), ("3a", "3b")]
    assert sections_of(cable(*pairs, groups="doubled")) == []
    assert sections_of(cable(core("a"), shields=(shield(),))) == [("a", "SH")]
    three = (core("a", 0), core("b", 4), core("c", 6))
    assert sections_of(cable(*three)) == [("b", "c")]
    assert sections_of(cable(core("a"))) == []


def stereo(**more):
    wires = ["RD A.T B.T", "GN A.R1 B.R1", "BU A.R2 B.R2", "WH A.R3 B.R3"]
    plan = lead({"A": building.BALANCED, "B": building.BALANCED_IN}, wires)
    cables = (plan.definitions.cables[0].evolve(**more),)
    return plan.evolve(definitions=plan.definitions.evolve(cables=cables))


def test_a_channel_of_its_length():
    plan = stereo(pf_per_m=100)
    left, right = capacitances(plan, Wiring(plan))
    assert (left.channel, right.channel) == ("L", "R")
    assert left.pf == right.pf == pytest.approx(90)
    assert left.basis == "printed"
    assert left.rolloff_hz == pytest.approx(rolloff_hz(100, 90))


def test_a_channel_is_not_known_without_insulation_or_with_doubled_cores():
    plan = stereo()
    assert [it.pf for it in capacitances(plan, Wiring(plan))] == [None, None]
    ends = {"A": building.BALANCED, "B": building.BALANCED_IN}
    doubled = lead(ends, ["RD A.T B.T", "BK A.T B.T", "GN A.R1 B.R1"])
    cables = (doubled.definitions.cables[0].evolve(pf_per_m=100),)
    doubled = doubled.evolve(definitions=doubled.definitions.evolve(cables=cables))
    assert {it.pf for it in capacitances(doubled, Wiring(doubled))} == {None}


@given(st.floats(0.05, 2), st.floats(1.01, 30), st.floats(1, 10))
def test_wider_apart_is_less(wire_mm, ratio, permittivity):
    for near, far in (
        (
            coax_pf_per_m(wire_mm, wire_mm * ratio, permittivity),
            coax_pf_per_m(wire_mm, wire_mm * ratio * 1.1, permittivity),
        ),
        (
            pair_pf_per_m(wire_mm, wire_mm, wire_mm * ratio, permittivity),
            pair_pf_per_m(wire_mm, wire_mm, wire_mm * ratio * 1.1, permittivity),
        ),
    ):
        assert 0 < far < near
