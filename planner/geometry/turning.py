"""How many straight leads cross, exactly, at every turn of the plug."""

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from planner.geometry.segments import Array

Index = NDArray[np.intp]

FULL_TURN = 2 * np.pi
# Pairs worked on at once: some milliseconds, so that a caller can stop between two blocks.
BLOCK = 2048
# What is smaller than this share of the figures it came from is rounding, hence a touch.
NOTHING = 1e-12
# Events nearer than this, in radians, are one: no plug is set more finely.
SAME_ANGLE = 1e-10


@dataclass(frozen=True, slots=True, eq=False)
class Sweep:
    """Crossings over the full turn: `counts[k]` from `starts[k]` to the next start, radians.

    Starts rise within [0, 2 pi); the last window goes on over 2 pi to the first start. Neighbours
    differ, so one count all round is one window that starts at 0.
    """

    starts: Array
    counts: Index

    def at(self, turn: float) -> int:
        """Return the crossings at a turn in radians; at an event, those just after it."""
        place = np.searchsorted(self.starts, turn % FULL_TURN, side="right") - 1
        return int(self.counts[place])

    @property
    def ends(self) -> Array:
        """The end of each window, radians; the last lies beyond 2 pi unless a start is at 0."""
        return np.append(self.starts[1:], self.starts[0] + FULL_TURN)


def crossing_sweep(
    exits: Array, cups: Array, between: Callable[[float], None] | None = None
) -> Sweep:
    """Return how many of the leads cross at every turn; touching is no crossing.

    Lead k runs straight from exits[k], which stays, to cups[k] turned counter-clockwise round the
    origin; both of shape (n, 2). The sign of every orientation test of two leads is that of
    A cos + B sin + C, so it changes at two turns at most: between the events of a pair nothing
    changes, and all events in order give the count everywhere. A lone turn at which leads only
    touch is no window of its own. `between` is called with the share done between blocks of pairs.
    """
    first, second = np.triu_indices(len(exits), 1)
    at_zero, turns, steps = 0, [], []
    for begin in range(0, len(first), BLOCK):
        if between is not None:
            between(begin / len(first))
        block = slice(begin, begin + BLOCK)
        tests = _orientation_tests(exits, cups, first[block], second[block])
        crossed, turn, step = _pair_events(tests)
        at_zero += crossed
        turns.append(turn)
        steps.append(step)
    if not turns:
        return Sweep(np.zeros(1), np.zeros(1, dtype=np.intp))
    return _swept(at_zero, np.concatenate(turns), np.concatenate(steps))


def turned_points(points: Array, turn: float) -> Array:
    """Return points of shape (n, 2) turned counter-clockwise round the origin by radians."""
    # Written out and with `math`: to the last bit what one point gives, so that touches agree.
    cos, sin = math.cos(turn), math.sin(turn)
    x, y = points[:, 0], points[:, 1]
    return np.stack([x * cos - y * sin, x * sin + y * cos], axis=1)


def do_cross(a: Array, b: Array, c: Array, d: Array) -> NDArray[np.bool_]:
    """Tell whether segments ab and cd cross, each of shape (n, 2); touching does not count."""

    def side(p: Array, q: Array, r: Array) -> Array:
        return _cross(q - p, r - p)

    apart = side(a, b, c) * side(a, b, d) < 0
    return np.asarray(apart & (side(c, d, a) * side(c, d, b) < 0))


def _orientation_tests(exits: Array, cups: Array, first: Index, second: Index) -> Array:
    """Return A, B, C of the four tests of each pair; shape (3, 4, pairs).

    With e an exit and R q a turned cup: (Rq1-e1)x(e2-e1), (Rq1-e1)x(Rq2-e1), and the two with the
    leads exchanged.
    """
    e1, e2, q1, q2 = exits[first], exits[second], cups[first], cups[second]
    size = np.abs(np.concatenate([exits, cups])).max()
    return np.stack(
        [
            _exit_test(e1, e2, q1, size),
            _cup_test(e1, q1, q2, size),
            _exit_test(e2, e1, q2, size),
            _cup_test(e2, q2, q1, size),
        ],
        axis=1,
    )


def _exit_test(mine: Array, other: Array, cup: Array, size: float) -> Array:
    away = other - mine
    return _settled(_cross(cup, away), -_dot(cup, away), -_cross(mine, other), size)


def _cup_test(mine: Array, cup: Array, other: Array, size: float) -> Array:
    apart = other - cup
    return _settled(_cross(apart, mine), -_dot(apart, mine), _cross(cup, other), size)


def _settled(a: Array, b: Array, c: Array, size: float) -> Array:
    """Take for nothing what only rounding made of nothing: those points lie on one line always."""
    found = np.stack([a, b, c])
    found[np.abs(found) <= NOTHING * size * size] = 0.0
    return found


def _cross(p: Array, q: Array) -> Array:
    return np.asarray(p[:, 0] * q[:, 1] - p[:, 1] * q[:, 0])


def _dot(p: Array, q: Array) -> Array:
    return np.asarray(p[:, 0] * q[:, 0] + p[:, 1] * q[:, 1])


def _pair_events(tests: Array) -> tuple[int, Array, Index]:
    """Return the crossings just after turn 0, and the turns where a pair starts or stops (+1, -1).

    No pair can start or stop but where one of its tests is nought.
    """
    edges = _edges(tests)
    middles = (edges[1:] + edges[:-1]) / 2
    crossing = _cross_at(tests, middles)
    step = np.diff(crossing.astype(np.intp), axis=0)
    changes = step != 0
    return int(crossing[0].sum()), edges[1:-1][changes], step[changes]


def _edges(tests: Array) -> Array:
    """Return 0, the up to eight roots of each pair's tests in order, 2 pi; shape (10, pairs)."""
    a, b, c = tests
    reach = np.hypot(a, b)
    has_roots = np.abs(c) < reach
    half = np.arccos(np.where(has_roots, -c, 0.0) / np.where(has_roots, reach, 1.0))
    middle = np.arctan2(b, a)
    roots = np.concatenate([middle - half, middle + half]) % FULL_TURN
    roots = np.where(np.concatenate([has_roots, has_roots]), roots, FULL_TURN)
    roots = np.minimum(np.round(roots / SAME_ANGLE) * SAME_ANGLE, FULL_TURN)
    roots.sort(axis=0)
    rim = np.zeros((1, roots.shape[1]))
    return np.concatenate([rim, roots, rim + FULL_TURN])


def _cross_at(tests: Array, turns: Array) -> NDArray[np.bool_]:
    """Tell whether each pair crosses at its turns; shape of `turns`, (turns, pairs)."""
    cos, sin = np.cos(turns), np.sin(turns)
    a, b, c = tests
    side = [a[k] * cos + b[k] * sin + c[k] for k in range(4)]
    return np.asarray((side[0] * side[1] < 0) & (side[2] * side[3] < 0))


def _swept(at_zero: int, turns: Array, steps: Index) -> Sweep:
    angles, group = np.unique(turns, return_inverse=True)
    change = np.zeros(len(angles), dtype=np.intp)
    np.add.at(change, group, steps)
    real = (change != 0) & (angles > 0) & (angles < FULL_TURN)
    at_zero += int(change[angles <= 0].sum())
    starts, counts = angles[real], at_zero + np.cumsum(change[real])
    if not len(starts):
        return Sweep(np.zeros(1), np.array([at_zero], dtype=np.intp))
    if counts[-1] != at_zero:
        starts, counts = np.append(0.0, starts), np.append(at_zero, counts)
    return Sweep(starts, counts)
