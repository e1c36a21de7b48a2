"""The cut list and the order of a run in words, in each language."""

import pytest

from planner.data import data_dir
from planner.dryfit.cutting import CutLine, batch, cut_list
from planner.files.plans import read_plan
from planner.sheet.cut_words import cut_words, step_words, total_words
from planner.sheet.words import LANGUAGES, Words

DEMO = data_dir("resources") / "demo"
CUE = read_plan(DEMO / "cue-desk-headphone-lead.json")
MONO = read_plan(DEMO / "stereo-to-two-mono.json")
WORDS = Words("en")


def test_each_line_says_what_it_is_and_what_it_is_for():
    assert [cut_words(line, CUE, WORDS) for line in cut_list(CUE).lines] == [
        "Cable, 4 cores, braid, *spool 4*",
        "Boot for 4.4 plug, for plug *A*",
        "Splitter cover, one to two, for the split",
        "Barrel of slim 3.5 plug, for plug *L, R*",
        "Heat-shrink *4.75*, for plug *A*",
        "Label, bore *4.5*, for plug *A*",
        "Label, bore *2*, for plug *L, R*",
        "Plug *A*: 4.4 five-pole",
        "Plug *L, R*: 3.5 two-pole, slim",
    ]


def test_of_several_cables_each_says_which_plugs_it_goes_to():
    trunk, legs, *_ = (cut_words(line, MONO, WORDS) for line in cut_list(MONO).lines)
    assert trunk == "Cable, 2 cores, braid, thin, *spool 15*, for plug *A*"
    assert legs == "Cable, 1 core, braid, thin, *spool 16*, for plug *L, R*"


def test_a_cable_says_that_nothing_is_added_for_a_plug_that_is_missing():
    line = CutLine("cable", "4 cores, braid", 600.0, 1, ("trunk",), "plug-unknown", "hp4-braid")
    assert cut_words(line, CUE, WORDS).endswith(". A plug is not chosen: nothing is added for it.")


@pytest.mark.parametrize(
    ("note", "said"),
    [
        ("joint", "Sleeve, bore *1.6*, for joints, plug *A*"),
        ("tail", "Sleeve, bore *1.6*, for the shield, plug *A*"),
        ("cap", "Cap for a spare core, shrink *1.6*, plug *A*"),
        ("splice", "Sleeve, bore *1.6*, for joints in plug *A*"),
        ("no-size", "Sleeve: no size fits, plug *A*"),
    ],
)
def test_a_sleeve_says_what_it_covers(note, said):
    line = CutLine("sleeve", "", 8.0, 1, ("A",), note, "heat-shrink-1.6", 1.6)
    assert cut_words(line, CUE, WORDS) == said


def test_shrink_that_is_sold_as_3_to_1_says_so():
    line = CutLine("sleeve", "", 18.0, 1, ("A",), "splice", "heat-shrink-2.4", 2.4)
    assert cut_words(line, CUE, WORDS) == "Sleeve, bore *2.4 (3:1)*, for joints in plug *A*"


def test_the_order_of_a_run_in_words():
    assert [step_words(step, CUE, WORDS) for step in batch(CUE, 6).steps] == [
        "Cut all cables: *6* pieces.",
        "Open the split on all leads: *6*.",
        "Thread all parts: *48*. Count them.",
        "Thread over each end what came with its plug: *18*.",
        "Make plug *A* on all leads: *6*.",
        "Make plug *L, R* on all leads: *12*.",
        "Prove all leads, each on its own page: *6*.",
    ]


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("path", sorted(DEMO.glob("*.json")), ids=lambda path: path.stem)
def test_everything_has_words_in_every_language(path, language):
    plan, words = read_plan(path), Words(language)
    run = batch(plan, 3)
    said = [cut_words(line, plan, words) for line in cut_list(plan).lines]
    said += [total_words(total, plan, words) for total in run.totals]
    said += [step_words(step, plan, words) for step in run.steps]
    assert all(said)
    assert not any(text.count("*") % 2 or "{" in text for text in said)
