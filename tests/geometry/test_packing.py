"""Bundles of wires: bounds, placements proved in exact numbers, and what must hold of them all."""

import itertools
import math
import random
from fractions import Fraction

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from planner.geometry.packing import (
    Packing,
    bundle_at_least_mm,
    is_sound,
    pack,
    ratio_at_least,
)

SLACK = Fraction(1, 10**9)
DIAMETERS = st.lists(st.floats(0.1, 5), min_size=1, max_size=10)
SEARCHES = ("laid", "quick", "thorough")


# Invented unequal wires, and the bore that a search ten times as long found for them; not proved.
UNEQUAL = [
    ((1.84, 1.55, 1.51, 1.35, 1.29), 4.0712),
    ((1.29, 1.13, 1.12, 1.1, 1.07, 1.03), 3.3691),
    ((3.0, 2.46, 2.22, 1.89, 1.84, 1.7, 1.66), 6.5512),
    ((1.79, 1.67, 1.56, 1.43, 1.41, 1.3, 1.2, 1.17), 4.6637),
    ((1.39, 1.38, 1.38, 1.32, 1.29, 1.26, 1.26, 1.21, 1.11), 4.6064),
    ((3.81, 3.33, 2.85, 2.19, 2.1, 2.02, 1.45, 1.42, 1.3, 1.21), 8.2467),
    ((1.97, 1.97, 1.94, 1.87, 1.73, 1.7, 1.66, 1.66, 1.47, 1.42, 1.4, 1.32), 6.6081),
]


def overlaps(packing, diameters):
    """Count wires that overlap another or the wall by more than 1e-9 mm, in exact fractions."""
    bore = Fraction(packing.diameter_mm) / 2 + SLACK
    wires = [
        (Fraction(x), Fraction(y), Fraction(d) / 2)
        for (x, y), d in zip(packing.centres, diameters, strict=True)
    ]
    outside = sum(r > bore or x * x + y * y > (bore - r) ** 2 for x, y, r in wires)
    return outside + sum(
        (x - p) ** 2 + (y - q) ** 2 < max(r + s - SLACK, 0) ** 2
        for (x, y, r), (p, q, s) in itertools.combinations(wires, 2)
    )


def random_bundles(count, most, *, seed):
    """Return bundles of unequal wires, some nearly alike, some with a ratio of fifty."""
    dice = random.Random(seed)
    spreads = [dice.choice((1.05, 2.0, 10.0, 50.0)) for _ in range(count)]
    return [
        [dice.uniform(1.0, spread) / spread for _ in range(dice.randint(1, most))]
        for spread in spreads
    ]


def test_certificates_hold_in_exact_numbers():
    bundles = [(b, "laid") for b in random_bundles(150, 40, seed=1)]
    bundles += [(b, "quick") for b in random_bundles(60, 16, seed=2)]
    bundles += [(b, "thorough") for b in random_bundles(12, 10, seed=3)]
    bad = sum(overlaps(pack(b, search), b) > 0 for b, search in bundles)
    contradicted = sum(bundle_at_least_mm(b) > pack(b, s).diameter_mm + 1e-9 for b, s in bundles)
    said = f"{len(bundles)} bundles: {bad} bad certificates, {contradicted} contradicted bounds"
    print(said)  # noqa: T201 - the counts are the proof
    assert (bad, contradicted) == (0, 0)


def test_the_exact_check_sees_an_overlap_and_a_wire_in_the_wall():
    side_by_side = Packing(2.0, ((-0.5, 0.0), (0.5, 0.0)))
    assert overlaps(side_by_side, [1.0, 1.0]) == 0
    assert overlaps(Packing(2.0, ((-0.5, 0.0), (0.49, 0.0))), [1.0, 1.0]) == 1
    assert overlaps(Packing(1.99, side_by_side.centres), [1.0, 1.0]) == 2
    assert not is_sound(Packing(1.99, side_by_side.centres), [1.0, 1.0])
    assert not is_sound(Packing(2.0, ((-0.5, 0.0), (0.49, 0.0))), [1.0, 1.0])
    assert not is_sound(side_by_side, [1.0, 1.0, 0.1])


@settings(max_examples=40, deadline=None)
@given(DIAMETERS)
@example([5.0, 5.0, 0.1])
@example([1.0, 1.0, 1.0, 0.05])
def test_what_surely_fails_is_below_what_is_found(diameters):
    for search in ("laid", "quick"):
        packing = pack(diameters, search)
        assert overlaps(packing, diameters) == 0
        assert bundle_at_least_mm(diameters) <= packing.diameter_mm + 1e-9


