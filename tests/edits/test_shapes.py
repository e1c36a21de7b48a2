"""The shapes of a lead, and legs added and removed."""

import pytest

from planner.edits.cables import choose_cable, fan_out
from planner.edits.landings import land
from planner.edits.refusal import NotAllowed, NotThere
from planner.edits.shapes import add_leg, one_to_many, one_to_one, one_to_two, remove_leg
from planner.model.integrity import integrity_problems
from tests.edits.leads import QUAD, cue_lead, landed, ways


@pytest.mark.parametrize("plan", [one_to_one(), one_to_two(), one_to_many(8), one_to_many(2)])
def test_every_shape_is_a_whole_tree(plan):
    assert integrity_problems(plan) == ()
    assert plan.sections[0].shield_policy == "source-end"


def test_one_to_two_has_the_usual_lengths_and_names():
    plan = one_to_two(title="Cue desk", order="SP-0417")
    assert [end.id for end in plan.ends] == ["A", "L", "R"]
    assert [it.length_mm for it in plan.sections] == [1200, 600, 600]
    assert [it.fan_of for it in plan.sections] == ["", "trunk", "trunk"]
    assert (plan.title, plan.order) == ("Cue desk", "SP-0417")


def test_one_to_many_numbers_its_legs():
    assert [end.id for end in one_to_many(3).ends] == ["A", "B1", "B2", "B3"]
    with pytest.raises(NotAllowed, match="A split has 2 to 32 legs, not 1"):
        one_to_many(1)


def test_a_bad_length_is_refused_by_a_sentence():
    with pytest.raises(NotAllowed, match="length mm"):
        one_to_one(length_mm=-1)


def test_a_new_leg_shares_the_cores_while_nothing_is_landed_at_the_legs():
    plan = add_leg(cue_lead(), end="M", name="monitor")
    assert ways(plan)["GN"] == "trunk leg-M"
    assert integrity_problems(plan) == ()


def test_a_new_leg_leaves_cores_alone_once_legs_are_landed():
    plan = land(cue_lead(), end="R", conductor="GN", contact="S")
    assert ways(add_leg(plan, end="M")) == ways(plan)


def test_adding_refuses_a_label_that_is_taken_and_a_lead_without_split():
    with pytest.raises(NotAllowed, match="There is L already"):
        add_leg(cue_lead(), end="L")
    with pytest.raises(NotThere, match="no such split"):
        add_leg(one_to_one(), end="C")


def test_removing_a_leg_takes_its_landings_and_leads_its_cores_on():
    plan = add_leg(cue_lead(), end="M")
    plan = land(plan, end="A", conductor="GN", contact="R3")
    plan = land(
        land(plan, end="L", conductor="WH", contact="T"), end="R", conductor="RD", contact="T"
    )
    plan = remove_leg(plan, end="L")
    assert landed(plan) == {"A:GN>R3", "R:RD>T"}
    assert set(ways(plan).values()) == {"trunk", "trunk leg-R", "trunk leg-M"}
    assert integrity_problems(plan) == ()


def test_a_leg_that_feeds_another_stays():
    plan = choose_cable(add_leg(cue_lead(), end="M"), section="leg-L", cable=QUAD)
    plan = fan_out(plan, section="leg-R", trunk="leg-L")
    with pytest.raises(NotAllowed, match="The cores of leg-L go on in leg-R"):
        remove_leg(plan, end="L")


def test_two_legs_and_the_trunk_stay():
    for end in ("L", "A"):
        with pytest.raises(NotAllowed):
            remove_leg(cue_lead(), end=end)
