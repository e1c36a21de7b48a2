"""The best placing of a few alike cores at one turn, by branch and bound."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from planner.dryfit.board import Board, Placing, Table
from planner.dryfit.watch import Watch
from planner.geometry.turning import Index

Flags = NDArray[np.bool_]

# Crossings, less the gap in steps, length in mm: the least is the best.
Score = tuple[float, float, float]
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


def score_of(board: Board, table: Table, placing: Placing) -> Score:
    """Return the score of a placing from the table of a turn."""
    number = {arc: index for index, arc in enumerate(board.arcs)}
    chosen = [number[core, placing[core]] for core in board.movable] + [len(board.arcs)]
    crossings = table.crossings[np.ix_(chosen, chosen)]
    rest = int(crossings[-1, -1])
    count = (int(crossings.sum()) - rest) // 2 + rest
    length_mm = float(table.length_mm[chosen].sum())
    return float(count), -float(table.steps[chosen].min()), round(length_mm, 9)


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
    def __init__(self, board: Board, table: Table, above: Score, watch: Watch) -> None:
        self.table, self.watch = table, watch
        self.best: tuple[int, ...] | None = None
        self.best_score = above
        self.nodes = 0
        self.core, self.place = board.core, board.place
        self.order = sorted(board.movable, key=lambda core: int((board.core == core).sum()))
        self.ways = [np.flatnonzero(board.core == core) for core in self.order]

    def start(self) -> None:
        table = self.table
        rest = len(self.core)
        self._branch(
            (),
            (
                int(table.crossings[rest, rest]),
                int(table.steps[rest]),
                float(table.length_mm[rest]),
            ),
            table.crossings[rest, :rest],
            np.ones(rest, dtype=bool),
        )

    def _branch(
        self,
        chosen: tuple[int, ...],
        so_far: tuple[int, int, float],
        crossings: Index,
        free: Flags,
    ) -> None:
        """Go on from the chosen arcs: `crossings` that each further arc adds; places still free."""
        self.nodes += 1
        if self.nodes > MOST_NODES:
            return
        if self.nodes % NODES_BETWEEN_LOOKS == 0:
            self.watch(0.0)
        if len(chosen) == len(self.order):
            self._take(chosen, so_far)
            return
        if self._bound(len(chosen), so_far, crossings, free) >= self.best_score:
            return
        ways = self.ways[len(chosen)]
        ways = ways[free[ways]]
        steps, length_mm = self.table.steps, self.table.length_mm
        rank = np.lexsort((length_mm[ways], -steps[ways], crossings[ways]))
        for arc in ways[rank].tolist():
            self._branch(
                (*chosen, arc),
                (
                    so_far[0] + int(crossings[arc]),
                    min(so_far[1], int(steps[arc])),
                    so_far[2] + float(length_mm[arc]),
                ),
                crossings + self.table.crossings[arc, :-1],
                free & (self.place != self.place[arc]),
            )

    def _take(self, chosen: tuple[int, ...], so_far: tuple[int, int, float]) -> None:
        score = (float(so_far[0]), -float(so_far[1]), round(so_far[2], 9))
        if score < self.best_score:
            self.best, self.best_score = chosen, score

    def _bound(
        self,
        depth: int,
        so_far: tuple[int, int, float],
        crossings: Index,
        free: Flags,
    ) -> Score:
        fewest, widest, shortest = so_far
        for ways in self.ways[depth:]:
            open_ways = ways[free[ways]]
            fewest += int(crossings[open_ways].min())
            widest = min(widest, int(self.table.steps[open_ways].max()))
            shortest += float(self.table.length_mm[open_ways].min())
        return float(fewest), -float(widest), round(shortest - 1e-9, 9)
