"""Which signals do not arrive at an end that needs them, and whether a core is only yet to land."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from planner.model.signals import GROUNDS, is_ground
from planner.wiring.graph import contact_node
from planner.wiring.joins import Joins, Mesh, Spot


@dataclass(frozen=True)
class Lack:
    """A signal that one end lacks: its contacts there, the contacts that have it elsewhere.

    `conductors` are those that carry the signal already and are loose at the end that lacks it;
    `unfinished` says that landing a core is all that is missing.
    """

    end: str
    signal: str
    contacts: tuple[str, ...]
    elsewhere: tuple[Spot, ...]
    conductors: tuple[str, ...]
    unfinished: bool


class Reach:
    """Compare, signal by signal, the nets of all the contacts that carry it."""

    def __init__(self, joins: Joins, hub: str) -> None:
        self._joins = joins
        self._wiring = joins.wiring
        self._plan = joins.plan
        self._hub = hub

    @cached_property
    def meshes_by_signal(self) -> dict[str, tuple[Mesh, ...]]:
        """Every signal that an end carries, with its nets."""
        found: dict[str, tuple[Mesh, ...]] = {}
        for mesh in self._joins.meshes:
            for signal in {spot.signal for spot in mesh.spots}:
                found[signal] = (*found.get(signal, ()), mesh)
        return found

    @cached_property
    def lacks(self) -> tuple[Lack, ...]:
        """Every signal that an end lacks, in order; one that lands on a wrong contact is not."""
        found = []
        for signal, meshes in sorted(self.meshes_by_signal.items()):
            if len(meshes) > 1 and self._needed(signal):
                found += list(self._lacks_of(signal, meshes))
        return tuple(found)

    def ends_with(self, signal: str) -> frozenset[str]:
        """Return the ends whose pinouts carry a signal."""
        return frozenset(
            spot.end
            for mesh in self.meshes_by_signal.get(signal, ())
            for spot in mesh.spots
            if spot.signal == signal
        )

    def _needed(self, signal: str) -> bool:
        """Leave shields to the shield rules wherever there is a shield or a policy for one."""
        if signal == "chassis":
            return False
        if not is_ground(signal):
            return True
        policies = any(section.shield_policy for section in self._plan.sections)
        shields = any(conductor.kind == "shield" for conductor in self._plan.conductors)
        return not (policies or shields)

    def _lacks_of(self, signal: str, meshes: tuple[Mesh, ...]) -> Iterator[Lack]:
        def rank(mesh: Mesh) -> tuple[int, bool, bool]:
            ends = {spot.end for spot in mesh.spots if spot.signal == signal}
            return len(ends), len(mesh.net) > 1, self._hub in ends

        best = max(meshes, key=rank)
        has = tuple(spot for spot in best.spots if spot.signal == signal)
        for end in sorted(self.ends_with(signal) - {spot.end for spot in has}):
            own = tuple(mesh for mesh in meshes if any(s.end == end for s in mesh.spots))
            if self._has_cable(end) and not self._told_elsewhere(end, best, own, has):
                yield self._lack(end, signal, best, own)

    def _has_cable(self, end: str) -> bool:
        section = self._plan.section_at.get(end)
        return section is not None and self._plan.cable_of(section.id) is not None

    @staticmethod
    def _told_elsewhere(end: str, best: Mesh, own: tuple[Mesh, ...], has: tuple[Spot, ...]) -> bool:
        """Tell whether a fault already told says where the signal goes instead."""
        if best.faulty and end in best.at:
            return True
        others = {spot.end for spot in has}
        return any(mesh.faulty and others & mesh.at.keys() for mesh in own)

    def _lack(self, end: str, signal: str, best: Mesh, own: tuple[Mesh, ...]) -> Lack:
        mine = [spot for mesh in own for spot in mesh.spots if spot.signal == signal]
        contacts = tuple(sorted(spot.contact for spot in mine if spot.end == end))
        elsewhere = tuple(spot for spot in best.spots if spot.signal == signal)
        carrying = sorted(node[1] for node in best.net if node[0] == "conductor")
        loose = tuple(each for each in carrying if end in self.loose.get(each, ()))
        return Lack(end, signal, contacts, elsewhere, loose, self._unfinished(end, best, own))

    def _unfinished(self, end: str, best: Mesh, own: tuple[Mesh, ...]) -> bool:
        """Tell whether a core that could bring the signal is still to be landed or led on."""
        nets = [best.net, *(mesh.net for mesh in own)]
        touched = {node[1] for net in nets for node in net if node[0] == "conductor"}
        if touched:
            return any(self.unsettled(conductor) for conductor in touched)
        ends = {end, *best.at}
        return any(
            ends & set(self._wiring.ends_of(core.id))
            for core in self._plan.conductors
            if core.kind == "core" and self.unsettled(core.id)
        )

    @cached_property
    def _capped(self) -> frozenset[tuple[str, str]]:
        return frozenset((cap.end, cap.conductor) for cap in self._plan.caps)

    @cached_property
    def loose(self) -> dict[str, tuple[str, ...]]:
        """Conductors by id, with the ends where they come out and neither land nor are capped."""
        settled = self._capped | self._plan.landing_at.keys()
        found = {}
        for conductor in self._plan.conductors:
            ends = tuple(
                end
                for end in self._wiring.ends_of(conductor.id)
                if (end, conductor.id) not in settled
            )
            if ends:
                found[conductor.id] = ends
        return found

    @cached_property
    def loose_cores(self) -> dict[str, tuple[str, ...]]:
        """The loose conductors that are no shields."""
        known = self._plan.conductor_by_id
        return {name: ends for name, ends in self.loose.items() if known[name].kind == "core"}

    def unsettled(self, conductor: str) -> bool:
        """Tell whether a conductor is loose at an end, or is not led on to a second end yet."""
        if conductor in self.loose:
            return True
        ends = self._wiring.ends_of(conductor)
        return len(ends) < 2 and not any((end, conductor) in self._capped for end in ends)

    @cached_property
    def unused(self) -> tuple[Spot, ...]:
        """Contacts whose signal no other end carries, and that nothing is joined to."""
        found = []
        for (end, contact), signals in self._joins.wiring.signals.items():
            alone = all(self.ends_with(signal) <= {end} for signal in signals)
            if signals - GROUNDS and alone and len(self._net(end, contact)) == 1:
                found.append(Spot(end, contact, min(signals)))
        return tuple(sorted(found))

    def _net(self, end: str, contact: str) -> frozenset[tuple[str, ...]]:
        return self._wiring.net_of(contact_node(end, contact))
