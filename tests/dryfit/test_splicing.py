"""Joints inside splits: what is joined, the shrink over it, the core left free for it."""

import pytest

from planner.data import data_dir
from planner.dryfit.shrinking import LENGTHWISE
from planner.dryfit.splicing import Splice, free_mm, splices_at
from planner.edits.working import set_workmanship
from planner.files.plans import read_plan

DEMO = data_dir("resources") / "demo"


def demo(name):
    return read_plan(DEMO / f"{name}.json")


def spliced(thin_mm, thick_mm):
    """Return two mono leads of a stereo pair, with cores of these diameters in trunk and legs."""
    plan = demo("stereo-to-two-mono")
    size = {"pair-braid-thin": thin_mm, "coax-thin": thick_mm}
    cables = tuple(
        cable.evolve(cores=tuple(core.evolve(insulation_mm=size[cable.id]) for core in cable.cores))
        for cable in plan.definitions.cables
    )
    return plan.evolve(definitions=plan.definitions.evolve(cables=cables))


def test_each_conductor_of_several_cables_is_a_joint():
    # A lap of 6 and 5 mm of overlap either side, 16 when shrunk by a tenth: 17.8, in halves 18.
    # Shrink of 1.60 to 0.79 (AS23053/5, from memory) goes over cores of 0.9 and 1.5.
    cores = [it for it in splices_at(spliced(0.9, 1.5), "split") if it.conductor != "SH"]
    assert cores == [Splice("split", name, 18.0, 1.6) for name in ("WH", "leg-R.WH")]


def test_two_braids_on_one_tail_pass_together():
    # Two tails of 0.7 side by side are 1.4 across, over one of 0.8: 1.60 to 0.79 does.
    shield = list(splices_at(demo("stereo-to-two-mono"), "split"))[-1]
    assert (shield.conductor, shield.bore_mm) == ("SH", 1.6)


def test_a_core_more_than_twice_as_thick_takes_three_to_one():
    # 2.2 over 0.9 is 2.44 times: 2.4 to 0.8, sold as 3:1 (from memory). 2.7 is three times.
    assert {it.bore_mm for it in splices_at(spliced(0.9, 2.2), "split")} == {2.4, 1.6}
    assert {it.bore_mm for it in splices_at(spliced(0.9, 2.7), "split")} == {0.0, 1.6}


def test_cores_that_only_leave_their_jacket_are_no_joint():
    assert list(splices_at(demo("cue-desk-headphone-lead"), "split")) == []


@pytest.mark.parametrize(("rule", "overlap"), [("five-mm", 5.0), ("six-mm", 6.0)])
@pytest.mark.parametrize("thick", [1.5, 3.0, 4.0])
def test_shrunk_it_still_overlaps_the_insulation_by_the_rule(rule, overlap, thick):
    # NASA-STD-8739.3, 9.8, or J-STD-001: so much, or two diameters where that is more.
    plan = set_workmanship(spliced(0.9, thick), sleeve_overlap=rule)
    for joint in splices_at(plan, "split"):
        if joint.conductor != "SH":
            shrunk = joint.length_mm * (1 - LENGTHWISE)
            assert (shrunk - 6.0) / 2 >= max(overlap, 2 * thick)


def test_the_sleeve_parks_on_the_core_clear_of_the_heat():
    plan = spliced(0.9, 1.5)
    assert free_mm(plan, "split") - 6.0 - 2.0 == max(
        it.length_mm for it in splices_at(plan, "split")
    )
