"""Choosing cable, default ways through a split, splices, lengths, shield policy."""

import pytest

from planner.edits.cables import (
    choose_cable,
    fan_out,
    route,
    set_length,
    set_shield_policy,
)
from planner.edits.landings import cap, land
from planner.edits.refusal import LandedElsewhere, NotAllowed, OutOfReach
from planner.edits.shapes import one_to_many, one_to_one, one_to_two
from planner.model.integrity import integrity_problems
from tests.edits.leads import BRAID, QUAD, TWO_PAIRS, cable, cue_lead, landed, ways


def test_cores_are_divided_evenly_and_the_overall_shield_stops_at_the_split():
    assert ways(cue_lead()) == {
        "WH": "trunk leg-L",
        "BU": "trunk leg-L",
        "RD": "trunk leg-R",
        "GN": "trunk leg-R",
        "SH": "trunk",
    }


def test_pairs_go_leg_by_leg_and_their_shields_with_them():
    plan = choose_cable(one_to_many(2), section="trunk", cable=TWO_PAIRS)
    assert ways(plan) == {
        "WH": "trunk leg-B1",
        "BU": "trunk leg-B1",
        "RD": "trunk leg-B2",
        "GN": "trunk leg-B2",
        "s1": "trunk leg-B1",
        "s2": "trunk leg-B2",
    }


def test_a_line_has_each_core_once():
    plan = choose_cable(one_to_one(), section="trunk", cable=QUAD)
    assert [(it.id, it.kind) for it in plan.conductors] == [
        ("WH", "core"),
        ("BU", "core"),
        ("RD", "core"),
        ("GN", "core"),
        ("SH", "shield"),
    ]


def test_landings_stay_with_cores_that_the_new_cable_has_too():
    plan = land(cue_lead(), end="A", conductor="WH", contact="T")
    plan = land(plan, end="A", conductor="GN", contact="R3")
    plan = choose_cable(plan, section="trunk", cable=cable("three", "WH RD BK"))
    assert landed(plan) == {"A:WH>T"}
    assert integrity_problems(plan) == ()


def test_a_core_landed_at_a_leg_stays_in_it():
    plan = land(cue_lead(), end="R", conductor="WH", contact="T")
    plan = choose_cable(plan, section="trunk", cable=QUAD.evolve(id="same-again"))
    assert (ways(plan)["WH"], landed(plan)) == ("trunk leg-R", {"R:WH>T"})


def test_old_cable_is_no_longer_carried():
    plan = choose_cable(cue_lead(), section="trunk", cable=TWO_PAIRS)
    assert [it.id for it in plan.definitions.cables] == ["two-pairs"]


def spliced(trunk: str, left: str, right: str):
    plan = choose_cable(one_to_two(), section="trunk", cable=cable("t", trunk))
    plan = choose_cable(plan, section="leg-L", cable=cable("l", left))
    return choose_cable(plan, section="leg-R", cable=cable("r", right))


def test_legs_with_their_own_cable_join_by_colour_then_in_order():
    plan = spliced("WH BU RD GN", "WH BU", "WH BU")
    joined = {it.id: [(run.section, run.core) for run in it.runs] for it in plan.conductors}
    assert joined == {
        "WH": [("trunk", "WH"), ("leg-L", "WH")],
        "BU": [("trunk", "BU"), ("leg-L", "BU")],
        "RD": [("trunk", "RD"), ("leg-R", "WH")],
        "GN": [("trunk", "GN"), ("leg-R", "BU")],
    }


def test_a_common_return_branches_at_the_split():
    plan = spliced("WH RD BK", "WH BK", "RD BK")
    assert ways(plan) == {"WH": "trunk leg-L", "RD": "trunk leg-R", "BK": "trunk leg-L leg-R"}
    assert integrity_problems(plan) == ()


def test_a_core_that_joins_nothing_is_named_with_its_section():
    plan = spliced("WH", "WH BU", "BU")
    assert set(ways(plan)) == {"WH", "BU", "leg-R.BU"}


