"""Loops of channels and how well they match."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.electrical.balance import balances, level_db
from planner.electrical.loops import loops
from planner.electrical.resistance import ohm_per_km
from planner.wiring.graph import Wiring
from tests import building
from tests.building import CUP, lead
from tests.checks.samples_electrical import SPLIT_ENDS, SPLIT_WIRES, with_length

PER_M = ohm_per_km(building.cable(["RD"]).cores[0]) / 1000


def found(plan):
    return loops(plan, Wiring(plan))


def balance(plan):
    (each,) = balances(plan, Wiring(plan))
    return each


def test_a_loop_goes_there_and_back():
    left, right = found(lead(SPLIT_ENDS, SPLIT_WIRES))
    assert (left.channel, left.source, left.load) == ("L", "A", "L")
    assert (left.plus, left.minus) == (("T", "T"), ("R1", "S"))
    assert left.ohm == right.ohm == pytest.approx(2 * 1.2 * PER_M)
    assert not left.estimated


def test_doubled_cores_halve_a_leg():
    left, _ = found(lead(SPLIT_ENDS, [*SPLIT_WIRES, "YE A.T L.T"]))
    assert left.plus_ohm == pytest.approx(0.6 * PER_M)


def test_a_shield_that_carries_the_return_makes_it_an_estimate():
    ends = {"A": building.PHONES, "B": building.PHONES_IN}
    wires = ["RD A.T B.T", "GN A.R B.R"]
    assert [it.estimated for it in found(lead(ends, [*wires, "SH A.S B.S"]))] == [True, True]
    assert [it.estimated for it in found(lead(ends, [*wires, "WH A.S B.S", "SH A.S"]))] == [
        False,
        False,
    ]


def test_a_leg_that_is_open_or_bridged_gives_no_figure():
    left, right = found(lead(SPLIT_ENDS, SPLIT_WIRES[1:]))
    assert (left.plus_ohm, left.ohm) == (None, None)
    assert right.ohm is not None
    bridged, _ = found(lead(SPLIT_ENDS, SPLIT_WIRES, links=["L T S"]))
    assert (bridged.plus_ohm, bridged.minus_ohm) == (None, None)


def test_the_far_source_is_the_source():
    ends = {"A": building.PHONES_IN, "B": building.PHONES}
    assert {(it.source, it.load) for it in found(lead(ends, ["RD A.T B.T"]))} == {("B", "A")}


def test_stereo_is_not_compared_with_a_microphone():
    ends = {"A": building.HEADSET, "B": building.HEADSET}
    plan = lead(ends, ["RD A.T B.T", "GN A.R1 B.R1", "WH A.R2 B.R2", "BU A.S B.S", "YE A.S B.S"])
    each = balance(plan)
    assert (each.kind, each.percent) == ("stereo", pytest.approx(0))


def test_a_long_leg():
    each = balance(with_length(lead(SPLIT_ENDS, SPLIT_WIRES), "leg-R", 600))
    assert (each.low.channel, each.high.channel, each.over) == ("L", "R", True)
    assert each.percent == pytest.approx(25)
    softer = 20 * math.log10((32 + 3.0 * PER_M) / (32 + 2.4 * PER_M))
    assert each.level_db == pytest.approx(softer)


def test_at_the_limit_it_is_not_over():
    plan = with_length(lead(SPLIT_ENDS, SPLIT_WIRES), "leg-R", 600)
    at_limit = plan.evolve(assumed=plan.assumed.evolve(balance_limit_percent=25))
    assert not balance(at_limit).over


def test_two_loads_at_unlike_distance_are_each_balanced():
    ends = {"A": building.BALANCED, "B": building.BALANCED_IN, "C": building.BALANCED_IN}
    each = ("RD T", "GN R1", "BU R2", "WH R3")
    wires = [f"{core} A.{at} B.{at} C.{at}" for core, at in map(str.split, each)]
    plan = with_length(lead(ends, wires), "leg-C", 5000)
    assert [it.percent for it in balances(plan, Wiring(plan))] == pytest.approx([0, 0])


def test_one_channel_alone_is_compared_with_nothing():
    assert (
        balances(*_with_wiring(lead({"A": building.BALANCED, "L": (CUP, "L")}, SPLIT_WIRES[:2])))
        == ()
    )


def _with_wiring(plan):
    return plan, Wiring(plan)


@given(st.floats(100, 9000), st.floats(100, 9000))
def test_left_and_right_exchanged_only_change_names(left_mm, right_mm):
    plan = lead(SPLIT_ENDS, SPLIT_WIRES)
    one = with_length(with_length(plan, "leg-L", left_mm), "leg-R", right_mm)
    other = with_length(with_length(plan, "leg-L", right_mm), "leg-R", left_mm)
    assert balance(one).percent == pytest.approx(balance(other).percent, abs=1e-9)
    assert balance(one).level_db == pytest.approx(balance(other).level_db, abs=1e-12)


@given(st.floats(0.001, 50), st.floats(0, 50), st.floats(1, 1e5))
def test_a_higher_load_hides_more(low_ohm, more_ohm, load_ohm):
    here = level_db(low_ohm, low_ohm + more_ohm, load_ohm)
    assert 0 <= level_db(low_ohm, low_ohm + more_ohm, 2 * load_ohm) <= here + 1e-12
