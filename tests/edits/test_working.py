"""Rules of workmanship and what is assumed of the gear are changed by name."""

import pytest

from planner.edits.refusal import NotAllowed
from planner.edits.working import set_assumed, set_workmanship
from planner.model.plan import Plan


def test_a_rule_is_changed_and_the_others_stay():
    plan = set_workmanship(Plan(), sleeve_overlap="six-mm")
    assert plan.workmanship.sleeve_overlap == "six-mm"
    assert plan.workmanship.insulation_gap == "one-to-two"


def test_what_is_assumed_is_changed():
    assert set_assumed(Plan(), load_ohm=300).assumed.load_ohm == 300


def test_a_value_out_of_range_is_refused_with_its_name():
    with pytest.raises(NotAllowed, match="watch share"):
        set_workmanship(Plan(), watch_share=-1)
