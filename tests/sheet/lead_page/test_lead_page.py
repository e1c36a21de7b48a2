"""The pages on the whole lead: cut list with tags, queues, the run; what a stop withholds."""

import pytest

from planner.data import data_dir
from planner.drawing.primitives import Text
from planner.files.plans import read_plan
from planner.model.plan import Plan
from planner.sheet.lead_page import lead_leaves
from planner.sheet.leaf import Making
from tests.sheet.plain_plan import STOP
from tests.sheet.samples import loom


def making(name="cue-desk-headphone-lead", findings=(), **options):
    plan = read_plan(data_dir("resources") / "demo" / f"{name}.json")
    return Making(plan, tuple(findings), **options)


def said(made):
    return [i.text for leaf in lead_leaves(made)[0] for i in leaf.body if isinstance(i, Text)]


def test_a_small_lead_has_one_page_with_all_of_it():
    plan = making().plan
    few = tuple(use for use in plan.parts if "label" not in use.part and "shrink" not in use.part)
    made = Making(plan.evolve(parts=few), ())
    assert len(lead_leaves(made)[0]) == 1
    words = said(made)
    for title in ("The finished lead", "Cut and pick", "Thread end A", "Thread ends L, R"):
        assert title in words
    assert words[-1] == "All ticked? Go on. Nothing goes on after soldering."


def test_every_length_and_the_whole_are_written():
    assert {"1200", "600", "1800"} <= set(said(making()))


def test_legs_of_different_length_have_each_a_figure():
    plan = making().plan
    legs = tuple(one.evolve(length_mm=450) if one.id == "leg-R" else one for one in plan.sections)
    words = said(Making(plan.evolve(sections=legs), ()))
    assert {"1200", "600", "450"} <= set(words)
    assert "1800" not in words


def test_a_threaded_part_has_its_tag_in_cut_list_step_and_queue():
    made = making()
    words = said(made)
    tags = [route.tag for route in made.threading.routes]
    assert tags
    assert [words.count(tag) for tag in tags] == [3] * len(tags)


def test_the_queues_say_which_way_round_a_part_goes_on():
    words = said(making())
    assert {"splitter cover", "wide end first", "boot", "narrow end first", "barrel"} <= set(words)


@pytest.mark.parametrize("title", ["Cut and pick", "Thread end A", "Take care"])
def test_with_a_stop_nothing_is_cut_or_threaded(title):
    words = said(making(findings=(STOP,)))
    assert title not in words
    assert {"The finished lead", "What stops it", "bridge, end A"} <= set(words)


def test_a_run_of_leads_has_its_totals_and_its_order():
    words = said(making(leads=3))
    assert {"Run of 3 leads", "Order of the run"} <= set(words)
    assert "Run of 1 leads" not in said(making())
    total = sum(line.length_mm * line.count for line in making().cuts.lines if line.kind == "cable")
    assert f"{3 * total:g}" in words


def test_alike_legs_are_drawn_once_and_counted():
    words = said(Making(loom(), ()))
    assert "8 \u00d7" in words
    assert words.count("XLR-3 male") == 1


def test_the_legend_names_each_colour_once():
    words = said(Making(loom(), ()))
    assert words.count("white, brown stripe") == 1
    assert words.count("shield, foil") == 1
    assert "Schirm, Folie" in said(Making(loom(), (), language="de"))


def test_a_plan_without_anything_has_its_page():
    (leaf,) = lead_leaves(Making(Plan(), ()))[0]
    assert leaf.title == "Lead without a title"


def test_where_the_shield_lands_is_said():
    assert "Shield: on contact S of A only." in " ".join(said(making()))
    assert "Shield: on contact 1 of A, B." in said(making("stage-left-balanced-line"))
