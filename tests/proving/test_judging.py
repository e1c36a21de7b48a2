"""A unit's readings against what it was held against; the record's verdict does not outdo them."""

import random
from itertools import combinations

import networkx as nx
import pytest

from planner.data import data_dir
from planner.files.plans import plan_digest, read_plan
from planner.proving.expected import expected_sweep
from planner.proving.judging import Judgement, Judging
from planner.proving.probing import isolation_plans
from planner.proving.reading import Meter, Reading, Readings
from planner.proving.units import (
    Asked,
    Expected,
    ExpectedPath,
    Listening,
    StopAt,
    Wiggle,
    asked_of,
    expected_of,
)
from planner.wiring.graph import Wiring
from tests.proving.leads import proved
from tests.proving.unit_samples import AT, PLAN, SWEEP, all_good, unit

LOOM = read_plan(data_dir("resources") / "demo" / "recording-rack-loom.json")
LOOM_SWEEP = expected_sweep(LOOM, Wiring(LOOM))
LOOM_ISOLATION = isolation_plans(LOOM, Wiring(LOOM))
TIPS = (("A", "T"), ("L", "T"))


def judged(**changes):
    return Judgement(unit(1, **changes))


def standings(found):
    return [path.standing for path in found.paths]


def changed(*readings):
    found = all_good()
    for reading in readings:
        found = found.taken(reading)
    return found


def between(pair, ohm=None, *, joined=True):
    return Reading(one=pair[0], other=pair[1], joined=joined, ohm=ohm)


def test_a_good_unit_passes():
    found = judged()
    assert standings(found) == ["good"] * 4
    assert (found.faults, found.unread, found.verdict) == (0, (), "passed")
    assert (len(found.open_pairs), len(found.all_pairs)) == (3, 3)


def test_the_nets_are_those_of_networkx():
    found = judged()
    graph = nx.Graph((path.one, path.other) for path in SWEEP.paths)
    graph.add_nodes_from(SWEEP.contacts)
    groups = {frozenset(net) for net in nx.connected_components(graph)}
    ours = {}
    for contact, number in found.net_of.items():
        ours.setdefault(number, set()).add(contact)
    assert {frozenset(net) for net in ours.values()} == groups


def what_a_meter_shows(sweep, shown):
    """Return the readings that judge a unit: each path, and the first contacts of every two nets.

    `shown` is a graph of contacts; the ohm are as expected, or 0.1.
    """
    pairs = [(path.one, path.other, path.ohm) for path in sweep.paths]
    pairs += [(one[0], other[0], None) for one, other in combinations(sweep.nets, 2)]
    found = []
    for one, other, ohm in pairs:
        joined = nx.has_path(shown, one, other)
        figure = (ohm or 0.1) if joined else None
        found.append(Reading(one=one, other=other, joined=joined, ohm=figure))
    return Readings(readings=tuple(found))


@pytest.mark.parametrize("seed", range(60))
def test_on_any_lead_one_open_or_one_bridge_is_seen_and_a_good_unit_passes(seed):
    """What a meter shows comes from networkx; one contact is cut off, or two are joined."""
    dice = random.Random(seed)
    _, _, sweep = proved(seed)
    good = nx.Graph()
    good.add_nodes_from(sweep.contacts)
    for net in sweep.nets:
        nx.add_path(good, net)
    cases = [(good, "passed")]
    if sweep.paths:
        cut, path = good.copy(), dice.choice(sweep.paths)
        cut.remove_edges_from([*cut.edges(path.other)])
        cases.append((cut, "failed"))
    if len(sweep.nets) > 1:
        short, nets = good.copy(), dice.sample(sweep.nets, 2)
        short.add_edge(dice.choice(nets[0]), dice.choice(nets[1]))
        cases.append((short, "failed"))
    for shown, verdict in cases:
        readings, expected = what_a_meter_shows(sweep, shown), expected_of(sweep)
        assert judged(readings=readings, expected=expected).verdict == verdict


