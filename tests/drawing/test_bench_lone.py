"""One end alone on the bench, and the whole lead drawn very small."""

import math
from dataclasses import replace
from itertools import combinations

import pytest

from planner.drawing.bench import BenchLayout, Layer, Settings
from planner.drawing.bench.shapes import box_of, boxes_meet, moved_box
from planner.drawing.bench.tiny import tiny_lead
from planner.drawing.bench.tree import tree_of
from planner.drawing.looks import LIGHT
from planner.drawing.primitives import Circle, Text
from tests.drawing.test_bench import DEMOS, demo

# The canvas of a window of 720 by 450 px.
ROOM = {"width": 720.0, "height": 286.0}
ENDS = [(name, end.id) for name in DEMOS for end in demo(name).ends]


def alone(name, end):
    layout, settings = BenchLayout(), Settings(LIGHT, only=end, **ROOM)
    zoom = layout.fit_end(demo(name), settings)
    return layout.bench(demo(name), replace(settings, zoom=zoom)), zoom


@pytest.mark.parametrize(("name", "end"), ENDS)
def test_only_the_end_asked_for_is_drawn(name, end):
    bench, _ = alone(name, end)
    assert list(bench.ends) == [end]
    assert bench.sections == {}


@pytest.mark.parametrize(("name", "end"), ENDS)
def test_targets_of_24_px_do_not_overlap(name, end):
    """WCAG 2.2, 2.5.8 asks for 24 px; here two contacts never share a part of theirs."""
    bench, _ = alone(name, end)
    places = bench.ends[end].block.contacts.values()
    assert min(math.dist(a, b) for a, b in combinations(places, 2)) >= 23.9


@pytest.mark.parametrize(("name", "end"), [pair for pair in ENDS if "loom" not in pair[0]])
def test_an_end_is_large_and_lies_in_its_room_with_labels_and_cut(name, end):
    bench, _ = alone(name, end)
    assert 2 * min(bench.ends[end].block.contact_radius.values()) >= 22.0
    assert bench.box[0] >= 8
    assert bench.box[1] >= 8
    assert bench.box[2] <= ROOM["width"] - 8
    assert bench.box[3] <= ROOM["height"] - 8
    assert any(group.layer == Layer.JACKET and group.items for group in bench.groups.values())


@pytest.mark.parametrize(("name", "end"), ENDS)
def test_head_and_scale_bar_lie_over_no_core_jacket_or_words(name, end):
    bench, _ = alone(name, end)
    boxes = [
        (group.key, moved_box(box_of((item,)), group.origin))
        for group in bench.groups.values()
        if group.layer > Layer.FACE  # a round shell leaves its box's corners free
        for item in group.items
    ]
    for kind in ("head", "foot"):
        mine = [box for key, box in boxes if key == f"{kind}/{end}"]
        others = [box for key, box in boxes if key != f"{kind}/{end}"]
        assert not any(boxes_meet(one, other) for one in mine for other in others)


def test_an_end_that_is_not_there_shows_the_whole_lead():
    bench = BenchLayout().bench(demo("stereo-to-two-mono"), Settings(LIGHT, only="Q"))
    assert set(bench.ends) == {"A", "L", "R"}


@pytest.mark.parametrize("name", DEMOS)
def test_the_small_lead_shows_every_end_inside_its_box(name):
    plan = demo(name)
    tiny = tiny_lead(tree_of(plan), 200, 48, LIGHT, current="A")
    assert set(tiny.ends) == set(plan.end_by_id)
    left, top, right, bottom = box_of(tiny.items)
    assert left >= 0
    assert top >= 0
    assert right <= 200
    assert bottom <= 48


def test_the_small_lead_marks_the_end_shown_and_the_findings():
    tree = tree_of(demo("cue-desk-headphone-lead"))
    plain = tiny_lead(tree, 200, 48, LIGHT)
    marked = tiny_lead(tree, 200, 48, LIGHT, current="L", weights={"R": "stop"})
    filled = [
        item
        for item in marked.items
        if isinstance(item, Circle) and item.style.fill == LIGHT.accent
    ]
    assert [circle.centre for circle in filled] == [marked.ends["L"]]
    assert len(marked.items) > len(plain.items)
    assert {item.text for item in plain.items if isinstance(item, Text)} == {"A", "L", "R"}


def test_an_empty_plan_has_no_small_lead():
    tiny = tiny_lead(tree_of(demo("cue-desk-headphone-lead").__class__()), 200, 48, LIGHT)
    assert tiny.items == ()
