"""All bodies of an end as arrays, and which of them lie near each other.

A party is what changes together: the metal of one contact, or one lead. Parties are kept from edit
to edit, so that an edit of one lead makes its own bodies and no others. Their pairs are found anew
by boxes: that costs no more than to tell which pairs have stayed.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np
from numpy.typing import NDArray

from planner.dryfit.bodies import Capsule, Lead, joint_bodies, lead_bodies, terminal_bodies
from planner.dryfit.identity import ById
from planner.geometry.boxes import Boxes, Index, boxes_round, near_pairs
from planner.geometry.segments import Array, segment_distances
from planner.model.connector import Connector

Flags = NDArray[np.bool_]

# How far out the smallest gap is looked for, in steps; most connectors need the first only.
REACHES_MM = (1.6, 12.0, np.inf)


@dataclass(frozen=True, eq=False)
class Party:
    """Bodies that change together, all on the contact of number `spot`."""

    spot: int
    bodies: tuple[Capsule, ...]

    @cached_property
    def figures(self) -> Array:
        """Start, end and radius of each body; (n, 7), mm."""
        return np.array([(*it.start, *it.end, it.radius_mm) for it in self.bodies])

    @cached_property
    def flags(self) -> Flags:
        """Of each body: bare, hot (bare metal that the iron heats), as made; (n, 3)."""
        return np.array(
            [(it.bare, it.bare and it.kind != "tail", it.kind == "terminal") for it in self.bodies]
        )


@lru_cache(maxsize=8192)
def contact_party(
    hardware: ById[Connector], spot: int, turn_deg: float, *, landed: bool, covered: bool
) -> Party:
    """Return the metal of the contact of number `spot`: its terminal, or the joint on it."""
    contact = hardware.record.contacts[spot]
    if landed:
        return Party(spot, joint_bodies(contact, turn_deg, covered=covered))
    return Party(spot, terminal_bodies(contact, turn_deg))


@lru_cache(maxsize=8192)
def lead_party(lead: Lead, spot: int, tolerance_mm: float) -> Party:
    """Return a lead that lands on the contact of number `spot`."""
    return Party(spot, lead_bodies(lead, tolerance_mm))


@dataclass(frozen=True, eq=False)
class Scene:
    """The bodies of some parties, as arrays over all bodies."""

    parties: tuple[Party, ...]

    @cached_property
    def bodies(self) -> tuple[Capsule, ...]:
        """The bodies themselves."""
        return tuple(body for party in self.parties for body in party.bodies)

    @cached_property
    def spots(self) -> Index:
        """The number of the contact of each body."""
        sizes = [len(party.bodies) for party in self.parties]
        return np.repeat([party.spot for party in self.parties], sizes)

    @cached_property
    def _figures(self) -> Array:
        return np.concatenate([party.figures for party in self.parties])

    @property
    def start(self) -> Array:
        """The start of each body; (n, 3), mm."""
        return self._figures[:, 0:3]

    @property
    def end(self) -> Array:
        """The end of each body; (n, 3), mm."""
        return self._figures[:, 3:6]

    @property
    def radius(self) -> Array:
        """The radius of each body; (n,), mm."""
        return self._figures[:, 6]

    @cached_property
    def _flags(self) -> Flags:
        return np.concatenate([party.flags for party in self.parties])

    @property
    def bare(self) -> Flags:
        """Whether each body is bare metal."""
        return self._flags[:, 0]

    @property
    def hot(self) -> Flags:
        """Whether each body is bare metal that the iron heats: not a tail."""
        return self._flags[:, 1]

    @property
    def made(self) -> Flags:
        """Whether each body is as the connector was made."""
        return self._flags[:, 2]

    @cached_property
    def boxes(self) -> Boxes:
        """The boxes round the bodies."""
        return boxes_round(self.start, self.end, self.radius)


@dataclass(frozen=True, slots=True)
class Near:
    """The pairs of a scene whose gap matters and is at most `reach_mm`, whatever their nets.

    `first` is lower than `second`. A gap matters between two contacts, if at least one of the two
    bodies is a lead or a joint, and both are bare, or one is hot: hot metal spoils insulation.
    """

    scene: Scene
    reach_mm: float
    first: Index
    second: Index
    gap: Array


def near_in(scene: Scene, reach_mm: float) -> Near:
    """Return the near pairs of a scene, ordered."""
    hot, tail = np.flatnonzero(scene.hot), np.flatnonzero(scene.bare & ~scene.hot)
    # Insulation against insulation, most of the pairs, is not even looked at.
    sets = [(hot, np.arange(len(scene.spots)))] + ([(tail, tail)] if len(tail) else [])
    codes = np.concatenate([_codes(scene, *each, reach_mm) for each in sets])
    first, second = np.divmod(np.unique(codes), max(len(scene.spots), 1))
    gap = _gaps(scene, first, second)
    near = gap <= reach_mm
    return Near(scene, reach_mm, first[near], second[near], gap[near])


def _codes(scene: Scene, ones: Index, others: Index, reach_mm: float) -> Index:
    """Return the near pairs that matter of two sets of bodies, each pair as one number."""
    first, second = near_pairs(scene.boxes[ones], scene.boxes[others], reach_mm)
    first, second = ones[first], others[second]
    wanted = scene.spots[first] != scene.spots[second]
    wanted &= ~(scene.made[first] & scene.made[second])
    first, second = first[wanted], second[wanted]
    codes = np.minimum(first, second) * len(scene.spots) + np.maximum(first, second)
    return np.asarray(codes)


def _gaps(scene: Scene, first: Index, second: Index) -> Array:
    start, end, radius = scene.start, scene.end, scene.radius
    distance = segment_distances(start[first], end[first], start[second], end[second])
    return np.asarray(distance - radius[first] - radius[second])


def least_between(scene: Scene, nets: Index) -> float:
    """Return the smallest gap that matters between bodies of different nets, mm; inf if none is.

    `nets` gives a number for the net of each contact. The search goes out step by step.
    """
    for reach_mm in REACHES_MM:
        least = least_in(near_in(scene, reach_mm), nets)
        if least <= reach_mm:
            break
    return least


def least_in(near: Near, nets: Index) -> float:
    """Return the smallest gap of the near pairs in different nets, mm; inf if there is none."""
    net = nets[near.scene.spots]
    apart = net[near.first] != net[near.second]
    return float(near.gap[apart].min(initial=np.inf))


def parties_of(
    hardware: ById[Connector], leads: Sequence[Lead], turn_deg: float, tolerance_mm: float
) -> tuple[Party, ...]:
    """Return the parties of an end: its contacts, then its leads."""
    spots = {it.id: spot for spot, it in enumerate(hardware.record.contacts)}
    covers: dict[int, bool] = {}
    for lead in leads:
        spot = spots[lead.landing.contact]
        covers[spot] = covers.get(spot, False) or lead.covered
    contacts = [
        contact_party(
            hardware, spot, turn_deg, landed=spot in covers, covered=covers.get(spot, False)
        )
        for spot in spots.values()
    ]
    return (
        *contacts,
        *(lead_party(lead, spots[lead.landing.contact], tolerance_mm) for lead in leads),
    )
