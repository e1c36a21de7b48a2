"""A good placing of many alike cores at one turn: shortest leads, then exchanges."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import combinations, permutations

import numpy as np
from numpy.typing import NDArray

from planner.dryfit.board import Board, Placing
from planner.dryfit.branching import Score, as_score
from planner.dryfit.watch import Watch
from planner.geometry.assigning import least_cost
from planner.geometry.segments import Array
from planner.geometry.turning import Index, do_cross, turned_points

SEED = 20
MOST_ROUNDS = 60
# Pairs of leads compared between two looks at the watch: some milliseconds.
BATCH = 16384
NEAREST = 8
# Of the cores that cross others, so many are moved.
TIGHTEST = 4
# Up to so many cores every exchange is tried before a search ends.
MOST_FOR_ALL = 64
NO_LIMIT = np.iinfo(np.intp).max
SHAKES = 3

Mask = NDArray[np.bool_]


@dataclass(frozen=True, eq=False)
class FlatEnd:
    """The cores of an end at one turn, as straight leads seen on the face.

    Exits and places are (n, 2), mm; `steps` is the smallest gap in steps of 0.01 mm of each core at
    each place, (n, n), and `rest_steps` that of all that stays as it is. `crossed` tells of every
    lead of any core to any place which other it crosses, (n * n, n * n), where that is kept.
    """

    exits: Array
    places: Array
    steps: Index
    rest_steps: int
    groups: tuple[Index, ...]
    crossed: Mask | None = None

    def cross(self, one: Index, at: Index, other: Index, beside: Index) -> Mask:
        """Tell which leads of cores `one` to places `at` cross the others; all of one shape."""
        if self.crossed is not None:
            count = len(self.exits)
            return np.asarray(self.crossed[one * count + at, other * count + beside])
        ends = [self.exits[one], self.places[at], self.exits[other], self.places[beside]]
        return do_cross(*(points.reshape(-1, 2) for points in ends)).reshape(one.shape)

    def lengths_mm(self, cores: Index, at: Index) -> Array:
        """Return the lengths of leads."""
        way = self.places[at] - self.exits[cores]
        return np.asarray(np.hypot(way[..., 0], way[..., 1]))

    def score(self, placing: Index) -> Score:
        """Return the score of a placing."""
        return State(self, placing).score


def flat_end(board: Board, turn_deg: float, watch: Watch) -> FlatEnd:
    """Return the cores of an end with the plug turned."""
    seats, steps = board.seats, board.steps(turn_deg, watch)
    table = np.full((len(seats.cores), len(seats.cores)), steps[-1], dtype=np.intp)
    table[board.core, board.place] = steps[:-1]
    return FlatEnd(
        seats.exits,
        turned_points(seats.cups, np.radians(turn_deg)),
        table,
        int(steps[-1]),
        tuple(np.array(group.members, dtype=np.intp) for group in board.groups),
    )


def tabled(end: FlatEnd, watch: Watch) -> FlatEnd:
    """Return the end with all its crossings kept: worth it for few cores and a long search."""
    count = len(end.exits)
    one, at = (it.ravel() for it in np.indices((count, count)))
    rows = []
    for core in range(count):
        watch(0.0)
        mine = np.flatnonzero(one == core)
        first, second = (it.ravel() for it in np.meshgrid(mine, np.arange(len(one)), indexing="ij"))
        rows.append(end.cross(one[first], at[first], one[second], at[second]))
    return replace(end, crossed=np.concatenate(rows).reshape(len(one), len(one)))


class State:
    """A placing, with what each two of its leads give."""

    def __init__(self, end: FlatEnd, placing: Index) -> None:
        self.end, self.placing = end, placing
        first, second = np.triu_indices(len(placing), 1)
        crossing = end.cross(first, placing[first], second, placing[second])
        self.first, self.second = first[crossing], second[crossing]
        self.touching = np.bincount(
            np.concatenate([self.first, self.second]), minlength=len(placing)
        )
        every = np.arange(len(placing))
        self.steps = end.steps[every, placing]
        self.lengths_mm = end.lengths_mm(every, placing)
        self.order = self.steps.argsort(kind="stable")
        self.score = as_score(
            len(self.first),
            min(end.rest_steps, self.steps.min(initial=end.rest_steps)),
            self.lengths_mm.sum(),
        )

    def tightest(self) -> tuple[int, ...]:
        """Return the cores that cross most, or else the one with the smallest gap."""
        if len(self.first):
            most = (-self.touching).argsort(kind="stable")[:TIGHTEST]
            return tuple(most[self.touching[most] > 0].tolist())
        return tuple(self.order[:1].tolist())

    def scores(self, rings: Index) -> list[Score]:
        """Return the score after each ring of cores, (m, 2 or 3), each to the next one's place."""
        return self.scores_at(rings, self.placing[np.roll(rings, -1, axis=1)])

    def scores_at(self, cores: Index, at: Index) -> list[Score]:
        """Return the score after each move of cores to other places; both (m, cores moved)."""
        end = self.end
        crossings = len(self.first) - self._touching(cores) + self._with_others(cores, at)
        for i, j in combinations(range(cores.shape[1]), 2):
            crossings += end.cross(cores[:, i], at[:, i], cores[:, j], at[:, j])
        steps = np.minimum(end.steps[cores, at].min(axis=1), self._other_steps(cores))
        steps = np.minimum(steps, end.rest_steps)
        change = (end.lengths_mm(cores, at) - self.lengths_mm[cores]).sum(axis=1)
        rows = zip(crossings, steps, self.lengths_mm.sum() + change, strict=True)
        return [as_score(*row) for row in rows]

    def _with_others(self, rings: Index, at: Index) -> Index:
        shape = (*rings.shape, len(self.placing))
        others = np.broadcast_to(np.arange(len(self.placing)), shape)
        ring, place = (np.broadcast_to(it[:, :, None], shape) for it in (rings, at))
        crossing = self.end.cross(ring, place, others, self.placing[others])
        inside = (rings[:, :, None] == others[0, 0]).any(axis=1)[:, None]
        return np.asarray((crossing & ~inside).sum(axis=(1, 2)))

    def _touching(self, rings: Index) -> Index:
        """Return the crossings that each ring has now, those within it counted once."""
        inside = (rings[:, :, None] == self.first).any(axis=1)
        inside &= (rings[:, :, None] == self.second).any(axis=1)
        return np.asarray(self.touching[rings].sum(axis=1) - inside.sum(axis=1))

    def _other_steps(self, rings: Index) -> Index:
        """Return the smallest gap among the cores outside each ring."""
        few = self.order[: rings.shape[1] + 1]
        outside = ~(rings[:, :, None] == few).any(axis=1)
        least = np.where(outside, self.steps[few], NO_LIMIT).min(axis=1)
        return np.asarray(least)


