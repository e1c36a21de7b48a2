"""The cut list: lines, totals of a run, the order in which a run is made."""

import math
from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.data import data_dir
from planner.dryfit.cutting import BatchStep, CutLine, batch, cut_list
from planner.files.plans import read_plan
from planner.model.part import Part
from planner.model.plan import PartUse
from tests import building
from tests.strategies import plans

DEMO = data_dir("resources") / "demo"
PLANS = sorted(DEMO.glob("*.json"))


def demo(name):
    return read_plan(DEMO / f"{name}.json")


def phones(*wires, **more):
    return building.lead({"A": building.PHONES, "B": building.PHONES_IN}, wires, **more)


def sleeves(plan):
    return [line for line in cut_list(plan).lines if line.kind == "sleeve"]


def test_the_cue_desk_lead_by_hand():
    # Its length is reckoned in test_cut_lengths. Shrink on a jacket of 4 and cores of 2.4 together
    # (of 0.8 each: 1 + sqrt 2 times): 8 of overlap and 2.4, over 0.9 and in halves 12.
    lines = cut_list(demo("cue-desk-headphone-lead")).lines
    assert [(it.kind, it.stock, it.length_mm, it.count, it.where) for it in lines] == [
        ("cable", "hp4-braid", 1880.0, 1, ("trunk",)),
        ("boot", "boot-4.4", 0.0, 1, ("A",)),
        ("cover", "splitter-cover", 0.0, 1, ("split",)),
        ("shell", "barrel-slim-3.5", 0.0, 2, ("L", "R")),
        ("heat-shrink", "heat-shrink-4.75", 12.0, 1, ("A",)),
        ("label", "label-sleeve-4.5", 30.0, 1, ("A",)),
        ("label", "label-sleeve-2.0", 20.0, 2, ("L", "R")),
        ("plug", "jack-4.4-five-pole", 0.0, 1, ("A",)),
        ("plug", "jack-3.5-two-pole-slim", 0.0, 2, ("L", "R")),
    ]


def test_a_line_names_the_parts_of_the_plan_in_it():
    shell = next(it for it in cut_list(demo("cue-desk-headphone-lead")).lines if it.kind == "shell")
    assert shell.uses == ("barrel-slim-3.5", "barrel-slim-3.5-2")


def sleeved(plan, *spots):
    chosen = [tuple(spot.split(".")) for spot in spots]
    return plan.evolve(
        landings=tuple(it.evolve(sleeved=(it.end, it.conductor) in chosen) for it in plan.landings)
    )


def test_a_sleeve_is_as_long_as_the_dry_fit_says_and_tells_what_it_covers():
    # A cup 2.5 deep, a gap of one diameter of the core, 0.8, and 5 over the insulation: 8.3, over
    # 0.9 and in halves 9.5. Over the cup, 1.0 and two walls of 0.15, goes 1.60 to 0.79: it grips
    # 0.8.
    joint, tail = sleeves(sleeved(demo("cue-desk-headphone-lead"), "A.WH", "A.RD", "A.SH"))
    assert joint == CutLine("sleeve", "", 9.5, 2, ("A",), "joint", "heat-shrink-1.6", 1.6)
    assert (tail.note, tail.where, tail.count) == ("tail", ("A",), 1)


def test_a_sleeve_of_which_no_size_fits_is_said():
    # A cup of 3 mm and a core of 0.8: nothing that passes the one grips the other.
    found = sleeves(sleeved(phones("RD A.T B.T"), "A.RD"))
    assert [(it.note, it.stock, it.bore_mm) for it in found] == [("no-size", "", 0.0)]


