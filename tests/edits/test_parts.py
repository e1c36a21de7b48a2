"""Parts planned on a lead."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.dryfit.parts import proposals
from planner.dryfit.proposing import Proposal
from planner.edits.parts import add_part, remove_part, take_parts
from planner.edits.refusal import NotThere
from planner.edits.shapes import add_leg, remove_leg
from planner.model.integrity import integrity_problems
from planner.model.part import Part
from tests.edits.leads import cue_lead

BOOT = Part(id="boot", title="Boot", kind="boot", bore_mm=5, outside_mm=8, length_mm=18)


def test_a_part_is_carried_while_it_is_used():
    plan = add_part(cue_lead(), part=BOOT, at="A", comes_from="A")
    assert (plan.definitions.parts, integrity_problems(plan)) == ((BOOT,), ())
    assert remove_part(plan, use="boot") == cue_lead()


def test_a_second_use_gets_its_own_id():
    plan = add_part(cue_lead(), part=BOOT, at="A", comes_from="A")
    plan = add_part(plan, part=BOOT, at="split", comes_from="L", after_joint=True)
    assert [(use.id, use.after_joint) for use in plan.parts] == [("boot", False), ("boot-2", True)]


def test_a_part_goes_with_its_leg():
    plan = add_part(add_leg(cue_lead(), end="M"), part=BOOT, at="M", comes_from="M")
    assert remove_leg(plan, end="M").parts == ()


def test_unknown_places_are_refused():
    with pytest.raises(NotThere, match="no end or split Z"):
        add_part(cue_lead(), part=BOOT, at="Z", comes_from="A")
    with pytest.raises(NotThere, match="no end split"):
        add_part(cue_lead(), part=BOOT, at="A", comes_from="split")
    with pytest.raises(NotThere):
        remove_part(cue_lead(), use="boot")


# -- taking what is proposed ------------------------------------------------------------------

LABEL = BOOT.evolve(id="label", title="Label", kind="label")
WANTED = tuple(
    Proposal(part, at, "A", "why") for part in (BOOT, LABEL) for at in ("A", "L", "split")
)
some_wanted = st.lists(st.sampled_from(WANTED), max_size=8)


@given(some_wanted, some_wanted)
def test_never_the_same_part_twice_at_a_place(first, second):
    plan = take_parts(take_parts(cue_lead(), proposals=first), proposals=second)
    places = [(use.part, use.at) for use in plan.parts]
    assert places == list(dict.fromkeys((it.part.id, it.at) for it in (*first, *second)))
    assert integrity_problems(plan) == ()


@given(some_wanted)
def test_taking_again_changes_nothing_and_removing_all_gives_the_plan_back(wanted):
    before = cue_lead()
    plan = take_parts(before, proposals=wanted)
    assert take_parts(plan, proposals=wanted) == plan
    for use in plan.parts:
        plan = remove_part(plan, use=use.id)
    assert plan == before == cue_lead()


def test_what_is_taken_is_not_proposed_any_more():
    found = proposals(cue_lead(), [LABEL], end="A")
    assert [it.part for it in found] == [LABEL]
    assert proposals(take_parts(cue_lead(), proposals=found), [LABEL], end="A") == ()


def test_a_proposal_for_a_place_that_is_gone_is_refused():
    with pytest.raises(NotThere, match="no end or split Z"):
        take_parts(cue_lead(), proposals=[Proposal(BOOT, "Z", "A", "why")])
