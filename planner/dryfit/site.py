"""The site of an end: all that does not depend on how the plug is turned to the cable."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from planner.dryfit.bodies import (
    Capsule,
    Lead,
    insulation_gap_mm,
    proposed_room_mm,
    terminal_mouth,
    top_mm,
)
from planner.dryfit.identity import ById
from planner.dryfit.scene import Flags, Scene, parties_of
from planner.dryfit.shell import wall_gaps_mm
from planner.dryfit.still import Still, still_of
from planner.geometry.boxes import Index
from planner.geometry.curves import Vector
from planner.geometry.views import mirrored_point
from planner.model.cable import Cable, Core, Shield
from planner.model.connector import Connector
from planner.model.plan import Landing, Plan
from planner.model.signals import GROUNDS
from planner.model.workmanship import Workmanship
from planner.wiring.graph import Wiring, contact_node


@dataclass(frozen=True, slots=True)
class Exit:
    """A landed conductor where it leaves the jacket; a tail is bent to the side of its contact."""

    landing: Landing
    part: Core | Shield
    x_mm: float
    y_mm: float


@dataclass(frozen=True)
class Site:
    """An end before the plug is turned: hardware, exits, nets, workmanship.

    `nets` gives a number for the net of each contact; `tied` are the numbers of the nets that the
    shell belongs to. `room_mm` is the builder's own room between terminals and jacket, or 0.
    """

    end: str
    hardware: ById[Connector]
    exits: tuple[Exit, ...]
    rim_mm: float
    nets: tuple[int, ...]
    tied: frozenset[int]
    workmanship: Workmanship
    room_mm: float = 0.0

    @property
    def connector(self) -> Connector:
        """The connector at the end."""
        return self.hardware.record

    @cached_property
    def height_mm(self) -> float:
        """How high the cut end of the jacket stands, mm."""
        return top_mm(self.connector) + (self.room_mm or proposed_room_mm(self.connector))

    @cached_property
    def nets_by_spot(self) -> Index:
        """The numbers of the nets as an array, by number of contact."""
        return np.array(self.nets, dtype=np.intp)

    @cached_property
    def off_shell(self) -> Flags:
        """For each contact, by number, whether touching the shell would be a bridge."""
        return np.array([net not in self.tied for net in self.nets], dtype=bool)

    def leads(self, turn_deg: float) -> tuple[Lead, ...]:
        """Return the leads with the plug turned."""
        covered = _covered(self.exits)
        return tuple(
            self._lead(it, turn_deg, covered=it.landing.contact in covered) for it in self.exits
        )

    def scene(self, turn_deg: float) -> Scene:
        """Return the bodies with the plug turned, as arrays."""
        leads = self.leads(turn_deg)
        return Scene(parties_of(self.hardware, leads, turn_deg, self.workmanship.tolerance_mm))

    def at(self, turn_deg: float) -> tuple[Capsule, ...]:
        """Return the bodies with the plug turned: terminals and joints, then leads."""
        return self.scene(turn_deg).bodies

    @cached_property
    def still(self) -> Still:
        """What stays still in the plug's frame, and the leads that move."""
        return still_of(
            self.scene(0.0),
            self.leads(0.0),
            self.nets_by_spot,
            tolerance_mm=self.workmanship.tolerance_mm,
        )

    def least_to_wall_mm(self, scene: Scene, turn_deg: float) -> float:
        """Return the smallest gap of bare joints and tails to the shell, mm; inf if none counts.

        A joint keeps its place in the shell at every turn, and so does a tail.
        """
        gaps = wall_gaps_mm(self.connector.shell, scene.start, scene.end, scene.radius, turn_deg)
        return float(gaps[self.beside_wall(scene)].min(initial=math.inf))

    def beside_wall(self, scene: Scene) -> Flags:
        """Return for each body whether touching the shell would be a bridge.

        That is bare metal of leads and joints in a net that the shell is not in. A tail leaves the
        jacket at its rim: it counts only where the shell is wide enough to hold the jacket.
        """
        counts = scene.bare & ~scene.made & self.off_shell[scene.spots]
        holds_jacket = 2 * self.rim_mm <= self.connector.shell.narrowest_mm
        return counts if holds_jacket else counts & scene.hot

    def _lead(self, it: Exit, turn_deg: float, *, covered: bool) -> Lead:
        terminal = self.connector.by_id[it.landing.contact].terminal
        mouth = terminal_mouth(terminal, turn_deg)
        half_way = (self.height_mm - terminal.z_mm) / 2
        gap_mm = min(insulation_gap_mm(it.part, self.workmanship), half_way)
        way_out = self._way_out(it, mouth)
        return Lead(it.landing, it.part, terminal, way_out, mouth, gap_mm, covered)

    def _way_out(self, it: Exit, mouth: Vector) -> Vector:
        if isinstance(it.part, Core):
            return (it.x_mm, it.y_mm, self.height_mm)
        x, y, _ = mouth
        reach = math.hypot(x, y)
        if reach == 0:
            return (0.0, -self.rim_mm, self.height_mm)
        return (x / reach * self.rim_mm, y / reach * self.rim_mm, self.height_mm)


