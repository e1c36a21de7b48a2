"""Joints good and not good, by the kind of terminal."""

import pytest

from planner.drawing.primitives import Circle, Path, Poly, Rect
from planner.model.workmanship import Workmanship
from planner.sheet.end_page.joint_pictures import HEIGHT, LOW_HEIGHT, WIDTH, picture
from planner.sheet.end_page.joints import joints_panel, kinds_of
from planner.sheet.facts import end_facts
from planner.sheet.words import Words
from tests.sheet.end_page.samples import demo, texts


def points(item):
    if isinstance(item, Poly):
        return item.points
    if isinstance(item, Rect):
        x, y = item.corner
        return ((x, y), (x + item.width, y + item.height))
    if isinstance(item, Circle):
        (x, y), r = item.centre, item.radius
        return ((x - r, y - r), (x + r, y + r))
    assert isinstance(item, Path)
    return tuple(
        figures[at : at + 2] for _, figures in item.commands for at in range(0, len(figures), 2)
    )


@pytest.mark.parametrize("height", [HEIGHT, LOW_HEIGHT])
@pytest.mark.parametrize("good", [True, False])
@pytest.mark.parametrize("view", ["fill", "strands", "gap"])
@pytest.mark.parametrize("kind", ["cup", "lug", "post"])
def test_a_picture_stays_in_its_frame(kind, view, good, height):
    for item in picture(kind, view, good=good, height=height):
        for x, y in points(item):
            assert 0 <= x <= WIDTH
            assert 0 <= y <= height


@pytest.mark.parametrize("kind", ["cup", "lug", "post"])
@pytest.mark.parametrize("view", ["fill", "strands", "gap"])
def test_good_and_not_good_look_different(kind, view):
    assert picture(kind, view, good=True) != picture(kind, view, good=False)


def test_the_pictures_are_of_the_terminals_that_are_soldered():
    cue_desk, mono = end_facts(demo("cue-desk-headphone-lead"))[0], demo("stereo-to-two-mono")
    assert kinds_of(cue_desk) == ("cup", "lug")
    said = " ".join(texts(joints_panel(cue_desk, Workmanship(), Words()).items))
    assert "Cup full" in said
    assert "heat the lug" in said
    said = " ".join(texts(joints_panel(end_facts(mono)[0], Workmanship(), Words()).items))
    assert "Cup full" not in said


def test_the_gap_is_that_of_the_chosen_profile():
    # one-to-two: US Army STP 11-25R13-SM-TG, App. A; below-two: NASA-STD-8739.3, 9.1.1 and 9.1.2.
    facts = end_facts(demo("intercom-headset"))[0]
    texts_of = {
        gap: " ".join(texts(joints_panel(facts, Workmanship(insulation_gap=gap), Words()).items))
        for gap in ("one-to-two", "below-two")
    }
    assert "Gap: 1 to 2 core widths" in texts_of["one-to-two"]
    assert "Gap: under 2 wire widths" in texts_of["below-two"]
