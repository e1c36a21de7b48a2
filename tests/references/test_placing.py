"""Faces placed by rule against the published figures (docs of each family's file name them)."""

import pytest

from planner.geometry.placing import Grid, Ring, same_hand
from planner.geometry.views import mirrored_point

# DIN 41524 and IEC 60130-9, as quoted by others: pins on a 7.0 mm circle, 45 degrees apart.
# Male, solder side, arc up.
DIN_5_180 = {
    "1": (-3.500, 0.0),
    "4": (-2.475, 2.475),
    "2": (0.0, 3.500),
    "5": (2.475, 2.475),
    "3": (3.500, 0.0),
}
# D-sub as quoted: pitch 2.77 mm, rows 2.84 mm apart and half a pitch out; the diagonal (3.160 mm)
# is computed.
PITCH_MM, ROWS_MM, DIAGONAL_MM = 2.77, 2.84, 3.160


def _within(places, expected):
    for place, wanted in zip(places, expected, strict=True):
        assert place == pytest.approx(wanted, abs=0.01)


def test_din_5_180_is_a_ring():
    solder_side = Ring(5, 7.0, 180, 45, clockwise=True).places()

    _within(solder_side, DIN_5_180.values())


def test_din_5_180_from_the_mating_side_reads_right_to_left_1_4_2_5_3():
    mating = Ring(5, 7.0, 0, 45).places()
    numbered = dict(zip("14253", mating, strict=True))

    assert "".join(sorted(numbered, key=lambda it: -numbered[it][0])) == "14253"
    _within([mirrored_point(*it) for it in mating], DIN_5_180.values())


def test_d_sub_25_is_two_rows_half_a_pitch_out():
    male_mating = Grid((13, 12), PITCH_MM, ROWS_MM).places()
    by_number = dict(enumerate(male_mating, start=1))

    assert [by_number[at][0] for at in range(1, 14)] == sorted(
        by_number[at][0] for at in range(1, 14)
    )
    diagonal = ((by_number[14][0] - by_number[1][0]) ** 2 + ROWS_MM**2) ** 0.5
    assert by_number[14][0] - by_number[1][0] == pytest.approx(PITCH_MM / 2, abs=0.01)
    assert diagonal == pytest.approx(DIAGONAL_MM, abs=0.01)
    solder = [mirrored_point(*it) for it in male_mating]
    assert [x for x, _ in solder[:13]] == sorted((x for x, _ in solder[:13]), reverse=True)


ROW_25 = " ".join(map(str, range(1, 26)))


@pytest.mark.parametrize(
    ("connector", "rule", "numbers"),
    [
        ("din-5-180-male", Ring(5, 7.0, 180, 45, clockwise=True), "1 4 2 5 3"),
        ("dsub-25-male", Grid((13, 12), PITCH_MM, ROWS_MM, leftwards=True), ROW_25),
        ("dsub-25-female", Grid((13, 12), PITCH_MM, ROWS_MM), ROW_25),
        # The circle of an XLR is a typical figure, from memory; pins 1 and 2 change sides between
        # the two faces (as published).
        ("xlr-3-male", Ring(3, 7.6, 0, 90, clockwise=True), "1 3 2"),
        ("xlr-3-female", Ring(3, 7.6, 180, 90), "1 3 2"),
    ],
)
def test_rules_give_the_faces_that_ship(shipped, connector, rule, numbers):
    record = shipped.connector(connector)
    terminals = [record.by_id[number].terminal for number in numbers.split()]

    _within(rule.places(), [(it.x_mm, it.y_mm) for it in terminals])
    seen = [mirrored_point(*place) for place in rule.places()]
    assert same_hand(seen, rule.places()) is False
