"""The finder of collisions finds them: without this, a clean sheet would prove nothing."""

from planner.drawing.primitives import Poly, Style, Text
from planner.sheet.lettering import INK, THIN
from planner.sheet.page import Page
from tests.sheet.collisions import barred, outside, overlapping, struck


def line(x, y, text="HEAT", **changes):
    return Text((x, y), text, 344, INK, **changes)


def test_text_on_text_is_found():
    assert overlapping((line(1000, 1000), line(1200, 1100))) == [("HEAT", "HEAT")]


def test_lines_at_the_pitch_do_not_collide():
    assert overlapping((line(1000, 1000, "gypsy"), line(1000, 1440, "HEAT"))) == []


def test_turned_text_collides_by_its_own_box():
    turned = line(5000, 5000, "NOT CLEAR TO SOLDER", turn_deg=-20, anchor="middle")
    assert overlapping((turned, line(5000, 5000))) != []
    assert overlapping((turned, line(6500, 5600))) == []


def test_text_off_the_page_is_found():
    page = Page((line(20800, 1000), line(1000, 1000)), 21000, 29700)
    assert outside(page) == ["HEAT"]


def test_end_anchored_text_reaches_to_the_left():
    page = Page((line(600, 1000, anchor="end"),), 21000, 29700)
    assert outside(page) == ["HEAT"]


def test_a_leader_through_text_is_found():
    leader = Poly(((0, 900), (5000, 900)), Style(stroke=INK, width=THIN))
    assert struck((line(1000, 1000), leader)) == ["HEAT"]
    assert struck((line(1000, 2000), leader)) == []


def test_text_under_a_stripe_is_found():
    stripe = Poly(((0, 2000), (21000, 500), (21000, 900), (0, 2400)), Style(fill=INK), closed=True)
    assert barred(Page((line(1000, 2100), line(1000, 3000), stripe), 21000, 29700)) == ["HEAT"]
