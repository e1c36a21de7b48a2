"""How much room an iron has at each joint, from each direction, beside each other joint."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from planner.dryfit.bodies import Capsule, Lead
from planner.dryfit.scene import Party, Scene
from planner.geometry.boxes import Index
from planner.geometry.segments import Array, segment_distances

# A conical tip for small work, from memory: taken as a capsule, 0.8 mm thick at the joint, that
# rises from it towards the hand.
IRON_RADIUS_MM = 0.4
IRON_LENGTH_MM = 12.0
IRON_RISE_DEG = 35.0
DIRECTIONS = 32
QUICK_STRIDE = 4
# So many pairs are measured in one go: what fits a processor's cache is several times as fast.
BLOCK = 512
# More room than this is as good as this (common practice, no source): it is not measured, so that
# most pairs cost nothing.
ROOMY_MM = 1.0
# Insulation nearer than this to a joint that is being soldered feels its heat: common practice, no
# source.
HEAT_MM = 2.0

Cents: TypeAlias = NDArray[np.int16]


@dataclass(frozen=True)
class Joint:
    """One contact with all leads in it: they are soldered in one go."""

    contact: str
    leads: tuple[Lead, ...]
    parties: tuple[Party, ...]

    @property
    def bodies(self) -> tuple[Capsule, ...]:
        """The terminal with its solder, and the leads."""
        return tuple(body for party in self.parties for body in party.bodies)

    @property
    def mouth(self) -> tuple[float, float, float]:
        """Where the iron's tip goes, mm."""
        return self.leads[0].mouth

    @property
    def metal_mm(self) -> float:
        """Diameter of the thickest strands or tail in it."""
        return max(lead.metal_mm for lead in self.leads)

    @property
    def spot(self) -> int:
        """The number of its contact."""
        return self.parties[0].spot

    @property
    def has_shield(self) -> bool:
        """Tell whether a shield's tail is in it."""
        return any(lead.is_shield for lead in self.leads)


@dataclass(frozen=True)
class Room:
    """The iron's room at n joints, in hundredths of a mm, at most `ROOMY_MM`; below 0: overlap.

    `made[j, d]`: to the nearest other terminal, direction d. `by[j, d, k]`: to the bodies of joint
    k; a joint's own do not count. `terminal[j, d]`: number of that nearest contact. `heat[j, k]`:
    how much nearer than `HEAT_MM` the insulation at joint k is to joint j, tenths of a mm.
    `height[j]`: of the joint, hundredths of a mm; `outward[j]`: direction away from the plug's
    axis in steps of a direction, None on it.
    """

    made: Cents
    by: Cents
    terminal: Index
    heat: NDArray[np.int64]
    height: tuple[int, ...]
    outward: tuple[float | None, ...]


def room_at(joints: Sequence[Joint], terminals: Sequence[Party]) -> Room:
    """Measure the iron's room at each joint.

    The shell is off while one solders, so it is in nobody's way; a frame that is one with the
    contacts is not known to a connector's record and left out.
    """
    scene = Scene(tuple(party for joint in joints for party in joint.parties))
    as_made = Scene(tuple(terminals))
    made, terminal = _nearest(*_measured(joints, as_made), as_made, len(joints))
    by = np.full((len(joints), len(joints), DIRECTIONS), cents(ROOMY_MM), dtype=np.int16)
    joint, body, room = _measured(joints, scene)
    owner = _owners(joints, scene)
    np.minimum.at(by, (joint, owner[body]), room)
    heat = _heat(joints, scene, owner)
    height = tuple(cents(each.mouth[2]) for each in joints)
    outward = tuple(_outward(each) for each in joints)
    return Room(made, by.transpose(0, 2, 1), terminal, heat, height, outward)


def _outward(joint: Joint) -> float | None:
    x, y, _ = joint.mouth
    if math.hypot(x, y) < 0.005:
        return None
    return math.degrees(math.atan2(y, x)) * DIRECTIONS / 360 % DIRECTIONS


def cents(length_mm: float) -> int:
    """Return a length in hundredths of a mm: what scores are compared in."""
    return round(length_mm * 100)


def ways_in() -> Array:
    """Return the unit vectors from a joint along the iron, one for each direction."""
    angles = np.arange(DIRECTIONS) * (2 * math.pi / DIRECTIONS)
    flat, up = math.cos(math.radians(IRON_RISE_DEG)), math.sin(math.radians(IRON_RISE_DEG))
    return np.stack([np.cos(angles) * flat, np.sin(angles) * flat, np.full(DIRECTIONS, up)], axis=1)


def _owners(joints: Sequence[Joint], scene: Scene) -> Index:
    """Return the number of the joint that each body is of, -1 for an unused terminal."""
    place = {joint.spot: number for number, joint in enumerate(joints)}
    return np.array([place.get(spot, -1) for spot in scene.spots.tolist()], dtype=np.intp)


