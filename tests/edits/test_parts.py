"""Parts planned on a lead."""

import pytest

from planner.edits.parts import add_part, remove_part, set_after_joint
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
    assert not set_after_joint(plan, use="boot-2", after_joint=False).parts[1].after_joint


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
