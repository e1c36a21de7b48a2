"""The order of soldering: set, moved, best, and what is refused."""

import pytest

from planner.edits.refusal import NotAllowed, NotThere
from planner.edits.soldering import move_joint, set_solder_order, take_best_order
from planner.model.workmanship import Workmanship
from tests.dryfit.crowds import crowd


def order(plan):
    return plan.end_by_id["B"].solder_order


def test_an_order_is_set_and_taken_back():
    plan = set_solder_order(crowd(0, 3), end="B", contacts=("c2", "c0"))
    assert order(plan) == ("c2", "c0")
    assert order(set_solder_order(plan, end="B", contacts=())) == ()


def test_setting_the_same_order_changes_nothing():
    plan = set_solder_order(crowd(0, 3), end="B", contacts=("c2",))
    assert set_solder_order(plan, end="B", contacts=("c2",)) is plan


@pytest.mark.parametrize(
    ("contacts", "refusal", "why"),
    [
        (("c9",), NotThere, "no contact c9"),
        (("c0", "c1", "c0"), NotAllowed, "twice"),
        (("c3",), NotAllowed, "no joint"),
    ],
)
def test_an_order_of_what_is_not_there_is_refused(contacts, refusal, why):
    with pytest.raises(refusal, match=why):
        set_solder_order(crowd(0, 3, unlanded=1), end="B", contacts=contacts)


@pytest.mark.parametrize(
    ("rule", "contacts", "refused"),
    [
        ("last", ("c2", "c0"), True),
        ("last", ("c0", "c1", "c2"), False),
        ("last", ("c2",), True),
        ("last", ("c0",), False),
        ("first", ("c0",), True),
        ("first", ("c2", "c0"), False),
        ("free", ("c0", "c2"), False),
    ],
)
def test_a_shield_is_not_moved_against_the_rule(rule, contacts, refused):
    plan = crowd(0, 3, shields=1, workmanship=Workmanship(shield_joint=rule))
    if refused:
        with pytest.raises(NotAllowed, match=f"soldered {rule}"):
            set_solder_order(plan, end="B", contacts=contacts)
    else:
        assert order(set_solder_order(plan, end="B", contacts=contacts)) == contacts


@pytest.mark.parametrize(
    ("to", "expected"), [(1, "c2 c0 c1"), (2, "c0 c2 c1"), (9, "c0 c1 c2"), (-1, "c2 c0 c1")]
)
def test_a_joint_is_moved_to_a_place_counted_from_one(to, expected):
    plan = set_solder_order(crowd(0, 3), end="B", contacts=("c0", "c1", "c2"))
    assert " ".join(order(move_joint(plan, end="B", contact="c2", to=to))) == expected


def test_moving_fixes_the_order_that_was_worked_out():
    plan = take_best_order(crowd(1, 4), end="B")
    moved = move_joint(crowd(1, 4), end="B", contact=order(plan)[0], to=1)
    assert order(moved) == order(plan)


def test_a_contact_with_no_joint_is_not_moved():
    with pytest.raises(NotAllowed, match="no joint"):
        move_joint(crowd(0, 2, unlanded=1), end="B", contact="c2", to=1)


def test_the_best_order_names_every_joint_once_and_taken_twice_changes_nothing():
    plan = take_best_order(crowd(1, 5), end="B")
    assert sorted(order(plan)) == ["c0", "c1", "c2", "c3", "c4"]
    assert take_best_order(plan, end="B") is plan


def test_an_end_with_nothing_landed_keeps_its_empty_order():
    assert order(take_best_order(crowd(0, 2).evolve(landings=()), end="B")) == ()


def test_an_end_that_is_not_there_is_refused():
    with pytest.raises(NotThere, match="no end Z"):
        take_best_order(crowd(0, 2), end="Z")
