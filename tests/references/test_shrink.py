"""Choosing heat-shrink against the published rule and the sizes of a specification."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from planner.dryfit.shrinking import shrink_for
from planner.dryfit.sleeve_sizes import shrink_bore_mm, shrink_widest_mm
from planner.model.part import Part

# Sizes of AS23053/5, supplied to recovered, mm. From memory.
AS23053_5 = [
    (1.17, 0.58), (1.60, 0.79), (2.36, 1.17), (3.18, 1.57),
    (4.75, 2.36), (6.35, 3.18), (9.53, 4.75), (12.7, 6.35),
]  # fmt: skip
# Sizes sold as 3:1, mm. From memory.
THREE_TO_ONE_MM = [
    (2.4, 0.8), (3.0, 1.0), (4.8, 1.6), (6.0, 2.0), (9.0, 3.0), (12.0, 4.0), (18.0, 6.0),
]  # fmt: skip
# The supplied size is a minimum, the recovered a maximum: largest over smallest under 2 for 2:1 and
# under 3 for 3:1 (NASA-STD-8739.4, 9.8.1).
SIZES = st.floats(0.3, 14)


def tube(bore_mm: float, recovered_mm: float) -> Part:
    return Part(
        id=f"tube-{bore_mm}-{recovered_mm}",
        title="Tube",
        kind="heat-shrink",
        bore_mm=bore_mm,
        recovered_mm=recovered_mm,
        outside_mm=bore_mm + 0.5,
        length_mm=40,
    )


TWO_TO_ONE = [tube(*size) for size in AS23053_5]
THREE_TO_ONE = [tube(*size) for size in THREE_TO_ONE_MM]


@pytest.mark.parametrize(("bore", "recovered"), AS23053_5)
def test_a_size_goes_over_its_supplied_bore_and_grips_above_its_recovered(bore, recovered):
    own = tube(bore, recovered)
    assert shrink_for(bore, bore / 1.98, [own]) is own
    assert shrink_for(bore + 0.01, bore / 1.5, [own]) is None
    assert shrink_for(recovered, recovered, [own]) is None


@pytest.mark.parametrize("ratio", [2, 3])
@pytest.mark.parametrize("smallest", [1.0, 2.0, 4.0])
def test_largest_over_smallest_stays_under_the_ratio(ratio, smallest):
    """A tube as wide as the largest, so that nothing but the ratio decides."""
    under, at = smallest * ratio * 0.99, smallest * ratio
    assert shrink_for(under, smallest, [tube(under, under / ratio)]) is not None
    assert shrink_for(at, smallest, [tube(at, at / ratio)]) is None


def test_printed_sizes_round_but_two_to_one_stays_two():
    """2.36 over 1.17 is 2.017: the rule holds the tube to 2."""
    assert shrink_for(2.36, 2.36 / 2.01, [tube(2.36, 1.17)]) is None


@pytest.mark.parametrize(
    ("largest", "smallest", "bore"),
    [(4.0, 2.4, 4.75), (4.0, 1.9, None), (4.75, 2.4, 4.75), (4.8, 3.2, 6.35), (13, 12, None)],
)
def test_the_smallest_size_that_does(largest, smallest, bore):
    found = shrink_for(largest, smallest, TWO_TO_ONE)
    assert (found.bore_mm if found else None) == bore


@given(largest=SIZES, smallest=SIZES, stock=st.sets(st.sampled_from(TWO_TO_ONE)))
def test_what_is_chosen_passes_and_grips_and_no_smaller_one_does(largest, smallest, stock):
    assume(smallest <= largest)
    found = shrink_for(largest, smallest, list(stock))
    does = [
        part.bore_mm
        for part in stock
        if part.bore_mm >= largest and part.recovered_mm < smallest and largest / smallest < 2
    ]
    by_own_ratio = [bore for bore in does if largest / smallest < _ratio(bore)]
    assert (found.bore_mm if found else None) == min(by_own_ratio, default=None)


def _ratio(bore_mm: float) -> float:
    return bore_mm / dict(AS23053_5)[bore_mm]


@given(
    largest=SIZES,
    smallest=SIZES,
    stock=st.sets(st.sampled_from(TWO_TO_ONE)),
    more=st.sets(st.sampled_from(TWO_TO_ONE)),
)
def test_more_in_stock_never_makes_it_worse(largest, smallest, stock, more):
    assume(smallest <= largest)
    before = shrink_for(largest, smallest, list(stock))
    after = shrink_for(largest, smallest, list(stock | more))
    assert before is None or (after is not None and after.bore_mm <= before.bore_mm)


@given(largest=SIZES, smallest=SIZES)
def test_over_joints_the_same_rule_holds(largest, smallest):
    assume(smallest <= largest)
    found = shrink_for(largest, smallest, [*THREE_TO_ONE, *TWO_TO_ONE])
    assert shrink_bore_mm(largest, smallest) == (found.bore_mm if found else 0.0)
    assert largest <= shrink_widest_mm(smallest) or found is None


def test_over_joints_what_is_as_thin_as_the_recovered_bore_is_not_gripped():
    """1.60 recovers to 0.79 at most, so 0.79 may stay loose; 1.65 over 0.82 is more than 2."""
    assert shrink_bore_mm(1.5, 0.79) == 0.0
    assert shrink_bore_mm(1.5, 0.8) == 1.6
    assert shrink_bore_mm(1.6, 0.795) == 0.0
    assert shrink_widest_mm(0.795) == pytest.approx(1.59)
    assert shrink_widest_mm(0.81) == pytest.approx(2.4)


@given(largest=SIZES, smallest=SIZES)
def test_three_to_one_is_taken_only_where_no_two_to_one_does(largest, smallest):
    assume(smallest <= largest)
    found = shrink_for(largest, smallest, [*THREE_TO_ONE, *TWO_TO_ONE])
    plain = shrink_for(largest, smallest, TWO_TO_ONE)
    assert found is (plain or shrink_for(largest, smallest, THREE_TO_ONE))
    assert found is None or largest / smallest < (2 if found in TWO_TO_ONE else 3)
