"""The iron's way in to each joint: as sampled, turned, mirrored, with more in the way."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.dryfit import iron
from planner.dryfit.access import (
    joints_at,
    none_hidden,
    soldering,
    soldering_at,
    terminals_at,
)
from planner.dryfit.bodies import terminal_bodies
from planner.model.connector import Contact, Terminal
from planner.model.plan import Conductor, Definitions, Landing, Run
from planner.model.workmanship import Workmanship
from planner.wiring.graph import Wiring
from tests.dryfit.crowds import crowd, moved, site

STEP_DEG = 360 / iron.DIRECTIONS
ENDS = {"seed": st.integers(0, 10**6), "count": st.integers(1, 7)}


def solder(plan):
    its = site(plan)
    return soldering(its, 0.0, plan.end_by_id["B"].solder_order)


def room(plan):
    its = site(plan)
    return iron.room_at(joints_at(its, 0.0), terminals_at(its, 0.0))


def bodies(plan):
    return [joint.bodies for joint in joints_at(site(plan), 0.0)]


def ways(plan):
    return {way.contact: way for way in solder(plan).access}


def ordered(plan, *contacts):
    return plan.evolve(
        ends=(plan.ends[0], plan.ends[1].evolve(solder_order=contacts)),
    )


def sampled_room_mm(joint, body, direction):
    """Return the room by points along the iron and along the body, at most 0.06 mm apart."""
    angle, rise = math.radians(direction * STEP_DEG), math.radians(iron.IRON_RISE_DEG)
    way = np.array(
        [math.cos(angle) * math.cos(rise), math.sin(angle) * math.cos(rise), math.sin(rise)]
    )
    reach = np.linspace(0, iron.IRON_LENGTH_MM, 201) + joint.metal_mm / 2
    points = np.array(joint.mouth) + reach[:, None] * way
    share = np.linspace(0, 1, 101)[:, None]
    others = np.array(body.start) * (1 - share) + np.array(body.end) * share
    nearest = np.sqrt(((points[:, None] - others[None]) ** 2).sum(axis=2)).min()
    return nearest - body.radius_mm - iron.IRON_RADIUS_MM


@pytest.mark.parametrize("seed", range(3))
def test_the_room_beside_each_joint_is_as_sampled(seed):
    plan = crowd(seed, 4)
    joints, found = joints_at(site(plan), 0.0), room(plan)
    for one, joint in enumerate(joints):
        for two, other in enumerate(joints):
            for direction in range(seed, iron.DIRECTIONS, 7):
                near = [sampled_room_mm(joint, body, direction) for body in other.bodies]
                expected = iron.ROOMY_MM if one == two else min(*near, iron.ROOMY_MM)
                assert found.by[one, direction, two] / 100 == pytest.approx(expected, abs=0.02)


@pytest.mark.parametrize("seed", range(3))
def test_the_room_beside_the_terminals_is_as_sampled(seed):
    plan = crowd(seed, 4, unlanded=3)
    its, found = site(plan), room(plan)
    terminals = [body for it in its.connector.contacts for body in terminal_bodies(it, 0.0)]
    for number, joint in enumerate(joints_at(its, 0.0)):
        others = [body for body in terminals if body.contact != joint.contact]
        for direction in range(seed, iron.DIRECTIONS, 5):
            near = min(sampled_room_mm(joint, body, direction) for body in others)
            expected = min(near, iron.ROOMY_MM)
            assert found.made[number, direction] / 100 == pytest.approx(expected, abs=0.02)


@given(**ENDS, shift=st.integers(1, 31))
@settings(max_examples=20, deadline=None)
def test_with_all_turned_the_order_stays_and_the_directions_turn(seed, count, shift):
    plan, turn = crowd(seed, count), math.radians(shift * STEP_DEG)
    cos, sin = math.cos(turn), math.sin(turn)
    turned = moved(plan, lambda x, y: (x * cos - y * sin, x * sin + y * cos))
    was, now = solder(plan), solder(turned)
    assert now.order.contacts == was.order.contacts
    assert [way.direction_deg for way in now.access] == pytest.approx(
        [(way.direction_deg + shift * STEP_DEG) % 360 for way in was.access]
    )


@given(**ENDS)
@settings(max_examples=20, deadline=None)
def test_mirrored_the_order_stays_and_the_directions_are_mirrored(seed, count):
    plan = crowd(seed, count)
    was, now = solder(plan), solder(moved(plan, lambda x, y: (-x, y)))
    assert now.order.contacts == was.order.contacts
    assert [way.direction_deg for way in now.access] == [
        (180 - way.direction_deg) % 360 for way in was.access
    ]


@given(**ENDS)
@settings(max_examples=20, deadline=None)
def test_other_names_give_the_same_order(seed, count):
    plan = crowd(seed, count)
    connector = plan.definitions.connectors[0]
    contacts = tuple(it.evolve(id=f"n{it.id}") for it in connector.contacts)
    renamed = plan.evolve(
        landings=tuple(it.evolve(contact=f"n{it.contact}") for it in plan.landings),
        definitions=Definitions(
            connectors=(connector.evolve(contacts=contacts),), cables=plan.definitions.cables
        ),
    )
    assert solder(renamed).order.contacts == tuple(f"n{it}" for it in solder(plan).order.contacts)


@given(**ENDS)
@settings(max_examples=20, deadline=None)
def test_contacts_listed_the_other_way_give_the_same_room(seed, count):
    plan = crowd(seed, count)
    connector = plan.definitions.connectors[0]
    listed = connector.evolve(contacts=tuple(reversed(connector.contacts)))
    definitions = plan.definitions.evolve(connectors=(listed,))
    assert solder(plan.evolve(definitions=definitions)).order.best_mm == solder(plan).order.best_mm


def with_contact(plan, **place):
    """Return the plan with one more contact, with nothing on it."""
    connector = plan.definitions.connectors[0]
    cup = Terminal(kind="cup", bore_mm=0.3, depth_mm=2, **place)
    contacts = (*connector.contacts, Contact(id="more", terminal=cup))
    more = plan.definitions.evolve(connectors=(connector.evolve(contacts=contacts),))
    return plan.evolve(definitions=more)


@given(**ENDS)
@settings(max_examples=20, deadline=None)
def test_an_unused_contact_far_away_changes_nothing(seed, count):
    """Far below: a wider or higher one would lift the end of the jacket and so all leads."""
    plan = crowd(seed, count)
    assert solder(with_contact(plan, x_mm=0, y_mm=0, z_mm=-60)) == solder(plan)


@given(**ENDS, x_mm=st.floats(-0.3, 0.3), y_mm=st.floats(-0.3, 0.3), below_mm=st.floats(0, 2))
@settings(max_examples=20, deadline=None)
def test_one_more_terminal_never_makes_room(seed, count, x_mm, y_mm, below_mm):
    plan = crowd(seed, count + 2)
    top = max(it.terminal.z_mm for it in site(plan).connector.contacts)
    more = with_contact(plan, x_mm=x_mm, y_mm=y_mm, z_mm=top - below_mm)
    # Not above the highest, so that no lead moves.
    assert bodies(more) == bodies(plan)
    assert (room(more).made <= room(plan).made).all()
    assert solder(more).order.best_mm <= solder(plan).order.best_mm


@given(**ENDS)
@settings(max_examples=20, deadline=None)
def test_one_more_joint_never_makes_room(seed, count):
    plan = crowd(seed, count + 1)
    less = plan.evolve(landings=plan.landings[:-1])
    assert solder(plan).order.best_mm <= solder(less).order.best_mm


@given(**ENDS, tails=st.integers(1, 3), rule=st.sampled_from(["first", "last"]))
@settings(max_examples=20, deadline=None)
def test_the_shields_come_first_or_last_as_the_rule_says(seed, count, tails, rule):
    plan = crowd(seed, count + tails, shields=tails, workmanship=Workmanship(shield_joint=rule))
    shields = [way.conductors[0].startswith("s") for way in solder(plan).access]
    assert shields == sorted(shields, reverse=rule == "first")


@given(**ENDS, data=st.data())
@settings(max_examples=20, deadline=None)
def test_what_the_plan_lists_comes_first(seed, count, data):
    plan = crowd(seed, count)
    listed = data.draw(st.lists(st.sampled_from([f"c{n}" for n in range(count)]), unique=True))
    found = solder(ordered(plan, *listed)).order.contacts
    assert found[: len(listed)] == tuple(listed)
    assert sorted(found) == sorted(f"c{n}" for n in range(count))


@given(**ENDS)
@settings(max_examples=20, deadline=None)
def test_the_quick_look_never_misses_a_hidden_joint(seed, count):
    plan = crowd(seed, count)
    hidden = any(way.margin_mm < 0 for way in solder(plan).access)
    assert not (hidden and none_hidden(site(plan), 0.0))


def test_the_quick_look_is_enough_at_an_open_end():
    assert none_hidden(site(crowd(0, 1)), 0.0)


def test_a_sleeve_takes_room_from_the_joints_beside_it():
    plan = crowd(0, 4)
    first, *others = plan.landings
    sleeved = plan.evolve(landings=(first.evolve(sleeved=True), *others))
    bare, covered = room(plan).by[1:, :, 0], room(sleeved).by[1:, :, 0]
    assert (covered <= bare).all()
    assert (bare - covered).max() >= 10


@pytest.mark.parametrize("seed", range(5))
def test_a_lone_joint_has_the_best_of_all_directions(seed):
    plan = crowd(seed, 1, unlanded=6)
    assert solder(plan).order.steps[0].cents == room(plan).made[0].max()


@pytest.mark.parametrize(("x", "y"), [(3, 0), (0, 3), (-2, 2), (1, -3)])
def test_with_room_all_round_the_iron_comes_from_outside(x, y):
    out_deg = math.degrees(math.atan2(y, x)) % 360
    found = ways(moved(crowd(0, 1), lambda *_: (x, y)))["c0"].direction_deg
    assert abs(found - out_deg) <= STEP_DEG / 2


def test_two_leads_in_one_contact_are_one_joint():
    plan = crowd(3, 3)
    cable = plan.definitions.cables[0]
    second = cable.cores[0].evolve(id="x", x_mm=0.3)
    both = plan.evolve(
        conductors=(*plan.conductors, Conductor(id="x", runs=(Run(section="s", core="x"),))),
        landings=(*plan.landings, Landing(end="B", conductor="x", contact="c0")),
        definitions=plan.definitions.evolve(cables=(cable.evolve(cores=(*cable.cores, second)),)),
    )
    assert ways(both)["c0"].conductors == ("w0", "x")
    assert len(solder(both).order.contacts) == 3


def test_what_is_nearest_is_named_and_nothing_where_there_is_room():
    assert ways(crowd(0, 1))["c0"].blocker == ""
    alone = moved(crowd(0, 1), lambda *_: (0, 0))
    assert ways(with_contact(alone, x_mm=1, y_mm=0, z_mm=0))["c0"].blocker == "contact more"
    assert ways(with_contact(alone, x_mm=9, y_mm=0, z_mm=0))["c0"].blocker == ""
    last = solder(ordered(crowd(4, 6), "c0", "c1", "c2", "c3", "c4", "c5")).access[-1]
    assert last.margin_mm < 0
    assert last.blocker.startswith(("contact c", "w"))


@pytest.mark.parametrize("count", [2, 5])
def test_joints_in_one_place_are_hidden_and_never_a_nan(count):
    heaped = moved(crowd(0, count), lambda x, y: (0.0, 0.0))
    found = solder(heaped)
    assert all(math.isfinite(way.margin_mm) for way in found.access)
    assert len(found.order.contacts) == count


def test_an_end_with_nothing_landed_has_no_order():
    bare = crowd(0, 2).evolve(landings=())
    assert soldering_at(bare, Wiring(bare), "B") is None
