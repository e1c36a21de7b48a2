"""Bundles of wires against published packings."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.geometry.packing import bundle_at_least_mm, bundle_at_most_mm

# Enclosing circle over wire diameter, exact closed forms for small n (elementary geometry):
# 3: 1 + 2/sqrt(3); 4: 1 + sqrt(2); 7: 3; 19 (best packing): 1 + sqrt(2) + sqrt(6).
EXACT = {3: 1 + 2 / 3**0.5, 4: 1 + 2**0.5, 5: 1 + (2 * (1 + 5**-0.5)) ** 0.5, 7: 3.0, 19: 4.8637}


@pytest.mark.parametrize(("count", "ratio"), EXACT.items())
def test_equal_wires_take_the_published_ratio(count, ratio):
    assert bundle_at_most_mm([0.8] * count) == pytest.approx(0.8 * ratio, rel=1e-3)


def test_two_wires_take_the_sum():
    assert bundle_at_most_mm([1.0, 0.5]) == 1.5


@given(st.lists(st.floats(0.1, 5), min_size=1, max_size=40))
def test_surely_fails_is_below_surely_fits(diameters):
    assert bundle_at_least_mm(diameters) <= bundle_at_most_mm(diameters) + 1e-9
