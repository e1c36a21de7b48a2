"""Tell exchanges of whole channels and of legs from plain bridges, so that each cause is told once.

Every end's signals are compared, through the nets, with those of one end, the hub. What arrives at
a channel's contacts is read as (channel it comes from, legs exchanged or not).
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from planner.model.signals import channel_of, is_ground, leg_of
from planner.wiring.joins import Joins, Mesh, Spot
from planner.wiring.roles import role_of

Origin = tuple[str, bool]  # the channel that a contact's signal comes from; legs exchanged


@dataclass(frozen=True)
class Arrival:
    """What arrives at one channel of one end: its contacts, their nets, and where from."""

    end: str
    channel: str
    spots: tuple[Spot, ...]
    meshes: tuple[Mesh, ...]
    comes_from: str
    reversed: bool

    @property
    def wrong(self) -> tuple[Spot, ...]:
        """The contacts that clash with what arrives at them."""
        pairs = zip(self.spots, self.meshes, strict=True)
        return tuple(spot for spot, mesh in pairs if any(spot in pair for pair in mesh.clashes))

    @property
    def full(self) -> bool:
        """Tell whether both legs arrive."""
        return len({spot.signal for spot in self.spots}) == 2


def mutual_groups(edges: Iterable[tuple[str, str]]) -> tuple[frozenset[str], ...]:
    """Return the groups of two or more names that lead to one another and back, sorted."""
    after: dict[str, set[str]] = {}
    for one, other in edges:
        after.setdefault(one, set()).add(other)
    reach = {name: _reach(name, after) for name in after}
    groups = {
        frozenset(other for other in reach[name] if name in reach.get(other, ())) for name in reach
    }
    return tuple(sorted((group for group in groups if len(group) > 1), key=sorted))


def _reach(start: str, after: Mapping[str, set[str]]) -> set[str]:
    reached: set[str] = set()
    waiting = [start]
    while waiting:
        for name in after.get(waiting.pop(), ()):
            if name not in reached:
                reached.add(name)
                waiting.append(name)
    return reached


class Exchanges:
    """Which channels are crossed, which are reversed, and which nets are bridges."""

    def __init__(self, joins: Joins) -> None:
        self.joins = joins

    @cached_property
    def hub(self) -> str:
        """The end that the others are compared with: most signals, then source, then first."""
        carried: dict[str, set[str]] = {end.id: set() for end in self.joins.plan.ends}
        for mesh in self.joins.meshes:
            for spot in mesh.spots:
                if not is_ground(spot.signal):
                    carried[spot.end].add(spot.signal)

        def rank(end: str) -> tuple[int, bool]:
            return len(carried[end]), role_of(self.joins.plan, end) == "source"

        return max(carried, key=rank, default="")

    @cached_property
    def arrivals(self) -> tuple[Arrival, ...]:
        """What arrives at every channel of every end but the hub, where it can be told."""
        met: dict[tuple[str, str], list[tuple[Spot, Mesh, frozenset[Origin]]]] = {}
        for mesh in self.joins.meshes:
            for spot, origins in self._origins(mesh):
                met.setdefault((spot.end, channel_of(spot.signal)), []).append(
                    (spot, mesh, origins)
                )
        read = (self._read(end, channel, rows) for (end, channel), rows in sorted(met.items()))
        return tuple(arrival for arrival in read if arrival is not None)

    def _origins(self, mesh: Mesh) -> Iterator[tuple[Spot, frozenset[Origin]]]:
        """Say of each leg in a net which legs of the reference end it may come from."""
        if len(mesh.at) < 2 or not mesh.pure:
            return
        reference = self.reference(mesh)
        legs = [spot.signal for spot in mesh.at[reference] if not is_ground(spot.signal)]
        for spot in mesh.spots:
            if legs and spot.end != reference and not is_ground(spot.signal):
                yield (
                    spot,
                    frozenset(
                        (channel_of(leg), leg_of(leg) != leg_of(spot.signal)) for leg in legs
                    ),
                )

    def reference(self, mesh: Mesh) -> str:
        """Return the end that a net's signals are compared with."""
        return self.hub if self.hub in mesh.at else mesh.spots[0].end

    @staticmethod
    def _read(
        end: str, channel: str, rows: list[tuple[Spot, Mesh, frozenset[Origin]]]
    ) -> Arrival | None:
        possible = frozenset.intersection(*(origins for _, _, origins in rows))
        if not possible:
            return None
        # What is right comes first, then the least that would explain what is seen.
        comes_from, legs_exchanged = min(
            possible, key=lambda origin: (origin[0] != channel, origin[1], origin[0])
        )
        spots = tuple(spot for spot, _, _ in rows)
        meshes = tuple(mesh for _, mesh, _ in rows)
        return Arrival(end, channel, spots, meshes, comes_from, legs_exchanged)

    @cached_property
    def crossed(self) -> tuple[tuple[Arrival, ...], ...]:
        """The exchanges of channels, seen in both directions (or round a ring of channels)."""
        moved = [each for each in self.arrivals if each.comes_from != each.channel]
        groups = mutual_groups((each.comes_from, each.channel) for each in moved)
        return tuple(
            tuple(each for each in moved if {each.comes_from, each.channel} <= group)
            for group in groups
        )

    @cached_property
    def reversed(self) -> tuple[Arrival, ...]:
        """The channels whose legs are exchanged, at each end where they are."""
        in_place = [each for each in self.arrivals if each.comes_from == each.channel]
        placed = [*in_place, *(each for group in self.crossed for each in group)]
        flipped = tuple(each for each in placed if each.reversed)
        if len(self.channels) < 2:
            # With one channel half an exchange has nothing to compare with: it is a bridge.
            return tuple(each for each in flipped if each.full)
        return flipped

    @cached_property
    def channels(self) -> frozenset[str]:
        """The channels that two ends or more carry."""
        ends: dict[str, set[str]] = {}
        for mesh in self.joins.meshes:
            for spot in mesh.spots:
                if not is_ground(spot.signal):
                    ends.setdefault(channel_of(spot.signal), set()).add(spot.end)
        return frozenset(channel for channel, found in ends.items() if len(found) > 1)

    @cached_property
    def all_reversed(self) -> bool:
        """Tell whether every channel is reversed in full, and none right at an end that has one."""
        ends = {each.end for each in self.reversed}
        right = [each for each in self.arrivals if each.end in ends and not each.reversed]
        whole = {each.channel for each in self.reversed if each.full}
        return bool(ends) and not right and whole == self.channels

    @cached_property
    def bridges(self) -> tuple[tuple[Mesh, ...], ...]:
        """The nets with a clash that no exchange explains.

        Two wrong landings that exchange two signals make one group; every other net is one alone.
        """
        left = [mesh for mesh in self.joins.meshes if mesh.clashes and not self._explained(mesh)]
        moves = {id(mesh): tuple(self._moves(mesh)) for mesh in left}
        groups = mutual_groups(move for each in moves.values() for move in each)
        together: dict[object, tuple[Mesh, ...]] = {}
        for mesh in left:
            names = {name for move in moves[id(mesh)] for name in move}
            group = next((group for group in groups if names and names <= group), id(mesh))
            together[group] = (*together.get(group, ()), mesh)
        return tuple(together.values())

    def _moves(self, mesh: Mesh) -> Iterator[tuple[str, str]]:
        """Say from where to where a net takes signals, if it is a single wrong landing."""
        if mesh.pure and len(mesh.spots) == 2:
            reference = self.reference(mesh)
            one, other = sorted(mesh.spots, key=lambda spot: spot.end != reference)
            yield f"{other.end} {one.signal}", f"{other.end} {other.signal}"

    def _explained(self, mesh: Mesh) -> bool:
        if not mesh.pure:
            return False
        reference = self.reference(mesh)
        wrong = {
            end
            for pair in mesh.clashes
            for end in (pair[0].end, pair[1].end)
            if end != reference and self._clashes_with(mesh, end, reference)
        }
        return all((end, mesh.net) in self._told for end in wrong)

    @staticmethod
    def _clashes_with(mesh: Mesh, end: str, reference: str) -> bool:
        return any({one.end, other.end} == {end, reference} for one, other in mesh.clashes)

    @cached_property
    def _told(self) -> frozenset[tuple[str, frozenset[tuple[str, ...]]]]:
        """The nets that an exchange explains, each with the end where it does."""
        exchanged = [*self.reversed, *(each for group in self.crossed for each in group)]
        return frozenset((each.end, mesh.net) for each in exchanged for mesh in each.meshes)
