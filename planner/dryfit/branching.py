"""The best placing of a few alike cores at one turn, by branch and bound."""

import math
from dataclasses import dataclass

import numpy as np

from planner.dryfit.board import Board, Placing, Table
from planner.dryfit.watch import Watch
from planner.geometry.segments import Array
from planner.geometry.turning import Index

# Crossings, less the gap in steps, length in mm: the least is the best.
Score = tuple[float, float, float]
# Crossings, gap in steps, length in mm.
Figures = tuple[float, float, float]
WORST: Score = (math.inf, math.inf, math.inf)
NODES_BETWEEN_LOOKS = 64
MOST_NODES = 20_000


@dataclass(frozen=True, slots=True)
class Placed:
    """The best placing with its score, or None and the score that none is better than.

    `proved` where all others were looked at or ruled out.
    """

    placing: Placing | None
    score: Score
    proved: bool


def as_score(crossings: float, steps: float, length_mm: float) -> Score:
    """Return the score of a placing with these figures."""
    return float(crossings), -float(steps), round(float(length_mm), 9)


def best_placing(board: Board, table: Table, above: Score, watch: Watch) -> Placed:
    """Return the best placing if its score is better than `above`.

    A part of a placing is given up where the fewest crossings, widest gap and shortest length that
    the cores left over could still add, each taken alone, give no better score than the best known.
    """
    search = _Search(board, table, above, watch)
    search.start()
    proved = search.nodes <= MOST_NODES
    if search.best is None:
        return Placed(None, above, proved)
    placing = list(range(len(board.seats.cores)))
    for arc in search.best:
        placing[board.core[arc]] = int(board.place[arc])
    return Placed(tuple(placing), search.best_score, proved)


class _Search:
    """Depth-first search over the cores; arrays over arcs have one more entry, never free."""

    def __init__(self, board: Board, table: Table, above: Score, watch: Watch) -> None:
        self.watch = watch
        self.best: tuple[int, ...] | None = None
        self.best_score = above
        self.nodes = 0
        self.crossings = table.crossings.astype(float)
        self.steps = table.steps.astype(float)
        self.length_mm = table.length_mm
        self.place = np.append(board.place, -1)
        self.order = sorted(board.movable, key=lambda core: int((board.core == core).sum()))
        self.ways = _ways(board, self.order)

    def start(self) -> None:
        """Search from no core placed: what stays as it is counts already."""
        free = self.crossings[-1].copy()
        free[-1] = math.inf
        stays = self.crossings[-1, -1], self.steps[-1], self.length_mm[-1]
        self._branch((), (float(stays[0]), float(stays[1]), float(stays[2])), free)

    def _branch(self, chosen: tuple[int, ...], so_far: Figures, more: Array) -> None:
        """Go on from the chosen arcs; `more` crossings come with each arc, inf if not free."""
        self.nodes += 1
        if self.nodes > MOST_NODES:
            return
        if self.nodes % NODES_BETWEEN_LOOKS == 0:
            self.watch(0.0)
        if len(chosen) == len(self.order):
            self._take(chosen, so_far)
            return
        if self._bound(self.ways[len(chosen) :], so_far, more) >= self.best_score:
            return
        ways = self.ways[len(chosen)]
        ways = ways[more[ways] < math.inf]
        rank = np.lexsort((self.length_mm[ways], -self.steps[ways], more[ways]))
        for arc in ways[rank].tolist():
            figures = (
                so_far[0] + float(more[arc]),
                min(so_far[1], float(self.steps[arc])),
                so_far[2] + float(self.length_mm[arc]),
            )
            then = more + self.crossings[arc]
            then[self.place == self.place[arc]] = math.inf
            self._branch((*chosen, arc), figures, then)

    def _take(self, chosen: tuple[int, ...], so_far: Figures) -> None:
        score = as_score(*so_far)
        if score < self.best_score:
            self.best, self.best_score = chosen, score

    def _bound(self, ways: Index, so_far: Figures, more: Array) -> Score:
        """Return a score that no placing of the cores left over can be better than."""
        extra = more[ways]
        taken = np.isinf(extra)
        fewest = so_far[0] + float(extra.min(axis=1).sum())
        steps = np.where(taken, -math.inf, self.steps[ways]).max(axis=1)
        widest = min(so_far[1], float(steps.min()))
        length_mm = np.where(taken, math.inf, self.length_mm[ways]).min(axis=1).sum()
        return fewest, -widest, round(so_far[2] + float(length_mm) - 1e-9, 9)


def _ways(board: Board, order: list[int]) -> Index:
    """Return the arcs of each core, filled up with the entry that is never free."""
    each = [np.flatnonzero(board.core == core) for core in order]
    ways = np.full((len(each), max(map(len, each), default=0)), len(board.arcs), dtype=np.intp)
    for row, arcs in zip(ways, each, strict=True):
        row[: len(arcs)] = arcs
    return ways
