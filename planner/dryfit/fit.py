"""The dry fit of each end of a plan: leads, small gaps, crossings, access, wire fit."""

from dataclasses import dataclass
from functools import lru_cache

from planner.dryfit.access import Access, iron_accesses, solder_order
from planner.dryfit.bodies import Lead, lead_capsules, leads_at, terminal_capsule
from planner.dryfit.crossings import crossing_pairs
from planner.dryfit.gaps import Gap, own_gap_mm, small_gaps
from planner.model.connector import Connector
from planner.model.plan import Plan
from planner.wiring.graph import Wiring, contact_node


@dataclass(frozen=True, slots=True)
class EndFit:
    """What the dry fit of one end found."""

    end: str
    turn_deg: float
    leads: tuple[Lead, ...]
    gaps: tuple[Gap, ...]
    crossings: tuple[tuple[str, str], ...]
    access: tuple[Access, ...]

    @property
    def order(self) -> tuple[str, ...]:
        """The contacts in the order of soldering; what is in one contact is one joint."""
        return tuple(dict.fromkeys(access.contact for access in self.access))


def fit_plan(plan: Plan, wiring: Wiring) -> tuple[EndFit, ...]:
    """Return the dry fit of every end that has a connector and a cable, in the plan's order.

    An end whose inputs did not change is not computed again.
    """
    return tuple(fit for end in plan.ends if (fit := fit_end(plan, wiring, end.id)) is not None)


def fit_end(plan: Plan, wiring: Wiring, end: str) -> EndFit | None:
    """Return the dry fit of one end, or None while nothing is landed there."""
    connector, leads = plan.connector_of(end), leads_at(plan, end)
    if connector is None or not leads:
        return None
    record = plan.end_by_id[end]
    joined = _joined(wiring, end, connector)
    return _fit(end, _Hardware(connector), record.turn_deg, leads, joined, record.solder_order)


def _joined(wiring: Wiring, end: str, connector: Connector) -> tuple[frozenset[str], ...]:
    """Return the contacts of an end that are one net, wherever in the lead they are joined."""
    groups: dict[int, set[str]] = {}
    for contact in connector.contacts:
        net = wiring.net_of(contact_node(end, contact.id))
        groups.setdefault(id(net), set()).add(contact.id)
    return tuple(frozenset(group) for group in groups.values() if len(group) > 1)


@dataclass(frozen=True, slots=True, eq=False)
class _Hardware:
    """A connector as a cache key: compared by identity, since hashing one costs more than a fit."""

    connector: Connector

    def __hash__(self) -> int:
        return id(self.connector)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Hardware) and other.connector is self.connector


@lru_cache(maxsize=64)
def _own_gap_mm(hardware: _Hardware) -> float | None:
    return own_gap_mm(hardware.connector)


@lru_cache(maxsize=256)
def _fit(  # noqa: PLR0917 - the whole input of an end, as one cache key
    end: str,
    hardware: _Hardware,
    turn_deg: float,
    leads: tuple[Lead, ...],
    joined: tuple[frozenset[str], ...],
    order: tuple[str, ...],
) -> EndFit:
    terminals = [terminal_capsule(contact, turn_deg) for contact in hardware.connector.contacts]
    covers = {lead: lead_capsules(lead) for lead in leads}
    bodies = [*terminals, *(body for lead in leads for body in covers[lead])]
    number = _net_numbers(hardware.connector, joined)
    nets = [number[body.contact] for body in bodies]
    return EndFit(
        end,
        turn_deg,
        leads,
        tuple(small_gaps(_own_gap_mm(hardware), bodies, nets)),
        crossing_pairs(leads),
        iron_accesses(solder_order(leads, order), terminals, covers),
    )


def _net_numbers(connector: Connector, joined: tuple[frozenset[str], ...]) -> dict[str, int]:
    numbers = {contact.id: number for number, contact in enumerate(connector.contacts)}
    for group in joined:
        lowest = min(numbers[contact] for contact in group)
        numbers |= dict.fromkeys(group, lowest)
    return numbers
