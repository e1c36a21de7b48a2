"""Networks of resistors by nodal analysis: resistance between nodes, and voltages in them."""

import math
from collections.abc import Hashable, Iterable, Mapping
from typing import Generic, TypeVar

import numpy as np
from numpy.typing import NDArray

Key = TypeVar("Key", bound=Hashable)


class Merged(Generic[Key]):
    """Nodes joined without resistance, each set known by one of its nodes."""

    def __init__(self, joins: Iterable[tuple[Key, Key]] = ()) -> None:
        self._above: dict[Key, Key] = {}
        for one, other in joins:
            self.join(one, other)

    def join(self, one: Key, other: Key) -> None:
        """Join two nodes."""
        self._above[self.root(one)] = self.root(other)

    def root(self, node: Key) -> Key:
        """Return the node that stands for a set; a new node is a set of its own."""
        above = self._above
        above.setdefault(node, node)
        while above[node] != node:
            above[node] = above[above[node]]
            node = above[node]
        return node


class Mesh(Generic[Key]):
    """Resistors between nodes, some of which are joined without resistance.

    `resistors` are (node, node, ohm) with ohm above zero; several between two nodes are parallel.
    """

    def __init__(
        self, joins: Iterable[tuple[Key, Key]], resistors: Iterable[tuple[Key, Key, float]]
    ) -> None:
        self.merged: Merged[Key] = Merged(joins)
        self._pieces: Merged[Key] = Merged()
        root = self.merged.root
        merged = [(root(one), root(other), ohm) for one, other, ohm in resistors]
        for one, other, _ in merged:
            self._pieces.join(one, other)
        self._inside: dict[Key, list[tuple[Key, Key, float]]] = {}
        for each in merged:
            self._inside.setdefault(self._pieces.root(each[0]), []).append(each)
        self._solved: dict[Key, tuple[dict[Key, int], NDArray[np.float64]]] = {}

    def together(self, one: Key, other: Key) -> bool:
        """Tell whether a current can flow from one node to the other."""
        return self._piece(one) == self._piece(other)

    def _piece(self, node: Key) -> Key:
        return self._pieces.root(self.merged.root(node))

    def ohm(self, one: Key, other: Key) -> float:
        """Return the resistance between two nodes in ohm: 0 where joined, infinite where apart.

        Resistance distance, Klein and Randic, J. Math. Chem. 12 (1993) 81-95.
        """
        if self.merged.root(one) == self.merged.root(other):
            return 0.0
        if not self.together(one, other):
            return math.inf
        place, inverse = self._inverse(self._piece(one))
        a, b = place[self.merged.root(one)], place[self.merged.root(other)]
        return float(inverse[a, a] + inverse[b, b] - 2 * inverse[a, b])

    def transfer_ohm(self, one: tuple[Key, Key], other: tuple[Key, Key]) -> float:
        """Return the voltage over one pair of nodes for a unit current through the other pair."""
        (a, b), (c, d) = one, other
        across = self.ohm(a, d) + self.ohm(b, c) - self.ohm(a, c) - self.ohm(b, d)
        return across / 2

    def _inverse(self, piece: Key) -> tuple[dict[Key, int], NDArray[np.float64]]:
        """Return the places of a piece's nodes and the inverse of its grounded Laplacian."""
        if piece not in self._solved:
            place, laplacian = _laplacian(self._inside[piece])
            inverse = np.zeros_like(laplacian)
            inverse[1:, 1:] = np.linalg.inv(laplacian[1:, 1:])
            self._solved[piece] = place, inverse
        return self._solved[piece]

    def voltages(self, held: Mapping[Key, float]) -> dict[Key, float]:
        """Return the voltage of each node that hangs together with a node held at a voltage."""
        fixed = {self.merged.root(node): volt for node, volt in held.items()}
        pieces = dict.fromkeys(self._piece(node) for node in fixed)
        place, laplacian = _laplacian(
            each for piece in pieces for each in self._inside.get(piece, ())
        )
        for node in fixed:
            place.setdefault(node, len(place))
        known = [place[node] for node in fixed if place[node] < len(laplacian)]
        free = [at for at in range(len(laplacian)) if at not in set(known)]
        volts = np.zeros(len(place))
        for node, volt in fixed.items():
            volts[place[node]] = volt
        if free:
            drive = -laplacian[np.ix_(free, known)] @ volts[known]
            volts[free] = np.linalg.solve(laplacian[np.ix_(free, free)], drive)
        return {node: float(volts[at]) for node, at in place.items()}


def _laplacian(
    resistors: Iterable[tuple[Key, Key, float]],
) -> tuple[dict[Key, int], NDArray[np.float64]]:
    place: dict[Key, int] = {}
    rows = []
    for one, other, ohm in resistors:
        a = place.setdefault(one, len(place))
        b = place.setdefault(other, len(place))
        rows.append((a, b, 1 / ohm))
    matrix = np.zeros((len(place), len(place)))
    for a, b, siemens in rows:
        matrix[a, a] += siemens
        matrix[b, b] += siemens
        matrix[a, b] -= siemens
        matrix[b, a] -= siemens
    return place, matrix
