"""All places that alike cores may take at an end, and what each of them gives at a turn."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from planner.dryfit.alike import Alike
from planner.dryfit.seats import CAP_MM, Seats, steps_of
from planner.dryfit.watch import Watch
from planner.geometry.segments import Array
from planner.geometry.turning import Index, do_cross, turned_points

# A placing says for each core of a site whose place it takes; its own: 0, 1, 2...
Placing = tuple[int, ...]

# Arcs measured between two looks at the watch: some milliseconds.
BLOCK = 512


def placed(seats: Seats, placing: Placing) -> Seats:
    """Return the seats with the cores placed otherwise; a sleeve or dab stays at its contact."""
    cores = seats.cores
    landings = {
        cores[core].landing.conductor: cores[place].landing.model_copy(
            update={"conductor": cores[core].landing.conductor}
        )
        for core, place in enumerate(placing)
    }
    exits = tuple(
        replace(it, landing=landings.get(it.landing.conductor, it.landing))
        for it in seats.site.exits
    )
    return Seats(replace(seats.site, exits=exits))


@dataclass(frozen=True, slots=True, eq=False)
class Table:
    """What the arcs (a core at a place) give at one turn.

    The last entry of each stands for all that stays as it is. `crossings` of two arcs, shape
    (arcs + 1, arcs + 1); `steps`, the smallest gap of an arc in steps of 0.01 mm, capped, and
    `length_mm`, shape (arcs + 1,).
    """

    crossings: Index
    steps: Index
    length_mm: Array


class Board:
    """The arcs of the alike cores of an end.

    Alike cores are of one make, so joints and bare strands are the same whoever has the place. Only
    an insulated lead against that metal differs, hence a gap belongs to an arc alone.
    """

    def __init__(self, seats: Seats, groups: Sequence[Alike]) -> None:
        self.seats, self.groups = seats, groups
        self.movable = tuple(core for group in groups for core in group.members)
        self.fixed = tuple(it for it in range(len(seats.cores)) if it not in self.movable)
        self.arcs = tuple(
            sorted((i, j) for group in groups for i in group.members for j in group.members)
        )
        at = np.array([*self.arcs, *((it, it) for it in self.fixed)], dtype=np.intp).reshape(-1, 2)
        self._core, self._place = at[:, 0], at[:, 1]
        self.core, self.place = self._core[: len(self.arcs)], self._place[: len(self.arcs)]

    def table(self, turn_deg: float, watch: Watch) -> Table:
        """Return what the arcs give with the plug turned."""
        steps = self.steps(turn_deg, watch)
        return Table(self.crossings(turn_deg), steps, self.lengths_mm(turn_deg))

    def _flat(self, turn_deg: float) -> tuple[Array, Array]:
        cups = turned_points(self.seats.cups, np.radians(turn_deg))
        return self.seats.exits[self._core], cups[self._place]

    def crossings(self, turn_deg: float) -> Index:
        """Return which arcs of two cores cross, with the sum over the cores that stay last."""
        starts, ends = self._flat(turn_deg)
        count, arcs = len(starts), len(self.arcs)
        one, other = (it.ravel() for it in np.indices((count, count)))
        flat = do_cross(starts[one], ends[one], starts[other], ends[other])
        found = flat.reshape(count, count).astype(np.intp)
        found[self._core[:, None] == self._core] = 0
        table = np.zeros((arcs + 1, arcs + 1), dtype=np.intp)
        table[:arcs, :arcs] = found[:arcs, :arcs]
        table[:arcs, arcs] = table[arcs, :arcs] = found[:arcs, arcs:].sum(axis=1)
        table[arcs, arcs] = found[arcs:, arcs:].sum() // 2
        return table

    def lengths_mm(self, turn_deg: float) -> Array:
        """Return the length of each arc, with the sum over the cores that stay last; mm."""
        starts, ends = self._flat(turn_deg)
        way, arcs = ends - starts, len(self.arcs)
        each = np.hypot(way[:, 0], way[:, 1])
        return np.append(each[:arcs], each[arcs:].sum())

    def steps(self, turn_deg: float, watch: Watch) -> Index:
        """Return the smallest gap of each arc, with that of all the rest last; 0.01 mm."""
        arcs = len(self.arcs)
        gaps = [np.empty(0)]
        for begin in range(0, len(self._core), BLOCK):
            watch(0.0)
            block = slice(begin, begin + BLOCK)
            each = self.seats.arc_gaps_mm(turn_deg, self._core[block], self._place[block])
            gaps.append(each.min(axis=1))
        each = np.concatenate(gaps)
        return steps_of(np.append(each[:arcs], each[arcs:].min(initial=CAP_MM)))
