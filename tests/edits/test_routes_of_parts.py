"""From which end a part comes, as an edit."""

import pytest

from planner.edits.refusal import NotAllowed, NotThere
from planner.edits.routes_of_parts import set_route
from planner.model.integrity import integrity_problems
from tests.dryfit.threaded import lead, part, use

PLAN = lead("ABC", (4, 2, 2), (9, 9, 9), [part("p", 5)], [use("p", "Y", "A", after_joint=True)])


def test_a_part_is_planned_from_another_end():
    (moved,) = set_route(PLAN, use="p", comes_from="B", section="a").parts
    assert (moved.comes_from, moved.section, moved.after_joint) == ("B", "a", False)


@pytest.mark.parametrize(
    "wrong",
    [
        {"use": "q", "comes_from": "A"},
        {"use": "p", "comes_from": "Z"},
        {"use": "p", "comes_from": "A", "section": "z"},
    ],
)
def test_what_is_not_there_is_refused(wrong):
    with pytest.raises(NotThere):
        set_route(PLAN, **wrong)


def test_a_section_that_does_not_meet_the_place_is_refused():
    plan = PLAN.evolve(parts=(use("p", "B"),))
    with pytest.raises(NotAllowed):
        set_route(plan, use="p", comes_from="B", section="a")


def test_a_section_elsewhere_is_a_problem_of_the_file():
    plan = PLAN.evolve(parts=(use("p", "B", section="a"),))
    assert [it.where for it in integrity_problems(plan)] == ["parts[p].section"]
