import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.intake.tracing import centred, levelled, scaled
from planner.model.tracing import Tracing
from planner.problem import EditRefused

PAPER = "0" * 64
px = st.tuples(st.floats(0, 4000), st.floats(0, 4000))
tracings = st.builds(
    Tracing,
    digest=st.just(PAPER),
    axis_px=px,
    mm_per_px=st.floats(0.001, 10),
    turn_deg=st.floats(-180, 180),
)


@given(tracings, px)
def test_there_and_back(tracing, place):
    assert tracing.to_px(tracing.to_mm(place)) == pytest.approx(place, abs=1e-6)


@given(tracings, px, px, st.floats(0.1, 500))
def test_the_two_points_have_their_distance(tracing, one, other, apart):
    if math.dist(one, other) < 5:
        return
    after = scaled(tracing, one, other, apart)

    assert math.dist(after.to_mm(one), after.to_mm(other)) == pytest.approx(
        apart, rel=0.003
    )  # as kept: 1e-6 mm a pixel


@given(tracings, px, px, st.floats(-170, 170))
def test_levelled_to_a_direction(tracing, one, other, along):
    if math.dist(one, other) < 5:
        return
    after = levelled(tracing, one, other, along)
    (x1, y1), (x2, y2) = after.to_mm(one), after.to_mm(other)

    apart = (math.degrees(math.atan2(y2 - y1, x2 - x1)) - along + 180) % 360 - 180
    assert apart == pytest.approx(0, abs=1e-3)


def test_up_in_the_picture_is_up_in_the_drawing():
    tracing = centred(Tracing(digest=PAPER, mm_per_px=0.5), (100, 100))

    assert tracing.to_mm((100, 100)) == (0, 0)
    assert tracing.to_mm((110, 80)) == (5, 10)


@pytest.mark.parametrize("apart", [0, -3, 5000, math.nan])
def test_an_impossible_distance_is_refused(apart):
    with pytest.raises(EditRefused):
        scaled(Tracing(digest=PAPER), (0, 0), (100, 0), apart)


def test_one_point_twice_is_refused():
    with pytest.raises(EditRefused, match="lie on each other"):
        scaled(Tracing(digest=PAPER), (0, 0), (1, 1), 10)
    with pytest.raises(EditRefused, match="lie on each other"):
        levelled(Tracing(digest=PAPER), (0, 0), (1, 1))
