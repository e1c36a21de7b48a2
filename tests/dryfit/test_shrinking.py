"""How long shrink is cut and how thick it lies, with invented figures."""

import math

import pytest

from planner.dryfit.shrinking import (
    shrink_cut_mm,
    shrink_too_short,
    shrink_why_not,
    shrunk_outside_mm,
)
from planner.model.part import Part

TUBE = Part(
    id="tube",
    title="Tube",
    kind="heat-shrink",
    bore_mm=4.75,
    recovered_mm=2.36,
    outside_mm=5.25,
    length_mm=25,
)


@pytest.mark.parametrize(("cover", "cut"), [(0, 0), (9, 10), (9.1, 10.5), (18, 20), (20, 22.5)])
def test_cut_allows_for_a_tenth_lengthwise_in_half_millimetres(cover, cut):
    """5 to 10 % is typical, from memory."""
    assert shrink_cut_mm(cover, TUBE) == cut


def test_what_does_not_shrink_is_cut_as_long_as_it_covers():
    assert shrink_cut_mm(8.2, TUBE.evolve(kind="sleeve", recovered_mm=0)) == 8.5


@pytest.mark.parametrize("cover", [-1, math.inf, math.nan])
def test_a_length_that_is_none_is_refused(cover):
    with pytest.raises(ValueError, match="must be 0 or more"):
        shrink_cut_mm(cover, TUBE)


@pytest.mark.parametrize(("largest", "smallest"), [(1, 2), (0, 0), (math.nan, 1), (math.inf, 1)])
def test_diameters_that_are_none_are_refused(largest, smallest):
    with pytest.raises(ValueError, match="0 < smallest"):
        shrink_why_not(largest, smallest, [TUBE])


def test_volume_stays_as_it_shrinks():
    """The ring's area times its length, before and after it became a tenth shorter."""
    outside = shrunk_outside_mm(TUBE, 4.0)
    before = math.pi / 4 * (5.25**2 - 4.75**2) * 25
    assert math.pi / 4 * (outside**2 - 4.0**2) * 22.5 == pytest.approx(before)


@pytest.mark.parametrize(
    ("largest", "smallest", "said"),
    [
        (4.0, 2.4, ""),
        (4.0, 1.9, "4.75 mm recovers to 2.36 mm"),
        (5.0, 4.0, "the widest is 4.75 mm as supplied"),
    ],
)
def test_why_not_says_the_figures(largest, smallest, said):
    assert shrink_why_not(largest, smallest, [TUBE]).partition(": ")[2] == said


def test_a_piece_too_short_is_said_with_both_figures():
    assert shrink_too_short(22.5, TUBE) == ""
    assert shrink_too_short(23, TUBE) == "Tube comes in 25 mm, the cut is 26 mm"
