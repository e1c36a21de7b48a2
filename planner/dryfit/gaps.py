"""Gaps between the bodies of an end, and how they stand to the connector's own bare gaps."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from planner.dryfit.bodies import Capsule, terminal_bodies
from planner.geometry.segments import Array, segment_distances
from planner.model.connector import Connector

Index = NDArray[np.intp]
GapClass = Literal["touch", "sleeve", "watch", "clear"]


@dataclass(frozen=True, slots=True)
class Gap:
    """The gap in mm between two bodies, with the limit below which it is worth a word."""

    first: Capsule
    second: Capsule
    gap_mm: float
    limit_mm: float
    sleeve_mm: float

    @property
    def grade(self) -> GapClass:
        """Class of the gap: touch, sleeve, watch, or clear."""
        if self.gap_mm <= 0:
            return "touch"
        if self.gap_mm < self.sleeve_mm:
            return "sleeve"
        return "watch" if self.gap_mm < self.limit_mm else "clear"


def pair_gaps_mm(bodies: Sequence[Capsule], first: Index, second: Index) -> Array:
    """Return the gap in mm of each pair of bodies: segment distance less both radii."""
    start = np.array([body.start for body in bodies], dtype=float).reshape(-1, 3)
    end = np.array([body.end for body in bodies], dtype=float).reshape(-1, 3)
    radius = np.array([body.radius_mm for body in bodies], dtype=float)
    distance = segment_distances(start[first], end[first], start[second], end[second])
    return np.asarray(distance - radius[first] - radius[second])


def own_gap_mm(connector: Connector) -> float | None:
    """Return the connector's smallest gap between two bare terminals; None with one contact."""
    bodies = [body for it in connector.contacts for body in terminal_bodies(it, 0.0)]
    name = np.array([body.contact for body in bodies])
    first, second = np.triu_indices(len(bodies), 1)
    apart = name[first] != name[second]
    gaps = pair_gaps_mm(bodies, first[apart], second[apart])
    return float(gaps.min()) if gaps.size else None


def pairs_apart(bodies: Sequence[Capsule], net_of: Mapping[str, int]) -> tuple[Index, Index]:
    """Return the pairs of bodies whose gap matters, by number, the first lower than the second.

    They are in different nets, and at least one is a lead or a joint: two terminals are as they
    were made. Both are bare, or one is metal that the iron heats and the other may be insulated.
    """
    bare = np.array([body.bare for body in bodies], dtype=bool)
    made = np.array([body.kind == "terminal" for body in bodies], dtype=bool)
    tail = np.array([body.kind == "tail" for body in bodies], dtype=bool)
    net = np.array([net_of[body.contact] for body in bodies])
    first, second = np.triu_indices(len(bodies), 1)
    heated = bare & ~tail
    wanted = (bare[first] & bare[second]) | heated[first] | heated[second]
    wanted &= ~(made[first] & made[second]) & (net[first] != net[second])
    return first[wanted], second[wanted]


def small_gaps(
    own_mm: float | None,
    bodies: Sequence[Capsule],
    net_of: Mapping[str, int],
    shares: tuple[float, float],
) -> list[Gap]:
    """Return the smallest gap of every two parties that are in different nets and too near.

    `own_mm` is the connector's own bare gap, `shares` those of it that are the limits of sleeve and
    watch. Only bare metal against bare metal counts.
    """
    if own_mm is None or own_mm <= 0:
        return []
    sleeve, limit = (share * own_mm for share in shares)
    first, second = pairs_apart(bodies, net_of)
    metal = np.array([body.bare for body in bodies], dtype=bool)
    bare = metal[first] & metal[second]
    gaps = pair_gaps_mm(bodies, first, second)
    nearest: dict[tuple[str, str], Gap] = {}
    for place in np.flatnonzero((gaps < limit) & bare):
        one, other = bodies[first[place]], bodies[second[place]]
        gap = Gap(one, other, round(float(gaps[place]), 2), round(limit, 2), round(sleeve, 2))
        key = _party(one), _party(other)
        if key not in nearest or gap.gap_mm < nearest[key].gap_mm:
            nearest[key] = gap
    return [nearest[key] for key in sorted(nearest)]


def _party(body: Capsule) -> str:
    return body.conductor or f"contact {body.contact}"
