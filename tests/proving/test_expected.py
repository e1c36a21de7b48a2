"""What a sound lead shows: who is joined, by how many ohm, and the limit of each path."""

import math
from itertools import combinations

import pytest

from planner.electrical.resistance import ohm_per_km
from planner.model.plan import Run
from planner.proving.expected import expected_sweep
from planner.proving.limits import RULES
from planner.wiring.graph import Wiring
from tests import building
from tests.building import lead
from tests.electrical.leads import plain_network, plain_ohm, random_lead

FIVE = ("T", "R1", "R2", "R3", "S")
CORES = ("RD", "GN", "BU", "WH", "BK")
OHM_PER_M = ohm_per_km(building.cable(["RD"]).cores[0]) / 1000
SPLIT = {"A": building.PHONES, "L": (building.CUP, "L"), "R": (building.CUP, "R")}


def sweep_of(plan):
    return expected_sweep(plan, Wiring(plan))


def five_pole():
    wires = [f"{core} A.{pole} B.{pole}" for core, pole in zip(CORES, FIVE, strict=True)]
    return lead({"A": building.BALANCED, "B": building.BALANCED_IN}, wires)


def plain(wires, **more):
    return lead({"A": building.PHONES, "B": building.PHONES_IN}, wires, **more)


def test_a_five_pole_balanced_lead_is_one_to_one_and_nothing_else():
    """4.4 mm plugs at both ends: common practice, no source."""
    found = sweep_of(five_pole())
    for one in found.contacts:
        for other in found.contacts:
            assert found.joined(one, other) == (one[0] != other[0] and one[1] == other[1])
    assert [(it.one, it.other) for it in found.paths] == [
        (("A", pole), ("B", pole)) for pole in FIVE
    ]
    assert not any(it.estimated for it in found.paths)


def test_a_path_between_contacts_that_are_apart_is_refused():
    with pytest.raises(ValueError, match="not joined"):
        sweep_of(five_pole()).path(("A", "T"), ("B", "S"))
    assert not sweep_of(five_pole()).joined(("A", "no such"), ("B", "S"))


def test_a_joined_return_is_one_net_of_three():
    found = sweep_of(lead(SPLIT, ["RD A.T L.T", "GN A.R R.T", "WH A.S L.S R.S"]))
    assert (("A", "S"), ("L", "S"), ("R", "S")) in found.nets
    assert len(found.paths) == sum(len(net) - 1 for net in found.nets) == 4
    between = found.path(("L", "S"), ("R", "S"))
    assert between.ohm == pytest.approx(0.6 * OHM_PER_M)


def test_a_link_joins_within_an_end_without_resistance():
    found = sweep_of(plain(["RD A.T B.T"], links=["A T R"]))
    linked = found.path(("A", "T"), ("A", "R"))
    assert (linked.ohm, linked.limit_ohm) == (0, 1)


def test_a_shield_counts_only_where_it_lands():
    policy = "source-end"  # what the plan states does not join anything by itself
    one_end = sweep_of(plain(["RD A.T B.T", "SH A.S B."], policy=policy))
    assert one_end.partners["A", "S"] == ()
    both = sweep_of(plain(["RD A.T B.T", "SH A.S B.S"], policy=policy))
    assert both.partners["A", "S"] == (("B", "S"),)


def test_a_shield_in_the_path_makes_it_an_estimate():
    found = sweep_of(plain(["RD A.T B.T", "SH A.S B.S", "BK A.S B.S", "SH1 A.R B."]))
    assert {it.one[1]: it.estimated for it in found.paths} == {"T": False, "S": True}


def test_the_limit_of_a_wire_that_is_not_known_is_flat():
    """IPC/WHMA-A-620 rev. A as quoted: 2 ohm, or 1 ohm plus the wire's own."""
    plan = plain(["RD A.T B.T"])
    known = sweep_of(plan).paths[0]
    assert (known.rule, known.limit_ohm) == ("over-wire", pytest.approx(1 + known.ohm))
    bare = plan.evolve(sections=tuple(it.evolve(cable="") for it in plan.sections))
    path = sweep_of(bare).paths[0]
    assert (path.ohm, path.limit_ohm, path.rule) == (None, 2.0, "flat")
    assert all("620" in RULES[it].source for it in (path.rule, known.rule))


def test_a_warm_lead_reads_more():
    """IEC 60028: 1.0786 at 40 C."""
    plan = plain(["RD A.T B.T"])
    warm = plan.evolve(assumed=plan.assumed.evolve(temperature_c=40))
    ratio = sweep_of(warm).paths[0].ohm / sweep_of(plan).paths[0].ohm
    assert ratio == pytest.approx(1.0786, abs=5e-5)


def plain_figures(plan, *, cores_only=False):
    """Return a function of two contacts that gives the resistance by networkx."""

    def ohm(section, core):
        if cores_only and core.startswith("SH"):
            return 1e7
        part = plan.part_of(Run(section=section.id, core=core))
        return ohm_per_km(part, plan.assumed.temperature_c) * section.length_mm / 1e6

    graph, node = plain_network(plan, ohm)
    return lambda one, other: plain_ohm(graph, node[one], node[other])


def test_every_path_of_random_leads_against_networkx():
    """`networkx.resistance_distance` on a network built in another way; Klein and Randic 1993."""
    paths = joined = shielded = 0
    for seed in range(80):
        plan = random_lead(seed)
        sweep, ohm = sweep_of(plan), plain_figures(plan)
        bare = plain_figures(plan, cores_only=True)
        for path in sweep.paths:
            paths += 1
            expected = ohm(path.one, path.other)
            assert path.ohm == pytest.approx(expected, rel=1e-6, abs=1e-12)
            by_shield = bare(path.one, path.other) > expected * (1 + 1e-5) + 1e-9
            assert path.estimated == by_shield
            shielded += by_shield
        for one, other in list(combinations(sweep.contacts, 2))[:: 1 + seed % 7]:
            joined += 1
            assert sweep.joined(one, other) == (ohm(one, other) < math.inf)
    assert (paths > 200, joined > 1000, shielded > 30) == (True,) * 3
