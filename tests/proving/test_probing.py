"""The probe plan: the fewest readings, and each planted fault is seen by one of them."""

import pytest

from planner.data import data_dir
from planner.files.plans import read_plan
from planner.proving.probing import METHODS, isolation_plans, probe_plan
from planner.wiring.graph import Wiring
from tests.proving.leads import bridges, joined_of, proved, reads_joined, some

DEMOS = sorted((data_dir("resources") / "demo").glob("*.json"))
ALL_BUT_NEAR = ("pairs", "against-the-rest", "gangs")


def within_reach(isolation, sweep, short):
    """Tell whether a plan says that it sees a bridge between two contacts."""
    if isolation.stop_after is None:
        return True
    numbers = {frozenset(sweep.net_of[it] for it in short)}
    near = {frozenset(sweep.net_of[it] for it in probe.pair) for probe in pairs_of(isolation)}
    return numbers <= near


def pairs_of(isolation):
    return [probe for probe in isolation.probes if probe.pair]


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
def test_a_sound_lead_passes_every_reading(path):
    plan = read_plan(path)
    wiring = Wiring(plan)
    for method in METHODS:
        found = probe_plan(plan, wiring, method)
        graph = joined_of(wiring, [it for net in found.continuity for it in (*net.one, *net.other)])
        for probe in (*found.continuity, *found.isolation.probes):
            assert reads_joined(graph, probe) is probe.joined


def test_every_planted_bridge_is_seen():
    """Two hundred random leads; a bridge at any end between any two contacts, by networkx."""
    seen = dict.fromkeys(ALL_BUT_NEAR, 0)
    planted = dict(seen)
    for seed in range(200):
        plan, wiring, sweep = proved(seed)
        graph = joined_of(wiring, sweep.contacts)
        plans = {it.method: it for it in isolation_plans(plan, wiring)}
        for short in some(seed, bridges(plan, sweep), 3):
            for method in ALL_BUT_NEAR:
                found = plans[method]
                if within_reach(found, sweep, short):
                    planted[method] += 1
                    seen[method] += any(
                        reads_joined(graph, it, shorts=[short]) for it in found.probes
                    )
    print(f"planted bridges seen: {seen} of {planted}")  # noqa: T201 - the count is the proof
    assert seen == planted
    assert min(planted.values()) > 300
