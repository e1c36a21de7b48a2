"""Which way each part takes so that none shuts another out, and the smallest order they go on in.

Nodes of the graph are parts (by number) and joints (by end); an edge says what comes before what.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from heapq import heapify, heappop, heappush

from planner.dryfit.cable_tree import CableTree
from planner.dryfit.routes import Blocked, Resting, Way, goes_before, other_ways, planned_way
from planner.model.part import Part

Node = int | str
Chosen = dict[int, Way]
Edges = dict[Node, list[Node]]
Ranks = Mapping[Node, tuple[int, ...]]


@dataclass(frozen=True)
class Going:
    """A part and the ways to its place; `stays_on` names plugs that are on from the start."""

    tree: CableTree
    part: Resting
    stays_on: frozenset[str]

    @cached_property
    def planned(self) -> Way:
        """The way that the plan says."""
        return planned_way(self.tree, self.part, self.stays_on)

    @cached_property
    def ways(self) -> tuple[Way, ...]:
        """All ways, the planned one first."""
        return (self.planned, *other_ways(self.tree, self.part, self.stays_on))

    @cached_property
    def open(self) -> tuple[Way, ...]:
        """The ways on which nothing is too thick from the start."""
        return tuple(way for way in self.ways if self.is_open(way))

    def is_open(self, way: Way) -> bool:
        """Tell whether nothing is too thick on a way from the start."""
        return way.blocked(self.part.part) is None


@dataclass(frozen=True, slots=True)
class Settled:
    """The way of each part by its number; which planned ways hold, which fail, who has none."""

    chosen: Chosen
    kept: Chosen
    late: tuple[int, ...] = ()
    stuck: tuple[int, ...] = ()


@dataclass
class Choosing:
    """The choice of a way for each part, with what each choice asks of the order."""

    tree: CableTree
    goings: Sequence[Going]
    _asked: dict[tuple[int, tuple[str, ...]], frozenset[int]] = field(default_factory=dict)

    def settle(self) -> Settled:
        """Keep the planned ways where they work together; find others for the rest."""
        planned = {at: it.planned for at, it in enumerate(self.goings) if it.is_open(it.planned)}
        kept = planned if self.cycle(planned) is None else self._kept(planned)
        late = tuple(at for at in range(len(self.goings)) if at not in kept)
        chosen, stuck = kept, list[int]()
        for at in late:
            found = self._found(at, chosen)
            if found is None:
                stuck.append(at)
            else:
                chosen = found
        return Settled(chosen, kept, late, tuple(stuck))

    def _kept(self, planned: Chosen) -> Chosen:
        kept: Chosen = {}
        for at, way in planned.items():
            if self.cycle({**kept, at: way}) is None:
                kept[at] = way
        return kept

    def _found(self, late: int, chosen: Chosen) -> Chosen | None:
        """Find a way for one more part: its own elsewhere if that does, else others move too."""
        for way in self.goings[late].open:
            trial = {**chosen, late: way}
            if self.cycle(trial) is None:
                return trial
        ways = {at: list(self.goings[at].open) for at in (late, *chosen)}
        return self._search(ways, {})

    def _search(self, ways: Mapping[int, list[Way]], chosen: Chosen) -> Chosen | None:
        """Choose for the part with the fewest ways left, drop what clashes with it, go on."""
        if not ways:
            return chosen
        at = min(ways, key=lambda it: len(ways[it]))
        for way in ways[at]:
            trial = {**chosen, at: way}
            left = {
                other: [it for it in its if not self._clash(at, way, other, it)]
                for other, its in ways.items()
                if other != at
            }
            if all(left.values()) and self.cycle(trial) is None:
                found = self._search(left, trial)
                if found is not None:
                    return found
        return None

    def _clash(self, one: int, way: Way, other: int, other_way: Way) -> bool:
        return other in self._later(one, way) and one in self._later(other, other_way)

    def _later(self, at: int, way: Way) -> frozenset[int]:
        """Return all parts that one has to be on before, if it takes this way."""
        key = (at, way.ends)
        if key not in self._asked:
            part = self.goings[at].part
            found = (
                it for it, other in enumerate(self.goings) if goes_before(part, way, other.part)
            )
            self._asked[key] = frozenset(found)
        return self._asked[key]

    def edges(self, chosen: Chosen) -> Edges:
        """Return what each part, and each joint, has to come before."""
        after: Edges = {}
        for one, way in chosen.items():
            after[one] = [*sorted(self._later(one, way) & chosen.keys()), *way.before]
            if way.after_joint and not self.goings[one].part.part.opens:
                after.setdefault(way.comes_from, []).append(one)
        return after

    def cycle(self, chosen: Chosen) -> tuple[Node, ...] | None:
        """Return nodes that would each have to come before the next, in a ring; None if none do."""
        return ring(self.edges(chosen))

    def why_not(self, at: int, way: Way, chosen: Chosen) -> Blocked | None:
        """Return what closes a way of a part if all others go as chosen; None if nothing does."""
        part = self.goings[at].part.part
        others = {it: its for it, its in chosen.items() if it != at}
        found = self.cycle({**others, at: way})
        if way.blocked(part) is not None or found is None:
            return way.blocked(part)
        return self._in_the_way(way, part, found[(found.index(at) + 1) % len(found)])

    def _in_the_way(self, way: Way, part: Part, node: Node) -> Blocked:
        if isinstance(node, str):
            plug = self.tree.plug(node)
            return Blocked(way.ends, plug.over, part.bore_mm, plug.thick_mm)
        other = self.goings[node].part
        needs = other.part.outside_mm + way.beside_mm.get(other.section, 0.0)
        return Blocked(way.ends, f"{other.part.title} in its way", part.bore_mm, needs)


def all_before(edges: Edges, goal: Node) -> set[Node]:
    """Return all that has to come before a node, near and far."""
    before: Edges = {}
    for node, later in edges.items():
        for it in later:
            before.setdefault(it, []).append(node)
    found, todo = set[Node](), [*before.get(goal, ())]
    while todo:
        node = todo.pop()
        if node not in found:
            found.add(node)
            todo += before.get(node, ())
    return found


def ring(edges: Edges) -> tuple[Node, ...] | None:
    """Return the nodes of one directed ring, in order; None if there is none."""
    state: dict[Node, bool] = {}  # False while on the path, True when done
    for start in edges:
        if start not in state:
            found = _ring_from(start, edges, state)
            if found is not None:
                return found
    return None


def _ring_from(start: Node, edges: Edges, state: dict[Node, bool]) -> tuple[Node, ...] | None:
    path, todo = [start], [iter(edges.get(start, ()))]
    state[start] = False
    while path:
        node = next(todo[-1], None)
        if node is None:
            state[path.pop()] = True
            todo.pop()
        elif node not in state:
            state[node] = False
            path.append(node)
            todo.append(iter(edges.get(node, ())))
        elif not state[node]:
            return tuple(path[path.index(node) :])
    return None


def smallest_order(edges: Edges, ranks: Ranks) -> list[Node]:
    """Return the ranked nodes, each after what comes before it, else the smallest rank first."""
    waits = dict.fromkeys(ranks, 0)
    for later in edges.values():
        for node in later:
            waits[node] += 1
    ready = [(rank, node) for node, rank in ranks.items() if not waits[node]]
    heapify(ready)
    order: list[Node] = []
    while ready:
        _, node = heappop(ready)
        order.append(node)
        _release(edges.get(node, ()), waits, ranks, ready)
    return order


def _release(
    later: Iterable[Node],
    waits: dict[Node, int],
    ranks: Ranks,
    ready: list[tuple[tuple[int, ...], Node]],
) -> None:
    for node in later:
        waits[node] -= 1
        if not waits[node]:
            heappush(ready, (ranks[node], node))
