"""The curve of a lead: straight as seen from the solder side, never back upwards."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.geometry.curves import PIECES, lead_curve, lead_curves

AT = st.floats(-30, 30)
POINT = st.tuples(AT, AT)


@given(start=POINT, end=POINT, bottom=AT, height=st.floats(0.01, 40))
def test_a_lead_goes_down_from_the_cut_end_to_its_mouth(start, end, bottom, height):
    way = lead_curve((*start, bottom + height), (*end, bottom))
    assert way[0] == pytest.approx((*start, bottom + height))
    assert way[-1] == pytest.approx((*end, bottom))
    heights = [z for _, _, z in way]
    assert heights == sorted(heights, reverse=True)
    assert max(heights) <= bottom + height + 1e-12
    assert min(heights) >= bottom - 1e-12


@given(start=POINT, end=POINT)
def test_its_projection_is_the_straight_line(start, end):
    along = np.subtract(end, start)
    for x, y, _ in lead_curve((*start, 9.0), (*end, 0.0)):
        away = (x - start[0], y - start[1])
        assert away[0] * along[1] - away[1] * along[0] == pytest.approx(0, abs=1e-9)


@given(st.lists(st.tuples(AT, AT, AT, AT, AT, AT), min_size=1, max_size=5))
def test_many_at_once_are_the_same_curves(rows):
    ends = np.array(rows)
    many = lead_curves(ends[:, :3], ends[:, 3:])
    assert many.shape == (len(rows), PIECES + 1, 3)
    one_by_one = [lead_curve(tuple(row[:3]), tuple(row[3:])) for row in rows]
    assert many.tolist() == [[list(corner) for corner in way] for way in one_by_one]