def _nearest(
    joint: Index, body: Index, room: Cents, scene: Scene, count: int
) -> tuple[Cents, Index]:
    """Return the least room at each joint from each direction, and the contact that leaves it."""
    spots = scene.spots
    least = np.full((count, DIRECTIONS), cents(ROOMY_MM), dtype=np.int16)
    nearest = np.full((count, DIRECTIONS), -1, dtype=np.intp)
    for one, other, row in zip(joint, body, room, strict=True):
        nearer = row < least[one]
        least[one][nearer] = row[nearer]
        nearest[one][nearer] = spots[other]
    return least, nearest


def surely_reached(joints: Sequence[Joint], terminals: Sequence[Party]) -> bool:
    """Tell whether a quick look finds a free way in to each joint with all others in place.

    Then no order hides a joint. A quarter of the directions is looked at, so no is not sure.
    """
    scene = Scene((*terminals, *(party for joint in joints for party in joint.parties)))
    joint, _, room = _measured(joints, scene, roomy_mm=0.0, stride=QUICK_STRIDE)
    least = np.zeros((len(joints), DIRECTIONS // QUICK_STRIDE), dtype=np.int16)
    np.minimum.at(least, joint, room)
    return bool((least.max(axis=1) >= 0).all())


def _measured(
    joints: Sequence[Joint], scene: Scene, *, roomy_mm: float = ROOMY_MM, stride: int = 1
) -> tuple[Index, Index, Cents]:
    """Return pairs (joint, body) in which the body comes nearer than roomy, and the room there.

    The room has a row of directions for each pair. What is surely roomy by the distance of a body's
    middle is not looked at closely: first for the cone of all directions, then for each direction.
    """
    tips = np.array([joint.mouth for joint in joints])
    metal = np.array([joint.metal_mm / 2 for joint in joints])
    start, end, reach = scene.start, scene.end, scene.radius + IRON_RADIUS_MM
    middle, along = (start + end) / 2, end - start
    bound = np.sqrt(np.einsum("ij,ij->i", along, along)) / 2 + reach + roomy_mm
    foreign = scene.spots[None] != np.array([joint.spot for joint in joints])[:, None]
    joint, body = _near_the_cone(tips, metal, middle, np.where(foreign, bound, -1.0))
    way = ways_in()[::stride]
    room = np.full((len(joint), len(way)), cents(roomy_mm), dtype=np.int16)
    for at in range(0, len(joint), BLOCK):
        one, other = joint[at : at + BLOCK], body[at : at + BLOCK]
        away = middle[other] - tips[one]
        along = away @ way.T
        held = np.clip(along, metal[one, None], metal[one, None] + IRON_LENGTH_MM)
        distance2 = np.einsum("ij,ij->i", away, away)[:, None] + held * (held - 2 * along)
        pair, direction = np.nonzero(distance2 < bound[other, None] ** 2)
        one, other = one[pair], other[pair]
        tip = tips[one] + way[direction] * metal[one, None]
        handle = tip + way[direction] * IRON_LENGTH_MM
        exact = segment_distances(tip, handle, start[other], end[other]) - reach[other]
        room[at + pair, direction] = np.rint(np.clip(exact, -IRON_LENGTH_MM, roomy_mm) * 100)
    return joint, body, room


def _near_the_cone(tips: Array, metal: Array, middle: Array, bound: Array) -> tuple[Index, Index]:
    """Return the pairs (joint, body) where some direction of the iron may pass within the bound.

    `bound` (joint, body), mm; below 0: never.
    """
    flat, up = math.cos(math.radians(IRON_RISE_DEG)), math.sin(math.radians(IRON_RISE_DEG))
    away = middle[None] - tips[:, None]
    out2, high = away[..., 0] ** 2 + away[..., 1] ** 2, away[..., 2]
    along = np.sqrt(out2) * flat + high * up
    held = np.clip(along, metal[:, None], metal[:, None] + IRON_LENGTH_MM)
    distance2 = out2 + high**2 + held * (held - 2 * along)
    joint, body = np.nonzero((distance2 < bound**2) & (bound > 0))
    return joint, body


def _heat(joints: Sequence[Joint], scene: Scene, owner: Index) -> NDArray[np.int64]:
    """Return how far the insulation at each joint (columns) is into the heat of each (rows)."""
    tips = np.array([joint.mouth for joint in joints])
    heat = np.zeros((len(joints), len(joints)), dtype=np.int64)
    covered = np.flatnonzero(~scene.bare)
    start, end = scene.start[covered], scene.end[covered]
    along = end - start
    length2 = np.einsum("ij,ij->i", along, along)
    away = tips[:, None] - start[None]
    foot = np.einsum("ijk,jk->ij", away, along) / np.where(length2 > 0, length2, 1.0)
    rest = away - np.clip(foot, 0.0, 1.0)[..., None] * along[None]
    near = HEAT_MM - np.sqrt(np.einsum("ijk,ijk->ij", rest, rest)) + scene.radius[covered][None]
    joint, body = np.nonzero(near > 0)
    tenths = np.rint(near[joint, body] * 10).astype(np.int64)
    np.maximum.at(heat, (joint, owner[covered[body]]), tenths)
    np.fill_diagonal(heat, 0)
    return heat
