"""Which boxes lie near each other, found in sweep order along the longest axis."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
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

    Apart is measured along each axis, so that no pair with a smaller distance is missed. `others`
    are sorted along the axis on which they spread most; each of `ones` looks only at the stretch
    of them that can reach it there.
    """
    if not len(ones.low) or not len(others.low):
        return np.empty(0, dtype=np.intp), np.empty(0, dtype=np.intp)
    axis = int(np.argmax(np.ptp(others.low, axis=0)))
    first, second = _stretches(ones, others, reach_mm, axis)
    for along in {0, 1, 2} - {axis}:
        near = others.low[second, along] <= ones.high[first, along] + reach_mm
        near &= ones.low[first, along] <= others.high[second, along] + reach_mm
        first, second = first[near], second[near]
    return first, second


def _stretches(ones: Boxes, others: Boxes, reach_mm: float, axis: int) -> tuple[Index, Index]:
    """Return the pairs that one axis does not rule out."""
    order = np.argsort(others.low[:, axis], kind="stable")
    low = others.low[order, axis]
    widest = (others.high[:, axis] - others.low[:, axis]).max()
    start = np.searchsorted(low, ones.low[:, axis] - reach_mm - widest, "left")
    stop = np.searchsorted(low, ones.high[:, axis] + reach_mm, "right")
    counts = np.maximum(stop - start, 0)
    first = np.repeat(np.arange(len(start)), counts)
    skipped = np.repeat(np.cumsum(counts) - counts - start, counts)
    second = order[np.arange(len(first)) - skipped]
    near = ones.low[first, axis] <= others.high[second, axis] + reach_mm
    return first[near], second[near]
