"""What a hidden joint's finding says and mends."""

from planner.services.checking import check_plan
from tests.checks.samples_fit import middle_joint_last
from tests.checks.samples_order import a_joint_between_walls


def hidden(plan):
    return [each for each in check_plan(plan, ()) if each.code == "joint-hidden"]


def test_a_better_order_is_the_mend_and_clears_it():
    plan = middle_joint_last()
    (finding,) = hidden(plan)
    assert "the iron would overlap it by" in finding.what
    assert finding.mend.startswith("Solder RD before ")
    assert finding.remedy.label == "Take the best order"
    assert hidden(finding.remedy.edit(plan)) == []


def test_where_no_order_helps_there_is_no_remedy():
    (finding,) = hidden(a_joint_between_walls())
    assert "hidden by pin P" in finding.what
    assert (finding.remedy, "no order of soldering helps" in finding.mend) == (None, True)


def test_with_no_order_of_its_own_the_plan_has_the_best_one():
    plan = middle_joint_last()
    free = plan.evolve(ends=(plan.ends[0].evolve(solder_order=()), *plan.ends[1:]))
    assert hidden(free) == []
