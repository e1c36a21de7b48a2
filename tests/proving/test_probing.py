"""The probe plan: the fewest readings, each planted fault is seen, and what can't be is told."""

import random
from itertools import combinations, product

import pytest

from planner.data import data_dir
from planner.files.plans import read_plan
from planner.model.plan import Link
from planner.proving.colouring import coloured
from planner.proving.expected import expected_sweep
from planner.proving.methods import METHODS
from planner.proving.probing import Probe, isolation_plans, probe_plan
from planner.wiring.graph import Wiring
from tests import building
from tests.building import lead
from tests.proving.leads import (
    bridges,
    broken_at,
    graph_of,
    many_nets,
    metered,
    proved,
    reads_joined,
    some,
    whole,
    within_reach,
)

DEMOS = sorted((data_dir("resources") / "demo").glob("*.json"))
each = pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
CORES = ("RD", "GN", "BU", "WH", "BK")
POLES = ("T", "R1", "R2", "R3", "S")


def demo(name):
    return read_plan(next(path for path in DEMOS if path.stem == name))


def plan_of(count):
    """Return a lead of so many nets from one five-pole plug to the other; the rest is linked."""
    wires = [f"{core} A.{pole} B.{pole}" for core, pole in zip(CORES, POLES, strict=True)][:count]
    rest = POLES[count:]
    links = [Link(end=end, contacts=(POLES[0], *rest)) for end in "AB"] if rest else []
    plan = lead({"A": building.BALANCED, "B": building.BALANCED_IN}, wires)
    return plan.evolve(links=tuple(links))


def bipartitions(count):
    """Yield every way to clip so many nets into two sides, both filled; none is left out.

    A reading that leaves a net out sees no more than one that has it on either side.
    """
    for rest in product((0, 1), repeat=count - 1):
        if any(rest):
            yield (0, *rest)


def seen_by(sides):
    """Return the pairs of nets that a reading between two sides tells apart."""
    return {pair for pair in combinations(range(len(sides)), 2) if sides[pair[0]] != sides[pair[1]]}


def fewest(readings, wanted):
    """Return how few of the readings see all that is wanted, by trying every choice."""
    useful = [seen & wanted for seen in readings if seen & wanted]
    for count in range(len(useful) + 1):
        if any(set().union(*chosen) >= wanted for chosen in combinations(useful, count)):
            return count
    return None


@each
def test_a_sound_lead_passes_every_reading(path):
    plan = read_plan(path)
    wiring = Wiring(plan)
    seen = whole(wiring, expected_sweep(plan, wiring))
    for method in METHODS:
        found = probe_plan(plan, wiring, method)
        for probe in (*found.continuity, *found.isolation.probes):
            assert reads_joined(seen, probe) is probe.joined


@each
def test_counts_are_those_of_the_formulas(path):
    plan = read_plan(path)
    wiring = Wiring(plan)
    sweep = expected_sweep(plan, wiring)
    nets = len(sweep.nets)
    counts = {it.method: it.count for it in isolation_plans(plan, wiring)}
    continuity = probe_plan(plan, wiring).continuity
    assert len(continuity) == len(sweep.contacts) - nets
    assert counts["pairs"] <= nets * (nets - 1) // 2
    assert counts["against-the-rest"] == nets - 1
    assert 2 ** (counts["gangs"] - 1) < nets <= 2 ** counts["gangs"]
    assert counts["gangs-of-near"] <= counts["gangs"]


@pytest.mark.parametrize("count", [2, 3, 4, 5])
def test_no_fewer_readings_see_every_bridge(count):
    """Brute force over every choice of readings of each kind, for so many nets."""
    plan = plan_of(count)
    found = {it.method: it.count for it in isolation_plans(plan, Wiring(plan))}
    every = set(combinations(range(count), 2))
    gangs = [seen_by(sides) for sides in bipartitions(count)]
    against = [{pair for pair in every if net in pair} for net in range(count)]
    assert found["pairs"] == fewest([{pair} for pair in every], every)
    assert found["against-the-rest"] == fewest(against, every)
    assert found["gangs"] == fewest(gangs, every)


