"""What goes into what at an end, on small leads with invented figures."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.dryfit.fit import fit_end
from planner.dryfit.fit_words import figure_words, fit_words, gravity, head_words, verdict_words
from planner.dryfit.wires import end_fits, into_bore, onto_tab, told_apart
from planner.geometry.packing import bundle_at_least_mm, is_sound, pack
from planner.wiring.graph import Wiring
from tests.building import CUP, PHONES, PHONES_IN, lead
from tests.checks.samples_fit import posts, with_cable, with_cores, with_plug
from tests.checks.samples_sleeves import sleeved, slender_cups
from tests.checks.samples_wires import two_returns

WIRES = ("RD A.T B.T", "GN A.R B.R", "WH A.S B.S")


def fits(plan, end="A"):
    return end_fits(plan, fit_end(plan, Wiring(plan), end))


def only(plan, what, end="A"):
    return [line for line in fits(plan, end) if line.what == what]


def simple():
    return lead({"A": PHONES, "B": PHONES_IN}, WIRES)


@pytest.mark.parametrize(
    ("wires", "bore", "answer"),
    [([0.48], 1.0, "fits"), ([1.2], 1.0, "fails"), ([0.48, 0.48], 1.0, "fits"),
     ([0.5, 0.5, 0.1], 1.05, "fits"), ([0.6, 0.6], 1.0, "fails"), ([], 1.0, "fits"),
     ([0.5], 0.0, "fails"), ([0.5, 0.5], 1.0, "fits"),
     # Seven unequal ones: the bound and what is found leave this bore open.
     ([1, 0.9, 0.8, 0.8, 0.7, 0.7, 0.7], 2.38, "tight")],
)  # fmt: skip
def test_wires_into_a_bore(wires, bore, answer):
    assert into_bore(wires, bore).answer == answer


def test_a_yes_carries_its_proof_and_a_no_its_bound():
    yes, no = into_bore([0.5, 0.6, 0.7], 1.5), into_bore([0.5, 0.6, 0.7], 1.2)
    assert is_sound(yes.packing, [0.5, 0.6, 0.7])
    assert yes.packing.diameter_mm == yes.needs_mm <= 1.5
    assert no.packing is None
    assert no.least_mm == no.needs_mm > 1.2


@pytest.mark.parametrize("wires", [(0.8, 0.5), (0.8, 0.7, 0.6), (0.8, 0.8, 0.8, 0.8)])
@pytest.mark.parametrize("share", [0.9, 0.99, 0.999, 1.001, 1.01])
def test_the_answer_turns_at_what_the_wires_need(wires, share):
    needs = bundle_at_least_mm(wires)
    assert (into_bore(wires, share * needs).answer == "fits") == (share > 1)


def test_a_hair_less_than_what_was_found_is_not_proved():
    wires = (1, 0.9, 0.8, 0.8, 0.7, 0.7, 0.7)
    found_mm = pack(wires).diameter_mm
    assert into_bore(wires, found_mm).answer == "fits"
    assert into_bore(wires, 0.999 * found_mm).answer == "tight"


@settings(max_examples=60, deadline=None)
@given(st.lists(st.floats(0.1, 3), min_size=1, max_size=8), st.floats(0.1, 12), st.floats(0.001, 3))
def test_a_larger_bore_never_hurts(wires, bore, more):
    grades = ["fails", "tight", "fits"]
    smaller, larger = into_bore(wires, bore), into_bore(wires, bore + more)
    assert grades.index(larger.answer) >= grades.index(smaller.answer)


@settings(max_examples=60, deadline=None)
@given(st.lists(st.floats(0.1, 3), min_size=1, max_size=8), st.floats(0.1, 12))
def test_an_answer_agrees_with_its_own_figures(wires, bore):
    fit = into_bore(wires, bore)
    if fit.answer == "fits":
        assert is_sound(fit.packing, wires)
        assert fit.packing.diameter_mm <= bore + 1e-9
    else:
        assert fit.needs_mm > bore
        assert (fit.least_mm > bore + 1e-9) == (fit.answer == "fails")


def test_an_end_has_a_line_for_each_thing_that_goes_into_another():
    assert [head_words(line) for line in fits(simple())] == [
        "RD in the cup of T",
        "GN in the cup of R",
        "WH in the cup of S",
        "3 leads in the barrel",
        "Jacket in the clamp",
    ]
    assert {line.fit.answer for line in fits(simple())} == {"fits"}


def test_two_wires_in_one_cup_are_looked_at_together():
    line = next(line for line in only(two_returns(0.99), "strands") if line.where.contact == "S")
    assert (line.wires, line.fit.answer) == (("WH", "BU"), "fails")
    assert fit_words(line) == (
        "WH, BU in the cup of S: no, 0.01 mm too thick (needs 1 mm, bore 0.99 mm)"
    )


def test_strands_over_the_edge_of_a_post_are_no_stop():
    plan = with_cores(lead({"A": PHONES, "B": posts(0.2)}, WIRES), strand_mm=0.1)
    line = only(plan, "strands", "B")[0]
    assert (line.fit.answer, gravity(line)) == ("tight", "note")
    assert verdict_words(line) == "0.1 mm over the edge"
    assert onto_tab([0.3], 0.3).answer == "fits"


@pytest.mark.parametrize(
    ("jacket_mm", "weight", "figures"),
    [(6, "clear", ("jacket 6 mm", "grips up to 8 mm")),
     (3, "caution", ("jacket 3 mm", "grips from 4 mm")),
     (9, "stop", ("jacket 9 mm", "grips up to 8 mm"))],
)  # fmt: skip
def test_a_jacket_is_held_against_the_end_of_the_range_that_it_misses(jacket_mm, weight, figures):
    plan = with_cable(simple(), jacket_mm=jacket_mm)
    clamp = plan.definitions.connectors[0].clamp.evolve(min_mm=4, max_mm=8)
    line = only(with_plug(plan, clamp=clamp), "jacket")[0]
    assert (gravity(line), figure_words(line)) == (weight, figures)


def test_leads_without_a_jacket_go_into_the_clamp_as_a_bundle():
    wires = ("RD A.T L.T", "WH A.S L.S", "GN A.R R.T", "BU A.S R.S")
    plan = lead({"A": PHONES, "L": (CUP, "L"), "R": (CUP, "R")}, wires)
    assert only(plan, "jacket", "L") == []
    assert [line.fit.needs_mm for line in only(plan, "cores-in-clamp", "L")] == [1.6]


def test_a_sleeve_must_pass_the_cup_and_grip_the_core():
    assert only(simple(), "sleeve") == []
    over = only(sleeved(slender_cups(), "A", "RD"), "sleeve")[0]
    assert (over.fit.answer, over.fit.needs_mm <= over.fit.has_mm) == ("fits", True)
    stuck = only(sleeved(simple(), "A", "RD"), "sleeve")[0]
    assert (stuck.fit.answer, gravity(stuck)) == ("fails", "caution")
    assert stuck.fit.needs_mm > stuck.fit.has_mm


def test_figures_that_differ_are_told_apart():
    assert told_apart(1.5, 1.0) == ("1.5", "1")
    assert told_apart(1.7241, 1.7236) == ("1.7241", "1.7236")
    assert told_apart(1.724, 1.72) == ("1.724", "1.72")
