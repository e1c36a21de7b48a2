"""Gaps between the bodies of an end, and how they stand to the connector's own bare gaps."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from planner.dryfit.bodies import Capsule, terminal_capsule
from planner.geometry.segments import segment_distances
from planner.model.connector import Connector

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


def pair_gaps_mm(bodies: Sequence[Capsule], pairs: Sequence[tuple[int, int]]) -> list[float]:
    """Return the gap in mm of each pair of bodies: segment distance less both radii."""
    if not pairs:
        return []
    first, second = np.array([p[0] for p in pairs]), np.array([p[1] for p in pairs])
    start = np.array([body.start for body in bodies], dtype=float)
    end = np.array([body.end for body in bodies], dtype=float)
    radius = np.array([body.radius_mm for body in bodies], dtype=float)
    distance = segment_distances(start[first], end[first], start[second], end[second])
    gaps: list[float] = (distance - radius[first] - radius[second]).tolist()
    return gaps


def own_gap_mm(connector: Connector) -> float | None:
    """Return the connector's smallest gap between two bare terminals; None with one contact."""
    bodies = [terminal_capsule(contact, 0.0) for contact in connector.contacts]
    pairs = [(i, j) for i in range(len(bodies)) for j in range(i)]
    return min(pair_gaps_mm(bodies, pairs), default=None)


def small_gaps(
    connector: Connector, bodies: Sequence[Capsule], apart: Callable[[Capsule, Capsule], bool]
) -> tuple[Gap, ...]:
    """Return the smallest gap of every two parties that are in different nets and too near.

    `apart` tells whether two bodies belong to different nets. Only pairs with at least one lead are
    looked at (two terminals are as the maker made them), and only where metal is bare on one side.
    """
    own = own_gap_mm(connector)
    if own is None or own <= 0:
        return ()
    limit = WATCH_SHARE * own
    pairs = [
        (i, j)
        for i in range(len(bodies))
        for j in range(i)
        if _worth_a_look(bodies[i], bodies[j]) and apart(bodies[i], bodies[j])
    ]
    nearest: dict[tuple[str, str], Gap] = {}
    for (i, j), gap_mm in zip(pairs, pair_gaps_mm(bodies, pairs), strict=True):
        if gap_mm >= limit:
            continue
        gap = Gap(bodies[j], bodies[i], round(gap_mm, 2), round(limit, 2), own)
        key = _party(gap.first), _party(gap.second)
        if key not in nearest or gap.gap_mm < nearest[key].gap_mm:
            nearest[key] = gap
    return tuple(nearest[key] for key in sorted(nearest))


def _party(body: Capsule) -> str:
    return body.conductor or f"contact {body.contact}"


def _worth_a_look(one: Capsule, other: Capsule) -> bool:
    if one.kind == "terminal" and other.kind == "terminal":
        return False
    return one.bare and other.bare
