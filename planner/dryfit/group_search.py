"""The placings of whole groups worth turning to their best, over all turns of the plug."""

from collections.abc import Iterator, Sequence

import numpy as np

from planner.dryfit.alike import Alike
from planner.dryfit.board import Board, Placing
from planner.dryfit.branching import WORST, Score
from planner.dryfit.exchanging import FlatEnd, flat_end, tabled
from planner.dryfit.grouping import Peers
from planner.dryfit.regrouping import (
    all_placings,
    count_placings,
    good_units,
    improved_units,
    near_moves,
    scores_of,
    shortest_units,
)
from planner.dryfit.seats import Seats
from planner.dryfit.watch import Watch
from planner.geometry.turning import Index, crossing_sweep

# Of so few cores all crossings at a turn are kept.
MOST_TABLED = 16
# Up to so many placings (four pairs have 384) each is looked at.
MOST_PLACINGS = 1500
# At how many turns placings are looked for: up to so many cores.
TURNS = ((20, 72), (64, 36), (128, 12))
FEWEST_TURNS = 8
# The turns with the best first finds are searched again, from so many shaken placings.
CAREFUL = 6
AGAIN = 4
# How many of the finds are made better by the exact count over all turns, up to so many cores.
POLISHED = 2
MOST_POLISHED_CORES = 24
MOST_ROUNDS = 20


def turns_for(cores: int) -> int:
    """Return at how many turns placings of so many cores are looked for."""
    return next((turns for most, turns in TURNS if cores <= most), FEWEST_TURNS)


def group_placings(
    seats: Seats, peers: Sequence[Peers], turns: Sequence[float], watch: Watch
) -> tuple[list[Placing], bool]:
    """Return placings, the best last, and whether every placing was looked at.

    They are ranked by the fewest crossings that each has at any turn, an exact count, then by the
    best of what it gives at the turns tried.
    """
    members = (tuple(core for it in each.units for core in it.members) for each in peers)
    board = Board(seats, [Alike(cores, everywhere=True) for cores in members])
    every = count_placings(peers) <= MOST_PLACINGS
    find = _every_placing if every else _searched
    scores = find(board, peers, turns, watch.part(0.0, 0.7))
    ranked, part = [], watch.part(0.7, 0.8)
    for done, (placing, score) in enumerate(scores.items()):
        some = part.part(done / len(scores), (done + 1) / len(scores))
        ranked.append((fewest_crossings(seats, placing, some), score, placing))
    ranked.sort(reverse=True)
    found = [placing for _, _, placing in ranked]
    if not every and len(seats.cores) <= MOST_POLISHED_CORES:
        found = _polished(seats, peers, found, watch.part(0.8, 1.0))
    return found, every


def fewest_crossings(seats: Seats, placing: Sequence[int], watch: Watch) -> int:
    """Return the fewest crossings of a placing over the full turn."""
    return int(crossing_sweep(seats.exits, seats.cups[list(placing)], watch).counts.min())


def _every_placing(
    board: Board, peers: Sequence[Peers], turns: Sequence[float], watch: Watch
) -> dict[Placing, Score]:
    """Return all placings, each with its best score at any of the turns."""
    every = all_placings(peers, len(board.seats.cores))
    best = [WORST] * len(every)
    for part, end in _ends(board, turns, watch):
        best = list(map(min, best, scores_of(end, every, part)))
    return dict(zip(map(tuple, every.tolist()), best, strict=True))


def _searched(
    board: Board, peers: Sequence[Peers], turns: Sequence[float], watch: Watch
) -> dict[Placing, Score]:
    """Return the good placings found at the turns, those of the best turns with more care."""
    found: dict[Placing, Score] = {}
    ends: list[tuple[Score, int, FlatEnd, Index]] = []
    stay = np.arange(len(board.seats.cores))

    def keep(placing: Sequence[int], score: Score) -> None:
        found[tuple(placing)] = min(score, found.get(tuple(placing), WORST))

    for part, end in _ends(board, turns, watch.part(0.0, 0.7)):
        starts = shortest_units(end, peers, part), ends[-1][3] if ends else stay
        placing, score = improved_units(end, peers, min(starts, key=end.score), part)
        keep(placing.tolist(), score)
        ends.append((score, len(ends), end, placing))
    ends.sort(key=lambda it: it[:2])
    for done, (_, _, end, placing) in enumerate(ends[:CAREFUL]):
        part = watch.part(0.7 + 0.3 * done / CAREFUL, 0.7 + 0.3 * (done + 1) / CAREFUL)
        keep(*good_units(end, peers, placing, AGAIN, part))
    return found


def _ends(board: Board, turns: Sequence[float], watch: Watch) -> Iterator[tuple[Watch, FlatEnd]]:
    """Yield the end at each turn, with the watch over the work there."""
    for done, turn_deg in enumerate(turns):
        part = watch.part(done / len(turns), (done + 1) / len(turns))
        part(0.0)
        end = flat_end(board, turn_deg, part)
        yield part, tabled(end, part) if len(end.exits) <= MOST_TABLED else end


def _polished(
    seats: Seats, peers: Sequence[Peers], found: list[Placing], watch: Watch
) -> list[Placing]:
    """Add what moves of units make of the best placings, by the exact count over all turns.

    Windows of turn with few crossings may lie between the turns tried.
    """
    better = []
    for done, placing in enumerate(found[-POLISHED:]):
        part = watch.part(done / POLISHED, (done + 1) / POLISHED)
        fewest, again = _fewer(seats, peers, placing, part)
        better.append((-fewest, done, again))
    return list(dict.fromkeys([*found, *(it for _, _, it in sorted(better))][::-1]))[::-1]


def _fewer(
    seats: Seats, peers: Sequence[Peers], placing: Placing, watch: Watch
) -> tuple[int, Placing]:
    """Return the fewest crossings, and a placing with them that no move of units betters."""
    best = fewest_crossings(seats, placing, watch.part(0.0, 0.0)), placing
    for done in range(MOST_ROUNDS):
        if best[0] == 0:
            break
        part = watch.part(done / MOST_ROUNDS, done / MOST_ROUNDS)
        near = _near(best[1], peers)
        better = min((fewest_crossings(seats, it, part), it) for it in near)
        if better[0] >= best[0]:
            break
        best = better
    return best


def _near(placing: Placing, peers: Sequence[Peers]) -> Iterator[Placing]:
    start = np.array(placing, dtype=np.intp)
    for moved, at in near_moves(start, peers, range(len(start))):
        for cores, places in zip(moved, at, strict=True):
            near = start.copy()
            near[cores] = places
            yield tuple(near.tolist())
