"""Diagnosis of straight leads read in full: against the naive search, all in the same run.

The naive search tries every set of faults in turn, one more each round, and compares all readings
(that of the tests, which is the reference too). Beyond one fault at 16 contacts an end its time is
reckoned from the sets it would try. Ratios of time; no time is asserted. Then the comparison with
the exhaustive search on leads of every shape, thousands of units, mismatches counted.
"""

import random
from math import comb
from statistics import median
from time import perf_counter

from planner.proving.diagnosing import diagnose
from planner.proving.diagnosing.diagnose import explained
from planner.proving.diagnosing.observed import observed
from planner.proving.diagnosing.search import Search
from tests.proving.diagnosing.exhaustive import Lead
from tests.proving.diagnosing.leads import SAMPLES, straight
from tests.proving.diagnosing.test_exhaustive import mismatches
from tests.proving.diagnosing.units import bench, read_all, spoiled

SIZES = (8, 16, 24, 37, 64, 128)
FRAME_MS = 1000 / 60
MOST_TRIED = 5_000


def naive_ms(its, planted):
    """Return the ms of trying every set of faults: measured where it is short, else reckoned."""
    lead = Lead(its.plan)
    none = frozenset()
    states = list(lead.more((lead.start, none, none, none)))
    sets = sum(comb(len(states), count) for count in range(1, planted + 1))
    tried = states[:MOST_TRIED]
    start = perf_counter()
    for state in tried:
        lead.parts(state)
    return (perf_counter() - start) * 1000 * sets / len(tried), sets


def row(count, planted):
    """Print one size and number of faults: the search alone, and the whole diagnosis."""
    its, dice = bench(straight(count)), random.Random(count)
    alone, whole, over = [], [], 0
    for _ in range(9 if count < 100 else 3):
        readings = read_all(spoiled(its, dice, planted))
        start = perf_counter()
        search = Search(observed(its.sound.board, readings)[0], its.sound, its.mistakes)
        found = explained(search).found
        alone.append((perf_counter() - start) * 1000)
        over += found[0].cost > planted
        start = perf_counter()
        diagnose(its.plan, its.wiring, readings)
        whole.append((perf_counter() - start) * 1000)
    naive, sets = naive_ms(its, planted)
    frame = median(whole) / FRAME_MS
    print(
        f"{count:4} contacts, {planted} planted: search {median(alone):7.1f} ms, whole "
        f"{median(whole):7.1f} ms ({frame:.2f} frames), naive {sets:.1e} sets, "
        f"{naive / median(alone):.1e} times as long; dearer than planted: {over}"
    )


def compared():
    """Print the mismatches with the exhaustive search."""
    for name, part in ((name, part) for name in SAMPLES for part in (False, True)):
        count = 100 if part else 400
        wrong = mismatches(name, count, part=part)
        print(f"{name:20} {count} units read in {'part' if part else 'full'}: {len(wrong)} wrong")


def main():
    """Run it all."""
    for count in SIZES:
        for planted in (1, 2, 3):
            row(count, planted)
    compared()


if __name__ == "__main__":
    main()
