"""Whether the iron reaches each joint in the order of soldering."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from planner.dryfit.bodies import Capsule, Lead
from planner.geometry.segments import Array, segment_distances

# A conical tip for small work, from memory: taken as a capsule, 0.5 mm at the joint.
IRON_RADIUS_MM = 0.4
IRON_LENGTH_MM = 12.0
IRON_RISE_DEG = 35.0
DIRECTIONS = 32
QUICK_DIRECTIONS = 8

Index = NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class Access:
    """A way in to a joint: margin in mm (below 0: hidden), direction, what is nearest to it."""

    conductor: str
    contact: str
    margin_mm: float
    direction_deg: float
    blocker: str


def solder_order(leads: Sequence[Lead], wanted: Sequence[str] = ()) -> tuple[Lead, ...]:
    """Return the leads as they are to be soldered: as wanted, then the deepest joint first."""
    place = {conductor: index for index, conductor in enumerate(wanted)}
    return tuple(
        sorted(
            leads,
            key=lambda lead: (
                place.get(lead.landing.conductor, len(place)),
                lead.mouth[2],
                not lead.is_shield,
                lead.landing.contact,
                lead.landing.conductor,
            ),
        )
    )


def iron_accesses(
    ordered: Sequence[Lead],
    terminals: Sequence[Capsule],
    covers: Mapping[Lead, Sequence[Capsule]],
) -> tuple[Access, ...]:
    """Return a way in for the iron at each joint, in the order of soldering.

    In the way of a joint are all other terminals and the leads soldered before it (`covers` gives a
    lead's capsules). A joint that one of eight directions reaches needs no closer look; for the
    others, the best of 32. So a margin below 0 is the best there is.
    """
    bodies = [*terminals, *(body for lead in ordered for body in covers[lead])]
    joints, others = _in_the_way(ordered, len(terminals), bodies, covers)
    scene = _Scene(ordered, bodies, joints, others)
    quick = _ways(scene, np.arange(0, DIRECTIONS, DIRECTIONS // QUICK_DIRECTIONS))
    if all(way.margin_mm >= 0 for way in quick):
        return quick
    close = np.isin(joints, [n for n, way in enumerate(quick) if way.margin_mm < 0])
    full = _ways(_Scene(ordered, bodies, joints[close], others[close]), np.arange(DIRECTIONS))
    return tuple(
        one if one.margin_mm >= 0 else other for one, other in zip(quick, full, strict=True)
    )


@dataclass(frozen=True, slots=True)
class _Scene:
    """Joints and bodies, and the pairs of a joint with a body that is there before it."""

    ordered: Sequence[Lead]
    bodies: Sequence[Capsule]
    joints: Index
    others: Index


def _ways(scene: _Scene, directions: Index) -> tuple[Access, ...]:
    margins = _margins_mm(scene, directions)
    found = []
    for number, lead in enumerate(scene.ordered):
        mine = scene.joints == number
        found.append(_best(lead, scene, mine, margins, directions))
    return tuple(found)


def _in_the_way(
    ordered: Sequence[Lead],
    terminals: int,
    bodies: Sequence[Capsule],
    covers: Mapping[Lead, Sequence[Capsule]],
) -> tuple[Index, Index]:
    """Return pairs of (number of a joint, number of a body that is there before it)."""
    joints, others = [], []
    there = terminals
    for number, lead in enumerate(ordered):
        found = [i for i in range(there) if bodies[i].contact != lead.landing.contact]
        joints += [number] * len(found)
        others += found
        there += len(covers[lead])
    return np.array(joints, dtype=np.intp), np.array(others, dtype=np.intp)


def _margins_mm(scene: _Scene, directions: Index) -> Array:
    """Return the margin of the iron from each direction (rows) to each pair's body (columns)."""
    angles = directions * 2 * math.pi / DIRECTIONS
    flat, up = math.cos(math.radians(IRON_RISE_DEG)), math.sin(math.radians(IRON_RISE_DEG))
    along = np.stack(
        [np.cos(angles) * flat, np.sin(angles) * flat, np.full(len(angles), up)], axis=1
    )
    mouth = np.array([lead.mouth for lead in scene.ordered])[scene.joints]
    radius = np.array([lead.metal_mm / 2 for lead in scene.ordered])[scene.joints]
    tip = (mouth[None] + along[:, None] * radius[None, :, None]).reshape(-1, 3)
    end = tip + np.repeat(along, len(scene.joints), axis=0) * IRON_LENGTH_MM
    start_of = np.array([body.start for body in scene.bodies])[scene.others]
    end_of = np.array([body.end for body in scene.bodies])[scene.others]
    reach = np.array([body.radius_mm for body in scene.bodies])[scene.others] + IRON_RADIUS_MM
    rows = (len(angles), 1)
    distance = segment_distances(tip, end, np.tile(start_of, rows), np.tile(end_of, rows))
    return np.asarray(distance.reshape(len(angles), -1) - reach)


def _best(
    lead: Lead, scene: _Scene, mine: NDArray[np.bool_], margins: Array, directions: Index
) -> Access:
    names = (lead.landing.conductor, lead.landing.contact)
    if not mine.any():
        return Access(*names, IRON_LENGTH_MM, 0.0, "")
    worst = margins[:, mine].min(axis=1).round(2)
    best = int(worst.argmax())
    blocker = scene.bodies[scene.others[mine][margins[best, mine].argmin()]]
    return Access(
        *names,
        float(worst[best]),
        float(directions[best]) * 360.0 / DIRECTIONS,
        blocker.conductor or f"contact {blocker.contact}",
    )
