"""What a sound lead shows to a meter: which contacts are joined, and by how many ohm."""

import math
from dataclasses import dataclass, field
from functools import cached_property

from planner.electrical.network import Network, network_of
from planner.electrical.nodal import Mesh
from planner.model.plan import Plan
from planner.proving.limits import limit_of
from planner.proving.reading import Contact
from planner.wiring.graph import Node, Wiring, contact_node
from planner.wiring.partners import expected_partners


@dataclass(frozen=True, slots=True)
class Path:
    """Two contacts that are joined.

    `ohm` is what the wire between them has, joints left out; None where a cable is not known.
    `limit_ohm` is the most that a good pair shows, `rule` the key of its rule. `estimated` where a
    shield carries any of it: its metal is reckoned from its twisted tail.
    """

    one: Contact
    other: Contact
    ohm: float | None
    limit_ohm: float
    rule: str
    estimated: bool = False


@dataclass(frozen=True)
class Sweep:
    """Every contact of the lead, what it is joined to, and the paths to read.

    `paths` go from the first contact of each net to each other: all continuity readings it needs.
    """

    contacts: tuple[Contact, ...]
    partners: dict[Contact, tuple[Contact, ...]]
    _network: Network = field(repr=False, compare=False)

    @cached_property
    def nets(self) -> tuple[tuple[Contact, ...], ...]:
        """The nets in the order of their first contact; one that is joined to nothing is one."""
        found, seen = [], set[Contact]()
        for contact in self.contacts:
            if contact not in seen:
                net = (contact, *self.partners[contact])
                seen.update(net)
                found.append(net)
        return tuple(found)

    @cached_property
    def net_of(self) -> dict[Contact, int]:
        """The number of the net of each contact."""
        return {contact: number for number, net in enumerate(self.nets) for contact in net}

    @cached_property
    def paths(self) -> tuple[Path, ...]:
        """The paths from each net's first contact to each other of it."""
        return tuple(self.path(net[0], other) for net in self.nets for other in net[1:])

    def joined(self, one: Contact, other: Contact) -> bool:
        """Tell whether two contacts are joined; a contact that is not there is joined to none."""
        return other in self.partners.get(one, ())

    def path(self, one: Contact, other: Contact) -> Path:
        """Return the path between two joined contacts; ValueError where they are apart."""
        if not self.joined(one, other):
            msg = f"{one} and {other} are not joined"
            raise ValueError(msg)
        ohm = self._network.ohm(one, other)
        limit_ohm, rule = limit_of(ohm)
        return Path(one, other, ohm, limit_ohm, rule.key, self._by_shield(one, other, ohm))

    def _by_shield(self, one: Contact, other: Contact, ohm: float | None) -> bool:
        """Tell whether a shield carries any of it: without the shields it would be more."""
        if ohm is None:
            return False
        without = self._cores_only.ohm(contact_node(*one), contact_node(*other))
        return not math.isclose(without, ohm, rel_tol=1e-9, abs_tol=1e-12)

    @cached_property
    def _cores_only(self) -> Mesh[Node]:
        kinds = self._network.plan.conductor_by_id
        cores = [run for run in self._network.known if kinds[run[0][1]].kind == "core"]
        return Mesh(self._network.joins, cores)


def expected_sweep(plan: Plan, wiring: Wiring) -> Sweep:
    """Return what is joined in a sound lead.

    Landings, links and joined returns count, at one end too. A shield joins only where it lands, so
    the plan's shield policy counts as far as it was carried out.
    """
    partners = expected_partners(wiring)
    return Sweep(tuple(partners), partners, network_of(plan, wiring))
