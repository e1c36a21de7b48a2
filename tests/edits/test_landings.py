"""Landing, exchanging, lifting, capping, linking."""

import pytest

from planner.edits.landings import (
    cap,
    check_land,
    exchange,
    land,
    lift,
    link,
    sleeve,
    uncap,
    unlink,
)
from planner.edits.refusal import (
    ContactFull,
    EditRefused,
    LandedElsewhere,
    NotAllowed,
    NotThere,
    OutOfReach,
)
from planner.model.integrity import integrity_problems
from tests.edits.leads import cue_lead, landed, line_lead, ways


def test_land_puts_a_core_on_a_contact():
    plan = land(cue_lead(), end="A", conductor="WH", contact="T")
    assert landed(plan) == {"A:WH>T"}


def test_land_moves_a_core_within_its_end():
    plan = land(cue_lead(), end="A", conductor="WH", contact="T")
    assert landed(land(plan, end="A", conductor="WH", contact="R3")) == {"A:WH>R3"}


def test_landing_where_it_is_changes_nothing():
    plan = land(cue_lead(), end="A", conductor="WH", contact="T")
    assert land(plan, end="A", conductor="WH", contact="T") is plan


def test_a_full_contact_refuses_and_says_how_to_go_on():
    plan = land(cue_lead(), end="L", conductor="WH", contact="T")
    with pytest.raises(ContactFull) as refusal:
        land(plan, end="L", conductor="BU", contact="T")
    assert str(refusal.value) == "pin T takes one core. Hold Shift to exchange."


def test_a_contact_that_takes_two_has_room_for_a_second():
    plan = land(line_lead(), end="A", conductor="RD", contact="2")
    plan = land(plan, end="A", conductor="BK", contact="2")
    assert landed(plan) == {"A:RD>2", "A:BK>2"}


def test_landing_order_is_that_of_the_plan_not_of_the_acts():
    first = land(cue_lead(), end="A", conductor="WH", contact="T")
    one = land(first, end="A", conductor="BU", contact="R1")
    other = land(cue_lead(), end="A", conductor="BU", contact="R1")
    assert land(other, end="A", conductor="WH", contact="T") == one


def test_a_core_is_led_to_the_leg_where_it_is_landed():
    plan = land(cue_lead(), end="L", conductor="GN", contact="T")
    assert ways(plan)["GN"] == "trunk leg-L"
    assert integrity_problems(plan) == ()


def test_a_shield_that_stops_at_the_split_is_led_on_by_landing_it():
    plan = land(cue_lead(), end="L", conductor="SH", contact="S")
    assert ways(plan)["SH"] == "trunk leg-L"


def test_a_core_landed_at_the_end_it_would_leave_stays():
    plan = land(cue_lead(), end="L", conductor="WH", contact="T")
    with pytest.raises(LandedElsewhere, match="WH runs to L and is landed there on pin T"):
        land(plan, end="R", conductor="WH", contact="T")


def test_being_led_away_takes_the_cap_along():
    plan = cap(cue_lead(), end="L", conductor="WH")
    plan = land(plan, end="R", conductor="WH", contact="T")
    assert (plan.caps, integrity_problems(plan)) == ((), ())


def test_unknown_names_are_refused_with_what_was_meant():
    with pytest.raises(NotThere, match=r"There is no conductor WX\. Known are BU, GN"):
        land(cue_lead(), end="A", conductor="WX", contact="T")
    with pytest.raises(NotThere, match="A has no contact R7"):
        check_land(cue_lead(), end="A", conductor="WH", contact="R7")


def test_exchange_swaps_two_cores():
    plan = land(cue_lead(), end="R", conductor="GN", contact="T")
    plan = land(plan, end="R", conductor="RD", contact="S")
    plan = exchange(plan, end="R", conductor="GN", contact="S")
    assert landed(plan) == {"R:GN>S", "R:RD>T"}


def test_exchange_with_a_loose_core_lifts_the_other():
    plan = land(cue_lead(), end="R", conductor="GN", contact="T")
    plan = exchange(plan, end="R", conductor="RD", contact="T")
    assert landed(plan) == {"R:RD>T"}


def test_exchange_refuses_to_crowd_the_contact_it_leaves():
    plan = land(line_lead(), end="A", conductor="RD", contact="2")
    plan = land(plan, end="A", conductor="BK", contact="3")
    plan = land(plan, end="A", conductor="SH", contact="3")
    narrow = plan.definitions.connectors[0].by_id["2"]
    narrow = narrow.evolve(terminal=narrow.terminal.evolve(takes=1))
    kept = plan.definitions.connectors[0]
    kept = kept.evolve(contacts=tuple(narrow if it.id == "2" else it for it in kept.contacts))
    plan = plan.evolve(
        definitions=plan.definitions.evolve(connectors=(kept, *plan.definitions.connectors[1:]))
    )
    with pytest.raises(ContactFull, match="pin 2 takes one core, and two cores would be on it"):
        exchange(plan, end="A", conductor="RD", contact="3")


def test_lift_takes_a_core_off():
    plan = land(cue_lead(), end="A", conductor="WH", contact="T")
    assert landed(lift(plan, end="A", conductor="WH")) == set()
    with pytest.raises(NotThere, match="BU is not landed at A"):
        lift(plan, end="A", conductor="BU")


def test_cap_and_uncap():
    plan = cap(cue_lead(), end="A", conductor="GN")
    assert [(it.end, it.conductor) for it in plan.caps] == [("A", "GN")]
    assert uncap(plan, end="A", conductor="GN") == cue_lead()


def test_a_landed_core_is_not_capped_and_landing_uncaps():
    plan = land(cue_lead(), end="A", conductor="WH", contact="T")
    with pytest.raises(NotAllowed, match=r"WH is landed on pin T at A\. Lift it first"):
        cap(plan, end="A", conductor="WH")
    plan = land(cap(plan, end="A", conductor="BU"), end="A", conductor="BU", contact="R1")
    assert plan.caps == ()


def test_a_core_that_does_not_come_out_cannot_be_capped_there():
    with pytest.raises(OutOfReach):
        cap(cue_lead(), end="R", conductor="WH")


def test_links_that_share_a_contact_become_one():
    plan = link(cue_lead(), end="A", contacts=("R3", "R1"))
    plan = link(plan, end="A", contacts=("R1", "S"))
    assert [it.contacts for it in plan.links] == [("R1", "R3", "S")]
    plan = unlink(plan, end="A", contacts=("S",))
    assert [it.contacts for it in plan.links] == [("R1", "R3")]
    assert unlink(plan, end="A", contacts=("R1",)).links == ()


def test_a_link_needs_two_contacts_and_a_break_needs_a_link():
    with pytest.raises(NotAllowed):
        link(cue_lead(), end="A", contacts=("R1", "R1"))
    with pytest.raises(EditRefused, match="No such link at A"):
        unlink(cue_lead(), end="A", contacts=("R1",))


def test_a_sleeve_stays_on_a_core_that_moves():
    plan = land(cue_lead(), end="A", conductor="WH", contact="T")
    plan = sleeve(plan, end="A", conductor="WH", sleeved=True)
    assert land(plan, end="A", conductor="WH", contact="R1").landings[0].sleeved
