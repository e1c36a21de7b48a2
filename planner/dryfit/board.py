"""All places that alike cores may take at an end, and what each of them gives at a turn."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from planner.dryfit.alike import Alike
from planner.dryfit.clocking import CAP_MM, GAP_STEP_MM, Seats
from planner.dryfit.watch import Watch
from planner.geometry.boxes import boxes_round, near_pairs
from planner.geometry.curves import lead_curves
from planner.geometry.segments import Array, segment_distances
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
        self._still = seats.site.still()
        tops = [lead.way[-2] for lead in seats.site.leads(0.0) if not lead.is_shield]
        self._tops = np.array(tops, dtype=float).reshape(-1, 3)
        self._radius = self._still.cores.radius
        self._net = self._still.cores.net

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
        height = np.full((len(self.seats.exits), 1), self.seats.site.height_mm)
        turned = turned_points(self.seats.exits, -np.radians(turn_deg))
        exits, arcs = np.hstack([turned, height]), len(self.arcs)
        gaps = [np.empty(0)]
        for begin in range(0, len(self._core), BLOCK):
            watch(0.0)
            block = slice(begin, begin + BLOCK)
            gaps.append(self._gaps_mm(exits, self._core[block], self._place[block]))
        each = np.concatenate(gaps)
        rest = each[arcs:].min(initial=CAP_MM)
        return np.asarray(np.round(np.append(each[:arcs], rest) / GAP_STEP_MM).astype(np.intp))

    def _gaps_mm(self, exits: Array, core: Index, place: Index) -> Array:
        """Return the smallest gap of insulated leads to the metal of other nets, capped."""
        corners = lead_curves(exits[core], self._tops[place])
        pieces = corners.shape[1] - 1
        start, end = corners[:, :-1].reshape(-1, 3), corners[:, 1:].reshape(-1, 3)
        radius, net = np.repeat(self._radius[core], pieces), np.repeat(self._net[place], pieces)
        metal = self._still.metal
        one, other = near_pairs(boxes_round(start, end, radius), metal.boxes, CAP_MM)
        apart = net[one] != metal.net[other]
        one, other = one[apart], other[apart]
        distance = segment_distances(start[one], end[one], metal.start[other], metal.end[other])
        found = np.full(len(core), CAP_MM)
        np.minimum.at(found, one // pieces, distance - radius[one] - metal.radius[other])
        return found
