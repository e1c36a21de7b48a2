"""The order of soldering at crowded ends: against the naive forms, all in the same run.

Cups at random places and heights, as near as 1.5 mm; one shield. The naive form of the room is all
directions of all joints with all bodies; that of the safest order is every room anew at each step,
from what has been measured; that of the clampings is the cost of each set of joints. Ratios of
time; no time is asserted. Growth: the power of n by which the time rises from the size before.
"""

import math
from statistics import median
from time import perf_counter

import numpy as np

from planner.dryfit import access
from planner.dryfit.access import joints_at, ranks_of, terminals_at
from planner.dryfit.clamping import fewest_clampings
from planner.dryfit.iron import DIRECTIONS, IRON_LENGTH_MM, IRON_RADIUS_MM, room_at, ways_in
from planner.dryfit.order import best_order, needs_of, safest_order
from planner.dryfit.scene import Scene
from planner.geometry.segments import segment_distances
from tests.dryfit.all_orders import AllOrders
from tests.dryfit.crowds import crowd, site

SIZES = (5, 8, 12, 25, 37, 64, 128, 256)
MOST_FOR_SETS = 8
MOST_FOR_ALL_PAIRS = 64
ROUNDS = 3


def room_of_all_pairs(joints, terminals):
    """Measure the room in every direction of every joint beside every body."""
    scene = Scene((*terminals, *(party for joint in joints for party in joint.parties)))
    count = len(scene.radius)
    for joint in joints:
        tip = np.repeat(joint.mouth + ways_in() * joint.metal_mm / 2, count, axis=0)
        handle = tip + np.repeat(ways_in() * IRON_LENGTH_MM, count, axis=0)
        start, end = np.tile(scene.start, (DIRECTIONS, 1)), np.tile(scene.end, (DIRECTIONS, 1))
        distance = segment_distances(tip, handle, start, end).reshape(DIRECTIONS, count)
        (distance - scene.radius - IRON_RADIUS_MM).min(axis=1)


def safest_anew(room, ranks):
    """Return the smallest room of the safest order, every room worked out anew at each step."""
    left, least = list(range(len(ranks))), math.inf
    while left:
        rows = np.minimum(room.made[left], room.by[left][:, :, left].min(axis=2))
        top = max(ranks[joint] for joint in left)
        most = [
            row if ranks[joint] == top else -9999
            for joint, row in zip(left, rows.max(axis=1), strict=True)
        ]
        least = min(least, max(most))
        left.pop(int(np.argmax(most)))
    return int(least)


def timed(work, *args):
    """Return what work gives and its ms: the median of three runs, of one if it takes long."""
    times = []
    for _ in range(3):
        start = perf_counter()
        found = work(*args)
        times.append((perf_counter() - start) * 1000)
        if times[0] > 200:
            break
    return found, median(times)


def whole(its):
    """Work the order out with nothing kept from before."""
    access.soldering.cache_clear()
    access._room.cache_clear()
    return access.soldering(its, 0.0)


def measured(count, seed):
    """Return the ms of each part and of its naive form, and the order."""
    its = site(crowd(seed, count, shields=1))
    joints, terminals = joints_at(its, 0.0), terminals_at(its, 0.0)
    ranks = ranks_of(joints, (), "first")
    room, ms = timed(room_at, joints, terminals)
    parts = {"room": ms}
    safest, parts["safest"] = timed(safest_order, room, ranks)
    naive, parts["safest anew"] = timed(safest_anew, room, ranks)
    assert min(margin for _, margin in safest) == naive
    needs = needs_of(safest)
    found, parts["clampings"] = timed(fewest_clampings, room, needs, ranks)
    names = [joint.contact for joint in joints]
    order, _ = timed(best_order, names, room, ranks)
    _, parts["whole"] = timed(whole, its)
    if count <= MOST_FOR_ALL_PAIRS:
        _, parts["all pairs"] = timed(room_of_all_pairs, joints, terminals)
    if count <= MOST_FOR_SETS:
        fewest, parts["sets"] = timed(lambda: AllOrders(room, ranks).fewest_by_sets(needs))
        assert fewest == len(found.groups)
    return parts, order


def line(count, runs):
    """Return what is printed of one size, and the ms of the whole."""
    ms = {part: median(parts[part] for parts, _ in runs) for part in runs[0][0]}
    proved = sum(order.proof == "proved" for _, order in runs)
    again = "/".join(str(order.reclamps) for _, order in runs)
    text = (
        f"  n {count:>3}: {ms['whole']:8.2f} ms (room {ms['room']:.2f}, safest {ms['safest']:.2f}, "
    )
    text += f"clampings {ms['clampings']:.2f}), re-clampings {again}, proved {proved}/{len(runs)}, "
    text += f"safest against anew {ms['safest'] / ms['safest anew']:.2f}"
    for part, naive in (("room", "all pairs"), ("clampings", "sets")):
        text += f", {part} against {naive} {ms[part] / ms[naive]:.4f}" if naive in ms else ""
    return text, ms["whole"]


def main():
    earlier = None
    for count in SIZES:
        text, ms = line(count, [measured(count, seed) for seed in range(ROUNDS)])
        if earlier:
            before, then = earlier
            text += f", growth {math.log(ms / then) / math.log(count / before):.1f}"
        print(text)
        earlier = count, ms


if __name__ == "__main__":
    main()
