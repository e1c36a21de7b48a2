"""How near the leads of an end come to its metal at any turn of the plug.

In the plug's own frame its metal, the bare strands and the tails, which are bent to the side of
their contacts, stay where they are, and so do all gaps between them and to the shell. Only the
cable's cut end goes round, and with it the insulated leads.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from planner.dryfit.bodies import Lead
from planner.dryfit.scene import REACHES_MM, Scene
from planner.geometry.boxes import Boxes, Index, boxes_round, near_pairs
from planner.geometry.curves import lead_curves
from planner.geometry.segments import Array, segment_distances

_ROUNDING_MM = 1e-6


@dataclass(frozen=True, slots=True, eq=False)
class _Group:
    """Bodies as arrays: ends, radii, nets, boxes."""

    start: Array
    end: Array
    radius: Array
    net: Index
    boxes: Boxes


@dataclass(frozen=True, slots=True, eq=False)
class _Cores:
    """The insulated leads: from where to where with the plug not turned, radii, nets."""

    exits: Array
    tops: Array
    radius: Array
    net: Index


@dataclass(frozen=True, slots=True, eq=False)
class Still:
    """The metal that stays still in the plug's frame, and the leads that move.

    No lead stays farther away than `most_mm`, since its lower end stays where it is.
    """

    metal: _Group
    cores: _Cores
    most_mm: float

    def least_at(self, turn_deg: float) -> float:
        """Return the smallest gap of a lead to metal of another net, mm; inf if there is none."""
        cores = self.cores
        corners = lead_curves(_turned(cores.exits, -turn_deg), cores.tops)
        start, end = corners[:, :-1].reshape(-1, 3), corners[:, 1:].reshape(-1, 3)
        pieces = corners.shape[1] - 1
        radius, net = np.repeat(cores.radius, pieces), np.repeat(cores.net, pieces)
        leads = _Group(start, end, radius, net, boxes_round(start, end, radius))
        return _least(self.metal, leads, self.most_mm + _ROUNDING_MM)


def _least(ones: _Group, others: _Group, reach_mm: float) -> float:
    """Return the smallest gap of two bodies in different nets, mm; inf if none is in reach."""
    one, other = near_pairs(ones.boxes, others.boxes, reach_mm)
    apart = ones.net[one] != others.net[other]
    one, other = one[apart], other[apart]
    distance = segment_distances(
        ones.start[one], ones.end[one], others.start[other], others.end[other]
    )
    gaps = distance - ones.radius[one] - others.radius[other]
    return float(gaps.min(initial=math.inf))


def still_of(scene: Scene, leads: Sequence[Lead], nets: Index, *, tolerance_mm: float) -> Still:
    """Return what stays still of a scene with the plug not turned; `nets` by number of contact."""
    hot = np.flatnonzero(scene.hot)
    metal = _Group(
        scene.start[hot],
        scene.end[hot],
        scene.radius[hot],
        nets[scene.spots[hot]],
        scene.boxes[hot],
    )
    spots = {party.bodies[0].contact: party.spot for party in scene.parties}
    cores = [lead for lead in leads if not lead.is_shield]
    on = np.array([spots[lead.landing.contact] for lead in cores], dtype=np.intp)
    moving = _Cores(
        np.array([lead.exit for lead in cores], dtype=float).reshape(-1, 3),
        np.array([lead.way[-2] for lead in cores], dtype=float).reshape(-1, 3),
        np.array([lead.covered_mm / 2 + tolerance_mm for lead in cores], dtype=float),
        nets[on],
    )
    feet = _Group(
        moving.tops,
        moving.tops,
        moving.radius,
        moving.net,
        boxes_round(moving.tops, moving.tops, moving.radius),
    )
    for reach_mm in REACHES_MM:
        most_mm = _least(metal, feet, reach_mm)
        if most_mm <= reach_mm:
            break
    return Still(metal, moving, most_mm)


def _turned(points: Array, turn_deg: float) -> Array:
    """Return points turned round the axis; (n, 3), mm."""
    cos, sin = math.cos(math.radians(turn_deg)), math.sin(math.radians(turn_deg))
    x, y = points[:, 0], points[:, 1]
    return np.stack([x * cos - y * sin, x * sin + y * cos, points[:, 2]], axis=1)
