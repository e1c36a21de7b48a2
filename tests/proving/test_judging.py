"""A unit's readings against what it was held against; the record's verdict does not outdo them."""

import random
from itertools import combinations

import networkx as nx
import pytest

from planner.proving.judging import Judgement
from planner.proving.reading import Meter, Reading, Readings
from planner.proving.units import (
    Clipped,
    Expected,
    ExpectedPath,
    Listening,
    Wiggle,
    expected_of,
)
from tests.proving.leads import proved
from tests.proving.unit_samples import AT, SWEEP, all_good, unit

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
    assert (found.pairs_read, found.net_pairs) == (3, 3)


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
    assert (found.bridges, found.pairs_read, found.verdict) == ((bridge,), 2, "failed")


def test_isolation_that_was_not_read_at_all_is_not_passed():
    paths = Readings(readings=tuple(it for it in all_good().readings if it.joined))
    assert judged(readings=paths).verdict == "unfinished"


def test_clips_cover_every_pair_between_their_sides():
    nets = [net[0] for net in SWEEP.nets]
    paths = Readings(readings=tuple(it for it in all_good().readings if it.joined))
    one_off = [
        Clipped(one=(first,), other=tuple(nets[place + 1 :]), joined=False)
        for place, first in enumerate(nets[:-1])
    ]
    found = judged(readings=paths, clipped=tuple(one_off))
    assert found.pairs_read == len(list(combinations(nets, 2))) == 3
    assert found.verdict == "passed"
    joined = judged(readings=paths, clipped=(one_off[0].evolve(joined=True), one_off[1]))
    assert (joined.pairs_read, joined.verdict) == (1, "failed")


@pytest.mark.parametrize(("joined", "verdict"), [(True, "passed"), (False, "failed")])
def test_clips_on_two_contacts_of_one_net_are_to_be_joined(joined, verdict):
    path = SWEEP.paths[0]
    clip = Clipped(one=(path.one,), other=(path.other,), joined=joined)
    assert judged(clipped=(clip,)).verdict == verdict


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
    assert (standings(found), found.bridges, found.net_pairs) == (["good"], (), 0)
