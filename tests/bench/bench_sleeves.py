"""The least set of joints to sleeve: against all subsets, and against networkx's approximation.

Risk graphs of joints in rows, as in flat shells: neighbours in a row, across and aslant are at risk
by a share; at 1.0 all of them are, which is the worst case. Ratios of time and of how many sleeves,
each from the same run; no time is asserted.
Growth: the power of n by which the time rises from one size to the next.
"""

import math
import random
from itertools import combinations
from statistics import mean, median
from time import perf_counter

import networkx as nx
from networkx.algorithms.approximation import min_weighted_vertex_cover

from planner.geometry.covering import smallest_cover

SIZES = (5, 8, 12, 16, 25, 37, 64, 128, 256)
MOST_FOR_SUBSETS = 16
SHARES = (0.1, 0.25, 0.5, 1.0)
ROUNDS = 9


def rows(count, share, seed):
    """Return pairs at risk of joints in rows: two to 25 joints, then three, then four."""
    luck = random.Random(seed)
    across = math.ceil(count / (2 if count <= 25 else 3 if count <= 64 else 4))
    place = [(index // across, index % across) for index in range(count)]
    near = {(0, 1), (1, 0), (1, -1)}
    return [
        (one, other)
        for one, other in combinations(range(count), 2)
        if (place[other][0] - place[one][0], place[other][1] - place[one][1]) in near
        and luck.random() < share
    ]


def by_subsets(count, pairs):
    """Return the smallest cover by trying all subsets of all joints, the smallest first."""
    for size in range(count + 1):
        for chosen in combinations(range(count), size):
            if all(one in chosen or other in chosen for one, other in pairs):
                return chosen
    return ()


def by_networkx(_count, pairs):
    """Return networkx's cover, at most twice as large as it need be."""
    return min_weighted_vertex_cover(nx.Graph(pairs))


def ours(_count, pairs):
    """Return our cover."""
    return smallest_cover(pairs).chosen


def timed(work, count, pairs):
    """Return the median ms of five runs, and the size of the cover."""
    times = []
    for _ in range(5):
        start = perf_counter()
        found = work(count, pairs)
        times.append((perf_counter() - start) * 1000)
        if times[0] > 200:
            break
    return median(times), len(found)


def measured(count, share):
    """Return for each way its median ms and mean size, and how many covers of ours are proved."""
    graphs = list(dict.fromkeys(tuple(rows(count, share, seed)) for seed in range(ROUNDS)))
    ways = {"ours": ours, "networkx": by_networkx}
    if count <= MOST_FOR_SUBSETS:
        ways["subsets"] = by_subsets
    found = {}
    for name, work in ways.items():
        runs = [timed(work, count, pairs) for pairs in graphs]
        found[name] = median(ms for ms, _ in runs), mean(size for _, size in runs)
    proved = sum(smallest_cover(pairs).verdict == "proved" for pairs in graphs)
    return found, f"{proved}/{len(graphs)}"


def main():
    for share in SHARES:
        print(f"  neighbours at risk by a share of {share}")
        earlier = None
        for count in SIZES:
            found, proved = measured(count, share)
            (ms, size), (its_ms, its_size) = found["ours"], found["networkx"]
            line = f"    n {count:>3}: {ms:7.3f} ms, {size:5.1f} sleeves, proved {proved}"
            line += f", networkx time {ms / its_ms:5.2f}"
            line += f" sleeves {size / its_size:.3f}" if its_size else ""
            if "subsets" in found:
                all_ms, all_size = found["subsets"]
                line += f", subsets time {ms / all_ms:.4f} sleeves {size - all_size:+.1f}"
            if earlier:
                before, then = earlier
                line += f", growth {math.log(ms / then) / math.log(count / before):.1f}"
            print(line)
            earlier = count, ms


if __name__ == "__main__":
    main()