def test_gangs_are_the_fewest_up_to_eight():
    """Kautz 1974: ceil(log2 k), by brute force over all splits of k nets in two."""
    for count in range(2, 9):
        every = set(combinations(range(count), 2))
        gangs = [seen_by(sides) for sides in bipartitions(count)]
        assert fewest(gangs, every) == (count - 1).bit_length()


def test_gangs_of_near_are_the_fewest():
    """Harary, Hsu, Miller 1977: ceil(log2 chi), by brute force on random graphs of risk."""
    dice = random.Random(3)
    for _ in range(60):
        count = dice.randint(2, 6)
        risks = {pair for pair in combinations(range(count), 2) if dice.random() < 0.6}
        gangs = [seen_by(sides) for sides in bipartitions(count)]
        bits = max(coloured(count, risks).count - 1, 0).bit_length()
        assert bits == fewest(gangs, risks)


@pytest.mark.parametrize("count", [2, 3, 4, 5])
def test_no_fewer_readings_see_every_break(count):
    """A break parts a net in two; every parting must be seen. Brute force over all choices."""
    pairs = list(combinations(range(count), 2))
    partings = list(bipartitions(count))
    sees = [
        {place for place, sides in enumerate(partings) if sides[one] != sides[other]}
        for one, other in pairs
    ]
    assert fewest(sees, set(range(len(partings)))) == count - 1


def test_every_planted_bridge_is_seen():
    """Two hundred random leads; a bridge at any end between any two contacts, by networkx."""
    planted, seen = dict.fromkeys(METHODS, 0), dict.fromkeys(METHODS, 0)
    for seed in range(200):
        plan, wiring, sweep = proved(seed)
        meter = whole(wiring, sweep)
        for isolation in isolation_plans(plan, wiring):
            reach = within_reach(isolation, plan, wiring, sweep)
            for short in some(seed, [it for it in bridges(plan, sweep) if reach(it)], 2):
                planted[isolation.method] += 1
                seen[isolation.method] += any(
                    reads_joined(meter, it, shorts=[short]) for it in isolation.probes
                )
    print(f"planted bridges seen: {seen} of {planted}")  # noqa: T201 - the count is the proof
    assert seen == planted
    assert min(planted.values()) > 200


def test_every_planted_bridge_of_a_large_lead_is_seen():
    """A 25-way D with its cores landed at random: there pairs stop at a line."""
    planted, seen, beyond = dict.fromkeys(METHODS, 0), dict.fromkeys(METHODS, 0), 0
    for seed in range(10):
        plan, wiring, sweep = many_nets(demo("recording-rack-loom"), seed)
        meter = whole(wiring, sweep)
        for isolation in isolation_plans(plan, wiring):
            reach = within_reach(isolation, plan, wiring, sweep)
            near = [it for it in bridges(plan, sweep) if reach(it)]
            beyond += len(bridges(plan, sweep)) - len(near)
            for short in some(seed, near, 4):
                planted[isolation.method] += 1
                seen[isolation.method] += any(
                    reads_joined(meter, it, shorts=[short]) for it in isolation.probes
                )
    print(f"of a large lead: {seen} of {planted}")  # noqa: T201 - the count is the proof
    assert seen == planted
    assert beyond > 0


def test_dropping_any_reading_of_isolation_misses_a_bridge():
    dropped = 0
    for seed in range(70):
        plan, wiring, sweep = proved(seed)
        nets = [net[0] for net in sweep.nets]
        for isolation in isolation_plans(plan, wiring):
            reach = within_reach(isolation, plan, wiring, sweep)
            shorts = [pair for pair in combinations(nets, 2) if reach(pair)]
            for left in isolation.probes:
                rest = [it for it in isolation.probes if it is not left]
                dropped += 1
                assert any(not any(tells(it, sweep, short) for it in rest) for short in shorts)
    print(f"readings dropped: {dropped}")  # noqa: T201 - the count is the proof
    assert dropped > 1000


def tells(probe, sweep, short):
    """Tell whether a probe has the two nets of a short on its two sides."""
    sides = [{sweep.net_of[it] for it in side} for side in (probe.one, probe.other)]
    one, other = (sweep.net_of[it] for it in short)
    return (one in sides[0] and other in sides[1]) or (one in sides[1] and other in sides[0])


