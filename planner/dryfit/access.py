"""Whether the iron reaches each joint, in the order in which the joints of an end are soldered."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from planner.dryfit.bodies import Lead
from planner.dryfit.iron import DIRECTIONS, ROOMY_MM, Joint, Room, cents, room_at, surely_reached
from planner.dryfit.order import Order, Step, best_order
from planner.dryfit.scene import Party, contact_party, lead_party
from planner.dryfit.site import Site, site_of
from planner.model.connector import Connector
from planner.model.plan import Plan
from planner.model.workmanship import ShieldJoint
from planner.wiring.graph import Wiring


@dataclass(frozen=True, slots=True)
class Access:
    """A way in to a joint: the iron's room in mm (below 0: hidden), direction, what is nearest.

    The direction is the one that the iron comes from, counter-clockwise on the solder side. With
    the same number of `clamping` the plug stays in the vice as it is. `blocking_contact` is the
    contact whose bare terminal is nearest, empty where it is a joint with its cores.
    """

    contact: str
    conductors: tuple[str, ...]
    margin_mm: float
    direction_deg: float
    blocker: str
    clamping: int = 0
    blocking_contact: str = ""


@dataclass(frozen=True, slots=True)
class Soldering:
    """The order of soldering of an end with the way in to each joint."""

    order: Order
    access: tuple[Access, ...]


def soldering_at(plan: Plan, wiring: Wiring, end: str, *, own: bool = True) -> Soldering | None:
    """Return the order of soldering at an end, or None while nothing is landed there.

    With `own` the plan's own order comes first; without, it is the best order.
    """
    site = site_of(plan, wiring, end)
    if site is None:
        return None
    record = plan.end_by_id[end]
    return soldering(site, record.turn_deg, record.solder_order if own else ())


@lru_cache(maxsize=64)
def soldering(site: Site, turn_deg: float, wanted: tuple[str, ...] = ()) -> Soldering:
    """Return the order of soldering at an end and the way in to each joint, plug turned.

    The contacts in `wanted` come first, in that order, and the rest in the best order; where the
    workmanship puts a shield's joint goes before that. In the way of a joint are all other
    terminals and the joints soldered before it with their leads.
    """
    joints, room = _room(site, turn_deg)
    ranks = ranks_of(joints, wanted, site.workmanship.shield_joint)
    order = best_order([joint.contact for joint in joints], room, ranks)
    return Soldering(order, _accesses(joints, room, order.steps, site.connector))


@lru_cache(maxsize=16)
def _room(site: Site, turn_deg: float) -> tuple[tuple[Joint, ...], Room]:
    """Return the joints and the room there, kept for other orders of the same end."""
    joints = joints_at(site, turn_deg)
    return joints, room_at(joints, terminals_at(site, turn_deg))


@lru_cache(maxsize=64)
def none_hidden(site: Site, turn_deg: float) -> bool:
    """Tell, far quicker than `soldering`, that no joint is hidden in any order; no is not sure."""
    return surely_reached(joints_at(site, turn_deg), terminals_at(site, turn_deg))


def joints_at(site: Site, turn_deg: float) -> tuple[Joint, ...]:
    """Return the joints of an end, in the order of its contacts."""
    together: dict[str, list[Lead]] = {}
    for lead in site.leads(turn_deg):
        together.setdefault(lead.landing.contact, []).append(lead)
    return tuple(
        Joint(contact.id, tuple(leads), _parties(site, spot, leads, turn_deg))
        for spot, contact in enumerate(site.connector.contacts)
        if (leads := together.get(contact.id))
    )


def _parties(site: Site, spot: int, leads: Sequence[Lead], turn_deg: float) -> tuple[Party, ...]:
    covered = any(lead.covered for lead in leads)
    tolerance_mm = site.workmanship.tolerance_mm
    return (
        contact_party(site.hardware, spot, turn_deg, landed=True, covered=covered),
        *(lead_party(lead, spot, tolerance_mm) for lead in leads),
    )


def terminals_at(site: Site, turn_deg: float) -> list[Party]:
    """Return the bare terminals of an end: those are there before anything is soldered."""
    return [
        contact_party(site.hardware, spot, turn_deg, landed=False, covered=False)
        for spot in range(len(site.connector.contacts))
    ]


def ranks_of(
    joints: Sequence[Joint], wanted: Sequence[str], shield_joint: ShieldJoint
) -> tuple[int, ...]:
    """Return a number for each joint: a lower one is soldered before a higher one."""
    place = {contact: number for number, contact in enumerate(wanted)}
    shift = {"first": -len(wanted) - 1, "last": len(wanted) + 1, "free": 0}[shield_joint]
    return tuple(
        place.get(joint.contact, len(wanted)) + (shift if joint.has_shield else 0)
        for joint in joints
    )


def _accesses(
    joints: Sequence[Joint], room: Room, steps: Sequence[Step], connector: Connector
) -> tuple[Access, ...]:
    return tuple(
        _access(joints, room, steps[: number + 1], connector) for number in range(len(steps))
    )


def _access(
    joints: Sequence[Joint], room: Room, steps: Sequence[Step], connector: Connector
) -> Access:
    """Return the way in to the joint of the last of the steps."""
    step = steps[-1]
    contact = _blocking_contact(room, step, connector)
    return Access(
        joints[step.joint].contact,
        tuple(lead.landing.conductor for lead in joints[step.joint].leads),
        step.cents / 100,
        step.direction * 360.0 / DIRECTIONS,
        f"contact {contact}" if contact else _blocking_joint(joints, room, steps),
        step.clamping,
        contact,
    )


def _blocking_contact(room: Room, step: Step, connector: Connector) -> str:
    """Return the contact whose bare terminal is nearest to the iron, if one is."""
    if step.cents >= cents(ROOMY_MM) or room.made[step.joint, step.direction] != step.cents:
        return ""
    return connector.contacts[int(room.terminal[step.joint, step.direction])].id


def _blocking_joint(joints: Sequence[Joint], room: Room, steps: Sequence[Step]) -> str:
    """Return the cores of the joint made before that is nearest to the iron; none if it is far."""
    *before, step = steps
    if step.cents >= cents(ROOMY_MM):
        return ""
    by = room.by[step.joint, step.direction]
    nearest = next(it.joint for it in before if by[it.joint] == step.cents)
    return " and ".join(lead.landing.conductor for lead in joints[nearest].leads)
