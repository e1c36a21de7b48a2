"""Gaps between the bodies of an end, and how they stand to the connector's own bare gaps."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from planner.dryfit.bodies import Capsule, terminal_capsule
from planner.geometry.segments import Array, segment_distances
from planner.model.connector import Connector

Index = NDArray[np.intp]
GapClass = Literal["touch", "sleeve", "watch", "clear"]

# Shares of the connector's own smallest bare gap; a flat rule would fail a DIN-5 as made.
SLEEVE_SHARE = 0.35
WATCH_SHARE = 0.7


@dataclass(frozen=True, slots=True)
class Gap:
    """The gap in mm between two bodies, with the limit below which it is worth a word."""

    first: Capsule
    second: Capsule
    gap_mm: float
    limit_mm: float
    own_mm: float

    @property
    def grade(self) -> GapClass:
        """Class of the gap: touch, sleeve, watch, or clear."""
        if self.gap_mm <= 0:
            return "touch"
        if self.gap_mm < SLEEVE_SHARE * self.own_mm:
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
    bodies = [terminal_capsule(contact, 0.0) for contact in connector.contacts]
    first, second = np.triu_indices(len(bodies), 1)
    gaps = pair_gaps_mm(bodies, first, second)
    return float(gaps.min()) if gaps.size else None


def small_gaps(own_mm: float | None, bodies: Sequence[Capsule], nets: Sequence[int]) -> list[Gap]:
    """Return the smallest gap of every two parties that are in different nets and too near.

    `own_mm` is the connector's own bare gap; `nets` gives a number for the net of each body. Only
    bare metal counts, and only pairs with at least one lead: two terminals are as they were made.
    """
    if own_mm is None or own_mm <= 0:
        return []
    limit = WATCH_SHARE * own_mm
    first, second = _pairs_apart(bodies, nets)
    gaps = pair_gaps_mm(bodies, first, second)
    nearest: dict[tuple[str, str], Gap] = {}
    for place in np.flatnonzero(gaps < limit):
        one, other = bodies[first[place]], bodies[second[place]]
        gap = Gap(one, other, round(float(gaps[place]), 2), round(limit, 2), own_mm)
        key = _party(one), _party(other)
        if key not in nearest or gap.gap_mm < nearest[key].gap_mm:
            nearest[key] = gap
    return [nearest[key] for key in sorted(nearest)]


def _pairs_apart(bodies: Sequence[Capsule], nets: Sequence[int]) -> tuple[Index, Index]:
    bare = np.array([body.bare for body in bodies], dtype=bool)
    made = np.array([body.kind == "terminal" for body in bodies], dtype=bool)
    net = np.array(nets)
    first, second = np.triu_indices(len(bodies), 1)
    wanted = bare[first] & bare[second] & ~(made[first] & made[second])
    wanted &= net[first] != net[second]
    return first[wanted], second[wanted]


def _party(body: Capsule) -> str:
    return body.conductor or f"contact {body.contact}"
