"""Lengths and sizes of sleeves against published figures."""

import pytest

from planner.dryfit.sleeve_sizes import PLAIN_MM, SHRINK_MM, TWO_TO_ONE_MM, overlap_mm

# Overlap on the insulation of a sleeve over a soldered cup. NASA-STD-8739.3, 9.8: at least 5 mm or
# two wire diameters, the larger. J-STD-001: at least 6 mm or two diameters.
OVERLAPS = [
    ("five-mm", 0.8, 5.0),
    ("five-mm", 2.5, 5.0),
    ("five-mm", 2.6, 5.2),
    ("five-mm", 4.0, 8.0),
    ("six-mm", 0.8, 6.0),
    ("six-mm", 3.0, 6.0),
    ("six-mm", 3.2, 6.4),
]
# Sizes of AS23053/5, supplied to recovered, mm. From memory.
AS23053_5 = [
    (1.17, 0.58), (1.60, 0.79), (2.36, 1.17), (3.18, 1.57),
    (4.75, 2.36), (6.35, 3.18), (9.53, 4.75), (12.7, 6.35),
]  # fmt: skip


@pytest.mark.parametrize(("rule", "diameter", "overlap"), OVERLAPS)
def test_overlap_is_as_published(rule, diameter, overlap):
    assert overlap_mm(diameter, rule) == pytest.approx(overlap)


def test_sizes_are_those_of_the_specification():
    assert list(TWO_TO_ONE_MM) == AS23053_5


@pytest.mark.parametrize(("bore", "recovered"), AS23053_5)
def test_two_to_one_shrink_halves(bore, recovered):
    """NASA-STD-8739.4, 9.8.1: largest over smallest under 2 for 2:1. The table rounds."""
    assert bore / recovered == pytest.approx(2, abs=0.05)


def test_the_sizes_are_in_the_bins(shipped):
    """What is proposed can be taken from the shipped parts."""
    parts = shipped.parts()
    shrink = {(it.bore_mm, it.recovered_mm) for it in parts if it.kind == "heat-shrink"}
    assert set(SHRINK_MM) == shrink
    assert set(PLAIN_MM) == {it.bore_mm for it in parts if it.kind == "sleeve"}
