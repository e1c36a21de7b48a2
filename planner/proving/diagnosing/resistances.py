"""What an explanation makes of the resistances that were read.

A bridge has next to nothing at its own end, and twice the wire at the other.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from planner.electrical.network import Network
from planner.electrical.nodal import Mesh
from planner.proving.diagnosing.observed import Two
from planner.proving.diagnosing.search import Found
from planner.proving.diagnosing.state import State
from planner.proving.reading import Readings
from planner.wiring.graph import Node, contact_node

# No reading speaks louder than at three errors of the meter: it may be a bad joint.
_MOST_SIGMAS = 3.0
# Of more rivals than this the resistances are not worked out.
_MOST_RIVALS = 200


@dataclass
class Resistances:
    """The figures that were read on a lead, beside what each explanation has for them."""

    network: Network
    readings: Readings
    _meshes: dict[object, Mesh[Node]] = field(default_factory=dict)

    def weights(self, found: Sequence[Found]) -> list[float]:
        """Return for each explanation how well the figures fit it; the best fit has 1."""
        figures = [it for it in self.readings.by_pair.values() if it.ohm is not None]
        if len(found) < 2 or len(found) > _MOST_RIVALS or not figures or self.network.unknown:
            return [1.0] * len(found)
        misfits = [self._misfit(it.state) for it in found]
        least = min(misfits)
        return [math.exp((least - misfit) / 2) for misfit in misfits]

    def _misfit(self, state: State) -> float:
        """Return the sum of the squares of how far off the figures are, in errors of the meter."""
        number, meter = state.board.number, self.readings.meter
        total = 0.0
        for reading in self.readings.by_pair.values():
            own_ohm = self.readings.own_ohm(reading)
            if own_ohm is None or not {reading.one, reading.other} <= number.keys():
                continue
            ohm = self.ohm(state, (number[reading.one], number[reading.other]))
            if math.isfinite(ohm):
                sigmas = (own_ohm - ohm) / max(meter.error_ohm(own_ohm), 1e-9)
                total += min(abs(sigmas), _MOST_SIGMAS) ** 2
        return total

    def ohm(self, state: State, pair: Two) -> float:
        """Return the resistance between two contacts of a lead with faults; infinite if apart."""
        if state.key not in self._meshes:
            self._meshes[state.key] = Mesh(tuple(_joins(state)), self.network.known)
        one, other = (contact_node(*state.board.contacts[place]) for place in pair)
        return self._meshes[state.key].ohm(one, other)

    def splitting(self, rivals: Sequence[Found]) -> tuple[Two, float, float] | None:
        """Return the pair whose resistance tells the first two rivals apart, and both figures.

        Of pairs with a bridge that have no figure yet it is the one with the clearest difference;
        None where that is within three errors of the meter.
        """
        if len(rivals) < 2 or self.network.unknown:
            return None
        one, other = (found.state for found in rivals[:2])
        best: tuple[float, Two, float, float] | None = None
        for pair in sorted(one.bridges ^ other.bridges):
            if self._has_figure(one, pair):
                continue
            first, second = self.ohm(one, pair), self.ohm(other, pair)
            if not (math.isfinite(first) and math.isfinite(second)):
                continue
            sigmas = abs(first - second) / self.readings.meter.error_ohm(max(first, second))
            if sigmas > _MOST_SIGMAS and (best is None or sigmas > best[0]):
                best = sigmas, pair, first, second
        return None if best is None else best[1:]

    def _has_figure(self, state: State, pair: Two) -> bool:
        contacts = state.board.contacts
        reading = self.readings.of(contacts[pair[0]], contacts[pair[1]])
        return reading is not None and reading.ohm is not None


def _joins(state: State) -> Iterator[tuple[Node, Node]]:
    board = state.board
    for slot, place in enumerate(state.places):
        if slot not in state.opens:
            end = board.end_of[board.place_of[slot]]
            wire = board.wires[board.wire_of[slot]]
            yield ("at", wire, end), contact_node(*board.contacts[place])
    for number, link in enumerate(board.links):
        if number not in state.cut:
            yield contact_node(*board.contacts[link[0]]), contact_node(*board.contacts[link[1]])
    for one, other in state.bridges:
        yield contact_node(*board.contacts[one]), contact_node(*board.contacts[other])