def shortest_placing(end: FlatEnd, watch: Watch, least_steps: int = -NO_LIMIT) -> Index:
    """Return the placing with the shortest leads, as few as can be of them nearer to metal.

    Planar length, not squared nor in space: of two leads that cross, the exchanged ones are
    shorter, so no two alike cores cross. That does not hold once some are too near to metal, less
    than `least_steps` of 0.01 mm.
    """
    placing = np.arange(len(end.exits))
    for group in end.groups:
        away = end.exits[group][:, None] - end.places[group][None]
        cost = np.hypot(away[..., 0], away[..., 1])
        near = end.steps[np.ix_(group, group)] < least_steps
        cost[near] += len(group) * cost.max(initial=0.0)
        placing[group] = group[least_cost(cost, lambda _: watch(0.0))]
    return placing


def improved(end: FlatEnd, placing: Index, watch: Watch) -> tuple[Index, Score]:
    """Return a placing that no exchange or insertion at its worst spot, nor elsewhere, betters."""
    state = State(end, placing)
    for _ in range(MOST_ROUNDS):
        ring = _best_ring(state, _moves(state), watch)
        if not ring and len(placing) <= MOST_FOR_ALL:
            ring = _best_ring(state, _exchanges(state), watch)
        if not ring:
            break
        state = State(end, _moved(state.placing, ring))
    return state.placing, state.score


