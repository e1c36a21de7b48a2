"""The share of simulated samples that is understood, by a nodal solver of the tests' own.

16 to 600 ohm, common returns with wire of their own, apart, one driver, headsets; shell tied or
floating, unused contacts, fingers on open pairs; meter error up to 5 % + 1 ohm. The shares of many
more are printed by `python -m tests.bench identify`.
"""

import random

import pytest

from planner.proving.identifying import SampleReadings, identify
from tests.proving.identifying.devices import FINE, POOR, is_right, read_all, shown, simulated

AIM = 0.99


@pytest.mark.parametrize("seed", range(4))
@pytest.mark.parametrize("meter", [POOR, FINE], ids=["poor", "fine"])
def test_every_pair_read(meter, seed):
    rng = random.Random(seed)
    right = 0
    for _ in range(40):
        device = simulated(rng)
        right += is_right(device, identify(read_all(device, meter, rng)).found)
    assert right >= AIM * 40


@pytest.mark.parametrize("seed", range(3))
def test_both_ways_round_settle_the_microphone_too(seed):
    rng = random.Random(100 + seed)
    for _ in range(40):
        device = simulated(rng)
        found = identify(read_all(device, POOR, rng, both_ways=True))
        assert is_right(device, found.found)
        assert found.microphone is None or found.microphone.shown


@pytest.mark.parametrize("seed", range(4))
def test_some_pairs_unread(seed):
    """What is called settled is right; what is not has the truth near the best."""
    rng = random.Random(200 + seed)
    settled = right = near = 0
    for _ in range(40):
        device = simulated(rng)
        full = read_all(device, POOR, rng)
        some = tuple(it for it in full.readings if rng.random() < 0.7)
        found = identify(full.evolve(readings=some))
        settled += found.certain
        right += found.certain and is_right(device, found.found)
        ways = (found.found, *(rival.found for rival in found.rivals))
        near += not found.certain and any(is_right(device, way) for way in ways)
    assert right == settled
    assert near >= 0.9 * (40 - settled)


@pytest.mark.parametrize("seed", range(4))
def test_led_by_the_next_reading(seed):
    rng = random.Random(300 + seed)
    taken = pairs = 0
    for _ in range(4):
        device = simulated(rng)
        sample = SampleReadings(contacts=tuple(device.contacts), meter=POOR)
        found = identify(sample)
        while found.next_reading is not None:
            asked = (found.next_reading.one, found.next_reading.other)
            sample = sample.taken(shown(device, *asked, POOR, rng))
            found = identify(sample)
        assert found.certain
        assert is_right(device, found.found)
        taken += len(sample.readings)
        pairs += len(device.contacts) * (len(device.contacts) - 1) // 2
    assert taken < pairs


def test_an_unread_pair_never_makes_up_for_a_reading():
    """Taking a reading away never makes a wrong understanding settled."""
    rng = random.Random(7)
    for _ in range(6):
        device = simulated(rng)
        sample = read_all(device, POOR, rng)
        while sample.readings:
            found = identify(sample)
            assert not found.certain or is_right(device, found.found)
            gone = rng.choice(sample.readings)
            sample = sample.without(gone.one, gone.other)


def test_the_scoring_does_fail():
    """An understanding of another sample is not taken for right."""
    rng = random.Random(1)
    device, other = simulated(rng, "common"), simulated(rng, "separate")
    found = identify(read_all(device, FINE, rng)).found
    assert is_right(device, found)
    assert not is_right(other, found)