def test_a_leg_can_be_fanned_out_again():
    plan = choose_cable(cue_lead(), section="leg-L", cable=cable("l", "WH BU"))
    assert ways(plan)["WH"] == "trunk leg-L"
    again = fan_out(plan, section="leg-L", trunk="trunk")
    assert again == cue_lead()
    with pytest.raises(NotAllowed):
        fan_out(plan, section="trunk", trunk="trunk")


def test_two_like_cores_of_one_leg_do_not_share_a_trunk_core():
    black = cable("l", "BK WH")
    two_black = black.evolve(cores=(black.cores[0], black.cores[1].evolve(colours=("BK",))))
    plan = choose_cable(one_to_two(), section="trunk", cable=cable("t", "BK"))
    plan = choose_cable(plan, section="leg-L", cable=two_black)
    assert integrity_problems(plan) == ()
    assert set(ways(plan).values()) == {"trunk leg-L", "leg-L"}


def test_a_leg_does_not_turn_back_at_the_split_into_another():
    with pytest.raises(NotAllowed):
        fan_out(cue_lead(), section="leg-R", trunk="leg-L")


def test_a_core_led_into_a_fanned_leg_leaves_the_spliced_one():
    plan = choose_cable(cue_lead(), section="leg-L", cable=cable("l", "WH BU"))
    plan = route(plan, conductor="WH", section="leg-R")
    joined = {it.id: [(run.section, run.core) for run in it.runs] for it in plan.conductors}
    assert joined["WH"] == [("trunk", "WH"), ("leg-R", "WH")]
    assert [("leg-L", "WH")] in joined.values()
    assert integrity_problems(plan) == ()


def test_shields_of_spliced_legs_join_the_trunk_shield():
    plan = choose_cable(one_to_two(), section="trunk", cable=cable("t", "WH RD", shields=(BRAID,)))
    for leg, core in (("leg-L", "WH"), ("leg-R", "RD")):
        plan = choose_cable(plan, section=leg, cable=cable(leg, core, shields=(BRAID,)))
    assert ways(plan)["SH"] == "trunk leg-L leg-R"


def test_route_leads_a_core_to_another_leg_or_ends_it_at_the_split():
    plan = route(cue_lead(), conductor="WH", section="leg-R")
    assert ways(plan)["WH"] == "trunk leg-R"
    assert ways(route(plan, conductor="WH", section="trunk"))["WH"] == "trunk"


def test_route_refuses_a_landed_core_and_a_leg_with_its_own_cable():
    plan = land(cue_lead(), end="L", conductor="WH", contact="T")
    with pytest.raises(LandedElsewhere):
        route(plan, conductor="WH", section="leg-R")
    plan = choose_cable(plan, section="leg-R", cable=cable("r", "RD GN"))
    with pytest.raises(OutOfReach, match="WH cannot go on in leg-R"):
        route(plan, conductor="WH", section="leg-R")


def test_a_way_that_was_chosen_stays_when_another_leg_changes():
    plan = route(cue_lead(), conductor="GN", section="leg-L")
    plan = choose_cable(plan, section="leg-R", cable=cable("r", "RD"))
    assert (ways(plan)["GN"], ways(plan)["RD"]) == ("trunk leg-L", "trunk leg-R")


def test_caps_move_with_their_core():
    plan = cap(cue_lead(), end="A", conductor="GN")
    plan = choose_cable(plan, section="trunk", cable=QUAD.evolve(id="same-again"))
    assert [(it.end, it.conductor) for it in plan.caps] == [("A", "GN")]


def test_length_is_set_and_zero_refused():
    assert set_length(cue_lead(), section="leg-L", length_mm=450).sections[1].length_mm == 450
    with pytest.raises(NotAllowed, match="length mm: input should be greater than 0"):
        set_length(cue_lead(), section="leg-L", length_mm=0)


def test_a_fanned_leg_follows_the_policy_of_its_trunk():
    plan = set_shield_policy(cue_lead(), section="leg-L", policy="isolated")
    assert [it.shield_policy for it in plan.sections] == ["isolated", None, None]
