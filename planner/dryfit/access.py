"""Whether the iron reaches each joint in the order of soldering."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from planner.dryfit.bodies import Capsule, Lead
from planner.geometry.segments import segment_distances

# A conical tip for small work, from memory: taken as a capsule, 0.5 mm at the joint.
IRON_RADIUS_MM = 0.4
IRON_LENGTH_MM = 12.0
IRON_RISE_DEG = 35.0
DIRECTIONS = 32


@dataclass(frozen=True, slots=True)
class Access:
    """The best way in to a joint: margin in mm (below 0: hidden), direction, what blocks it."""

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


def iron_access(lead: Lead, there: Sequence[Capsule]) -> Access:
    """Return the best of 32 directions for the iron at a joint among the bodies already there."""
    angles = np.arange(DIRECTIONS) * 2 * math.pi / DIRECTIONS
    rise = math.radians(IRON_RISE_DEG)
    along = np.stack(
        [
            np.cos(angles) * math.cos(rise),
            np.sin(angles) * math.cos(rise),
            np.full(DIRECTIONS, math.sin(rise)),
        ],
        axis=1,
    )
    names = (lead.landing.conductor, lead.landing.contact)
    others = [body for body in there if body.contact != lead.landing.contact]
    if not others:
        return Access(*names, IRON_LENGTH_MM, 0.0, "")
    tip = np.array(lead.mouth) + along * (lead.metal_mm / 2)
    end = tip + along * IRON_LENGTH_MM
    count = len(others)
    distance = segment_distances(
        np.repeat(tip, count, axis=0),
        np.repeat(end, count, axis=0),
        np.tile(np.array([body.start for body in others]), (DIRECTIONS, 1)),
        np.tile(np.array([body.end for body in others]), (DIRECTIONS, 1)),
    ).reshape(DIRECTIONS, count)
    margins = distance - np.array([body.radius_mm for body in others]) - IRON_RADIUS_MM
    worst = margins.min(axis=1).round(2)
    best = int(worst.argmax())
    blocker = others[int(margins[best].argmin())]
    return Access(
        *names,
        float(worst[best]),
        math.degrees(float(angles[best])),
        blocker.conductor or f"contact {blocker.contact}",
    )
