import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.geometry.placing import Grid, Ring, same_hand
from planner.geometry.views import mirrored_point, turned_point

mm = st.floats(0.1, 50)


@given(st.integers(1, 40), mm, st.floats(-360, 360), st.booleans())
def test_a_ring_lies_on_its_circle_with_equal_steps(count, circle, start, clockwise):
    places = Ring(count, circle, start, clockwise=clockwise).places()

    assert len(places) == count
    assert all(math.isclose(math.hypot(*it), circle / 2, rel_tol=1e-9) for it in places)
    steps = [math.dist(one, other) for one, other in pairwise(places)]
    assert all(math.isclose(step, steps[0], rel_tol=1e-6) for step in steps)


@given(st.integers(3, 40), mm, st.floats(-360, 360))
def test_the_mirror_of_a_ring_is_the_ring_the_other_way_round(count, circle, start):
    seen = [mirrored_point(*it) for it in Ring(count, circle, start).places()]
    other = Ring(count, circle, 180 - start, clockwise=True).places()

    assert seen == [pytest.approx(it, abs=1e-9) for it in other]
    assert same_hand(seen, Ring(count, circle, start).places()) is (False if count > 2 else None)


@given(st.lists(st.integers(1, 20), min_size=1, max_size=4), mm, mm, st.booleans())
def test_rows_have_their_pitch_and_are_centred(counts, pitch, row, leftwards):
    places = Grid(tuple(counts), pitch, row, leftwards=leftwards).places()

    assert len(places) == sum(counts)
    first = places[: counts[0]]
    assert sum(x for x, _ in first) == pytest.approx(0, abs=1e-9)
    assert all(
        b[0] - a[0] == pytest.approx(-pitch if leftwards else pitch) for a, b in pairwise(first)
    )
    assert len({round(y, 9) for _, y in places}) == len(counts)


def test_a_staggered_row_begins_half_a_pitch_on():
    grid = Grid((3, 2), 2.0, 3.0, stagger_mm=1.0)

    assert grid.places() == ((-2, 1.5), (0, 1.5), (2, 1.5), (-1, -1.5), (1, -1.5))


@given(st.integers(3, 20), st.floats(-180, 180), st.floats(0.5, 2))
def test_a_turned_set_is_of_the_same_hand_and_a_mirrored_one_is_not(count, turn, scale):
    known = Ring(count, 10, 20, 300 / count).places()
    seen = [turned_point(scale * x, scale * y, turn) for x, y in known]

    assert same_hand(seen, known) is True
    assert same_hand([mirrored_point(*it) for it in seen], known) is False


def test_one_row_is_its_own_mirror():
    row = ((-1, 0), (0, 0), (1, 0))

    assert same_hand(row, row) is None
    assert same_hand(row[::-1], row) is None
    assert same_hand((), ()) is None


@pytest.mark.parametrize("broken", [Ring(0, 7), Ring(3, -1), Grid((), 2), Grid((3, 0), 2)])
def test_a_rule_that_places_nothing_is_refused(broken):
    with pytest.raises(ValueError, match="at least one contact"):
        broken.places()
