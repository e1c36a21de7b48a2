"""Identify simulated samples: share right, readings that are asked for, and ratios of time.

The samples are invented and solved by the tests' own nodal solver; meter error 5 % + 1 ohm and
0.5 % + 0.1 ohm, zero not taken off.
"""

import random
from collections import defaultdict
from statistics import mean, median
from time import perf_counter

import numpy as np

from planner.proving.identifying import SampleReadings, identify
from tests.proving.identifying.devices import FINE, POOR, is_right, read_all, shown, simulated

SAMPLES, LED = 500, 60
FRAME_MS = 16.7


def main():
    for meter, name in ((POOR, "5 % + 1 ohm"), (FINE, "0.5 % + 0.1 ohm")):
        _all_pairs(meter, name)
        _unread(meter, name)
        _led(meter, name)
    _pace()


def _all_pairs(meter, name):
    rng = random.Random(1)
    for both in (False, True):
        found = [
            (device, identify(read_all(device, meter, rng, both_ways=both)))
            for device in (simulated(rng) for _ in range(SAMPLES))
        ]
        right = sum(is_right(device, it.found) for device, it in found)
        settled = sum(it.certain for _, it in found)
        ways = "both ways" if both else "one way"
        print(f"  {name}, all pairs {ways}: {right} of {SAMPLES} right, {settled} settled")


def _unread(meter, name):
    rng = random.Random(2)
    for share in (0.15, 0.3, 0.5):
        settled = right = near = 0
        for _ in range(SAMPLES):
            device = simulated(rng)
            full = read_all(device, meter, rng)
            some = tuple(it for it in full.readings if rng.random() >= share)
            it = identify(full.evolve(readings=some))
            ways = (it.found, *(rival.found for rival in it.rivals))
            settled += it.certain
            right += it.certain and is_right(device, it.found)
            near += not it.certain and any(is_right(device, way) for way in ways)
        print(
            f"  {name}, {share:.0%} of pairs unread: {settled} settled, {right} of them right; "
            f"of {SAMPLES - settled} not settled the truth is among the likeliest nine in {near}"
        )


def _led(meter, name):
    """Count readings until settled, and until the best is right and stays so."""
    rng = random.Random(3)
    taken, first, wrong = defaultdict(list), defaultdict(list), 0
    for _ in range(LED):
        device = simulated(rng)
        sample = SampleReadings(contacts=tuple(device.contacts), meter=meter)
        it, history = identify(sample), []
        while it.next_reading is not None:
            asked = (it.next_reading.one, it.next_reading.other)
            sample = sample.taken(shown(device, *asked, meter, rng))
            it = identify(sample)
            history.append(is_right(device, it.found))
        wrong += not history[-1]
        taken[len(device.contacts)].append(len(history))
        first[len(device.contacts)].append(len(history) - history[::-1].index(False) + 1
                                           if False in history else 1)  # fmt: skip
    for count in sorted(taken):
        pairs = count * (count - 1) // 2
        print(
            f"  {name}, led, {count} contacts: {mean(taken[count]):.1f} readings of {pairs} till "
            f"settled, {mean(first[count]):.1f} till right ({len(taken[count])} samples)"
        )
    print(f"  {name}, led: {wrong} of {LED} wrong")


def _pace():
    rng = random.Random(4)
    samples = [read_all(simulated(rng), POOR, rng) for _ in range(100)]
    full = median(_ms(lambda it=it: identify(it)) for it in samples)
    solve = median(_ms(lambda: np.linalg.inv(np.eye(5) + 0.1)) for _ in range(100))
    empty = SampleReadings(contacts=tuple("12345"))
    identify(empty)
    worst = median(_ms(lambda: identify(empty)) for _ in range(10))
    print(
        f"  all pairs read: {full:.1f} ms, against inverting one 5 by 5 matrix: {full / solve:.0f}"
    )
    print(
        f"  five contacts, nothing read, against one frame of {FRAME_MS} ms: {worst / FRAME_MS:.1f}"
    )


def _ms(work):
    start = perf_counter()
    work()
    return (perf_counter() - start) * 1000
