"""The lead as a network of resistors, and the resistance from any contact to any other."""

import math
from collections.abc import Iterator
from functools import cached_property
from weakref import WeakKeyDictionary

from planner.electrical.nodal import Mesh
from planner.electrical.resistance import run_ohm
from planner.model.plan import Plan
from planner.wiring.graph import Node, Wiring, conductor_node, contact_node

Contact = tuple[str, str]  # end, contact


class Network:
    """Every run of every conductor as a resistor; landings and links join without resistance.

    A node is a contact, or a conductor at an end or a split.
    """

    def __init__(self, plan: Plan, wiring: Wiring) -> None:
        self.plan = plan
        self.joins = tuple(_joins(plan, wiring))
        self.known: list[tuple[Node, Node, float]] = []
        self.unknown: list[tuple[Node, Node]] = []
        for one, other, ohm in _runs(plan):
            if ohm is None:
                self.unknown.append((one, other))
            else:
                self.known.append((one, other, ohm))

    @cached_property
    def mesh(self) -> Mesh[Node]:
        """The network without the runs that are not known."""
        return Mesh(self.joins, self.known)

    @cached_property
    def _shorted(self) -> Mesh[Node]:
        """The network with the runs that are not known thought to have no resistance."""
        return Mesh((*self.joins, *self.unknown), self.known)

    def ohm(self, one: Contact, other: Contact) -> float | None:
        """Return the resistance from contact to contact; None where apart or not known.

        More metal never raises a resistance (Rayleigh's law), so if taking the unknown runs out and
        shorting them come to the same, they do not matter.
        """
        a, b = contact_node(*one), contact_node(*other)
        without = self.mesh.ohm(a, b)
        if without == math.inf:
            return None
        if self.unknown and not math.isclose(without, self._shorted.ohm(a, b), rel_tol=1e-9):
            return None
        return without


def _runs(plan: Plan) -> Iterator[tuple[Node, Node, float | None]]:
    for conductor in plan.conductors:
        for run in conductor.runs:
            section = plan.section_by_id.get(run.section)
            if section is not None:
                one = ("at", conductor.id, section.near)
                yield one, ("at", conductor.id, section.far), run_ohm(plan, run)


def _joins(plan: Plan, wiring: Wiring) -> Iterator[tuple[Node, Node]]:
    for conductor in plan.conductors:
        for kind, *names in wiring.beside(conductor_node(conductor.id)):
            if kind == "contact":
                yield ("at", conductor.id, names[0]), contact_node(names[0], names[1])
    for link in plan.links:
        for contact in link.contacts[1:]:
            yield contact_node(link.end, link.contacts[0]), contact_node(link.end, contact)


# A network keeps nothing of its wiring, or the wiring would never be let go.
_NETWORKS: "WeakKeyDictionary[Wiring, Network]" = WeakKeyDictionary()


def network_of(plan: Plan, wiring: Wiring) -> Network:
    """Return the network of a plan; made once for each wiring."""
    kept = _NETWORKS.get(wiring)
    if kept is None or kept.plan is not plan:
        kept = _NETWORKS[wiring] = Network(plan, wiring)
    return kept
