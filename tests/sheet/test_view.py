"""What the sheet says about the view, against pictures from the published numbering."""

import pytest

from planner.sheet.facts import end_facts
from planner.sheet.frame import datum, scale_text, view_words
from tests.drawing.samples import connector, cup
from tests.sheet.plain_plan import plain_plan
from tests.sheet.samples import library


def facts_with(plug, turn_deg=0.0):
    plan = plain_plan(definitions={"connectors": (plug.evolve(id="plug"),)}, landings=[])
    ends = tuple(end.evolve(turn_deg=turn_deg) for end in plan.ends)
    return end_facts(plan.evolve(ends=ends))[0]


def said(ident, turn_deg=0.0):
    plug = library().connector(ident)
    return datum(facts_with(plug, turn_deg), plug)


def test_din_5_runs_1_4_2_5_3_clockwise_round_the_solder_side():
    # IEC 60130-9 (from memory) numbers the 180 degree five-pin plug 1 4 2 5 3 along the arc. Which
    # way round is held by the tests of the definition; here, that the words follow the arc.
    words = said("din-5-180-male")
    order = words.split(": ")[1].rstrip(".").replace(" ", "").split(",")
    ring = "1" + "".join(order)
    assert ring in {"14253", "13524"}


def test_d_sub_25_male_pin_1_is_upper_right_on_the_solder_side():
    # The mating face of the male has pin 1 at the upper left (DIN 41652, from memory): its solder
    # side is the mirror.
    assert said("dsub-25-male") == "1 upper right. 25 lower left."
    assert said("dsub-25-female") == "1 upper left. 25 lower right."


def test_turning_the_plug_turns_the_words_and_keeps_the_order():
    plug = connector(cup("1", 0, 2), cup("2", 2, 0), cup("3", 0, -2), cup("4", -2, 0))
    assert datum(facts_with(plug), plug) == "1 up. Clockwise from 1: 2, 3, 4."
    assert datum(facts_with(plug, 90), plug) == "1 left. Clockwise from 1: 2, 3, 4."


@pytest.mark.parametrize(
    ("scale", "text"), [(8.0, "8:1"), (2.5, "2.5:1"), (1.0, "1:1"), (0.5, "1:2")]
)
def test_scales_are_stated(scale, text):
    assert scale_text(scale) == text


def test_what_faces_the_reader_is_named():
    plug = connector(cup("1", 0, 2), cup("2", 2, 0))
    assert view_words(facts_with(plug), plug, 8700)[0].startswith("The cups face you.")
    mixed = connector()
    assert view_words(facts_with(mixed), mixed, 8700)[0].startswith("The joints face you.")
