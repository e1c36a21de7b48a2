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


def with_a_long_return(device, rng):
    """Let the wire of the return have 2 to 8 ohm."""
    device.resistors = [
        (one, other, rng.uniform(2, 8)) if other == "hub" and ohm <= 2 else (one, other, ohm)
        for one, other, ohm in device.resistors
    ]


def with_unequal_drivers(device, rng):
    at = next(at for at, (*_, ohm) in enumerate(device.resistors) if ohm > 10)
    one, other, ohm = device.resistors[at]
    device.resistors[at] = (one, other, ohm * rng.uniform(1.2, 2.5))


def with_drivers_of_few_ohm(device, rng):
    scale = rng.uniform(4, 8) / max(ohm for *_, ohm in device.resistors)
    device.resistors = [
        (one, other, ohm * scale if ohm > 10 else ohm) for one, other, ohm in device.resistors
    ]


@pytest.mark.parametrize("meter", [POOR, FINE], ids=["poor", "fine"])
@pytest.mark.parametrize(
    "change", [with_a_long_return, with_unequal_drivers, with_drivers_of_few_ohm]
)
def test_what_is_odd_is_never_settled_wrongly(change, meter):
    rng = random.Random(400)
    settled = 0
    for _ in range(25):
        device = simulated(rng)
        change(device, rng)
        found = identify(read_all(device, meter, rng))
        assert not found.certain or is_right(device, found.found)
        settled += found.certain
    assert settled >= 10


def test_the_scoring_does_fail():
    """An understanding of another sample is not taken for right."""
    rng = random.Random(1)
    device, other = simulated(rng, "common"), simulated(rng, "separate")
    found = identify(read_all(device, FINE, rng)).found
    assert is_right(device, found)
    assert not is_right(other, found)
