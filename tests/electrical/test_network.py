"""Resistance from contact to contact against networkx on a network built in another way."""

import gc
import math
import weakref
from itertools import combinations

import pytest

from planner.electrical import network
from planner.electrical.network import network_of
from planner.electrical.resistance import ohm_per_km
from planner.model.plan import Landing, Run
from planner.wiring.graph import Wiring
from tests import building
from tests.building import lead
from tests.electrical.leads import plain_network, plain_ohm, random_lead, spots

OHM_PER_M = ohm_per_km(building.cable(["RD"]).cores[0]) / 1000


def measured(plan, one, other):
    return network_of(plan, Wiring(plan)).ohm(one, other)


def plain(wires, **more):
    return lead({"A": building.PHONES, "B": building.PHONES_IN}, wires, **more)


def ohm_of(plan, unknown_ohm=None):
    def ohm(section, core):
        part = plan.part_of(Run(section=section.id, core=core))
        if part is None:
            return unknown_ohm
        return ohm_per_km(part, plan.assumed.temperature_c) * section.length_mm / 1e6

    return ohm


def differs(found, expected):
    apart = expected == math.inf
    return found is not None if apart else found != pytest.approx(expected, rel=1e-6, abs=1e-12)


def test_against_networkx():
    """`networkx.resistance_distance`, component by component, on 100 random leads."""
    wrong = pairs = 0
    for seed in range(100):
        plan = random_lead(seed)
        wiring = Wiring(plan)
        graph, node = plain_network(plan, ohm_of(plan))
        for one, other in list(combinations(spots(plan), 2))[:: 1 + seed % 7]:
            pairs += 1
            found = network_of(plan, wiring).ohm(one, other)
            wrong += differs(found, plain_ohm(graph, node[one], node[other]))
    print(f"path resistance against networkx: {wrong} of {pairs} differ")  # noqa: T201 - the count is the proof
    assert (wrong, pairs > 1000) == (0, True)


def test_not_known_exactly_where_an_unknown_run_matters():
    """What is unknown is tried at many values: the answer stands where none of them shows."""
    wrong = pairs = hidden = 0
    for seed in range(60):
        plan = random_lead(seed, unknown=0.4)
        wiring = Wiring(plan)
        trials = [plain_network(plan, ohm_of(plan, ohm)) for ohm in (1e-3, 0.1, 30.0)]
        for one, other in list(combinations(spots(plan), 2))[:: 1 + seed % 5]:
            tried = [plain_ohm(graph, node[one], node[other]) for graph, node in trials]
            stands = tried[2] < math.inf and tried[0] == pytest.approx(tried[2], rel=1e-6)
            found = network_of(plan, wiring).ohm(one, other)
            pairs += 1
            hidden += not stands and tried[2] < math.inf
            wrong += differs(found, tried[0] if stands else math.inf)
    print(f"unknown runs: {wrong} of {pairs} differ, {hidden} not known")  # noqa: T201 - the count is the proof
    assert (wrong, hidden > 200) == (0, True)


def test_a_core_of_its_length():
    assert measured(plain(["RD A.T B.T"]), ("A", "T"), ("B", "T")) == pytest.approx(0.9 * OHM_PER_M)


def test_two_cores_in_parallel_are_half():
    plan = plain(["RD A.T B.T", "BU A.T B.T"])
    assert measured(plan, ("A", "T"), ("B", "T")) == pytest.approx(0.45 * OHM_PER_M)


def test_two_cores_joined_at_one_end_are_in_series():
    plan = plain(["RD A.T B.T", "BU A.R B.T"])
    assert measured(plan, ("A", "T"), ("A", "R")) == pytest.approx(1.8 * OHM_PER_M)


def test_a_link_joins_without_resistance():
    plan = plain(["RD A.T B.T"], links=["A T R"])
    assert measured(plan, ("A", "T"), ("A", "R")) == 0
    assert measured(plan, ("A", "R"), ("B", "T")) == pytest.approx(0.9 * OHM_PER_M)


def test_a_fork_counts_the_way_between_two_ends_only():
    ends = {"A": building.PHONES, "L": (building.CUP, "L"), "R": (building.CUP, "R")}
    plan = lead(ends, ["WH A.S L.S R.S"])
    assert measured(plan, ("L", "S"), ("R", "S")) == pytest.approx(0.6 * OHM_PER_M)
    assert measured(plan, ("A", "S"), ("R", "S")) == pytest.approx(1.2 * OHM_PER_M)


def test_apart_or_not_chosen_is_not_known():
    plan = plain(["RD A.T B.T", "BU A.R B.R"])
    assert measured(plan, ("A", "T"), ("B", "R")) is None
    bare = plan.evolve(sections=tuple(it.evolve(cable="") for it in plan.sections))
    assert measured(bare, ("A", "T"), ("B", "T")) is None
    assert measured(bare, ("A", "no such"), ("nowhere", "T")) is None


def test_a_landing_that_is_left_out_of_the_wiring_does_not_conduct():
    plan = plain(["RD A.T B.T"])
    off = Landing(end="A", conductor="RD", contact="T")
    wiring = Wiring(plan, without=(off,))
    assert network_of(plan, wiring).ohm(("A", "T"), ("B", "T")) is None


def test_networks_are_made_once_and_let_go():
    plan = plain(["RD A.T B.T"])
    wiring = Wiring(plan)
    assert network.network_of(plan, wiring) is network.network_of(plan, wiring)
    gone = weakref.ref(wiring)
    del wiring
    gc.collect()
    assert gone() is None
