"""The bodies at an end: terminals, joints, leads, tails as capsules in space, mm, solder side."""

import math
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import Literal

from planner.geometry.curves import Vector, lead_curve
from planner.geometry.views import turned_point
from planner.model.cable import Core, Shield
from planner.model.connector import Connector, Contact, Terminal
from planner.model.plan import Landing
from planner.model.workmanship import Workmanship

# Typical figures, from memory.
CUP_WALL_MM = 0.15
SLEEVE_WALL_MM = 0.2
SOLDER_MM = 0.05
LEAST_ROOM_MM = 3.0
GOOD_ROOM_MM = 10.0
ROOM_OVER_REACH = 1.2
# A flat tab is this many round bars beside each other.
TAB_BARS = 3

Kind = Literal["terminal", "joint", "strands", "core", "tail", "shell"]


@dataclass(frozen=True, slots=True)
class Capsule:
    """A segment with a radius. `bare` metal, or covered by insulation or a sleeve.

    A terminal or joint has no conductor; the shell has neither conductor nor contact.
    """

    start: Vector
    end: Vector
    radius_mm: float
    kind: Kind
    contact: str
    conductor: str
    bare: bool


@dataclass(frozen=True)
class Lead:
    """One landed conductor from the cut end (`exit`) to its terminal (`mouth`).

    `gap_mm` is the bare length between the terminal and the insulation. `covered` where a sleeve or
    a dab covers the joint.
    """

    landing: Landing
    part: Core | Shield
    terminal: Terminal
    exit: Vector
    mouth: Vector
    gap_mm: float
    covered: bool

    @property
    def is_shield(self) -> bool:
        """Tell whether this is a shield's tail."""
        return isinstance(self.part, Shield)

    @property
    def is_bare(self) -> bool:
        """Tell whether it is bare all the way: a tail with no sleeve."""
        return self.is_shield and not self.landing.sleeved

    @property
    def metal_mm(self) -> float:
        """Diameter of the bare strands or tail."""
        return self.part.tail_mm if isinstance(self.part, Shield) else self.part.conductor_mm

    @property
    def covered_mm(self) -> float:
        """Diameter over the insulation, or over the sleeve of a tail."""
        return covered_mm(self.part)

    @cached_property
    def way(self) -> tuple[Vector, ...]:
        """The corners of the lead from the cut end to where the insulation ends, then the mouth."""
        x, y, z = self.mouth
        return (*lead_curve(self.exit, (x, y, z + self.gap_mm)), self.mouth)


def covered_mm(part: Core | Shield) -> float:
    """Return the diameter over the insulation of a core, or over the sleeve of a tail."""
    return part.tail_mm + 2 * SLEEVE_WALL_MM if isinstance(part, Shield) else part.insulation_mm


def insulation_gap_mm(part: Core | Shield, workmanship: Workmanship) -> float:
    """Return the insulation gap to aim for by the chosen profile.

    `one-to-two` allows one to two diameters with insulation (US Army STP 11-25R13-SM-TG, App. A):
    aim for one. `below-two` allows anything under two conductor diameters (NASA-STD-8739.3, 9.1.1
    and 9.1.2): aim for the middle, one conductor diameter.
    """
    if workmanship.insulation_gap == "one-to-two":
        return covered_mm(part)
    return part.tail_mm if isinstance(part, Shield) else part.conductor_mm


def strip_mm(lead: Lead) -> float:
    """Return how much insulation to strip: the depth of a cup, or the length of a lug or post.

    The insulation gap that the lead has room for is added to it.
    """
    return lead.terminal.depth_mm + lead.gap_mm


def cut_mm(lead: Lead) -> float:
    """Return how long to cut a conductor from the end of the jacket.

    That is its way to where the insulation ends, and what is stripped.
    """
    insulated = sum(math.dist(one, other) for one, other in pairwise(lead.way[:-1]))
    return insulated + strip_mm(lead)


def terminal_mouth(terminal: Terminal, turn_deg: float) -> Vector:
    """Return where the wire meets the terminal, with the plug turned by `turn_deg`."""
    x, y = turned_point(terminal.x_mm, terminal.y_mm, turn_deg)
    return (x, y, terminal.z_mm)


