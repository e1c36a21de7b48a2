"""The pages of ends: nothing lies on anything, faces are large enough, a stop withholds."""

from dataclasses import replace

import pytest

from planner.drawing.primitives import Circle, Poly, Rect, Text
from planner.library.loading import load_library
from planner.sheet.end_page import end_leaves
from planner.sheet.end_page.alike import shared_pages
from planner.sheet.end_page.upright import upright_scale
from planner.sheet.face_panel import GOOD_SCALE, MOST_ROUND, page_face
from planner.sheet.facts import end_facts
from planner.sheet.page import UNIT_MM, Page
from tests.drawing.fitting.samples import plan_for
from tests.sheet.collisions import outside, overlapping, struck
from tests.sheet.end_page.samples import DEMOS, STOP, demo, making, texts

CONNECTORS = load_library().connectors()


def pages_of(leaves, paper):
    return [Page(leaf.body, paper.width, paper.height) for leaf in leaves]


@pytest.mark.parametrize(("paper", "language"), [("a4", "en"), ("letter", "de")])
@pytest.mark.parametrize("name", DEMOS)
@pytest.mark.parametrize("findings", [(), (STOP,)], ids=["clear", "stopped"])
def test_no_text_lies_on_text_or_leaves_the_page(name, paper, language, findings):
    made = making(demo(name), findings, paper, language)
    for page in pages_of(end_leaves(made), made.paper):
        assert overlapping(page.items) == []
        assert struck(page.items) == []
        assert outside(page) == []
        lowest = max(item.at[1] for item in page.items if isinstance(item, Text))
        assert lowest <= made.paper.body_bottom


@pytest.mark.parametrize("name", DEMOS)
def test_every_landing_is_on_a_page_and_every_step_once(name):
    made = making(demo(name))
    words = [text for leaf in end_leaves(made) for text in texts(leaf.body)]
    for facts in made.facts:
        for joint in facts.joints:
            assert all(flag.code in words for flag in joint.flags)
    at_ends = [
        str(number)
        for number, step in enumerate(made.steps, start=1)
        if step.stage in made.plan.end_by_id
    ]
    assert at_ends
    assert [number for number in at_ends if number not in words] == []


@pytest.mark.parametrize(
    "name", ["cue-desk-headphone-lead", "intercom-headset", "stage-left-balanced-line"]
)
def test_an_end_has_one_page(name):
    plan = demo(name)
    assert [leaf.stage for leaf in end_leaves(making(plan))] == [end.id for end in plan.ends]


@pytest.mark.parametrize("connector", CONNECTORS, ids=lambda one: one.id)
def test_a_face_is_drawn_at_4_to_1_or_larger(connector):
    facts = end_facts(plan_for(connector))[0]
    if connector.poles <= MOST_ROUND:
        assert page_face(facts, connector).scale >= GOOD_SCALE
    elif connector.poles <= 25:
        room = making(plan_for(connector)).paper.body_bottom - 4200 - 150 - 900
        assert upright_scale(replace(facts, along=True), connector, room) >= 5.0


def test_with_a_stop_all_that_one_could_solder_by_is_withheld():
    made = making(demo("cue-desk-headphone-lead"), (STOP,))
    first = end_leaves(made)[0].body
    assert not any(isinstance(i, Text) and i.owner.startswith("order/") for i in first)
    assert any(isinstance(i, Poly) and len(i.points) == 8 and i.owner == "order/T" for i in first)
    owners = {item.owner.split("/")[0] for item in first}
    assert not owners & {"check-bar", "heat"}
    said = texts(first)
    assert made.words("end.template") not in said
    assert made.words("end.done") not in said
    assert {"T and R1 meet.", "Why: They short.", "Mend: Part them."} <= set(said)


def test_a_stop_at_another_end_is_only_pointed_at():
    made = making(demo("cue-desk-headphone-lead"), (STOP,))
    last = texts(end_leaves(made)[-1].body)
    assert "T and R1 meet." not in last
    assert made.words.counted("end.stops_elsewhere", 1) in last


def test_the_check_bar_is_100_mm():
    body = end_leaves(making(demo("intercom-headset")))[0].body
    bar = [i for i in body if isinstance(i, Rect) and i.owner.startswith("check-bar/")]
    cells = [i for i in bar if i.width * UNIT_MM == pytest.approx(10.0)]
    left = min(cell.corner[0] for cell in cells)
    right = max(cell.corner[0] + cell.width for cell in cells)
    # Black cells are 10 mm, the last white one closes the frame.
    assert (right - left + cells[0].width) * UNIT_MM == pytest.approx(100.0)


def test_ends_that_share_steps_share_a_page_drawn_in_no_colour():
    made = making(demo("recording-rack-loom"))
    shared = [one for one in shared_pages(made) if len(one.ends) > 1]
    assert [one.ids for one in shared] == [tuple(f"B{number}" for number in range(1, 9))]
    (page,) = [leaf for leaf in end_leaves(made) if leaf.stage == "B1"]
    words = texts(page.body)
    assert {"BN", "WHBN", "WHGY", "B1", "B8"} <= set(words)
    fills = {
        item.style.stroke
        for item in page.body
        if item.owner.startswith("lead/") and isinstance(item, Poly)
    }
    brown = made.facts[0].look.core("BN")[0]
    assert brown not in fills


def test_shared_cores_are_cut_as_the_longest_of_them():
    made = making(demo("recording-rack-loom"))
    (shared,) = [one for one in shared_pages(made) if len(one.ends) > 1]
    for place, joint in enumerate(shared.shown.joints):
        for flag in joint.flags:
            assert flag.cut_mm == max(end.joints[place].flags[0].cut_mm for end in shared.ends)


def test_a_wide_connector_stands_along_the_page_with_a_ring_at_each_joint():
    made = making(demo("recording-rack-loom"))
    face, landings, *_ = [leaf.body for leaf in end_leaves(made) if leaf.stage == "A"]
    joints = [joint for joint in made.facts[0].joints if joint.number]
    discs = {i.owner for i in face if isinstance(i, Circle) and i.owner.startswith("order/")}
    assert discs == {f"order/{joint.contact.id}" for joint in joints}
    assert {joint.flags[0].code for joint in joints} <= set(texts(landings))