def test_the_zero_of_the_meter_is_taken_off():
    (path,) = (it for it in SWEEP.paths if (it.one, it.other) == TIPS)
    shown = path.limit_ohm + 0.15
    assert standings(judged(readings=changed(between(TIPS, shown))))[0] == "good"
    bare = changed(between(TIPS, shown)).evolve(meter=Meter())
    assert standings(judged(readings=bare))[0] == "high"


@pytest.mark.parametrize(
    ("reading", "standing", "verdict"),
    [
        (between(TIPS, 3.0), "high", "failed"),
        (between(TIPS, joined=False), "open", "failed"),
        (between(TIPS), "heard", "passed"),
    ],
)
def test_a_path_by_its_reading(reading, standing, verdict):
    found = judged(readings=changed(reading))
    assert (standings(found)[0], found.verdict) == (standing, verdict)


def test_far_below_the_zero_of_the_meter_nothing_is_known():
    assert judged(readings=all_good(ohm=0.2, zero_ohm=0.3)).verdict == "passed"
    found = judged(readings=all_good(ohm=50.0, zero_ohm=100.0))
    assert set(standings(found)) == {"unread"}
    assert found.verdict == "unfinished"


def test_an_unread_path_is_unknown_and_not_open():
    found = judged(readings=all_good().without(*TIPS))
    assert (standings(found)[0], found.faults, found.verdict) == ("unread", 0, "unfinished")


def test_a_path_may_be_read_by_way_of_others():
    shells = (("L", "S"), ("R", "S"))
    readings = all_good().without(("A", "S"), ("R", "S")).taken(between(shells, 0.4))
    found = judged(readings=readings)
    assert sorted(standings(found)) == ["good", "good", "good", "through"]
    assert [path.standing for path in found.further] == ["good"]
    spoilt = judged(readings=readings.taken(between(shells, 9.0)))
    assert (sorted(standings(spoilt))[-1], spoilt.verdict) == ("unread", "failed")


def test_a_bridge_fails_the_unit():
    bridge = between((("A", "T"), ("A", "R")), 0.3)
    found = judged(readings=changed(bridge))
    assert (found.bridges, len(found.open_pairs), found.verdict) == ((bridge,), 2, "failed")


def test_without_a_stated_plan_every_two_nets_are_read_apart():
    apart = [it for it in all_good().readings if not it.joined]
    assert len(apart) == 3
    for reading in apart:
        found = judged(readings=all_good().without(*reading.pair))
        assert (len(found.pairs_left), found.stop) == (1, None)
        assert found.verdict == "unfinished"


def test_a_stated_plan_is_read_whole_and_no_more():
    one, other, third = (it for it in all_good().readings if not it.joined)
    pairs = tuple((it.one, it.other) for it in (one, other))
    asked = Asked(pairs=pairs, stop=(StopAt(end="A", mm=3.5),))
    short = all_good().without(*third.pair)
    found = judged(readings=short, asked=asked)
    assert (found.verdict, len(found.pairs_left), len(found.pairs_beyond)) == ("passed", 0, 1)
    assert (found.stop.mm_by_end, found.stop.left) == ({"A": 3.5}, 1)
    assert judged(readings=short.without(*other.pair), asked=asked).verdict == "unfinished"


def test_a_pair_is_read_between_any_contacts_of_its_nets():
    (reading,) = (it for it in all_good().readings if it.pair == {("A", "T"), ("A", "R")})
    elsewhere = Reading(one=("L", "T"), other=("R", "T"), joined=False)
    readings = all_good().without(*reading.pair).taken(elsewhere)
    assert judged(readings=readings).verdict == "passed"


# -- against the plan itself ----------------------------------------------------------------------


