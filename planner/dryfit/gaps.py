"""Gaps between the bodies of an end, and how they stand to the connector's own bare gaps."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Literal

import numpy as np

from planner.dryfit.bodies import Capsule, terminal_bodies
from planner.dryfit.scene import Flags, Near, Scene
from planner.dryfit.shell import wall_gaps_mm, wall_spot
from planner.geometry.boxes import Index
from planner.geometry.segments import Array, segment_distances
from planner.model.connector import Connector, Shell
from planner.model.workmanship import Workmanship

GapClass = Literal["touch", "sleeve", "watch", "clear"]

# No limit is drawn from more than this, however wide a connector is made: the flat clearance up to
# 64 V of IPC/WHMA-A-620B (draft, table 1-1), as quoted in secondary pages.
FLAT_RULE_MM = 1.6


@dataclass(frozen=True, slots=True)
class Gap:
    """The gap in mm between two bodies, with the limit below which it is worth a word.

    At least the first is a lead, a joint or a terminal; the second may be the shell. Below
    `sleeve_mm` it wants a sleeve.
    """

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


@dataclass(frozen=True, slots=True)
class Limits:
    """The limits of the classes sleeve and watch, mm."""

    sleeve_mm: float
    watch_mm: float


def limits_of(own_mm: float | None, rules: Workmanship) -> Limits | None:
    """Return the limits as shares of a gap that the connector has as made; None if it has none.

    A flat rule would fail a DIN-5 or a D-sub as made; so each connector is measured by itself.
    """
    if own_mm is None or own_mm <= 0:
        return None
    own_mm = min(own_mm, FLAT_RULE_MM)
    sleeve, watch = rules.sleeve_share * own_mm, rules.watch_share * own_mm
    return Limits(round(min(sleeve, watch), 2), round(watch, 2))


def pair_gaps_mm(bodies: Sequence[Capsule], first: Index, second: Index) -> Array:
    """Return the gap in mm of each pair of bodies: segment distance less both radii."""
    start, end, radius = _arrays(bodies)
    distance = segment_distances(start[first], end[first], start[second], end[second])
    return np.asarray(distance - radius[first] - radius[second])


def _arrays(bodies: Sequence[Capsule]) -> tuple[Array, Array, Array]:
    start = np.array([body.start for body in bodies], dtype=float).reshape(-1, 3)
    end = np.array([body.end for body in bodies], dtype=float).reshape(-1, 3)
    return start, end, np.array([body.radius_mm for body in bodies], dtype=float)


def own_gaps_mm(connector: Connector) -> dict[tuple[str, str], float]:
    """Return the gap between every two terminals as made, mm, below 0 where they overlap."""
    bodies = [body for it in connector.contacts for body in terminal_bodies(it, 0.0)]
    spots = {it.id: spot for spot, it in enumerate(connector.contacts)}
    spot = np.array([spots[body.contact] for body in bodies])
    first, second = np.triu_indices(len(bodies), 1)
    apart = spot[first] != spot[second]
    first, second = first[apart], second[apart]
    gaps = pair_gaps_mm(bodies, first, second)
    least = np.full((len(spots), len(spots)), np.inf)
    np.minimum.at(least, (spot[first], spot[second]), gaps)
    return {
        (one, other): float(least[spots[one], spots[other]])
        for one, other in combinations(spots, 2)
    }


def own_gap_mm(connector: Connector) -> float | None:
    """Return the connector's smallest gap between two bare terminals; None with one contact."""
    return min(own_gaps_mm(connector).values(), default=None)


def own_wall_gaps_mm(connector: Connector) -> dict[str, float]:
    """Return the gap of each terminal as made to the shell, mm, below 0 where it is outside."""
    found = {}
    for contact in connector.contacts:
        gaps = wall_gaps_mm(connector.shell, *_arrays(terminal_bodies(contact, 0.0)), 0.0)
        found[contact.id] = float(gaps.min())
    return found


def small_gaps(near: Near, nets: Index, limits: Limits | None) -> list[Gap]:
    """Return the smallest gap of every two parties in different nets that is below the limit.

    `nets` gives a number for the net of each contact. Only bare metal against bare metal counts:
    insulation that touches is no bridge. A contact with its joint is one party, a tail another.
    """
    if limits is None:
        return []
    scene = near.scene
    net = nets[scene.spots]
    small = (near.gap.round(2) < limits.watch_mm) & (net[near.first] != net[near.second])
    small &= scene.bare[near.first] & scene.bare[near.second]
    found = [
        _gap(scene.bodies[near.first[at]], scene.bodies[near.second[at]], near.gap[at], limits)
        for at in np.flatnonzero(small)
    ]
    return list(_smallest(found))


def wall_gaps(
    scene: Scene, counts: Flags, shell: Shell, turn_deg: float, limits: Limits | None
) -> list[Gap]:
    """Return the smallest gap of each joint, and of each tail, to the shell below the limit.

    `counts` tells for each body whether touching the shell would be a bridge.
    """
    if limits is None:
        return []
    gaps = wall_gaps_mm(shell, scene.start, scene.end, scene.radius, turn_deg)
    small = (gaps.round(2) < limits.watch_mm) & counts
    found = [
        _gap(scene.bodies[at], wall_spot(shell, scene.bodies[at], turn_deg), gaps[at], limits)
        for at in np.flatnonzero(small)
    ]
    return list(_smallest(found))


def _gap(one: Capsule, other: Capsule, gap_mm: float, limits: Limits) -> Gap:
    return Gap(one, other, round(float(gap_mm), 2), limits.watch_mm, limits.sleeve_mm)


def _smallest(gaps: Sequence[Gap]) -> Iterator[Gap]:
    nearest: dict[tuple[str, str], Gap] = {}
    for gap in gaps:
        key = _party(gap.first), _party(gap.second)
        key = min(key), max(key)
        if key not in nearest or gap.gap_mm < nearest[key].gap_mm:
            nearest[key] = gap
    return (nearest[key] for key in sorted(nearest))


def _party(body: Capsule) -> str:
    return f"tail {body.conductor}" if body.kind == "tail" else f"contact {body.contact}"