def _best_ring(state: State, moves: Iterator[Index], watch: Watch) -> tuple[int, ...]:
    """Return the ring that gives the best score, or an empty one if none is better."""
    best: tuple[Score, tuple[int, ...]] = (state.score, ())
    for rings in moves:
        batch = max(1, BATCH // (rings.shape[1] * len(state.placing)))
        for begin in range(0, len(rings), batch):
            watch(0.0)
            some = rings[begin : begin + batch]
            found = zip(state.scores(some), map(tuple, some.tolist()), strict=True)
            best = min(best, *found)
    return best[1]


def _exchanges(state: State) -> Iterator[Index]:
    """Yield all exchanges of two cores of a group."""
    for group in state.end.groups:
        first, second = np.triu_indices(len(group), 1)
        yield np.stack([group[first], group[second]], axis=1)


def _moves(state: State) -> Iterator[Index]:
    """Yield rings in which one of the tightest cores exchanges with another, or goes in between.

    Going in between: it takes the place of a second core, which takes that of a third.
    """
    for core in state.tightest():
        group = next((group for group in state.end.groups if core in group), None)
        others = [] if group is None else [other for other in group.tolist() if other != core]
        if others:
            yield np.array([(core, other) for other in others], dtype=np.intp)
        near = list(permutations(_nearest(state, core, others), 2))
        if near:
            yield np.array([(core, one, two) for one, two in near], dtype=np.intp)


def _nearest(state: State, core: int, others: Sequence[int]) -> Sequence[int]:
    """Return the few cores whose places are nearest: far insertions only make leads longer."""
    places = state.end.places[state.placing]
    away = places[list(others)] - places[core]
    order = np.hypot(away[:, 0], away[:, 1]).argsort(kind="stable")
    return [others[index] for index in order[:NEAREST].tolist()]


def _moved(placing: Index, ring: tuple[int, ...]) -> Index:
    new = placing.copy()
    new[list(ring)] = placing[[*ring[1:], ring[0]]]
    return new


def good_placing(end: FlatEnd, first: Index, starts: int, watch: Watch) -> tuple[Placing, Score]:
    """Return the best placing found from `first`, from guarded ones, and from some shaken ones."""
    chance = np.random.default_rng(SEED)
    best, score = _guarded(end, *improved(end, first, watch), watch)
    for _ in range(starts):
        again, other = improved(end, _shaken(end, best, chance), watch)
        if other < score:
            best, score = again, other
    return tuple(best.tolist()), score


def _guarded(end: FlatEnd, best: Index, score: Score, watch: Watch) -> tuple[Index, Score]:
    """Halve the gaps wider than that of the best placing for one that a placing can have."""
    arcs = np.concatenate([end.steps[np.ix_(group, group)].ravel() for group in end.groups])
    wider = np.unique(np.minimum(arcs, end.rest_steps))
    wider = wider[wider > -score[1]]
    while len(wider):
        middle = len(wider) // 2
        start = shortest_placing(end, watch, int(wider[middle]))
        again, other = improved(end, start, watch)
        if other < score:
            best, score = again, other
            wider = wider[wider > -score[1]]
        else:
            wider = wider[:middle]
    return best, score


def _shaken(end: FlatEnd, placing: Index, chance: np.random.Generator) -> Index:
    new = placing
    for _ in range(SHAKES):
        group = end.groups[int(chance.integers(len(end.groups)))]
        one, other = chance.choice(group, 2, replace=False).tolist()
        new = _moved(new, (one, other))
    return new
