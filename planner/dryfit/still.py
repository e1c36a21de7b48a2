"""What of an end stays still in the plug's frame as the plug is turned, and what moves.

In the plug's own frame its metal, the bare strands and the tails, which are bent to the side of
their contacts, stay where they are, and so do all gaps between them and to the shell. Only the
cable's cut end goes round, and with it the insulated leads.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from planner.dryfit.bodies import Lead
from planner.dryfit.scene import Scene
from planner.geometry.boxes import Boxes, Index
from planner.geometry.segments import Array


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
    """The insulated leads: where they end, radii, nets."""

    tops: Array
    radius: Array
    net: Index


@dataclass(frozen=True, slots=True, eq=False)
class Still:
    """The metal that stays still in the plug's frame, and the leads that move."""

    metal: _Group
    cores: _Cores


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
        np.array([lead.way[-2] for lead in cores], dtype=float).reshape(-1, 3),
        np.array([lead.covered_mm / 2 + tolerance_mm for lead in cores], dtype=float),
        nets[on],
    )
    return Still(metal, moving)
