"""The words of the notes on resistance, and that their limits are the plan's."""

import pytest

from planner.checks.registry import all_rules
from planner.electrical.crosstalk import crosstalks
from planner.services.checking import check_plan
from planner.units import number
from planner.wiring.graph import Wiring
from tests.building import CUP, PHONES, lead
from tests.checks.samples_electrical import long_thin_return, one_long_leg, with_length

CODES = ("channel-unbalanced", "return-crosstalk")


def notes(plan):
    return [it for it in check_plan(plan) if it.code in CODES]


def limited(plan, **changes):
    return plan.evolve(assumed=plan.assumed.evolve(**changes))


@pytest.mark.parametrize("code", CODES)
def test_they_are_notes(code):
    assert {it.code: it.weight for it in all_rules()}[code] == "note"


def test_what_is_said_of_a_long_leg():
    (note,) = notes(one_long_leg())
    assert note.title == "Right channel has 25 % more resistance"
    assert note.what == (
        "The loop of the right channel has 0.96 Ω, of the left channel 0.768 Ω at 20 °C: 25 % "
        "more, and the limit is 5 %. Into 32 Ω it is 0.051 dB softer."
    )
    assert [place.key for place in note.where] == ["R/S//", "R/T//"]


def test_what_is_said_of_a_shared_return():
    (note,) = notes(long_thin_return())
    assert note.what == (
        "The left and right channels share a return (WH, 0.96 Ω of it in common at 20 °C). Into "
        "32 Ω that is −31 dB from one to the other, and the limit is −40 dB."
    )
    assert [place.conductor for place in note.where] == ["WH"]


@pytest.mark.parametrize(
    ("plan", "changes", "codes"),
    [
        (one_long_leg(), {"balance_limit_percent": 24}, [CODES[0]]),
        (one_long_leg(), {"balance_limit_percent": 26}, []),
        (long_thin_return(), {"crosstalk_limit_db": -30}, []),
        (long_thin_return(), {"load_ohm": 300}, []),
        (long_thin_return(), {"load_ohm": 80}, [CODES[1]]),
    ],
)
def test_the_limits_are_those_of_the_plan(plan, changes, codes):
    assert [it.code for it in notes(limited(plan, **changes))] == codes


def test_heat_can_bring_it_over_the_limit():
    plan = limited(long_thin_return(), crosstalk_limit_db=-30.5)
    assert notes(plan) == []
    assert notes(limited(plan, temperature_c=60)) != []


def unlike_legs():
    ends = {"A": PHONES, "L": (CUP, "L"), "R": (CUP, "R")}
    plan = lead(ends, ["RD A.T L.T", "GN A.R R.T", "WH A.S L.S R.S"])
    return with_length(with_length(plan, "trunk", 3000), "leg-R", 20_000)


def test_a_fork_with_unlike_legs_tells_each_once():
    assert [it.code for it in notes(unlike_legs())] == list(CODES)


def test_of_both_directions_the_worse_is_told():
    plan = unlike_legs()
    one_db, other_db = (each.db for each in crosstalks(plan, Wiring(plan)))
    assert abs(one_db - other_db) > 0.5
    _, note = notes(plan)
    assert note.title.startswith(f"{number(max(one_db, other_db), 1)} dB between ")