@settings(max_examples=25, deadline=None)
@given(st.lists(st.floats(0.5, 2), min_size=1, max_size=7), st.floats(0.1, 10))
def test_scaled_wires_take_a_scaled_bore(diameters, scale):
    scaled = [scale * each for each in diameters]
    assert bundle_at_least_mm(scaled) == pytest.approx(scale * bundle_at_least_mm(diameters))
    # A search that is cut off amplifies the last bits of its input: within its own accuracy.
    want = scale * pack(diameters, "laid").diameter_mm
    assert pack(scaled, "laid").diameter_mm == pytest.approx(want, rel=1e-6)


@settings(max_examples=25, deadline=None)
@given(DIAMETERS, st.randoms(use_true_random=False))
def test_another_order_takes_the_same_bore_and_places_follow_their_wires(diameters, dice):
    order = list(range(len(diameters)))
    dice.shuffle(order)
    shuffled = [diameters[index] for index in order]
    first, second = pack(diameters, "quick"), pack(shuffled, "quick")
    assert first.diameter_mm == second.diameter_mm
    assert overlaps(second, shuffled) == 0
    if len(set(diameters)) == len(diameters):
        assert second.centres == tuple(first.centres[index] for index in order)


@given(DIAMETERS, st.floats(0.1, 5))
def test_one_more_wire_never_lowers_the_bound(diameters, more):
    assert bundle_at_least_mm([*diameters, more]) >= bundle_at_least_mm(diameters)


def test_the_bound_grows_with_the_count():
    ratios = [ratio_at_least(count) for count in range(1, 300)]
    assert ratios == sorted(ratios)


@pytest.mark.parametrize(
    ("wires", "needs"),
    [
        ((), 0.0), ((1.3,), 1.3), ((1.0, 0.5), 1.5), ((1.0, 1.0, 1.0), 1 + 2 / math.sqrt(3)),
        # Bends 11, 14, 15 touching, in a circle of bend -6: a solution of Descartes' theorem in
        # whole numbers, 2 (36 + 121 + 196 + 225) = (-6 + 11 + 14 + 15)^2.
        ((2 / 11, 2 / 14, 2 / 15), 2 / 6),
        # The third goes into the gap beside the two: bend 3 beside 1 and 1, in a circle of 2.
        ((2.0, 2.0, 0.6), 4.0),
    ],
)  # fmt: skip
def test_up_to_three_wires_are_exact(wires, needs):
    assert pack(wires).diameter_mm == pytest.approx(needs, rel=1e-9)
    assert bundle_at_least_mm(wires) == pytest.approx(needs, rel=1e-9)


@settings(max_examples=60)
@given(st.tuples(st.floats(0.1, 5), st.floats(0.1, 5), st.floats(0.1, 5)))
def test_of_three_wires_bound_and_placement_are_one(wires):
    assert pack(wires).diameter_mm == pytest.approx(bundle_at_least_mm(wires), rel=1e-7)


@pytest.mark.parametrize(("wires", "found"), UNEQUAL)
def test_unequal_wires_within_one_in_a_hundred_of_a_long_search(wires, found):
    assert pack(wires).diameter_mm <= found * 1.01


@pytest.mark.parametrize(
    "wires", [(), (0.0,), (0.0, 0.0), (0.0,) * 5, (1.0, 0.0), (1.0, 0.0, 0.0), (1.0, 1.0, 0.0, 0.0)]
)
def test_wires_without_thickness_are_no_trouble(wires):
    packing = pack(wires, "quick")
    assert is_sound(packing, wires)
    assert math.isfinite(packing.diameter_mm)
    assert bundle_at_least_mm(wires) <= packing.diameter_mm


def test_two_hundred_and_fifty_six_wires_are_placed():
    wires = [1.0 + 0.001 * index for index in range(256)]
    assert overlaps(pack(wires, "laid"), wires) == 0


def test_more_search_finds_no_worse():
    for wires in random_bundles(6, 9, seed=4):
        found = [pack(wires, search).diameter_mm for search in SEARCHES]
        assert found[2] <= found[0] * 1.001
        assert found[2] <= found[1] * 1.001


def test_the_same_wires_give_the_same_bytes():
    wires = random_bundles(1, 12, seed=5)[0]
    first = pack(wires, "quick")
    pack.__globals__["_packed"].cache_clear()
    assert pack(wires, "quick") == first
