"""Which boxes lie near each other, found in sweep order along the longest axis."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from planner.geometry.segments import Array

Index = NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class Boxes:
    """Boxes with sides along the axes; `low` and `high` are corners of shape (n, 3), mm."""

    low: Array
    high: Array

    def __getitem__(self, which: Index) -> "Boxes":
        return Boxes(self.low[which], self.high[which])


def boxes_round(start: Array, end: Array, radius: Array) -> Boxes:
    """Return the boxes round capsules: ends of shape (n, 3), radii of shape (n,), mm."""
    grown = radius[:, None]
    return Boxes(np.minimum(start, end) - grown, np.maximum(start, end) + grown)


def near_pairs(ones: Boxes, others: Boxes, reach_mm: float) -> tuple[Index, Index]:
    """Return all pairs of a box of `ones` with one of `others` not farther apart than `reach_mm`.

    Apart is measured along each axis, so that no pair with a smaller distance is missed. Boxes far
    from all of the other set are left out first. Then the larger set is sorted along the axis on
    which that leaves the fewest pairs; each of the smaller looks only at those that can reach it
    there.
    """
    if len(ones.low) > len(others.low):
        second, first = near_pairs(others, ones, reach_mm)
        return first, second
    mine, theirs = _beside(ones, others, reach_mm), _beside(others, ones, reach_mm)
    if not len(mine) or not len(theirs):
        return np.empty(0, dtype=np.intp), np.empty(0, dtype=np.intp)
    ones, others = ones[mine], others[theirs]
    sweeps = [_sweep(ones, others, reach_mm, axis) for axis in range(3)]
    first, second = min(sweeps, key=lambda sweep: sweep.count).pairs()
    for axis in range(3):
        near = others.low[second, axis] <= ones.high[first, axis] + reach_mm
        near &= ones.low[first, axis] <= others.high[second, axis] + reach_mm
        first, second = first[near], second[near]
    return mine[first], theirs[second]


def _beside(boxes: Boxes, others: Boxes, reach_mm: float) -> Index:
    """Return which boxes are within reach of the box round all the others."""
    if not len(others.low):
        return np.empty(0, dtype=np.intp)
    low, high = others.low.min(axis=0) - reach_mm, others.high.max(axis=0) + reach_mm
    return np.flatnonzero(((boxes.low <= high) & (boxes.high >= low)).all(axis=1))


@dataclass(frozen=True, slots=True)
class _Sweep:
    """Of each box the stretch, from `start` to `stop`, of the others in order along one axis."""

    order: Index
    start: Index
    stop: Index
    count: int

    def pairs(self) -> tuple[Index, Index]:
        """Return the pairs of the stretches."""
        lengths = np.maximum(self.stop - self.start, 0)
        first = np.repeat(np.arange(len(lengths)), lengths)
        skipped = np.repeat(np.cumsum(lengths) - lengths - self.start, lengths)
        return first, self.order[np.arange(len(first)) - skipped]


def _sweep(ones: Boxes, others: Boxes, reach_mm: float, axis: int) -> _Sweep:
    low = others.low[:, axis]
    order = np.argsort(low, kind="stable")
    widest = float((others.high[:, axis] - low).max())
    low = low[order]
    start = np.searchsorted(low, ones.low[:, axis] - reach_mm - widest, "left")
    stop = np.searchsorted(low, ones.high[:, axis] + reach_mm, "right")
    return _Sweep(order, start, stop, int(np.maximum(stop - start, 0).sum()))
