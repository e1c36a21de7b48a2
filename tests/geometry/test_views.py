"""The one mirror, and turning."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.geometry.views import half_turn_deg, mirrored_angle_deg, mirrored_point, turned_point

MM = st.floats(-50, 50)


@given(MM, MM)
def test_two_mirrors_are_the_identity(x, y):
    assert mirrored_point(*mirrored_point(x, y)) == (x, y)


@given(st.floats(-360, 360))
def test_two_mirrors_of_an_angle_are_the_angle(angle):
    twice = mirrored_angle_deg(mirrored_angle_deg(angle))
    assert (twice - angle) % 360 == pytest.approx(0, abs=1e-9) or (
        (twice - angle) % 360 == pytest.approx(360, abs=1e-9)
    )


@given(st.floats(-1000, 1000))
def test_a_direction_is_the_same_without_whole_turns(angle):
    short = half_turn_deg(angle)
    assert -180 <= short <= 180  # 180 itself by rounding only
    assert (angle - short) / 360 == pytest.approx(round((angle - short) / 360), abs=1e-9)


@given(MM, MM, st.floats(-360, 360))
def test_mirroring_negates_the_turn(x, y, turn):
    turned_then = mirrored_point(*turned_point(x, y, turn))
    then_turned = turned_point(*mirrored_point(x, y), -turn)
    assert turned_then == pytest.approx(then_turned, abs=1e-9)
