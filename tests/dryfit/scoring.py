"""The score of a placing, reckoned from the whole table of a turn at once."""

import numpy as np


def score_of(board, table, placing):
    """Return crossings, less the gap in steps, and length in mm of a placing."""
    number = {arc: index for index, arc in enumerate(board.arcs)}
    chosen = [number[core, placing[core]] for core in board.movable] + [len(board.arcs)]
    crossings = table.crossings[np.ix_(chosen, chosen)]
    rest = int(crossings[-1, -1])
    count = (int(crossings.sum()) - rest) // 2 + rest
    length_mm = float(table.length_mm[chosen].sum())
    return float(count), -float(table.steps[chosen].min()), round(length_mm, 9)