def test_a_record_of_the_plan_as_it_is_does_not_set_its_own_limits():
    """A limit of 1e9 ohm in a record is nothing to the plan; 9 kilohm is too high."""
    lax = expected_of(SWEEP)
    lax = lax.evolve(paths=tuple(it.evolve(limit_ohm=1e9) for it in lax.paths))
    record = unit(1, readings=all_good(ohm=9000.0), expected=lax)
    assert Judgement(record).verdict == "passed"
    found = Judging(PLAN).judged(record)
    assert (found.by_plan, found.verdict) == (True, "failed")
    assert set(standings(found)) == {"high"}


def test_a_record_of_the_plan_as_it_is_does_not_ask_for_less():
    paths = Readings(readings=tuple(it for it in all_good().readings if it.joined))
    record = unit(1, readings=paths, asked=Asked())
    assert Judgement(record).verdict == "passed"
    found = Judging(PLAN).judged(record)
    assert (found.verdict, len(found.pairs_left)) == ("unfinished", 3)


def test_of_a_plan_that_has_changed_what_is_recorded_holds():
    found = Judging(PLAN.evolve(revision=2)).judged(unit(1))
    assert (found.by_plan, found.verdict) == (False, "passed")


@pytest.mark.parametrize("method", ["pairs", "gangs-of-near"])
def test_a_loom_is_read_to_the_stop_line_of_the_plan(method):
    """An older line that keeps no pairs is read with those of the plan itself."""
    sweep, (isolation,) = LOOM_SWEEP, [it for it in LOOM_ISOLATION if it.method == method]
    joined = [Reading(one=it.one, other=it.other, joined=True, ohm=0.4) for it in sweep.paths]
    asked = sorted(tuple(sorted(pair)) for pair in isolation.pairs)
    apart = [Reading(one=one, other=other, joined=False) for one, other in asked]
    fields = {"plan_digest": plan_digest(LOOM), "expected": expected_of(sweep), "wiggle": ()}
    readings = Readings(readings=(*joined, *apart))
    record = unit(1, readings=readings, isolation=method, **fields)
    judging = Judging(LOOM)
    found = judging.judged(record)
    assert (found.verdict, found.stop.left) == ("passed", len(found.pairs_beyond))
    # Gangs cover pairs beyond the line besides.
    assert 0 < found.stop.left <= isolation.stop_after.left
    assert method != "pairs" or found.stop.left == isolation.stop_after.left
    assert found.stop.mm_by_end == isolation.stop_after.mm_by_end
    less = judging.judged(record.evolve(readings=readings.without(*apart[-1].pair)))
    assert (less.verdict, len(less.pairs_left)) == ("unfinished", 1)
    assert judging.judged(record.evolve(isolation="gangs")).verdict == "unfinished"
    kept = Judgement(record.evolve(asked=asked_of(isolation)))
    assert (kept.verdict, kept.stop) == ("passed", found.stop)


def test_what_broke_when_last_bent_is_not_passed():
    broken = Wiggle(end="L", state="broken", at=AT)
    found = judged(wiggle=(broken,))
    assert (found.broken_ends, found.verdict) == (("L",), "failed")
    assert judged(wiggle=(broken, broken.evolve(state="steady"))).verdict == "passed"


@pytest.mark.parametrize("answer", ["otherwise", "not-heard"])
def test_what_sounded_otherwise_is_not_passed(answer):
    heard = Listening(tone="in-phase", heard=answer)
    found = judged(listening=(heard,))
    assert (found.heard_otherwise, found.verdict) == (("in-phase",), "failed")


@pytest.mark.parametrize("verdict", ["failed", "unfinished"])
def test_a_worse_verdict_of_the_record_stays(verdict):
    assert judged(verdict=verdict).verdict == verdict


def test_held_against_nothing_it_can_t_pass():
    assert judged(expected=Expected()).verdict == "unfinished"


def test_readings_of_contacts_that_it_does_not_know_are_left_alone():
    path = ExpectedPath(one=("A", "T"), other=("L", "T"), limit_ohm=1.1)
    found = judged(expected=Expected(contacts=TIPS, paths=(path,)))
    assert (standings(found), found.bridges, found.all_pairs) == (["good"], (), frozenset())