def test_shrink_is_cut_as_long_as_its_step_asks_and_is_one_with_its_use():
    # On a jacket of 6, 12 of overlap (two diameters) and one diameter of the cores over them:
    # 0.8 for one core, 12.8, over 0.9 and in halves 14.5; the piece in stock has 40.
    tube = Part(
        id="tube", title="t", kind="heat-shrink", bore_mm=9, recovered_mm=0.5, outside_mm=10,
        length_mm=40,
    )  # fmt: skip
    plan = phones("RD A.T B.T")
    use = PartUse(id="one", part="tube", at="A", comes_from="A")
    found = plan.evolve(
        parts=(use, use.evolve(id="two", at="B", comes_from="B")),
        definitions=plan.definitions.evolve(parts=(tube,)),
    )
    (line,) = (it for it in cut_list(found).lines if it.kind == "heat-shrink")
    assert (line.length_mm, line.count, line.where) == (14.5, 2, ("A", "B"))
    assert line.uses == ("one", "two")


def test_a_spare_core_gets_a_cap_of_the_smallest_shrink_that_passes_it():
    # 1.17 to 0.58, of AS23053/5 from memory: the core of 0.8 lies between.
    found = sleeves(phones("RD A.T B.T", "BU A.! B.!"))
    assert found == [
        CutLine("sleeve", "", 10.0, 2, ("A", "B"), "cap", "heat-shrink-1.17", 1.17),
    ]


def test_what_is_not_chosen_is_said():
    plan = phones("RD A.T B.T")
    bare = plan.evolve(
        sections=tuple(it.evolve(cable="") for it in plan.sections), conductors=(), landings=()
    )
    assert cut_list(bare).lines[0].note == "no-cable"
    assert cut_list(plan.evolve(landings=())).lines[0].note == "plug-unknown"
    assert cut_list(plan).lines[0].note == ""


@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
@pytest.mark.parametrize("leads", [1, 2, 17])
def test_totals_equal_the_sum_over_single_leads(path, leads):
    plan = read_plan(path)
    pieces, lengths = Counter(), Counter()
    for _ in range(leads):
        for line in cut_list(plan).lines:
            pieces[line.stock] += line.count
            lengths[line.stock] += line.length_mm * line.count
    found = batch(plan, leads)
    assert {it.stock: it.count for it in found.totals} == pieces
    assert {it.stock: it.length_mm for it in found.totals} == pytest.approx(lengths)


def test_all_splits_come_before_all_parts_and_these_before_all_plugs():
    assert batch(demo("cue-desk-headphone-lead"), 6).steps == (
        BatchStep("cut", ("trunk",), 6),
        BatchStep("split", ("split",), 6),
        BatchStep("thread", ("A", "L", "R"), 48),
        BatchStep("own", ("A", "L", "R"), 18),
        BatchStep("end", ("A",), 6),
        BatchStep("end", ("L", "R"), 12),
        BatchStep("prove", (), 6),
    )


def test_a_split_of_cables_of_their_own_is_joined_after_the_parts_are_on():
    acts = [(it.act, it.count) for it in batch(demo("stereo-to-two-mono"), 2).steps]
    assert acts == [
        ("cut", 6),
        ("thread", 12),
        ("own", 6),
        ("join", 2),
        ("end", 2),
        ("end", 4),
        ("prove", 2),
    ]


@pytest.mark.parametrize("leads", [0, -1])
def test_a_run_of_none_is_refused(leads):
    with pytest.raises(ValueError, match="one or more"):
        batch(phones("RD A.T B.T"), leads)


@given(plans(), st.integers(1, 50))
@settings(max_examples=60, deadline=None)
def test_a_run_scales_and_nothing_is_negative_or_no_number(plan, leads):
    one, many = batch(plan, 1), batch(plan, leads)
    scaled = [
        replace(it, count=it.count * leads, length_mm=it.length_mm * leads) for it in one.totals
    ]
    assert [it.count for it in many.totals] == [it.count for it in scaled]
    assert [it.length_mm for it in many.totals] == pytest.approx([it.length_mm for it in scaled])
    for line in cut_list(plan).lines:
        assert math.isfinite(line.length_mm)
        assert line.length_mm >= 0
        assert line.count >= 1


@given(plans())
@settings(max_examples=30, deadline=None)
def test_the_same_plan_gives_the_same_list(plan):
    again = plan.evolve(title=plan.title)
    assert cut_list(plan) == cut_list(again)
