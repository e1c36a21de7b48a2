"""The dial: steps for crossings, a curve for the gap, a hand, the best turn."""

import math

import pytest

from planner.drawing.fitting.dial import dial_picture
from planner.drawing.looks import DARK, LIGHT
from planner.drawing.primitives import Poly, Text
from planner.drawing.safe_svg import unsafe_parts
from planner.drawing.svg import svg_text
from planner.dryfit.dial import Dial, Window
from tests.sheet.collisions import overlapping

DIAL = Dial(
    windows=(Window(0, 60, 0), Window(60, 150, 2), Window(150, 152, 3), Window(152, 360, 4)),
    gaps=tuple((float(turn), 0.5 if turn < 180 else 0.25) for turn in range(0, 360, 5)),
    best_deg=30,
    best_crossings=0,
    best_gap_mm=0.5,
)


def picture(dial=DIAL, look=LIGHT, turn_deg=90.0):
    return dial_picture(dial, centre=(100, 100), radius=96, look=look, turn_deg=turn_deg)


def radius_of(point):
    return math.dist(point, (100, 100))


def turn_of(point):
    """The turn at which a point stands: counter-clockwise from the top."""
    return (math.degrees(math.atan2(100 - point[1], point[0] - 100)) - 90) % 360


def polys(items, owner):
    return [item for item in items if item.owner == owner and isinstance(item, Poly)]


def test_more_crossings_stand_higher():
    steps = [polys(picture(), f"dial/step/{number}")[0] for number in range(4)]
    heights = [max(radius_of(point) for point in step.points) for step in steps]
    assert heights == sorted(heights)
    base = min(radius_of(point) for point in steps[1].points)
    rise = [height - base for height in heights]
    assert rise == pytest.approx([0, rise[3] / 2, rise[3] * 3 / 4, rise[3]])


def test_each_wide_window_says_its_crossings_in_figures():
    said = {
        item.text: turn_of((item.at[0], item.at[1] - 4))
        for item in picture()
        if isinstance(item, Text)
    }
    # Window 2 is too narrow for its 3.
    assert said == {
        "0": pytest.approx(30, abs=4),
        "2": pytest.approx(105, abs=4),
        "4": pytest.approx(256, abs=4),
    }


def test_the_best_and_the_worst_are_said_however_narrow():
    windows = tuple(Window(turn, turn + 3, 5 + turn // 3 % 7) for turn in range(0, 360, 3))
    low = Window(90, 93, 1)
    dial = Dial((*windows[:30], low, *windows[31:]), (), 91, 1, 0.0)
    assert {item.text for item in picture(dial) if isinstance(item, Text)} == {"1", "11"}


def test_the_hand_stands_at_the_present_turn_and_the_triangle_at_the_best():
    items = picture(turn_deg=90.0)
    assert turn_of(polys(items, "dial/hand")[-1].points[-1]) == pytest.approx(90)
    (best,) = polys(items, "dial/best")
    assert turn_of(best.points[0]) == pytest.approx(30)


def test_the_curve_is_further_out_where_the_gap_is_larger():
    curve = polys(picture(), "dial/gap")[-1]
    radii = [radius_of(point) for point in curve.points]
    assert radii[0] > radii[-1]
    assert radii[0] - radii[-1] == pytest.approx(0.25 * (0.56 - 0.18) * 96)


def test_a_window_over_the_top_is_drawn_on():
    dial = Dial((Window(20, 340, 1), Window(340, 380, 0)), (), 0, 0, 1.0)
    free = polys(picture(dial), "dial/step/1")[0]
    assert turn_of(free.points[0]) == pytest.approx(340)
    assert turn_of(free.points[-1]) == pytest.approx(20)


@pytest.mark.parametrize("look", [LIGHT, DARK], ids=lambda look: look.name)
def test_a_dial_without_crossings_or_gaps_is_drawn(look):
    items = picture(Dial((Window(0, 360, 0),), (), 0, 0, 0.0), look)
    assert [item.text for item in items if isinstance(item, Text)] == ["0"]
    assert unsafe_parts(svg_text(items, width=200, height=200)) == ()


def test_many_narrow_windows_have_no_figures_on_each_other():
    windows = tuple(Window(turn, turn + 6, turn // 6 % 13) for turn in range(0, 360, 6))
    assert overlapping(picture(Dial(windows, (), 0, 0, 0.0))) == []
