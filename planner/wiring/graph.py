"""The wiring of a plan: what is joined to what. Derived from a plan, never stored."""

from collections import deque
from collections.abc import Collection, Iterator
from functools import cached_property
from typing import TYPE_CHECKING

from planner.model.place import Place
from planner.model.plan import Landing, Plan
from planner.model.signals import bind

if TYPE_CHECKING:
    import networkx as nx

Node = tuple[str, ...]
Net = frozenset[Node]


def contact_node(end: str, contact: str) -> Node:
    """Name the node of a contact."""
    return ("contact", end, contact)


def conductor_node(conductor: str) -> Node:
    """Name the node of a conductor."""
    return ("conductor", conductor)


class Wiring:
    """Contacts and conductors of a plan, joined by its landings and links.

    Works for half-made plans: what names an end or conductor that is not there joins nothing.
    Nets and paths come from a plain walk: importing networkx takes longer than twenty frames, and
    a first bridge must not stall a drag. The networkx graph is there for all that is asked beyond.
    """

    def __init__(self, plan: Plan, without: Collection[Landing] = ()) -> None:
        self.plan = plan
        self._without = without
        self._beside: dict[Node, list[Node]] = {}
        self._place_nodes()
        for one, other, _ in self._joins():
            self._beside.setdefault(one, []).append(other)
            self._beside.setdefault(other, []).append(one)

    def _place_nodes(self) -> None:
        for end in self.plan.ends:
            connector = self.plan.connector_of(end.id)
            for contact in connector.contacts if connector else ():
                self._beside["contact", end.id, contact.id] = []
        for conductor in self.plan.conductors:
            self._beside["conductor", conductor.id] = []

    def _joins(self) -> Iterator[tuple[Node, Node, str]]:
        ends, conductors = self.plan.end_by_id, self.plan.conductor_by_id
        for landing in self.plan.landings:
            known = landing.end in ends and landing.conductor in conductors
            if known and landing not in self._without:
                one = ("contact", landing.end, landing.contact)
                yield one, ("conductor", landing.conductor), "landing"
        for link in self.plan.links:
            if link.end in ends:
                first = ("contact", link.end, link.contacts[0])
                for contact in link.contacts[1:]:
                    yield first, ("contact", link.end, contact), "link"

    @cached_property
    def graph(self) -> "nx.Graph[Node]":
        """The networkx graph; an edge's `by` says `landing` or `link`."""
        import networkx as nx  # noqa: PLC0415 - dear to import, and no check needs it

        graph: nx.Graph[Node] = nx.Graph()
        graph.add_nodes_from(self._beside)
        graph.add_edges_from((one, other, {"by": by}) for one, other, by in self._joins())
        return graph

    @cached_property
    def nets(self) -> tuple[Net, ...]:
        """The nets, in the order of their first node."""
        found: list[Net] = []
        seen: set[Node] = set()
        for node in self._beside:
            if node not in seen:
                net = frozenset(self._walk(node))
                seen |= net
                found.append(net)
        return tuple(found)

    def _walk(self, start: Node) -> dict[Node, Node]:
        """Return what is joined to a node, breadth first, each with the node before it."""
        before, waiting = {start: start}, deque([start])
        while waiting:
            at = waiting.popleft()
            for node in self._beside[at]:
                if node not in before:
                    before[node] = at
                    waiting.append(node)
        return before

    @cached_property
    def _net_by_node(self) -> dict[Node, Net]:
        return {node: net for net in self.nets for node in net}

    def net_of(self, node: Node) -> Net:
        """Return the net of a node; a node that is not there has an empty one."""
        return self._net_by_node.get(node, frozenset())

    def beside(self, node: Node) -> tuple[Node, ...]:
        """Return what is joined to a node directly."""
        return tuple(self._beside.get(node, ()))

    @cached_property
    def signals(self) -> dict[tuple[str, str], frozenset[str]]:
        """Signals by (end, contact), bound by the end's channel; contacts without are left out."""
        found = {}
        for end in self.plan.ends:
            connector, record = self.plan.connector_of(end.id), self.plan.pinout_of(end.id)
            if connector and record:
                for contact, carried in record.signals.items():
                    if carried and contact in connector.by_id:
                        found[end.id, contact] = bind(carried, end.channel)
        return found

    def signals_at(self, end: str, contact: str) -> frozenset[str]:
        """Return the signals that a contact carries, bound by the end's channel."""
        return self.signals.get((end, contact), frozenset())

    def path(self, one: Node, other: Node) -> tuple[Node, ...]:
        """Return a shortest path between two nodes, both included; empty if none joins them."""
        if other not in self.net_of(one):
            return ()
        before, path = self._walk(one), [other]
        while path[-1] != one:
            path.append(before[path[-1]])
        return tuple(reversed(path))

    @cached_property
    def _ends_of(self) -> dict[str, tuple[str, ...]]:
        found: dict[str, tuple[str, ...]] = {}
        for end, pairs in self.plan.conductors_at.items():
            for conductor, _ in pairs:
                found[conductor.id] = (*found.get(conductor.id, ()), end)
        return found

    def ends_of(self, conductor: str) -> tuple[str, ...]:
        """Return the ends at which a conductor comes out of the cable."""
        return self._ends_of.get(conductor, ())

    def landed_on(self, end: str, contact: str) -> tuple[str, ...]:
        """Return the conductors that land on a contact, in the plan's order."""
        return self._landed_on.get((end, contact), ())

    @cached_property
    def _landed_on(self) -> dict[tuple[str, str], tuple[str, ...]]:
        found: dict[tuple[str, str], tuple[str, ...]] = {}
        for landing in self.plan.landings:
            if landing.conductor in self.plan.conductor_by_id:
                key = (landing.end, landing.contact)
                found[key] = (*found.get(key, ()), landing.conductor)
        return found

    def net_places(self, place: Place) -> frozenset[Place]:
        """Return every contact, and every conductor at each end, of the net of a place."""
        if place.conductor:
            node = conductor_node(place.conductor)
        else:
            node = contact_node(place.end, place.contact)
        places = set()
        for kind, *names in self.net_of(node):
            if kind == "contact":
                places.add(Place(end=names[0], contact=names[1]))
            else:
                places |= {Place(end=end, conductor=names[0]) for end in self.ends_of(names[0])}
        return frozenset(places)
