"""A rework: what has to open or to shrink. Figures invented; ratios of NASA-STD-8739.4, 9.8.1."""

import pytest

from planner.dryfit.rework import instead
from planner.dryfit.threading import thread
from tests.dryfit.threaded import lead, part, use


def needs(plugs_mm, stays_on, jacket_mm=4):
    """Return what a boot of 5 mm at A of a line has to be."""
    plan = lead("AB", (jacket_mm,) * 2, plugs_mm, [part("p", 5)], [use("p", "A")])
    return instead(plan, thread(plan, stays_on=frozenset(stays_on)))


def test_with_one_end_open_the_part_goes_on_there():
    assert needs((9, 9), "A") == ()


def test_the_easier_side_says_what_would_pass():
    (found,) = needs((9, 7), "AB")
    assert (found.passes_mm, found.grips_mm) == (7, 4)


@pytest.mark.parametrize(("plug_mm", "shrinks"), [(11.9, True), (12, False), (19, False)])
def test_shrink_at_three_to_one_goes_over_less_than_three_times_what_it_grips(plug_mm, shrinks):
    (found,) = needs((19, plug_mm), "AB")
    assert found.may_shrink == shrinks
