"""Bundles of wires against published packings of equal circles, and strands of known build."""

import math

import pytest

from planner.geometry.packing import bundle_at_least_mm, is_sound, pack, ratio_at_least
from planner.model.cable import Core

# Bore over wire diameter for n equal circles in a circle. Kravitz, Math. Mag. 40 (1967) 65-71; Pirl
# 1969; Graham, Lubachevsky, Nurmela, Ostergard, Discrete Math. 181 (1998) 139-154; for 10 also
# OEIS A281115. Secondary pages that quote them were read.
PUBLISHED = {
    1: 1.0, 2: 2.0, 3: 2.1547, 4: 2.4142, 5: 2.7013, 6: 3.0, 7: 3.0, 8: 3.3048, 9: 3.6131,
    10: 3.8130, 11: 3.9238, 12: 4.0296, 13: 4.2361, 14: 4.3284, 15: 4.5214, 16: 4.6154,
    17: 4.7920, 18: 4.8637, 19: 4.8637, 20: 5.1223,
}  # fmt: skip
# Of these the table has the best known, which nobody has proved to be the best.
BEST_KNOWN_NOT_PROVED = {15, 16, 17, 18, 20}
# Closed forms of elementary geometry (Kravitz; computed here).
EXACT = {
    3: 1 + 2 / math.sqrt(3),
    4: 1 + math.sqrt(2),
    5: 1 + math.sqrt(2 * (1 + 1 / math.sqrt(5))),
    6: 3.0,
    7: 3.0,
    8: 1 + 1 / math.sin(math.pi / 7),
    9: 1 + math.sqrt(2 * (2 + math.sqrt(2))),
    11: 1 + 1 / math.sin(math.pi / 9),
    13: 2 + math.sqrt(5),
    19: 1 + math.sqrt(2) + math.sqrt(6),
}
# As published, with the last of four decimals rounded.
ROUNDING = 5e-5


@pytest.mark.parametrize("count", PUBLISHED)
def test_equal_wires_within_a_thousandth_of_the_published_ratio(count):
    packing = pack([0.8] * count)
    assert is_sound(packing, [0.8] * count)
    assert packing.diameter_mm / 0.8 <= PUBLISHED[count] * 1.001


@pytest.mark.parametrize("count", sorted(set(PUBLISHED) - BEST_KNOWN_NOT_PROVED))
def test_no_placement_beats_what_is_proved_to_be_the_best(count):
    assert pack([1.0] * count).diameter_mm >= PUBLISHED[count] - ROUNDING


@pytest.mark.parametrize("count", EXACT)
def test_the_table_agrees_with_closed_forms(count):
    assert PUBLISHED[count] == pytest.approx(EXACT[count], abs=2 * ROUNDING)


@pytest.mark.parametrize("count", PUBLISHED)
def test_the_bound_never_says_no_to_what_is_published(count):
    assert ratio_at_least(count) <= PUBLISHED[count] + ROUNDING


@pytest.mark.parametrize("count", sorted(set(PUBLISHED) - BEST_KNOWN_NOT_PROVED))
def test_the_bound_is_sharp_where_the_best_is_proved(count):
    assert bundle_at_least_mm([1.0] * count) == pytest.approx(PUBLISHED[count], abs=2 * ROUNDING)


def test_nineteen_loose_wires_are_thinner_than_a_concentric_lay_of_nineteen():
    """A lay of 1 + 6 + 12 measures 5 d; the best packing is 4.8637 d: for loose bundles only."""
    lay = Core(
        id="c", colours=("WH",), strands=19, strand_mm=0.1, insulation_mm=1, x_mm=0, y_mm=0
    ).conductor_mm
    assert lay == pytest.approx(0.5)
    assert pack([0.1] * 19).diameter_mm == pytest.approx(0.48637, rel=1e-3)


# Strands, strand mm: outside diameter over the strands, mm (computed from the lay: 3 d and 5 d).
BUILDS = {(7, 0.10): 0.300, (7, 0.127): 0.381, (7, 0.16): 0.480, (7, 0.20): 0.600,
          (19, 0.10): 0.500, (19, 0.127): 0.635, (19, 0.16): 0.800}  # fmt: skip


@pytest.mark.parametrize("build", BUILDS)
def test_strands_of_a_build_go_into_the_diameter_of_their_lay(build):
    """A packing of single strands is at most as thick as the lay, and never below its metal."""
    strands, strand_mm = build
    packing = pack([strand_mm] * strands)
    assert packing.diameter_mm <= BUILDS[build] * (1 + 1e-3)
    assert packing.diameter_mm >= math.sqrt(strands) * strand_mm


@pytest.mark.parametrize("build", BUILDS)
def test_core_measures_what_its_build_says(build):
    strands, strand_mm = build
    core = Core(
        id="c", colours=("WH",), strands=strands, strand_mm=strand_mm, insulation_mm=3,
        x_mm=0, y_mm=0,
    )  # fmt: skip
    assert core.conductor_mm == pytest.approx(BUILDS[build], abs=5e-4)
