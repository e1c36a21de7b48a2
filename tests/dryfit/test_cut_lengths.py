"""How long to cut cable: the helix of a twisted core, plugs and splits, a lead by hand."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.data import data_dir
from planner.dryfit.cut_lengths import (
    EndCut,
    Lengths,
    Opening,
    Strip,
    cable_mm,
    fan_take_up,
    raised_mm,
    take_up,
)
from planner.edits.working import set_workmanship
from planner.files.plans import read_plan
from planner.model.plan import Cap
from tests import building
from tests.strategies import plans

DEMO = data_dir("resources") / "demo"


def cue():
    return read_plan(DEMO / "cue-desk-headphone-lead.json")


def with_lengths(plan, **mm):
    return plan.evolve(
        sections=tuple(
            it.evolve(length_mm=mm.get(it.id.replace("-", "_"), it.length_mm))
            for it in plan.sections
        )
    )


@pytest.mark.parametrize(("across", "lay"), [(0.8, 12.8), (1.0, 10.0), (2.5, 8.0), (0.0, 5.0)])
def test_take_up_is_the_length_of_a_helix_drawn_point_by_point(across, lay):
    # The way of a core's middle, one turn, as a fine chain of chords.
    turn = np.linspace(0.0, 2 * math.pi, 20_001)
    points = np.stack(
        [across / 2 * np.cos(turn), across / 2 * np.sin(turn), lay * turn / (2 * math.pi)], axis=1
    )
    drawn = np.linalg.norm(np.diff(points, axis=0), axis=1).sum()
    assert take_up(across, lay) == pytest.approx(drawn / lay, rel=1e-7)


def test_a_pair_twisted_by_hand_takes_2_percent():
    # Two cores touch: their middles run on a circle of one diameter, d; the bundle is 2 d, the lay
    # 8 bundles, 16 d. About the 1.02 that stranding takes in a cable (typical, from memory).
    assert fan_take_up((0.8, 0.8)) == pytest.approx(math.sqrt(1 + (math.pi / 16) ** 2))
    assert fan_take_up((0.8, 0.8)) == pytest.approx(1.02, abs=0.002)


@pytest.mark.parametrize("alone", [(), (0.8,)])
def test_what_is_not_twisted_takes_nothing(alone):
    assert fan_take_up(alone) == 1.0


@given(st.lists(st.floats(0.3, 3.0), min_size=2, max_size=8))
@settings(max_examples=40, deadline=None)
def test_twisting_takes_something_and_never_a_tenth(diameters):
    assert 1.0 < fan_take_up(tuple(diameters)) < 1.1


@given(st.floats(0, 5000), st.sampled_from([0.1, 0.5, 1.0, 5.0]))
def test_lengths_are_rounded_up_and_by_less_than_a_step(length, step):
    up = raised_mm(length, step)
    assert length - 1e-5 * step <= up < length + step
    assert up / step == pytest.approx(round(up / step), abs=1e-6)


@pytest.mark.parametrize(
    ("length", "cut"), [(380.2, 381), (1000, 1000), (1000.1, 1005), (1001, 1005), (1005, 1005)]
)
def test_cable_is_cut_to_1_mm_and_above_a_metre_to_5(length, cut):
    assert cable_mm(length) == cut


def test_the_cue_desk_lead_by_hand():
    # End A: barrel 22, from the foot of the lowest cup (0 - 2.5) to the highest mouth (4) 6.5,
    # room 10: 5.5 of jacket inside. Longest lead 16.7, to 17 in halves, 2 to spare: 19 off.
    # Ends L and R: 18 - 5.4 - 10 = 2.6, in halves 3; longest 15.49, 15.5 + 2, in whole mm 18.
    found = Lengths(cue())
    assert found.ends == {
        "A": EndCut("A", 5.5, 19.0, 10.0),
        "L": EndCut("L", 3.0, 18.0, 10.0, fanned=True),
        "R": EndCut("R", 3.0, 18.0, 10.0, fanned=True),
    }
    # Legs: 600 * sqrt(1 + (pi / 16)^2) = 611.46. Jacket kept: 10 + 19 + 5.5 + 1200 = 1234.5.
    # Cable: 1234.5 + 611.46 + 3 + 18 + 10 = 1876.96, above a metre in steps of 5.
    assert found.piece_mm(cue().sections[0]) == 1880.0
    assert found.openings == (Opening("split", "trunk", "A", 1235.0, 645.0),)


def test_a_lead_is_cut_and_stripped_as_the_dry_fit_says():
    # A cup 2.5 deep and a gap of one diameter over the insulation, 0.8.
    strips = {(it.end, it.conductor): it for it in Lengths(cue()).strips}
    assert strips["A", "WH"] == Strip("A", "WH", 17.0, 3.3)
    assert len(strips) == len(cue().landings)


def test_cables_of_their_own_are_lapped_at_a_split():
    # stereo-to-two-mono. The jacket ends 10 before the middle: a leg keeps 300 + 24 in the barrel
    # + 26 off + 10 - 10 = 350. Shrink over a joint: a lap of 6 and 5 on the insulation either side,
    # 16, over 0.9, in halves 18. It parks 2 clear of what is stripped: 18 + 2 + 6 = 26 of core.
    plan = read_plan(DEMO / "stereo-to-two-mono.json")
    found = Lengths(plan)
    leg = found.openings[1]
    assert leg == Opening("split", "leg-L", "L", 350.0, 26.0, spliced=True)
    assert found.piece_mm(plan.section_by_id["leg-L"]) == 376.0


def test_the_longest_leg_counts():
    lengths = Lengths(with_lengths(cue(), leg_L=200, leg_R=600))
    assert lengths.piece_mm(cue().sections[0]) == 1880.0


def test_the_trim_is_a_rule_of_workmanship():
    # Two cut ends, A and the legs': 10 mm less at each.
    untrimmed = set_workmanship(with_lengths(cue(), trunk=200), trim_mm=0)
    short = Lengths(with_lengths(cue(), trunk=200))
    section = cue().sections[0]
    assert short.piece_mm(section) - Lengths(untrimmed).piece_mm(section) == 20.0


def test_a_plug_that_is_not_chosen_adds_nothing_but_the_trim():
    plan = cue()
    ends = tuple(it.evolve(connector="", pinout="") for it in plan.ends)
    found = Lengths(plan.evolve(ends=ends, landings=()))
    assert found.ends["A"] == EndCut("A", 0.0, 0.0, 10.0, known=False)
    assert not found.reckoned(plan.sections[0])
    assert Lengths(plan).reckoned(plan.sections[0])


def test_a_spare_core_is_left_5_mm_and_stripped_of_nothing():
    plan = building.lead(
        {"A": building.PHONES, "B": building.PHONES_IN}, ["RD A.T B.T", "BU A.! B.!"]
    )
    assert Lengths(plan).strips[1] == Strip("A", "BU", 5.0, 0.0)


def test_a_spare_shield_is_no_core_to_cap():
    plan = building.lead({"A": building.PHONES, "B": building.PHONES_IN}, ["RD A.T B.T", "SH A.S"])
    capped = plan.evolve(caps=(Cap(end="B", conductor="SH"),))
    assert [it.conductor for it in Lengths(capped).strips] == ["RD", "SH", "RD"]


@given(plans(), st.floats(1, 5000))
@settings(max_examples=60, deadline=None)
def test_a_longer_plan_never_gives_a_shorter_cut(plan, more):
    longer = plan.evolve(
        sections=tuple(it.evolve(length_mm=it.length_mm + more) for it in plan.sections)
    )
    for before, after in zip(plan.sections, longer.sections, strict=True):
        if not before.fan_of:
            assert Lengths(longer).piece_mm(after) >= Lengths(plan).piece_mm(before)


@given(plans())
@settings(max_examples=60, deadline=None)
def test_a_piece_is_longer_than_what_is_planned_of_it(plan):
    found = Lengths(plan)
    for section in plan.sections:
        if not section.fan_of:
            fans = [leg.length_mm for leg in plan.sections if leg.fan_of == section.id]
            assert found.piece_mm(section) >= section.length_mm + max(fans, default=0.0)
    for opening in found.openings:
        assert opening.keep_mm >= 0
        assert opening.off_mm > 0
