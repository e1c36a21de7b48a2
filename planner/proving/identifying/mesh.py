"""The network of resistors between contacts that fits any readings, one for each pair.

The inverse of the resistance distance (Klein and Randic, J. Math. Chem. 12 (1993) 81-95): with
J = I - 11'/n, the pseudo-inverse of -1/2 J R J is the Laplacian, whose entries are conductances.
"""

from itertools import combinations

import numpy as np

from planner.proving.identifying.answer import Link
from planner.proving.identifying.fitting import Floats
from planner.proving.identifying.hanging import hanging_together
from planner.proving.identifying.sample import Join, SampleReadings

_FAINT = 0.03  # conductances below this share of the largest are left out: they are error


def conductances(ohms: Floats) -> Floats:
    """Return the conductance in siemens of each pair from all resistances between n nodes."""
    count = len(ohms)
    middle = np.eye(count) - 1 / count
    between: Floats = -np.linalg.pinv(-0.5 * middle @ ohms @ middle)
    np.fill_diagonal(between, 0.0)
    return between


def mesh_links(sample: SampleReadings) -> tuple[Link, ...]:
    """Return the resistors of each set of contacts of which every pair was read with a figure."""
    return tuple(link for names in _read_sets(sample) for link in _links(sample, names))


def _read_sets(sample: SampleReadings) -> list[tuple[str, ...]]:
    read = (
        set(pair) for pair, seen in sample.seen.items() if seen.join & Join.PATH and seen.figures
    )
    sets = hanging_together(read)
    ordered = [tuple(name for name in sample.contacts if name in each) for each in sets]
    return [names for names in ordered if len(names) > 2 and _complete(sample, names)]


def _complete(sample: SampleReadings, names: tuple[str, ...]) -> bool:
    pairs = combinations(names, 2)
    return all(pair in sample.seen and sample.seen[pair].figures for pair in pairs)


def _links(sample: SampleReadings, names: tuple[str, ...]) -> list[Link]:
    ohms = np.zeros((len(names), len(names)))
    for row, one in enumerate(names):
        for column in range(row + 1, len(names)):
            figures = sample.seen[one, names[column]].figures
            ohms[row, column] = ohms[column, row] = sum(figures) / len(figures)
    between = conductances(ohms)
    least = _FAINT * float(between.max())
    return [
        Link(one, names[column], 1 / float(between[row, column]))
        for row, one in enumerate(names)
        for column in range(row + 1, len(names))
        if between[row, column] > least
    ]
