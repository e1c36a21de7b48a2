"""Crossings over the full turn, best turn, and placing of alike cores, against naive forms."""

import math
from itertools import combinations, permutations
from time import perf_counter

import numpy as np

from planner.dryfit.alike import Alike
from planner.dryfit.board import Board
from planner.dryfit.branching import WORST, best_placing
from planner.dryfit.exchanging import _moved, flat_end, improved, shortest_placing
from planner.dryfit.seats import Seats
from planner.dryfit.turning import best_turn
from planner.dryfit.watch import Watch
from planner.geometry.turning import crossing_sweep, do_cross, turned_points
from planner.wiring.graph import Wiring
from tests.dryfit.looms import loom
from tests.dryfit.plugs import crowded, end_plan, seats_of
from tests.dryfit.scoring import score_of

COUNTS = (5, 8, 12, 25, 37, 64, 128, 256)
SCAN = 3600
SAMPLE = 36
IDLE = Watch()


def _ms(work, rounds=1):
    best = math.inf
    for _ in range(rounds):
        start = perf_counter()
        work()
        best = min(best, (perf_counter() - start) * 1000)
    return best


def scan(exits, cups, turns):
    """The naive form: every pair counted anew at every turn."""
    first, second = np.triu_indices(len(exits), 1)
    counts = []
    for turn in turns:
        ends = turned_points(cups, turn)
        counts.append(do_cross(exits[first], ends[first], exits[second], ends[second]).sum())
    return counts


def every_placing(board, table, count):
    return min(score_of(board, table, placing) for placing in permutations(range(count)))


def all_exchanges_ms(end, placing):
    """The naive form of one round of search: every exchange, each placing scored anew."""
    pairs = list(combinations(range(len(placing)), 2))
    some = pairs[:SAMPLE]
    return _ms(lambda: [end.score(_moved(placing, pair)) for pair in some]) * len(pairs) / len(some)


def _growth(times, count):
    """Return how the time grows from the last count to this one, as a power of the count."""
    before = [known for known in times if known < count]
    if not before:
        return "     -"
    last = max(before)
    power = math.log(times[count] / times[last]) / math.log(count / last)
    return f"n^{power:4.1f}"


def _sweeps():
    print("crossings over the full turn, against a scan of 3600 turns (36 of them timed)")
    times = {}
    for count in COUNTS:
        exits, cups = (np.array(points) for points in crowded(count, count))
        times[count] = _ms(lambda: crossing_sweep(exits, cups), 5)  # noqa: B023 - called at once
        turns = np.linspace(0, 2 * np.pi, SAMPLE)
        naive = _ms(lambda: scan(exits, cups, turns)) * SCAN / SAMPLE  # noqa: B023
        print(
            f"  {count:3}: {times[count]:8.2f} ms, {naive / times[count]:7.1f} times as fast, "
            f"{_growth(times, count)}"
        )


def _turns():
    print("best turn of a fixed netlist, against measuring the gap at 3600 turns (36 timed)")
    times = {}
    for count in COUNTS:
        plan = end_plan(*crowded(count, count), groups=[str(core) for core in range(count)])
        wiring, site = Wiring(plan), seats_of(plan).site
        turns = np.linspace(0, 360, SAMPLE).tolist()
        times[count] = _ms(lambda: best_turn(plan, wiring, "B"))  # noqa: B023
        naive = _ms(lambda: [Seats(site).gap_mm(turn) for turn in turns]) * SCAN / SAMPLE  # noqa: B023
        print(
            f"  {count:3}: {times[count]:8.0f} ms, {naive / times[count]:7.1f} times as fast, "
            f"{_growth(times, count)}; one gap {naive / SCAN:.2f} ms"
        )


def _few():
    print("placing of few alike cores at one turn, against all placings")
    times = {}
    for count in (5, 6, 7, 8):
        seats = seats_of(end_plan(*crowded(count, count), colour="WH"))
        board = Board(seats, [Alike(tuple(range(count)), everywhere=True)])
        table = board.table(0.0, IDLE)
        times[count] = _ms(lambda: best_placing(board, table, WORST, IDLE), 3)  # noqa: B023
        naive = _ms(lambda: every_placing(board, table, count))  # noqa: B023
        print(
            f"  {count:3}: {times[count]:8.2f} ms, {naive / times[count]:7.1f} times as fast, "
            f"{_growth(times, count)}"
        )


def _many():
    print("placing of many at one turn (shortest, then exchanges), against one naive round")
    times = {}
    for count in COUNTS[2:]:
        seats = seats_of(end_plan(*crowded(count, count), colour="WH"))
        end = flat_end(Board(seats, [Alike(tuple(range(count)), everywhere=True)]), 0.0, IDLE)

        def work(end=end):
            return improved(end, shortest_placing(end, IDLE), IDLE)

        times[count] = _ms(work)
        naive = all_exchanges_ms(end, np.arange(count))
        print(
            f"  {count:3}: {times[count]:8.1f} ms, {naive / times[count]:7.1f} times as fast, "
            f"{_growth(times, count)}"
        )


def _whole():
    print("best turn with all cores alike, in all")
    for count in COUNTS[:6]:
        plan = end_plan(*crowded(count, count), colour="WH")
        found = None

        def work(plan=plan):
            nonlocal found
            found = best_turn(plan, Wiring(plan), "B")

        spent = _ms(work)
        print(f"  {count:3}: {spent / 1000:6.2f} s, {found.verdict}, {found.crossings} crossings")


def _pairs():
    print(
        "best turn where pairs take each other's place, against sweeping every placing (36 timed)"
    )
    for pairs in (3, 4, 8, 16, 32):
        plan, found = loom(pairs, pairs), None
        seats = seats_of(plan)

        def work(plan=plan):
            nonlocal found
            found = best_turn(plan, Wiring(plan), "B", free=True)

        spent, count = _ms(work), math.factorial(pairs) * 2.0**pairs
        naive = _ms(lambda: [seats.sweep(IDLE) for _ in range(SAMPLE)]) * count / SAMPLE  # noqa: B023
        fixed = int(seats.sweep(IDLE).counts.min())
        print(
            f"  {pairs:3}: {spent / 1000:6.2f} s, {naive / spent:8.2g} times as fast, "
            f"{found.verdict}, crossings {found.before_crossings} now, {fixed} turned, "
            f"{found.crossings} with pairs exchanged"
        )


def main():
    for part in (_sweeps, _turns, _few, _many, _whole, _pairs):
        part()
