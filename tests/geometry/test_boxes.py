"""Near boxes against trying every pair."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.geometry.boxes import Boxes, boxes_round, near_pairs


def _boxes(rng, count, spread):
    low = rng.uniform(-1, 1, (count, 3)) * spread
    return Boxes(low, low + rng.exponential(1.5, (count, 3)))


def _by_trying(ones, others, reach_mm):
    return {
        (i, j)
        for i in range(len(ones.low))
        for j in range(len(others.low))
        if (others.low[j] <= ones.high[i] + reach_mm).all()
        and (ones.low[i] <= others.high[j] + reach_mm).all()
    }


@given(
    seed=st.integers(0, 999),
    counts=st.tuples(st.integers(0, 25), st.integers(0, 25)),
    reach_mm=st.sampled_from([-0.5, 0.0, 0.3, 2.0, 50.0, np.inf]),
    spread=st.sampled_from([(20, 3, 1), (1, 1, 30), (5, 5, 5), (0, 0, 0)]),
)
@settings(max_examples=150, deadline=None)
def test_near_pairs_are_those_found_by_trying(seed, counts, reach_mm, spread):
    rng = np.random.default_rng(seed)
    ones, others = (_boxes(rng, count, spread) for count in counts)
    first, second = near_pairs(ones, others, reach_mm)
    pairs = list(zip(first.tolist(), second.tolist(), strict=True))
    assert len(pairs) == len(set(pairs))
    assert set(pairs) == _by_trying(ones, others, reach_mm)


def test_a_box_holds_its_capsule():
    """By hand: from (0, 0, 0) to (3, -1, 2), radius 0.5."""
    ends = np.array([[0.0, 0, 0]]), np.array([[3.0, -1, 2]])
    boxes = boxes_round(*ends, np.array([0.5]))
    assert boxes.low[0] == pytest.approx([-0.5, -1.5, -0.5])
    assert boxes.high[0] == pytest.approx([3.5, 0.5, 2.5])
