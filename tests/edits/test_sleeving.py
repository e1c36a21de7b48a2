"""Putting on the sleeves and dabs that an end needs, as one edit."""

import pytest

from planner.dryfit.fit import fit_end
from planner.dryfit.sleeve_sizes import SleeveUse
from planner.dryfit.sleeves import SleevePlan, sleeves_for
from planner.edits.landings import dab, land, sleeve
from planner.edits.refusal import NotThere
from planner.edits.sleeving import dab_instead, put_on, take_sleeves
from planner.wiring.graph import Wiring
from tests.building import lead
from tests.checks.samples_fit import PHONES, WIRES, posts, with_cores
from tests.edits.leads import line_lead


def crowded():
    """A lead with thick strands on posts with a pitch of 3 mm: R at B is too near both others.

    No sleeve has room to park there.
    """
    return with_cores(lead({"A": PHONES, "B": posts(0.5)}, WIRES), strand_mm=0.9, insulation_mm=2.8)


def covered(plan):
    return {
        (it.end, it.contact): "sleeve" if it.sleeved else "dab"
        for it in plan.landings
        if it.sleeved or it.dabbed
    }


def use(contact, conductor):
    return SleeveUse(contact, conductor, 8.0, 1.6, 8.0, 9.0, 1.3, 0.8)


def test_sleeves_and_dabs_are_put_on():
    needed = SleevePlan(sleeves=(use("T", "RD"),), dabs=(("R", "S", "too near"),), liner=True)
    plan = put_on(lead({"A": PHONES, "B": posts(0.5)}, WIRES), end="B", sleeves=needed)
    assert covered(plan) == {("B", "T"): "sleeve", ("B", "R"): "dab"}


def test_what_an_end_needs_is_taken_and_then_it_needs_no_more():
    before = crowded()
    assert fit_end(before, Wiring(before), "B").gaps != ()
    plan = take_sleeves(before, end="B")
    assert covered(plan) == {("B", "R"): "dab"}
    fit = fit_end(plan, Wiring(plan), "B")
    assert sleeves_for(plan, fit).sleeves == ()
    assert take_sleeves(plan, end="B") == plan


def test_what_the_builder_put_on_stays_on():
    plan = sleeve(crowded(), end="B", conductor="WH", sleeved=True)
    plan = dab(plan, end="A", conductor="RD", dabbed=True)
    after = covered(take_sleeves(plan, end="B"))
    assert covered(plan).items() <= after.items()


def test_an_end_that_needs_nothing_is_not_changed():
    plan = lead({"A": PHONES, "B": posts(0.5)}, WIRES)
    assert take_sleeves(plan, end="A") is plan
    with pytest.raises(NotThere):
        take_sleeves(plan, end="Z")


def test_an_end_where_nothing_is_landed_is_not_changed():
    plan = line_lead()
    assert take_sleeves(plan, end="A") is plan


def test_a_dab_takes_the_place_of_a_sleeve():
    plan = sleeve(crowded(), end="B", conductor="RD", sleeved=True)
    assert covered(dab_instead(plan, end="B", contact="T")) == {("B", "T"): "dab"}


def test_a_dab_is_put_on_and_taken_off():
    plan = land(line_lead(), end="A", conductor="RD", contact="2")
    on = dab(plan, end="A", conductor="RD", dabbed=True)
    assert [it.dabbed for it in on.landings] == [True]
    assert dab(on, end="A", conductor="RD", dabbed=False) == plan
    with pytest.raises(NotThere, match="BK is not landed at A"):
        dab(plan, end="A", conductor="BK", dabbed=True)


def test_a_dab_stays_on_a_core_that_moves():
    plan = land(line_lead(), end="A", conductor="RD", contact="2")
    plan = dab(plan, end="A", conductor="RD", dabbed=True)
    assert land(plan, end="A", conductor="RD", contact="3").landings[0].dabbed
