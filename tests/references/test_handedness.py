"""Numbering as published, proven for both genders and sides from one table and one mirror.

Sources: DIN-5/180 and D-sub 25 numbering and pitches as quoted in secondary pages (DIN 41524,
IEC 60130-9 for the DIN plug); that pins 1 and 2 of an XLR-3 change sides between the two faces, as
quoted. The mirror rule: the solder side of one gender has the handedness of the mating face of
the other.
"""

import math
from itertools import pairwise
from pathlib import Path

import pytest

from planner.data import data_dir
from planner.files.definitions import parse_definition
from planner.geometry.views import mirrored_point
from planner.model.connector import Connector

# Contacts from left to right on the MALE MATING face: arc up, long row up, key up.
MALE_MATING = {
    "din-5-180": (["3", "5", "2", "4", "1"],),
    "dsub-9": ([str(n) for n in range(1, 6)], [str(n) for n in range(6, 10)]),
    "dsub-15": ([str(n) for n in range(1, 9)], [str(n) for n in range(9, 16)]),
    "dsub-25": ([str(n) for n in range(1, 14)], [str(n) for n in range(14, 26)]),
    "dsub-37": ([str(n) for n in range(1, 20)], [str(n) for n in range(20, 38)]),
    # From memory, and so in two public drawings of sockets: which of the two is the left one.
    "xlr-3": (["1", "3", "2"],),
}
SIDES = ("solder", "mating")
CASES = [
    (name, gender, side)
    for name in MALE_MATING
    for gender in ("male", "female")
    for side in SIDES
    if (name, gender) != ("din-5-180", "female")
]


def seen(connector: Connector, side: str) -> dict[str, tuple[float, float]]:
    """Return where each contact is when one looks at a side."""
    spots = {c.id: (c.terminal.x_mm, c.terminal.y_mm) for c in connector.contacts}
    if side == "solder":
        return spots
    return {contact: mirrored_point(*spot) for contact, spot in spots.items()}


def left_to_right(connector: Connector, side: str, row: list[str]) -> list[str]:
    spots = seen(connector, side)
    return sorted(row, key=lambda contact: spots[contact][0])


def published(row: list[str], gender: str, side: str) -> list[str]:
    as_printed = (gender == "male") == (side == "mating")
    return row if as_printed else row[::-1]


@pytest.mark.parametrize(("name", "gender", "side"), CASES)
def test_numbering_follows_from_one_table_and_one_mirror(shipped, name, gender, side):
    connector = shipped.connector(f"{name}-{gender}")
    for row in MALE_MATING[name]:
        assert left_to_right(connector, side, row) == published(row, gender, side)


@pytest.mark.parametrize(
    ("record_id", "side", "order"),
    [  # spelt out, so that a mistake in `published` cannot hide
        ("din-5-180-male", "mating", "3 5 2 4 1"),
        ("din-5-180-male", "solder", "1 4 2 5 3"),
        ("dsub-25-male", "mating", "1 2 3 4 5 6 7 8 9 10 11 12 13"),
        ("dsub-25-male", "solder", "13 12 11 10 9 8 7 6 5 4 3 2 1"),
        ("dsub-25-female", "solder", "1 2 3 4 5 6 7 8 9 10 11 12 13"),
        ("dsub-25-female", "mating", "13 12 11 10 9 8 7 6 5 4 3 2 1"),
    ],
)
def test_published_orders(shipped, record_id, side, order):
    assert left_to_right(shipped.connector(record_id), side, order.split()) == order.split()


@pytest.mark.parametrize("gender", ["male", "female"])
def test_the_long_row_is_up_from_both_sides(shipped, gender):
    for name, (upper, lower) in [(n, r) for n, r in MALE_MATING.items() if len(r) == 2]:
        for side in SIDES:
            spots = seen(shipped.connector(f"{name}-{gender}"), side)
            assert min(spots[c][1] for c in upper) > max(spots[c][1] for c in lower)


