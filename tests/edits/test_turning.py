"""Taking the best turn: one edit, the plug turned and cores in each other's place."""

from dataclasses import replace

import pytest

from planner.dryfit.turning import Exchange, best_turn
from planner.edits.refusal import NotThere
from planner.edits.turning import apply_turning
from planner.model.plan import Cap
from planner.wiring.graph import Wiring
from tests.dryfit.looms import fanned, loom
from tests.dryfit.plugs import end_plan
from tests.edits.leads import landed, ways

EXITS = [(1.0, 0.0), (-1.0, 0.0)]
CUPS = [(3.0, 0.0), (-3.0, 0.0)]


@pytest.fixture
def plan():
    return end_plan(EXITS, CUPS, turn_deg=20.0, back=(0, 1))


@pytest.fixture
def turning(plan):
    return best_turn(plan, Wiring(plan), "B")


def exchanged(turning, *, everywhere):
    """Return the turning with both cores in each other's place, as a change of the given one."""
    exchanges = (Exchange("w0", "w1", everywhere), Exchange("w1", "w0", everywhere))
    fields = {name: getattr(turning, name) for name in type(turning).__slots__}
    swaps = (("w0", "c1"), ("w1", "c0"))
    return type(turning)(**fields | {"exchanges": exchanges, "swaps": swaps})


def test_plug_is_turned_and_nothing_else(plan, turning):
    after = apply_turning(plan, turning=turning)
    assert after.end_by_id["B"].turn_deg == turning.turn_deg != 20.0
    assert after.landings == plan.landings


def test_what_is_best_already_changes_nothing(plan, turning):
    again = apply_turning(plan, turning=turning)
    assert apply_turning(again, turning=turning) is again


def test_cores_on_one_net_change_at_this_end(plan, turning):
    after = apply_turning(plan, turning=exchanged(turning, everywhere=False))
    assert landed(after) == {"A:w0>c0", "A:w1>c1", "B:w0>c1", "B:w1>c0"}


def test_cores_that_take_each_others_part_change_at_all_ends(plan, turning):
    after = apply_turning(plan, turning=exchanged(turning, everywhere=True))
    assert landed(after) == {"A:w0>c1", "A:w1>c0", "B:w0>c1", "B:w1>c0"}


def test_a_cap_goes_with_the_part(plan, turning):
    kept = tuple(it for it in plan.landings if (it.end, it.conductor) != ("A", "w0"))
    capped = plan.evolve(landings=kept, caps=(Cap(end="A", conductor="w0"),))
    after = apply_turning(capped, turning=exchanged(turning, everywhere=True))
    assert after.caps == (Cap(end="A", conductor="w1"),)
    assert landed(after) == {"A:w0>c1", "B:w0>c1", "B:w1>c0"}


def test_a_sleeve_stays_at_its_contact(plan, turning):
    sleeved = tuple(it.evolve(sleeved=(it.end, it.contact) == ("B", "c1")) for it in plan.landings)
    after = apply_turning(
        plan.evolve(landings=sleeved), turning=exchanged(turning, everywhere=False)
    )
    assert {it.contact for it in after.landings if it.sleeved} == {"c1"}


def test_landings_keep_their_order(plan, turning):
    after = apply_turning(plan, turning=exchanged(turning, everywhere=True))
    assert [(it.end, it.conductor) for it in after.landings] == [
        (it.end, it.conductor) for it in plan.landings
    ]


def test_pairs_change_their_legs_of_a_fan_with_caps_and_sleeves_left_in_place():
    plan = fanned(loom(2, 2))
    landings = tuple(
        it.evolve(sleeved=(it.end, it.contact) == ("A1", "c1"))
        for it in plan.landings
        if (it.end, it.conductor) != ("A1", "s0")
    )
    plan = plan.evolve(landings=landings, caps=(Cap(end="A1", conductor="s0"),))
    pairs = [("w0", "w2"), ("w1", "w3"), ("w2", "w0"), ("w3", "w1"), ("s0", "s1"), ("s1", "s0")]
    exchanges = tuple(Exchange(*pair, everywhere=True) for pair in pairs)
    turning = replace(best_turn(plan, Wiring(plan), "B"), exchanges=exchanges)
    after = apply_turning(plan, turning=turning)
    assert ways(after) == {
        "w0": "s leg2", "w1": "s leg2", "s0": "s leg2",
        "w2": "s leg1", "w3": "s leg1", "s1": "s leg1",
    }  # fmt: skip
    assert {it for it in landed(after) if it[0] == "A"} == {
        "A1:w2>c0", "A1:w3>c1", "A2:w0>c2", "A2:w1>c3", "A2:s0>c5"
    }  # fmt: skip
    assert after.caps == (Cap(end="A1", conductor="s1"),)
    assert [it.conductor for it in after.landings if it.sleeved] == ["w3"]


def test_an_end_that_is_gone_is_refused(plan, turning):
    renamed = plan.evolve(
        ends=(plan.ends[0], plan.ends[1].evolve(id="C")), landings=(), sections=()
    )
    with pytest.raises(NotThere):
        apply_turning(renamed, turning=turning)
