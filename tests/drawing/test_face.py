import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.drawing.face import contact_point, face, shell_outlines, shell_reach_mm
from planner.drawing.looks import DARK, LIGHT, PRINT
from planner.drawing.primitives import Circle, Poly
from tests.drawing.samples import connector, cup, d_connector

ANGLES = st.floats(-360, 360)


def owners(items):
    return {item.owner for item in items}


@pytest.mark.parametrize("look", [LIGHT, DARK, PRINT], ids=lambda look: look.name)
@pytest.mark.parametrize("side", ["solder", "mating"])
def test_everything_drawn_has_an_owner(look, side):
    items = face(connector(), centre=(0, 0), scale=10, look=look, side=side)
    assert owners(items) == {"shell", "contact/1", "contact/2", "contact/3"}


def test_y_goes_up_on_the_record_and_down_on_the_paper():
    at = contact_point(connector(), "2", centre=(100, 100), scale=10)
    assert at == (120, 90)


@pytest.mark.parametrize("shape", [connector(), d_connector()], ids=["round", "d"])
@given(turn_deg=ANGLES)
def test_the_mating_side_is_the_mirror_of_the_solder_side(shape, turn_deg):
    for contact in shape.by_id:
        x, y = contact_point(shape, contact, centre=(0, 0), scale=10, turn_deg=turn_deg)
        seen = contact_point(
            shape, contact, centre=(0, 0), scale=10, turn_deg=turn_deg, side="mating"
        )
        assert seen == (pytest.approx(-x), pytest.approx(y))


@given(turn_deg=ANGLES)
def test_turning_keeps_the_distance_from_the_axis(turn_deg):
    at = contact_point(connector(), "1", centre=(5, 5), scale=10, turn_deg=turn_deg)
    assert math.dist(at, (5, 5)) == pytest.approx(10 * math.sqrt(5))


def test_a_quarter_turn_is_counter_clockwise():
    at = contact_point(connector(cup("1", 2, 0)), "1", centre=(0, 0), scale=1, turn_deg=90)
    assert at == (pytest.approx(0), pytest.approx(-2))


@pytest.mark.parametrize("contact", ["1", "2"])
def test_a_landed_terminal_holds_tin_and_an_empty_one_a_dark_bore(contact):
    def fills(landed):
        items = face(connector(), centre=(0, 0), scale=10, look=LIGHT, landed=landed)
        return {
            item.style.fill
            for item in items
            if isinstance(item, Circle) and item.owner == f"contact/{contact}"
        }

    wanted = {LIGHT.bore, LIGHT.tin}
    assert wanted & fills(()) == {LIGHT.bore}
    assert wanted & fills((contact,)) == {LIGHT.tin}


def test_a_cups_wall_is_open_towards_its_opening():
    items = face(
        connector(cup("1", 0, 0, opening=0)), centre=(0, 0), scale=10, look=LIGHT, turn_deg=90
    )
    (wall,) = [item for item in items if isinstance(item, Poly) and item.owner == "contact/1"]
    angles = [math.degrees(math.atan2(-y, x)) % 360 for x, y in wall.points]
    assert not [angle for angle in angles if 57 < angle < 123]


@given(turn_deg=ANGLES)
def test_the_d_shell_turns_with_its_contacts(turn_deg):
    outer, inner = shell_outlines(d_connector(), centre=(0, 0), scale=1, turn_deg=turn_deg)
    reach = max(math.hypot(*point) for point in outer)
    assert reach <= math.hypot(*shell_reach_mm(d_connector())) + 1e-6
    assert max(math.hypot(*point) for point in inner) < reach


def test_a_concentric_mating_side_has_a_ring_for_each_contact():
    items = face(connector(mating="concentric"), centre=(0, 0), scale=10, look=LIGHT, side="mating")
    radii = {item.owner: item.radius for item in items if isinstance(item, Circle)}
    assert radii["contact/1"] < radii["contact/2"] < radii["contact/3"]


def test_the_mating_shell_is_dashed_and_the_solder_shell_is_not():
    def dashes(side):
        items = face(connector(), centre=(0, 0), scale=10, look=LIGHT, side=side)
        outlines = [item for item in items if isinstance(item, Poly) and item.closed]
        return {bool(item.style.dash) for item in outlines if item.owner == "shell"}

    assert dashes("mating") == {True}
    assert dashes("solder") == {False}
