"""Steps that are moved: within what has to come before what, with the others as they were."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.dryfit.work import movable, steps
from planner.edits.ends import choose_connector
from planner.edits.refusal import NotThere
from planner.edits.settling import settled
from planner.edits.work import StepHeld, move_step
from planner.wiring.graph import Wiring
from tests.dryfit.work.leads import demo

PLAN = demo("cue-desk-headphone-lead")
STEPS = tuple(step.id for step in steps(PLAN, Wiring(PLAN)))


def order(plan):
    return [step.id for step in steps(plan, Wiring(plan))]


@settings(max_examples=40, deadline=None)
@given(st.lists(st.tuples(st.sampled_from(STEPS), st.integers(1, len(STEPS))), max_size=6))
def test_a_step_goes_where_it_is_put_or_is_held_and_the_others_keep_their_order(moves):
    plan = PLAN
    for step, to in moves:
        before, free = order(plan), movable(plan, Wiring(plan), step)
        assert before.index(step) + 1 in free
        if to in free:
            plan = move_step(plan, step=step, to=to)
            rest = [it for it in before if it != step]
            assert order(plan) == [*rest[: to - 1], step, *rest[to - 1 :]]
        else:
            with pytest.raises(StepHeld) as refused:
                move_step(plan, step=step, to=to)
            _check_held(plan, step, to, refused.value.by)


def _check_held(plan, step, to, by):
    """The step named is needed by the other one of the two, and stands in between."""
    needs = {it.id: it.needs for it in steps(plan, Wiring(plan))}
    place, other = order(plan).index(step) + 1, order(plan).index(by) + 1
    if to < place:
        assert by in needs[step]
        assert to <= other < place
    else:
        assert step in needs[by]
        assert place < other <= to


def test_the_refusal_names_both_steps_by_number():
    tin, solder = order(PLAN).index("A/tin") + 1, order(PLAN).index("A/solder/1") + 1
    with pytest.raises(StepHeld, match=f"Step {tin} has to come before step {solder}"):
        move_step(PLAN, step="A/tin", to=solder)


def test_a_number_beyond_the_list_is_its_end():
    sign = order(PLAN).index("prove/sign")
    assert sign == len(STEPS) - 1
    assert move_step(PLAN, step="prove/sign", to=900) == PLAN


def test_a_step_that_is_not_there():
    with pytest.raises(NotThere, match="A/tim"):
        move_step(PLAN, step="A/tim", to=3)


def test_a_step_where_it_is_changes_nothing():
    assert move_step(PLAN, step="A/tin", to=order(PLAN).index("A/tin") + 1) is PLAN


def test_an_order_forgets_the_steps_of_an_end_that_is_gone():
    plan = PLAN.evolve(step_order=("A/hold", "X/hold", "lead/cut", "split/twist", "prove/sweep"))
    assert settled(plan).step_order == ("A/hold", "lead/cut", "split/twist", "prove/sweep")


def test_an_order_outlives_another_plug():
    free = movable(PLAN, Wiring(PLAN), "A/hold")
    plan = move_step(PLAN, step="A/hold", to=free[0])
    other = choose_connector(plan, end="L", connector=PLAN.connector_of("R"))
    assert [it for it in order(other) if it.startswith("A/")] == [
        it for it in order(plan) if it.startswith("A/")
    ]
