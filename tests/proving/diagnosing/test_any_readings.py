"""Whatever was read, of whatever plan, is borne: half-made plans, readings at random."""

import random
from itertools import combinations

import pytest

from planner.model.plan import End, Plan
from planner.proving.diagnosing import diagnose
from planner.proving.reading import Reading, Readings
from planner.wiring.graph import Wiring
from tests.proving.diagnosing.leads import FIVE, HEADPHONES, any_lead
from tests.proving.diagnosing.units import bench, read_all, spoiled


def at_random(plan, dice):
    """Return readings that hang together in no way at all (invented)."""
    contacts = [(end.id, it.id) for end in plan.ends for it in plan.connector_of(end.id).contacts]
    pairs = list(combinations(contacts, 2))
    taken = []
    for one, other in dice.sample(pairs, dice.randint(0, len(pairs))):
        joined = dice.random() < 0.4
        ohm = dice.choice([None, 0.0, 0.3, 45.0, 9e3]) if joined else None
        taken.append(Reading(one=one, other=other, joined=joined, ohm=ohm))
    return Readings(readings=tuple(taken))


@pytest.mark.parametrize("seed", range(20))
def test_readings_at_random_are_diagnosed(seed):
    plan, dice = any_lead(seed), random.Random(seed)
    readings = at_random(plan, dice)
    found = diagnose(plan, Wiring(plan), readings)
    assert all(
        it.words and it.look for explanation in found.explanations for it in explanation.faults
    )
    assert sum(it.cost for it in found.faults) >= found.cost
    if found.next_probe is not None:
        assert found.next_probe.pair[0] != found.next_probe.pair[1]


@pytest.mark.parametrize("plan", [Plan(), Plan(ends=(End(id="A"), End(id="B")))])
def test_a_plan_with_nothing_in_it(plan):
    readings = Readings(readings=(Reading(one=("A", "T"), other=("B", "T"), joined=True, ohm=1),))
    found = diagnose(plan, Wiring(plan), readings)
    assert (found.explanations, found.next_probe) == ((), None)


def test_what_no_fault_explains_is_said_and_read_again():
    """Ends that nothing joins, and yet they read joined."""
    plan = FIVE.plan.evolve(landings=())
    found = diagnose(plan, Wiring(plan), read_all(bench(FIVE.plan).sound))
    assert (found.verdict, found.explanations, found.proved) == ("faulty", (), False)
    assert found.remarks[0].startswith("No faults that the tool knows explain")
    assert found.next_probe.pair == (("A", "T"), ("B", "T"))


@pytest.mark.parametrize("sample", [FIVE, HEADPHONES])
@pytest.mark.parametrize("seed", range(4))
def test_the_order_of_records_does_not_matter(sample, seed):
    its, dice = bench(sample.plan), random.Random(seed)
    readings = read_all(spoiled(its, dice, 2))
    plan = sample.plan
    landings, conductors = list(plan.landings), list(plan.conductors)
    dice.shuffle(landings)
    dice.shuffle(conductors)
    other = plan.evolve(landings=tuple(landings), conductors=tuple(conductors))
    one, two = (diagnose(it, Wiring(it), readings) for it in (plan, other))
    assert one.cost == two.cost
    assert len(one.explanations) == len(two.explanations)
    assert told(one) == told(two)


def told(found):
    """Return what each explanation says of bridges, mistakes and opens, in any order."""
    return {
        frozenset((it.kind, frozenset(it.contacts)) for it in explanation.faults)
        for explanation in found.explanations
    }
