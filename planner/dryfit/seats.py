"""The cores of an end as plain figures: where they go, how near they come to metal at any turn."""

import math
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from planner.dryfit.site import Exit, Site
from planner.dryfit.watch import Watch
from planner.geometry.boxes import boxes_round, near_pairs
from planner.geometry.curves import lead_curves
from planner.geometry.segments import Array, segment_distances
from planner.geometry.turning import Index, Sweep, crossing_sweep, do_cross, turned_points
from planner.model.cable import Core

# A gap beyond this is as good as any.
CAP_MM = 1.0
GAP_STEP_MM = 0.01


def steps_of(gap_mm: Array) -> Index:
    """Return gaps in steps of 0.01 mm, in which they are compared."""
    return np.asarray(np.round(gap_mm / GAP_STEP_MM).astype(np.intp))


@dataclass(frozen=True, eq=False)
class Seats:
    """A site as plain figures: exits and cups of its cores, and what a turn gives.

    The gap meant here is the one that turning changes: of the pieces of insulated leads to metal of
    other nets that the iron heats (terminals, joints, strands), below 0 where they overlap, capped
    at 1 mm. All other gaps are between bodies that stay where they are in the plug, so the turn
    that is best for this one is best for `EndFit.least_gap_mm`, the smallest of all.
    """

    site: Site

    @cached_property
    def cores(self) -> tuple[Exit, ...]:
        """The landed cores; tails are bent aside and play no part in crossings and lengths."""
        return tuple(it for it in self.site.exits if isinstance(it.part, Core))

    @cached_property
    def exits(self) -> Array:
        """Where the cores leave the jacket; (n, 2), mm."""
        places = [(it.x_mm, it.y_mm) for it in self.cores]
        return np.array(places, dtype=float).reshape(-1, 2)

    @cached_property
    def cups(self) -> Array:
        """The terminals of the cores with the plug not turned; (n, 2), mm."""
        on = [self.site.connector.by_id[it.landing.contact].terminal for it in self.cores]
        return np.array([(it.x_mm, it.y_mm) for it in on], dtype=float).reshape(-1, 2)

    def sweep(self, watch: Watch) -> Sweep:
        """Return the crossings over the full turn."""
        return crossing_sweep(self.exits, self.cups, watch)

    def crossings(self, turn_deg: float) -> int:
        """Return how many pairs of cores cross at a turn, as `crossing_pairs` counts them."""
        cups = turned_points(self.cups, math.radians(turn_deg))
        first, second = np.triu_indices(len(cups), 1)
        crossed = do_cross(self.exits[first], cups[first], self.exits[second], cups[second])
        return int(crossed.sum())

    # -- lengths -----------------------------------------------------------------------------------

    def lengths_mm(self, turns_deg: Array) -> Array:
        """Return the total length of the projected leads at each turn, mm."""
        angle = np.radians(turns_deg)[:, None]
        cos, sin = np.cos(angle), np.sin(angle)
        x = self.cups[:, 0] * cos - self.cups[:, 1] * sin - self.exits[:, 0]
        y = self.cups[:, 0] * sin + self.cups[:, 1] * cos - self.exits[:, 1]
        return np.asarray(np.hypot(x, y).sum(axis=1))

    def length_mm(self, turn_deg: float) -> float:
        """Return the total length of the projected leads at one turn, mm."""
        return float(self.lengths_mm(np.array([turn_deg]))[0])

    # -- gaps --------------------------------------------------------------------------------------

    @cached_property
    def probed(self) -> dict[float, Array]:
        """The gaps of all pieces of leads, by the turns where they are known."""
        return {}

    def pieces_mm(self, turn_deg: float) -> Array:
        """Return the gap of each piece of each lead at a turn, capped; (n * pieces,), mm."""
        if turn_deg not in self.probed:
            every = np.arange(len(self.cores))
            self.probed[turn_deg] = self.arc_gaps_mm(turn_deg, every, every).ravel()
        return self.probed[turn_deg]

    def gap_mm(self, turn_deg: float) -> float:
        """Return the smallest gap at a turn, capped, mm."""
        return float(self.pieces_mm(turn_deg).min(initial=CAP_MM))

    def gap_steps(self, turn_deg: float) -> int:
        """Return the smallest gap in steps of 0.01 mm."""
        return round(self.gap_mm(turn_deg) / GAP_STEP_MM)

    def arc_gaps_mm(self, turn_deg: float, core: Index, place: Index) -> Array:
        """Return the gaps of leads of cores to the places of others of their make, capped.

        Of each piece to the metal of other nets; shape (arcs, pieces), mm. All in the plug's own
        frame, where the metal stays and the exits go round.
        """
        cores, metal = self.site.still.cores, self.site.still.metal
        exits = turned_points(self.exits, -math.radians(turn_deg))
        starts = np.column_stack([exits, np.full(len(exits), self.site.height_mm)])[core]
        corners = lead_curves(starts, cores.tops[place])
        pieces = corners.shape[1] - 1
        start, end = corners[:, :-1].reshape(-1, 3), corners[:, 1:].reshape(-1, 3)
        radius, net = np.repeat(cores.radius[core], pieces), np.repeat(cores.net[place], pieces)
        one, other = near_pairs(boxes_round(start, end, radius), metal.boxes, CAP_MM)
        apart = net[one] != metal.net[other]
        one, other = one[apart], other[apart]
        distance = segment_distances(start[one], end[one], metal.start[other], metal.end[other])
        found = np.full(len(start), CAP_MM)
        np.minimum.at(found, one, distance - radius[one] - metal.radius[other])
        return found.reshape(len(core), pieces)

    @cached_property
    def speeds(self) -> Array:
        """How fast the gap of each piece can change at most; (n * pieces,), mm per degree.

        Seen from the plug the exits go round the axis, and the metal stays. A point of a lead moves
        by the share of its exit in the curve, so the lower it is, the less.
        """
        share = lead_curves(np.array([[1.0, 0.0, 0.0]]), np.zeros((1, 3)))[0, :-1, 0]
        reach = np.hypot(self.exits[:, 0], self.exits[:, 1])
        return np.asarray((reach[:, None] * share).ravel() * math.pi / 180)
