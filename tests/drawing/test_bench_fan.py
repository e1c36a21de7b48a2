"""The fan: cores are ordered by where they land, so that none needs to cross another."""

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.drawing.bench import BenchLayout, Settings
from planner.drawing.bench.shapes import spread
from planner.drawing.looks import LIGHT
from planner.edits import ends
from tests.drawing.test_bench import demo


def strands_at(plan, end):
    return BenchLayout().bench(plan, Settings(LIGHT)).ends[end].block.strands


def crossings(plan, end):
    """Count pairs of landed cores whose ways cross, with shapely-free plain segment tests."""
    found = 0
    landed = [strand for strand in strands_at(plan, end).values() if strand.contact]
    for one, other in combinations(landed, 2):
        found += any(
            _cross(*pair, *against)
            for pair in zip(one.points, one.points[1:], strict=False)
            for against in zip(other.points, other.points[1:], strict=False)
        )
    return found


def _side(p, q, r):
    return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])


def _cross(a, b, c, d):
    return _side(a, b, c) * _side(a, b, d) < 0 and _side(c, d, a) * _side(c, d, b) < 0


@pytest.mark.parametrize(
    ("name", "end"),
    [
        ("cue-desk-headphone-lead", "A"),
        ("cue-desk-headphone-lead", "L"),
        ("cue-desk-headphone-lead", "R"),
        ("stage-left-balanced-line", "A"),
        ("stage-left-balanced-line", "B"),
        ("stereo-to-two-mono", "A"),
    ],
)
def test_the_demo_leads_have_no_crossing(name, end):
    assert crossings(demo(name), end) == 0


@pytest.mark.parametrize("turn", range(0, 360, 45))
def test_a_turned_plug_has_at_most_one_crossing(turn):
    plan = ends.turn_end(demo("cue-desk-headphone-lead"), end="A", turn_deg=turn)
    assert crossings(plan, "A") <= 1


def test_the_turn_is_said_with_a_real_minus():
    plan = ends.turn_end(demo("cue-desk-headphone-lead"), end="A", turn_deg=-30)
    block = BenchLayout().bench(plan, Settings(LIGHT)).ends["A"].block
    said = [item.text for item in block.foot if hasattr(item, "text")]
    assert any(words.startswith("turn \u221230°") for words in said)


def test_words_for_a_plug_that_is_not_turned_are_spared():
    line = demo("stage-left-balanced-line")
    block = BenchLayout().bench(line, Settings(LIGHT)).ends["A"].block
    assert not any("turn" in getattr(item, "text", "") for item in block.foot)


@given(
    st.lists(st.floats(-500, 500), min_size=1, max_size=12),
    st.lists(st.floats(1, 60), min_size=11, max_size=11),
)
def test_spread_keeps_order_and_gaps_and_moves_nothing_without_need(wanted, gaps):
    wanted.sort()
    places = spread(wanted, gaps)
    for index in range(len(places) - 1):
        assert places[index + 1] - places[index] >= gaps[index] - 1e-6
    roomy = [index * 1000.0 for index in range(len(wanted))]
    assert spread(roomy, gaps) == pytest.approx(roomy)
