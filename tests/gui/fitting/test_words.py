"""What the dry fit says in words."""

import math
from dataclasses import replace

import pytest

from planner.app.fitting import words
from planner.data import data_dir
from planner.dryfit.dial import Dial
from planner.dryfit.fit import fit_end
from planner.dryfit.gaps import Gap
from planner.dryfit.order import Order
from planner.dryfit.turning import Turning
from planner.files.plans import read_plan
from planner.wiring.graph import Wiring


@pytest.fixture(scope="module")
def plan():
    return read_plan(data_dir("resources") / "demo" / "cue-desk-headphone-lead.json")


@pytest.fixture(scope="module")
def fit(plan):
    return fit_end(plan, Wiring(plan), "A")


def turning(**changes):
    dial = Dial((), (), 0.0, 0, 1.0)
    made = Turning("A", 45.0, (), (), 0, 0.8, 2, 0.31, "proved", dial)
    return replace(made, **changes)


@pytest.mark.parametrize(
    ("turn_deg", "said"), [(0.0, "0"), (-12.5, "\u221212.5"), (5.32, "5.32"), (90.0, "90")]
)
def test_angles(turn_deg, said):
    assert words.degrees(turn_deg) == said


def test_crossings_name_the_cores_by_their_codes(plan, fit):
    assert words.crossings_said(plan, replace(fit, crossings=())).figure == "No crossing"
    two = words.crossings_said(plan, replace(fit, crossings=(("BU", "RD"), ("GN", "WH"))))
    assert (two.figure, two.more) == ("2 crossings", "BU and RD; GN and WH")
    many = words.crossings_said(plan, replace(fit, crossings=(("BU", "RD"),) * 5))
    assert many.more == "BU and RD; 4 more"


@pytest.mark.parametrize(
    ("gap_mm", "mark", "word"),
    [(-0.1, "stop", "touch"), (0.2, "caution", "sleeve"), (0.5, "note", "watch")],
)
def test_the_smallest_gap_has_its_class_its_limit_and_its_bodies(plan, fit, gap_mm, mark, word):
    bodies = fit.site.at(fit.turn_deg)
    one = next(body for body in bodies if body.conductor == "BU")
    other = next(body for body in bodies if body.contact == "R3" and not body.conductor)
    gap = Gap(one, other, gap_mm, limit_mm=0.7, sleeve_mm=0.35)
    said = words.gap_said(plan, replace(fit, gaps=(gap,)))
    assert said.mark == mark
    assert said.figure == f"Smallest gap {max(gap_mm, 0):.2f} mm"
    assert said.more == f"{word}, limit 0.70 mm: BU to ring 3"


def test_no_gap_to_measure_is_said(plan, fit):
    alone = replace(fit, gaps=(), least_gap_mm=math.inf)
    assert words.gap_said(plan, alone).figure == "No gap to measure"


def test_a_best_turn_tells_before_and_after_and_how_sure_it_is(plan):
    assert words.turning_said(plan, turning(), 20.0) == (
        "Turned to 45\u00b0: no crossing, smallest gap 0.80 mm (was 2, 0.31 mm). "
        "Proved: no turn is better."
    )
    found = words.turning_said(plan, turning(verdict="found"), 20.0)
    assert found.endswith("Found: a better one is not ruled out.")


def test_a_best_turn_that_is_there_already_says_so(plan):
    said = words.turning_said(plan, turning(), 45.0)
    assert said.startswith("45\u00b0 is the best turn already: no crossing")


def test_a_swap_is_told_by_code_and_contact(plan):
    said = words.swaps_said(plan, turning(swaps=(("BU", "R3"), ("GN", "R1"))))
    assert said == "BU goes to ring 3 and GN goes to ring 1."


def test_the_room_of_the_iron_says_where_more_was_not_looked_for():
    assert words.room_words(0.42) == "0.42"
    assert words.room_words(1.0) == "1.00+"
    assert words.room_words(-0.3) == "\u22120.30"


def test_an_order_tells_its_room_and_its_clampings():
    order = Order((), 0.42, 2, "proved", 0.42, ())
    assert words.order_said(order) == (
        "Best order: at least 0.42 mm for the iron, 2 new clampings. Proved."
    )
