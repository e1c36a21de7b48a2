"""The dry fit on the sheet: order discs, side view, lengths, gaps; withheld with a stop."""

import pytest

from planner.checks.finding import Finding
from planner.data import data_dir
from planner.drawing.primitives import Poly, Text
from planner.dryfit.bodies import cut_mm, strip_mm
from planner.dryfit.cut_lengths import LEAD_STEP_MM, STRIP_STEP_MM
from planner.dryfit.fit import fit_end
from planner.dryfit.shrinking import raised_mm
from planner.files.plans import read_plan
from planner.model.place import Place
from planner.sheet.end_page.table import gap_words, rows_of
from planner.sheet.face_drawing import apart_on_a_ring
from planner.sheet.facts import end_facts
from planner.sheet.page import sheet_pages
from planner.sheet.words import Words
from planner.units import number
from planner.wiring.graph import Wiring
from tests.sheet.collisions import overlapping, struck

STOP = Finding("bridge", "stop", "T and R1 meet.", "They short.", "Part them.", (Place("A"),))


def demo(name):
    return read_plan(data_dir("resources") / "demo" / f"{name}.json")


def cue_desk(**landing):
    """The cue-desk lead with every landing of end A changed."""
    plan = demo("cue-desk-headphone-lead")
    landings = tuple(
        one.evolve(**landing) if one.end == "A" and one.contact in {"R1", "S"} else one
        for one in plan.landings
    )
    return plan.evolve(landings=landings)


def items_of(plan, findings=()):
    return [item for page in sheet_pages(plan, findings) for item in page.items]


def texts(items):
    return [item.text for item in items if isinstance(item, Text)]


@pytest.mark.parametrize("name", ["cue-desk-headphone-lead", "recording-rack-loom"])
def test_the_face_numbers_the_joints_in_the_order_of_soldering(name):
    plan = demo(name)
    order = fit_end(plan, Wiring(plan), "A").order
    first = [i for i in items_of(plan) if i.owner.startswith("order/")]
    numbers = {(i.owner, int(i.text)) for i in first if isinstance(i, Text)}
    assert {(f"order/{contact}", n) for n, contact in enumerate(order, start=1)} <= numbers


def test_the_table_follows_the_order_of_soldering():
    facts = end_facts(demo("cue-desk-headphone-lead"))[0]
    rows = [row for row in rows_of(facts, Words()) if row.number]
    assert [row.contact for row in rows] == list(facts.fit.order)
    assert [row.number for row in rows] == list(range(1, len(rows) + 1))


def test_with_a_stop_the_order_and_the_lengths_are_withheld():
    items = items_of(demo("cue-desk-headphone-lead"), (STOP,))
    assert not any(isinstance(i, Text) and i.owner.startswith("order/") for i in items)
    assert any(isinstance(i, Poly) and len(i.points) == 8 and i.owner == "order/T" for i in items)
    assert "cut" not in texts(items)


def test_each_core_has_its_lengths_from_the_dry_fit():
    plan = demo("cue-desk-headphone-lead")
    words = texts(items_of(plan))
    for lead in fit_end(plan, Wiring(plan), "A").leads:
        assert number(raised_mm(cut_mm(lead), LEAD_STEP_MM)) in words
        if lead.landing.conductor != "SH":
            assert number(raised_mm(strip_mm(lead), STRIP_STEP_MM)) in words


def test_a_sleeve_is_drawn_and_its_length_said():
    assert not any(i.owner.startswith("sleeve/") for i in items_of(cue_desk(sleeved=False)))
    plan = cue_desk(sleeved=True)
    items = items_of(plan)
    assert {i.owner for i in items if i.owner.startswith("sleeve/")} == {"sleeve/BU", "sleeve/SH"}
    flags = [flag for joint in end_facts(plan)[0].joints for flag in joint.flags]
    assert {flag.conductor for flag in flags if flag.sleeve_mm > 0} == {"BU", "SH"}
    lengths = [f"{number(flag.sleeve_mm)} mm" for flag in flags if flag.sleeve_mm > 0]
    assert set(lengths) <= set(texts(items))
    assert overlapping(items_of(plan)[: len(sheet_pages(plan, ())[0].items)]) == []


def test_the_side_view_stands_where_terminals_differ_in_height():
    assert texts(items_of(demo("cue-desk-headphone-lead"))).count("Side view, laid flat") == 3
    assert "Side view, laid flat" not in texts(items_of(demo("stage-left-balanced-line")))


def test_gaps_that_want_a_sleeve_are_told():
    plan = demo("stereo-to-two-mono")
    rules = plan.workmanship.evolve(tolerance_mm=0.4, sleeve_share=0.95, watch_share=2.0)
    near = plan.evolve(workmanship=rules)
    assert gap_words(end_facts(plan)[0], Words()) == ()
    told = [gap for gap in end_facts(near)[0].fit.gaps if gap.grade in {"sleeve", "touch"}]
    words = gap_words(end_facts(near)[0], Words())
    assert len(words) == len(told) > 0
    assert all(word.endswith(("touch.", "wants a sleeve.")) for word in words)
    pages = sheet_pages(near, ())
    assert [(overlapping(page.items), struck(page.items)) for page in pages] == [([], [])] * len(
        pages
    )


def test_discs_are_moved_apart_and_keep_their_order():
    placed = apart_on_a_ring([0.1, 0.0, 3.0], 0.5)
    assert placed == [pytest.approx(0.3), pytest.approx(-0.2), 3.0]
    assert apart_on_a_ring([1.0], 0.5) == [1.0]
    assert apart_on_a_ring([], 0.5) == []
