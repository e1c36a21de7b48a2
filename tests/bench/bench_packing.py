"""Packing of bundles: an edit of one wire against a search from nothing and a naive optimiser.

The naive form presses one random arrangement after another, each by plain descent with a fixed step
in a loop of its own. It is left out above 64 wires, where it takes minutes. Ratios of times, and of
the bores that are found (below 1: ours is smaller); growth from one size to the next.
"""

import math
from statistics import median
from time import perf_counter

import numpy as np

from planner.dryfit import wires
from planner.geometry import packing, pressing

COUNTS = (5, 8, 12, 25, 37, 64, 128, 256)
NAIVE_MOST = 64
NAIVE_STARTS = 6
NAIVE_STEPS = 400


def bundle(count):
    """Return invented diameters in mm: three kinds of cores, one of them thicker by a tail."""
    return [(0.8, 1.0, 1.2)[index % 3] + 0.001 * index for index in range(count)]


def edited(diameters, turn):
    """Return the bundle with one wire changed: no two turns give the same bundle."""
    later = list(diameters)
    later[turn % len(later)] += 0.05 + 0.0001 * turn
    return later


def timed_ms(work):
    start = perf_counter()
    result = work()
    return result, (perf_counter() - start) * 1000


def warm_ms(diameters, search, rounds):
    """Return times of an edit: layouts for the count are known, this bundle is not."""
    packing.pack(diameters, search)
    return [
        timed_ms(lambda t=t: packing.pack(edited(diameters, t), search))[1] for t in range(rounds)
    ]


def cold_ms(diameters, search):
    """Return the time from nothing, layouts included."""
    packing._packed.cache_clear()
    pressing.layouts_of.cache_clear()
    return timed_ms(lambda: packing.pack(diameters, search))


def naive(diameters):
    """Return the diameter that restarts of a plain descent find."""
    radii, rng = np.array(diameters) / 2, np.random.default_rng(7)
    return min(_naive_once(radii, rng) for _ in range(NAIVE_STARTS))


def _naive_once(radii, rng):
    reach = 1.2 * math.sqrt(float((radii**2).sum()))
    places = rng.uniform(-reach, reach, (radii.size, 2)) / 2
    for step in range(NAIVE_STEPS):
        wall = reach * (1 - 0.15 * step / NAIVE_STEPS)
        places = places - 0.1 * _naive_slope(places, radii, wall)
    return packing.certified(places, 2 * radii).diameter_mm


def _naive_slope(places, radii, wall):
    slope = np.zeros_like(places)
    for index in range(radii.size):
        away = places[index] - places
        apart = np.hypot(*away.T) + 1e-12
        overlap = np.maximum(radii[index] + radii - apart, 0)
        overlap[index] = 0
        out = math.hypot(*places[index]) + 1e-12
        push = max(out + radii[index] - wall, 0)
        slope[index] = push * places[index] / out - (overlap / apart) @ away
    return slope


def answer_ms(diameters, rounds):
    """Return times of the question whether it goes in, as an edit asks it: bore with some room."""
    bore = 1.25 * packing.pack(diameters, "quick").diameter_mm
    turns = range(1000, 1000 + rounds)
    return [timed_ms(lambda t=t: wires.into_bore(edited(diameters, t), bore))[1] for t in turns]


def main():
    before = 0.0
    for count in COUNTS:
        diameters, rounds = bundle(count), 15 if count <= 64 else 5
        asked = median(answer_ms(diameters, rounds))
        warm = median(warm_ms(diameters, "quick", rounds))
        _, cold = cold_ms(diameters, "quick")
        best, thorough = cold_ms(diameters, "thorough")
        quick = packing.pack(diameters, "quick").diameter_mm
        said = (
            f"  {count:>3}: asked {asked:.2f} ms, edit {warm:.1f} ms, cold {cold:.1f} ms, "
            f"thorough {thorough:.0f} ms; edit against thorough {warm / thorough:.3f}, "
            f"bore {quick / best.diameter_mm:.3f}"
        )
        if count <= NAIVE_MOST:
            found, plain = timed_ms(lambda it=diameters: naive(it))
            said += (
                f"; against naive restarts: edit {warm / plain:.4f}, thorough "
                f"{thorough / plain:.3f}, bore {best.diameter_mm / found:.3f}"
            )
        growth = f"; growth {warm / before:.1f}" if before else ""
        print(said + growth)
        before = warm


if __name__ == "__main__":
    main()