@pytest.mark.parametrize("poles", [3, 4, 5])
def test_two_genders_fit_face_to_face(shipped, poles):
    """Face to face each male pin meets the socket of its number: the two are mirror images."""
    male, female = (shipped.connector(f"xlr-{poles}-{gender}") for gender in ("male", "female"))
    assert seen(male, "solder") == seen(female, "mating")
    assert seen(female, "solder") == seen(male, "mating")


def test_xlr_pins_1_and_2_change_sides(shipped):
    for gender in ("male", "female"):
        solder, mating = (seen(shipped.connector(f"xlr-3-{gender}"), side) for side in SIDES)
        assert solder["1"] == mating["2"]
        assert solder["2"] == mating["1"]
        assert solder["3"] == mating["3"]


def test_din_coordinates(shipped):
    # Pins on a 7.0 mm circle, 45 degrees apart: male solder side, arc up.
    want = {
        "1": (-3.500, 0.0),
        "4": (-2.475, 2.475),
        "2": (0.0, 3.500),
        "5": (2.475, 2.475),
        "3": (3.500, 0.0),
    }
    spots = seen(shipped.connector("din-5-180-male"), "solder")
    assert {c: pytest.approx(spot, abs=0.01) for c, spot in want.items()} == spots


def test_din_neighbours(shipped):
    spots = seen(shipped.connector("din-5-180-male"), "solder")
    apart = [math.dist(spots[a], spots[b]) for a, b in pairwise("14253")]
    assert apart == pytest.approx([2.679] * 4, abs=0.001)
    assert min(apart) - 1.45 == pytest.approx(1.229, abs=0.001)


def test_the_three_pin_plug_is_the_five_pin_one_without_4_and_5(shipped):
    five, three = (seen(shipped.connector(i), "solder") for i in ("din-5-180-male", "din-3-male"))
    assert three == {contact: five[contact] for contact in "123"}


@pytest.mark.parametrize("ways", [9, 15, 25, 37])
@pytest.mark.parametrize("gender", ["male", "female"])
def test_dsub_pitches(shipped, ways, gender):
    spots = seen(shipped.connector(f"dsub-{ways}-{gender}"), "solder")
    upper, lower = MALE_MATING[f"dsub-{ways}"]
    for row in (upper, lower):
        steps = [math.dist(spots[a], spots[b]) for a, b in pairwise(row)]
        assert steps == pytest.approx([2.77] * len(steps), abs=0.002)
    first, below = spots[upper[0]], spots[lower[0]]
    assert first[1] - below[1] == pytest.approx(2.84)
    assert abs(first[0] - below[0]) == pytest.approx(2.77 / 2, abs=0.001)
    assert math.dist(first, below) == pytest.approx(3.160, abs=0.001)


@pytest.mark.parametrize(
    ("record_id", "row"), [("din-5-180-male", list("14253")), ("dsub-25-male", ["1", "13"])]
)
def test_a_mating_side_file_read_without_the_mirror_is_wrong(shipped, record_id, row):
    path = next(data_dir("connector_defs").rglob(f"{record_id}.toml"))
    text = path.read_text(encoding="utf-8")
    unmirrored = parse_definition(text.replace('view = "mating"', 'view = "solder"'), Path("x"))
    right = left_to_right(shipped.connector(record_id), "solder", row)
    assert left_to_right(unmirrored, "solder", row) == right[::-1]
    assert right != right[::-1]


def test_openings_are_mirrored_with_the_positions(shipped):
    """Each cup of the two drawn from the mating side still opens away from the axis."""
    for record_id in ("din-5-180-male", "dsub-25-male"):
        for contact in shipped.connector(record_id).contacts:
            turn = math.radians(contact.terminal.opening_deg)
            x, y = contact.terminal.x_mm, contact.terminal.y_mm
            outward = (0.0, math.copysign(1.0, y)) if record_id.startswith("dsub") else (x, y)
            share = (math.cos(turn) * outward[0] + math.sin(turn) * outward[1]) / math.hypot(
                *outward
            )
            assert share == pytest.approx(1.0, abs=0.001)