def test_every_break_is_seen_and_dropping_any_reading_misses_one():
    """A contact is cut off from its net; by networkx."""
    planted = 0
    for seed in range(120):
        plan, wiring, sweep = proved(seed)
        probes = probe_plan(plan, wiring).continuity
        for contact in some(seed, [it for net in sweep.nets if len(net) > 1 for it in net], 3):
            broken = broken_at(wiring, sweep, contact)
            planted += 1
            assert any(not reads_joined(broken, it) for it in probes)
        for left in probes:
            broken = broken_at(wiring, sweep, left.other[0])
            assert all(reads_joined(broken, it) for it in probes if it is not left)
    assert planted > 300


def test_behind_a_break_no_method_sees_a_bridge():
    """Why isolation comes after continuity: the core on R1 is broken, R1 and R2 bridged at B."""
    plan = plan_of(5)
    wiring = Wiring(plan)
    graph = graph_of(wiring, expected_sweep(plan, wiring).contacts)
    graph.remove_node(("conductor", "GN"))
    short = (("B", "R1"), ("B", "R2"))
    broken = metered(graph)
    for isolation in isolation_plans(plan, wiring):
        assert not any(reads_joined(broken, it, shorts=[short]) for it in isolation.probes)
    assert not all(reads_joined(broken, it) for it in probe_plan(plan, wiring).continuity)


def test_before_continuity_exchanged_cores_show_as_a_bridge():
    """The other reason: R1 and R2 are exchanged at B, so A.R1 and B.R2 are joined; no bridge."""
    plan = plan_of(5)
    other = {"R1": "R2", "R2": "R1"}
    swapped = tuple(
        it.evolve(contact=other[it.contact]) if it.end == "B" and it.contact in other else it
        for it in plan.landings
    )
    meter = whole(Wiring(plan.evolve(landings=swapped)), expected_sweep(plan, Wiring(plan)))
    assert reads_joined(meter, Probe((("A", "R1"),), (("B", "R2"),), joined=False))
    assert not reads_joined(meter, Probe((("A", "R1"),), (("A", "R2"),), joined=False))


def test_pairs_go_by_risk():
    plan = demo("recording-rack-loom")
    gaps = [it.gap_mm for it in probe_plan(plan, Wiring(plan)).isolation.probes]
    assert gaps == sorted(gaps)


def test_the_stop_line_is_told_with_what_it_leaves_out():
    plan = demo("recording-rack-loom")
    by_pairs, rest, gangs, near = isolation_plans(plan, Wiring(plan))
    nets = len(expected_sweep(plan, Wiring(plan)).nets)
    assert by_pairs.stop_after.left == nets * (nets - 1) // 2 - by_pairs.count
    assert "2.06 mm at A" in by_pairs.stop_after.words
    assert all("farther apart than 2.06 mm" in it.unseen[0] for it in (by_pairs, near))
    assert (rest.stop_after, gangs.stop_after) == (None, None)


def test_clips_are_counted():
    plan = plan_of(5)
    found = {it.method: it.clips for it in isolation_plans(plan, Wiring(plan))}
    assert found == {"pairs": 0, "against-the-rest": 5, "gangs": 5, "gangs-of-near": 5}


def test_a_core_beside_another_is_told():
    wires = ["RD A.T B.T", "WH A.S B.S", "BK A.S B.S"]
    plan = lead({"A": building.PHONES, "B": building.PHONES_IN}, wires)
    told = probe_plan(plan, Wiring(plan)).unseen[0]
    assert "WH, BK" in told
    assert "RD" not in told


def test_a_joint_that_no_reading_reaches_is_told():
    plan = demo("cue-desk-headphone-lead")
    assert "A.S" in probe_plan(plan, Wiring(plan)).unseen[0]


def test_what_is_plugged_in_comes_off_first():
    for method in METHODS:
        found = probe_plan(plan_of(3), Wiring(plan_of(3)), method)
        assert found.caution.startswith("Unplug every end first")
        assert any("prove continuity first" in it for it in found.isolation.unseen)


def test_a_plan_without_contacts_has_nothing_to_probe():
    plan = lead({"A": building.PHONES, "B": building.PHONES_IN}, []).evolve(
        ends=(), sections=(), conductors=(), landings=()
    )
    for method in METHODS:
        found = probe_plan(plan, Wiring(plan), method)
        assert (found.continuity, found.isolation.probes) == ((), ())
