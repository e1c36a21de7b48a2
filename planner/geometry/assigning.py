"""Which of equally many things goes to which place so that the total cost is least."""

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from planner.geometry.segments import Array

Index = NDArray[np.intp]


def least_cost(cost: Array, between: Callable[[float], None] | None = None) -> Index:
    """Return for each row of a square cost table the column it goes to, for the least total.

    `between` is called with the share done before each row. By shortest augmenting paths with
    prices, one row at a time (Jonker and Volgenant, Computing 38 (1987) 325-340).
    """
    n = len(cost)
    # Column 0 stands for the row that is being placed; rows and columns count from 1.
    row_of = np.zeros(n + 1, dtype=np.intp)
    row_price, column_price = np.zeros(n + 1), np.zeros(n + 1)
    for row in range(1, n + 1):
        if between is not None:
            between((row - 1) / n)
        row_of[0] = row
        before = _path(cost, row_of, row_price, column_price)
        column = before[-1]
        while column:
            row_of[column] = row_of[before[column]]
            column = before[column]
    found = np.empty(n, dtype=np.intp)
    found[row_of[1:] - 1] = np.arange(n)
    return found


def _path(cost: Array, row_of: Index, row_price: Array, column_price: Array) -> Index:
    """Find the cheapest way to a free column and move the prices; the last entry is that column."""
    n = len(cost)
    before = np.zeros(n + 2, dtype=np.intp)
    nearest = np.full(n + 1, np.inf)
    done = np.zeros(n + 1, dtype=bool)
    column = 0
    while row_of[column]:
        done[column] = True
        row = row_of[column]
        rest = cost[row - 1] - row_price[row] - column_price[1:]
        better = ~done[1:] & (rest < nearest[1:])
        nearest[1:][better] = rest[better]
        before[1:-1][better] = column
        following = int(np.where(done, np.inf, nearest).argmin())
        step = nearest[following]
        row_price[row_of[done]] += step
        column_price[done] -= step
        nearest[~done] -= step
        column = following
    before[-1] = column
    return before
