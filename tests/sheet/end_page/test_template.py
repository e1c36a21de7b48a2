"""The strip template is true in length."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.drawing.primitives import Poly
from planner.sheet.end_page.template import Group, groups_of, template_panel
from planner.sheet.facts import Flag, end_facts
from planner.sheet.lettering import HEAVY, PEN
from planner.sheet.paper import LIVE_WIDTH
from planner.sheet.words import Words
from tests.sheet.end_page.samples import demo, texts

FLAG = Flag("BU", "BU", ("BU",), "blue", 1.0)


def uprights(panel, width):
    return sorted(
        item.points[0][0]
        for item in panel.items
        if isinstance(item, Poly)
        and len(item.points) == 2
        and item.points[0][0] == item.points[1][0]
        and item.style.width == width
    )


@given(
    st.floats(min_value=4, max_value=170).map(lambda mm: round(mm, 1)),
    st.floats(min_value=0.5, max_value=3.5).map(lambda mm: round(mm, 1)),
)
def test_marks_stand_at_their_lengths_from_the_edge(cut_mm, bare_mm):
    panel = template_panel([Group(cut_mm, bare_mm, is_tail=False, flags=(FLAG,))], Words())
    edge, cut = uprights(panel, HEAVY)
    (bare,) = uprights(panel, PEN)
    assert (cut - edge) / 100 == pytest.approx(cut_mm)
    assert (cut - bare) / 100 == pytest.approx(bare_mm)
    assert cut <= LIVE_WIDTH


def test_equal_cores_share_a_row_and_a_bare_tail_has_nothing_to_strip():
    groups = groups_of(end_facts(demo("intercom-headset"))[0])
    assert [sorted(flag.code for flag in group.flags) for group in groups] == [
        ["BU", "WH"],
        ["GN", "RD"],
        ["SHIELD"],
    ]
    assert groups[-1].bare_mm == 0
    assert [group.cut_mm for group in groups[:2]] == sorted(
        (group.cut_mm for group in groups[:2]), reverse=True
    )


def test_many_lengths_become_few_groups_each_cut_as_its_longest():
    facts = end_facts(demo("recording-rack-loom"))[0]
    groups = groups_of(facts)
    flags = [flag for joint in facts.joints for flag in joint.flags]
    assert len(groups) <= 5
    assert sum(len(group.flags) for group in groups) == len(flags)
    for group in groups:
        assert group.cut_mm == max(flag.cut_mm for flag in group.flags)


def test_figures_are_told():
    panel = template_panel([Group(16.5, 2.7, is_tail=False, flags=(FLAG,))], Words())
    assert {"16.5", "2.7", "BU", "strip", "cut"} <= set(texts(panel.items))