def _covered(landed: Iterable[Exit]) -> set[str]:
    """Return the contacts whose joint a sleeve or a dab covers.

    A tail's sleeve ends at the joint, and leaves it bare where a core is in it as well.
    """
    alone: dict[str, bool] = {}
    covered = set()
    for it in landed:
        contact = it.landing.contact
        of_core = isinstance(it.part, Core)
        if it.landing.dabbed or (it.landing.sleeved and of_core):
            covered.add(contact)
        alone[contact] = alone.get(contact, True) and it.landing.sleeved and not of_core
    return covered | {contact for contact, only_tails in alone.items() if only_tails}


def site_of(plan: Plan, wiring: Wiring, end: str) -> Site | None:
    """Return the site of an end, or None while something is not chosen or nothing is landed."""
    connector = plan.connector_of(end)
    section = plan.section_at.get(end)
    cable = plan.cable_of(section.id) if section is not None else None
    if connector is None or section is None or cable is None:
        return None
    exits = _exits(plan, end, connector, cable, near=section.near == end)
    if not exits:
        return None
    nets = _net_numbers(wiring, end, connector)
    tied = _tied(plan, end, connector, nets)
    room_mm = plan.end_by_id[end].room_mm
    return Site(
        end, ById(connector), exits, cable.jacket_mm / 2, nets, tied, plan.workmanship, room_mm
    )


def _exits(
    plan: Plan, end: str, connector: Connector, cable: Cable, *, near: bool
) -> tuple[Exit, ...]:
    """Return where each landed conductor leaves the jacket, in the frame of the solder side.

    A record shows the lay as seen on the near cut end; from the solder side of the near end one
    looks at it from behind.
    """
    found = []
    for conductor, run in plan.conductors_at[end]:
        landing = plan.landing_at.get((end, conductor.id))
        part = cable.part(run.core)
        if landing is None or part is None or landing.contact not in connector.by_id:
            continue
        x, y = (part.x_mm, part.y_mm) if isinstance(part, Core) else (0.0, 0.0)
        found.append(Exit(landing, part, *(mirrored_point(x, y) if near else (x, y))))
    return tuple(found)


def _net_numbers(wiring: Wiring, end: str, connector: Connector) -> tuple[int, ...]:
    """Return a number for the net of each contact, wherever in the lead contacts are joined."""
    first: dict[int, int] = {}
    nets = [wiring.net_of(contact_node(end, contact.id)) for contact in connector.contacts]
    return tuple(first.setdefault(id(net), place) for place, net in enumerate(nets))


def _tied(plan: Plan, end: str, connector: Connector, nets: tuple[int, ...]) -> frozenset[int]:
    """Return the nets for which touching the shell is no bridge.

    Those of contacts that carry a shield or the chassis, and of the outermost contact of a
    concentric plug, onto which the shell screws (common practice, no source). A shell on an XLR is
    not tied to pin 1 (AES48, as reported); that they touch is harmless to a channel all the same,
    so it is not held against a joint.
    """
    record = plan.pinout_of(end)
    signals = record.signals if record else {}
    sleeve = connector.contacts[-1].id if connector.mating == "concentric" else ""
    return frozenset(
        net
        for contact, net in zip(connector.contacts, nets, strict=True)
        if contact.id == sleeve or GROUNDS.intersection(signals.get(contact.id, ()))
    )