def terminal_bodies(contact: Contact, turn_deg: float) -> tuple[Capsule, ...]:
    """Return the metal of a terminal: a cup down to its floor, a post, or a lug's flat tab."""
    return _metal(contact, turn_deg, "terminal", 0.0, bare=True)


def joint_bodies(contact: Contact, turn_deg: float, *, covered: bool) -> tuple[Capsule, ...]:
    """Return a terminal with its solder; a sleeve or a dab adds its wall and covers the metal."""
    more = SOLDER_MM + (SLEEVE_WALL_MM if covered else 0.0)
    return _metal(contact, turn_deg, "joint", more, bare=not covered)


def _metal(
    contact: Contact, turn_deg: float, kind: Kind, more_mm: float, *, bare: bool
) -> tuple[Capsule, ...]:
    terminal = contact.terminal
    x, y, z = terminal_mouth(terminal, turn_deg)
    if terminal.kind == "lug":
        bars, radius = _tab(terminal, turn_deg)
        places = [((x + a, y + b, z), (x + c, y + d, z)) for (a, b), (c, d) in bars]
    else:
        radius = terminal.across_mm / 2 + (CUP_WALL_MM if terminal.kind == "cup" else 0.0)
        places = [((x, y, z - terminal.depth_mm), (x, y, z))]
    return tuple(
        Capsule(start, end, radius + more_mm, kind, contact.id, "", bare) for start, end in places
    )


Point = tuple[float, float]


def _tab(terminal: Terminal, turn_deg: float) -> tuple[list[tuple[Point, Point]], float]:
    """Return the bars of a flat tab round its middle, and their radius.

    They lie along its longer side, beside each other over the shorter one, so that they reach all
    four sides.
    """
    along, across = terminal.depth_mm, terminal.width_mm
    turn_deg += terminal.opening_deg
    if along < across:
        along, across, turn_deg = across, along, turn_deg + 90.0
    radius = across / 2 / TAB_BARS
    half = along / 2 - radius
    aside = [(2 * bar + 1 - TAB_BARS) * radius for bar in range(TAB_BARS)]
    bars = [(turned_point(-half, y, turn_deg), turned_point(half, y, turn_deg)) for y in aside]
    return bars, radius


def proposed_room_mm(connector: Connector) -> float:
    """Return how far the jacket's cut end should stand above the highest terminal.

    Typical, from memory: 10 mm let a sleeve park on its core; less where the barrel has less, but
    room for bare strands and their gap; more where terminals stand far from the axis, so that cores
    do not bend sharply.
    """
    reach = max(math.hypot(c.terminal.x_mm, c.terminal.y_mm) for c in connector.contacts)
    spare = connector.barrel.length_mm - stack_mm(connector)
    return max(LEAST_ROOM_MM, ROOM_OVER_REACH * reach, min(GOOD_ROOM_MM, spare))


def top_mm(connector: Connector) -> float:
    """Return the height of the highest terminal's mouth."""
    return max(it.terminal.z_mm for it in connector.contacts)


def stack_mm(connector: Connector) -> float:
    """Return the height from the foot of the lowest terminal to the mouth of the highest."""
    feet = [
        it.terminal.z_mm - (it.terminal.depth_mm if it.terminal.kind != "lug" else 0.0)
        for it in connector.contacts
    ]
    return top_mm(connector) - min(feet)


def lead_bodies(lead: Lead, tolerance_mm: float) -> tuple[Capsule, ...]:
    """Return a lead as capsules: insulated or tail along its curve, then the bare strands.

    Leads wander, so they are thought thicker by the tolerance. A sleeve over a joint covers the
    strands there, and all of a tail.
    """
    names = (lead.landing.contact, lead.landing.conductor)
    kind: Kind = "tail" if lead.is_shield else "core"
    radius = (lead.metal_mm if lead.is_bare else lead.covered_mm) / 2 + tolerance_mm
    *curve, strip, mouth = lead.way
    pieces = [
        Capsule(one, other, radius, kind, *names, bare=lead.is_bare)
        for one, other in pairwise([*curve, strip])
    ]
    wall = SLEEVE_WALL_MM if lead.covered else 0.0
    strands = lead.metal_mm / 2 + wall + tolerance_mm
    return (*pieces, Capsule(strip, mouth, strands, "strands", *names, bare=not lead.covered))
