"""Bundles of wires: bounds, placements that are proved, and what must hold of any of them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.geometry.packing import bundle_at_least_mm, is_sound, pack

DIAMETERS = st.lists(st.floats(0.1, 5), min_size=1, max_size=12)


def test_two_wires_take_the_sum():
    assert pack([1.0, 0.5]).diameter_mm == 1.5


@given(DIAMETERS)
def test_what_surely_fails_is_below_what_fits(diameters):
    packing = pack(diameters, "quick")
    assert is_sound(packing, diameters)
    assert bundle_at_least_mm(diameters) <= packing.diameter_mm * (1 + 1e-9)
