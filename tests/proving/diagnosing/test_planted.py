"""Faults planted on larger leads: no dearer than planted; replayed, they give the readings."""

import random

import pytest

from planner.data import data_dir
from planner.files.plans import read_plan
from planner.proving.diagnosing.diagnose import diagnose, explained
from planner.proving.diagnosing.observed import observed
from planner.proving.diagnosing.repairing import least_cost, repaired
from planner.proving.diagnosing.search import Search
from tests.proving.diagnosing.leads import SAMPLES, straight
from tests.proving.diagnosing.units import bench, read_all, read_some, spoiled

DEMO = data_dir("resources") / "demo"


def search_of(its, readings):
    start = its.sound
    return Search(observed(start.board, readings)[0], start, its.mistakes)


def parts(label):
    """Return the sets of contacts with one label."""
    return {frozenset(at for at, it in enumerate(label) if it == net) for net in label}


def nets_of(readings, board):
    """Return the sets of contacts that readings of all pairs join, from the readings alone."""
    beside = {at: {at} for at in range(len(board.contacts))}
    for reading in readings.readings:
        one, other = board.number[reading.one], board.number[reading.other]
        if reading.joined:
            beside[one].add(other)
            beside[other].add(one)
    return {frozenset(nets) for nets in beside.values()}


@pytest.mark.parametrize(
    ("count", "units"), [(8, 24), (16, 18), (24, 12), (37, 9), (64, 3), (128, 1)]
)
def test_straight_leads(count, units):
    its, dice = bench(straight(count)), random.Random(count)
    for number in range(units):
        planted = 1 + number % 3
        check(its, spoiled(its, dice, planted), planted)


@pytest.mark.parametrize("name", ["cue-desk-headphone-lead", "recording-rack-loom"])
def test_demo_leads(name):
    its, dice = bench(read_plan(DEMO / f"{name}.json")), random.Random(name)
    for planted in (1, 2, 3):
        check(its, spoiled(its, dice, planted), planted)


def check(its, unit, planted):
    readings = read_all(unit)
    found = explained(search_of(its, readings)).found
    assert found
    for each in found:
        assert each.cost <= planted
        assert parts(each.state.label) == nets_of(readings, unit.board)


@pytest.mark.parametrize("name", SAMPLES)
def test_one_more_fault_raises_the_cost_by_one_at_most(name):
    its, dice = bench(SAMPLES[name].plan), random.Random(name)
    for _ in range(6):
        smallest = explained(search_of(its, read_all(spoiled(its, dice, 2)))).found[0]
        before, unit, board = smallest.cost, smallest.state, smallest.state.board
        slot = dice.randrange(len(board.place_of))
        end = board.at[board.end_of[unit.places[slot]]]
        for more in (unit.opened(slot), unit.bridged(*dice.sample(end, 2))):
            assert explained(search_of(its, read_all(more))).found[0].cost <= before + 1


@pytest.mark.parametrize("name", ["five", "headphones", "one to two"])
def test_one_more_reading_never_lowers_the_cost(name):
    its, dice = bench(SAMPLES[name].plan), random.Random(name)
    unit = spoiled(its, dice, 2)
    count = len(unit.board.contacts)
    pairs = [(a, b) for a in range(count) for b in range(a + 1, count)]
    dice.shuffle(pairs)
    costs = [
        explained(search_of(its, read_some(unit, pairs[:taken]))).found[0].cost
        for taken in range(0, len(pairs) + 1, 4)
    ]
    assert costs == sorted(costs)
    assert costs[-1] > 0


@pytest.mark.parametrize("count", [5, 12, 24])
def test_a_lead_wired_at_random_is_proved_by_the_closed_form(count):
    """The least cost is that of the formula, reached by mending step by step."""
    its, dice = bench(straight(count)), random.Random(count)
    order = list(range(count))
    dice.shuffle(order)
    unit = its.sound.permuted({count + it: count + order[it] for it in range(count)})
    search = search_of(its, read_all(unit))
    least = least_cost(search.seen, search.bases(2))
    assert [it.cost for it in repaired(search)] == [least] * len(repaired(search))
    assert 0 < least < count


@pytest.mark.parametrize("seed", range(12))
def test_the_closed_form_is_what_the_search_finds(seed):
    its, dice = bench(straight(5)), random.Random(seed)
    search = search_of(its, read_all(spoiled(its, dice, 1 + seed % 4)))
    least = least_cost(search.seen, search.bases(2))
    found = search.run(6).least
    assert least <= found
    if all(len(net) < 3 for net in parts(search.seen.group)):
        assert least == found


def test_a_lead_with_every_contact_open_or_joined_is_explained():
    its = bench(straight(12))
    broken = its.sound
    for slots in broken.board.slots_of:
        broken = broken.opened(slots[0])
    joined = its.sound
    for place in range(11):
        joined = joined.bridged(place, place + 1)
    for unit, cost in ((broken, 12), (joined, 11)):
        found = diagnose(its.plan, its.wiring, read_all(unit))
        assert (found.cost, found.proved, found.verdict) == (cost, True, "faulty")


def test_the_same_readings_give_the_same_diagnosis():
    its = bench(SAMPLES["five"].plan)
    readings = read_all(spoiled(its, random.Random(4), 3))
    turned = readings.evolve(readings=tuple(reversed(readings.readings)))
    assert diagnose(its.plan, its.wiring, readings) == diagnose(its.plan, its.wiring, turned)
