"""The bodies at an end: terminals, leads and tails as capsules in space, mm, solder side."""

import math
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from planner.geometry.curves import Vector, lead_curve
from planner.geometry.views import mirrored_point, turned_point
from planner.model.cable import Cable, Core, Shield
from planner.model.connector import Connector, Contact, Terminal
from planner.model.plan import Landing, Plan

# Typical figures, from memory; leads wander, so bodies are inflated by the tolerance.
CUP_WALL_MM = 0.15
SLEEVE_WALL_MM = 0.2
TOLERANCE_MM = 0.05
LEAST_ROOM_MM = 6.0
ROOM_OVER_REACH = 1.2
RISE_MM = 1.5


@dataclass(frozen=True, slots=True)
class Capsule:
    """A segment with a radius. `bare` metal, or covered by insulation or a sleeve."""

    start: Vector
    end: Vector
    radius_mm: float
    kind: Literal["terminal", "strands", "core", "tail"]
    contact: str
    conductor: str
    bare: bool


@dataclass(frozen=True)
class Lead:
    """One landed conductor from the cut end (`exit`) to its terminal (`mouth`)."""

    landing: Landing
    part: Core | Shield
    exit: Vector
    mouth: Vector

    @property
    def is_shield(self) -> bool:
        """Tell whether this is a shield's tail."""
        return isinstance(self.part, Shield)

    @property
    def metal_mm(self) -> float:
        """Diameter of the bare strands or tail."""
        return self.part.tail_mm if isinstance(self.part, Shield) else self.part.conductor_mm

    @property
    def covered_mm(self) -> float:
        """Diameter over the insulation, or over the sleeve of a tail."""
        if isinstance(self.part, Shield):
            return self.part.tail_mm + 2 * SLEEVE_WALL_MM
        return self.part.insulation_mm

    @property
    def gap_mm(self) -> float:
        """Bare strands between the terminal and the insulation."""
        return min(self.covered_mm, RISE_MM)

    @cached_property
    def way(self) -> tuple[Vector, ...]:
        """The corners of the lead from the cut end to where the insulation ends, then the mouth."""
        x, y, z = self.mouth
        return (*lead_curve(self.exit, (x, y, z + self.gap_mm)), self.mouth)


def terminal_mouth(terminal: Terminal, turn_deg: float) -> Vector:
    """Return where the wire meets the terminal, with the plug turned by `turn_deg`."""
    x, y = turned_point(terminal.x_mm, terminal.y_mm, turn_deg)
    return (x, y, terminal.z_mm)


def terminal_capsule(contact: Contact, turn_deg: float) -> Capsule:
    """Return the metal of a terminal: a cup down to its floor, a lug or post along its run."""
    terminal = contact.terminal
    x, y, z = terminal_mouth(terminal, turn_deg)
    if terminal.kind == "lug":
        turn = math.radians(terminal.opening_deg + turn_deg)
        radius = min(terminal.width_mm / 2, terminal.depth_mm / 2)
        half = max(terminal.depth_mm / 2 - radius, 0.0)
        dx, dy = half * math.cos(turn), half * math.sin(turn)
        start, end = (x - dx, y - dy, z), (x + dx, y + dy, z)
    else:
        radius = terminal.across_mm / 2 + (CUP_WALL_MM if terminal.kind == "cup" else 0.0)
        start, end = (x, y, z - terminal.depth_mm), (x, y, z)
    return Capsule(start, end, radius, "terminal", contact.id, "", bare=True)


def room_mm(connector: Connector) -> float:
    """Return how far the jacket's cut end stands above the highest terminal."""
    reach = max(math.hypot(c.terminal.x_mm, c.terminal.y_mm) for c in connector.contacts)
    return max(LEAST_ROOM_MM, ROOM_OVER_REACH * reach)


def leads_at(plan: Plan, end: str) -> tuple[Lead, ...]:
    """Return the leads of all conductors landed at an end; empty while something is not chosen."""
    connector = plan.connector_of(end)
    section = plan.section_at.get(end)
    cable = plan.cable_of(section.id) if section is not None else None
    if connector is None or section is None or cable is None:
        return ()
    height = max(contact.terminal.z_mm for contact in connector.contacts) + room_mm(connector)
    turn_deg = plan.end_by_id[end].turn_deg
    found = []
    for conductor, run in plan.conductors_at[end]:
        landing = plan.landing_at.get((end, conductor.id))
        part = cable.part(run.core)
        contact = connector.by_id.get(landing.contact) if landing else None
        if landing is None or contact is None or part is None:
            continue
        mouth = terminal_mouth(contact.terminal, turn_deg)
        x, y = _exit_point(cable, part, mouth, near=section.near == end)
        found.append(Lead(landing, part, (x, y, height), mouth))
    return tuple(found)


def _exit_point(
    cable: Cable, part: Core | Shield, mouth: Vector, *, near: bool
) -> tuple[float, float]:
    """Return where a core or tail leaves the jacket, in the frame of the solder side.

    A record shows the lay as seen on the near cut end; from the solder side of the near end one
    looks at it from behind. A tail is bent to the side of its terminal.
    """
    if isinstance(part, Core):
        return mirrored_point(part.x_mm, part.y_mm) if near else (part.x_mm, part.y_mm)
    reach = math.hypot(mouth[0], mouth[1])
    rim = cable.jacket_mm / 2
    if reach == 0:
        return (0.0, -rim)
    return (mouth[0] / reach * rim, mouth[1] / reach * rim)


def lead_capsules(lead: Lead) -> tuple[Capsule, ...]:
    """Return a lead as capsules: covered from the exit, bare over the insulation gap, strands.

    The insulation gap is one diameter with insulation (US Army STP 11-25R13-SM-TG, App. A).
    """
    x, y, z = lead.mouth
    covered = not lead.is_shield or lead.landing.sleeved
    radius = (lead.covered_mm if covered else lead.metal_mm) / 2 + TOLERANCE_MM
    gap_mm = min(lead.covered_mm, RISE_MM)
    knee = (x, y, z + max(RISE_MM, gap_mm))
    strip = (x, y, z + gap_mm)
    kind: Literal["core", "tail"] = "tail" if lead.is_shield else "core"
    names = (lead.landing.contact, lead.landing.conductor)
    return (
        Capsule(lead.exit, knee, radius, kind, *names, bare=not covered),
        Capsule(knee, strip, radius, kind, *names, bare=not covered),
        Capsule(
            strip,
            lead.mouth,
            lead.metal_mm / 2 + TOLERANCE_MM,
            "strands",
            *names,
            bare=not lead.landing.sleeved,
        ),
    )
