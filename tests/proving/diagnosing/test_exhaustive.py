"""All smallest explanations are those of an exhaustive search, on leads of every shape."""

import random
from functools import cache
from itertools import combinations

import pytest

from planner.proving.diagnosing.board import board_of
from planner.proving.diagnosing.mistakes import mistakes_of
from planner.proving.diagnosing.observed import observed
from planner.proving.diagnosing.search import Search
from planner.proving.diagnosing.state import sound
from planner.proving.reading import Reading, Readings
from planner.wiring.graph import Wiring
from tests.proving.diagnosing.exhaustive import Lead, fits
from tests.proving.diagnosing.leads import SAMPLES, any_lead

IN_FULL, IN_PART = 50, 15


@cache
def every_way(name):
    """Return the lead and the least cost of each way to hang together, in a fixed order."""
    sample = SAMPLES[name]
    its = Lead(sample.plan, sample.mistakes)
    return its, in_order(its.costs(sample.deepest))


def in_order(costs):
    """Return the costs in an order that does not hang on how sets are hashed."""
    return dict(sorted(costs.items(), key=lambda it: sorted(map(sorted, it[0]))))


def read(parts, contacts):
    """Return the pairs that are joined and those that are apart."""
    at = {contact: number for number, net in enumerate(parts) for contact in net}
    pairs = list(combinations(contacts, 2))
    return [(a, b, at[a] == at[b]) for a, b in pairs]


def explained(plan, taken):
    """Return the cost and the ways to hang together of all smallest explanations."""
    wiring = Wiring(plan)
    board = board_of(plan, wiring)
    rows = tuple(Reading(one=a, other=b, joined=joined) for a, b, joined in taken)
    seen, _ = observed(board, Readings(readings=rows))
    done = Search(seen, sound(board), mistakes_of(board, wiring)).run(6)
    assert done.whole
    return done.least, {parts_of(found.state) for found in done.found}


def parts_of(state):
    nets = {}
    for contact, net in zip(state.board.contacts, state.label, strict=True):
        nets.setdefault(net, set()).add(contact)
    return frozenset(map(frozenset, nets.values()))


def mismatches(name, count, *, part):
    """Return what the search and the exhaustive one answer otherwise on one of the samples."""
    return compared(SAMPLES[name].plan, *every_way(name), random.Random(name), count, part=part)


def compared(plan, its, costs, dice, count, *, part):
    """Return the readings of so many units that the two explain otherwise."""
    found = []
    for parts in (dice.choice(list(costs)) for _ in range(count)):
        taken = read(parts, its.contacts)
        if part:
            taken = dice.sample(taken, dice.randint(1, len(taken)))
        joined = [(a, b) for a, b, together in taken if together]
        apart = [(a, b) for a, b, together in taken if not together]
        fitting = {it: cost for it, cost in costs.items() if fits(it, joined, apart)}
        least = min(fitting.values())
        wanted = least, {it for it, cost in fitting.items() if cost == least}
        if explained(plan, taken) != wanted:
            found.append((joined, apart, wanted))
    return found


@pytest.mark.parametrize("name", SAMPLES)
def test_all_smallest_of_a_unit_read_in_full(name):
    assert mismatches(name, IN_FULL, part=False) == []


@pytest.mark.parametrize("name", SAMPLES)
def test_all_smallest_of_a_unit_read_in_part(name):
    assert mismatches(name, IN_PART, part=True) == []


@pytest.mark.parametrize("seed", range(40))
def test_all_smallest_of_any_lead(seed):
    """Leads wired and linked at random, their named mistakes taken as given; two faults in full."""
    plan = any_lead(seed)
    wiring = Wiring(plan)
    board = board_of(plan, wiring)
    mistakes = [
        {board.contacts[one]: board.contacts[other] for one, other in it.moves.items()}
        for it in mistakes_of(board, wiring)
    ]
    its, dice = Lead(plan, mistakes), random.Random(seed)
    costs = in_order(its.costs(2))
    for part in (False, True):
        assert compared(plan, its, costs, dice, 6, part=part) == []


def test_an_unknown_taken_as_open_is_caught():
    """What the comparison is worth: with unread pairs added as open it fails."""
    its, costs = every_way("line")
    plan, dice, other = SAMPLES["line"].plan, random.Random(3), 0
    for parts in dice.sample(list(costs), 30):
        taken = dice.sample(read(parts, its.contacts), 4)
        known = {(a, b) for a, b, _ in taken}
        unread = [pair for pair in combinations(its.contacts, 2) if pair not in known]
        as_open = [(a, b, False) for a, b in unread]
        other += explained(plan, taken + as_open) != explained(plan, taken)
    assert other > 20
