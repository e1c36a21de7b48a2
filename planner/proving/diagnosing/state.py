"""A lead with some faults in it, and which contacts are then joined."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from planner.proving.diagnosing.board import Board

Labels = NDArray[np.intp]


@dataclass(frozen=True)
class State:
    """Where each slot lands, which slots and links are open, which contacts are bridged."""

    board: Board
    places: tuple[int, ...]
    opens: frozenset[int] = frozenset()
    cut: frozenset[int] = frozenset()
    bridges: frozenset[tuple[int, int]] = frozenset()

    @property
    def key(self) -> tuple[object, ...]:
        """What tells one state from another."""
        return self.places, self.opens, self.cut, self.bridges

    def edges(self, without: int = -1) -> Iterator[tuple[int, int]]:
        """Yield pairs of contacts that together join all that is joined.

        `without` is a conductor to leave out.
        """
        for wire, slots in enumerate(self.board.slots_of):
            if wire == without:
                continue
            first = -1
            for slot in slots:
                if slot not in self.opens:
                    place = self.places[slot]
                    if first >= 0:
                        yield first, place
                    first = place
        for number, link in enumerate(self.board.links):
            if number not in self.cut:
                yield link
        yield from self.bridges

    @cached_property
    def label(self) -> tuple[int, ...]:
        """The net of each contact, named by its first contact."""
        return labelled(len(self.board.contacts), self.edges())

    @cached_property
    def labels(self) -> Labels:
        """The same as an array."""
        return np.array(self.label, dtype=np.intp)

    def whole_without(self, wire: int) -> bool:
        """Tell whether the contacts of a conductor hang together without it."""
        label = labelled(len(self.board.contacts), self.edges(without=wire))
        return len({label[self.places[slot]] for slot in self.board.slots_of[wire]}) == 1

    def opened(self, slot: int) -> "State":
        """Return this with a slot open."""
        return replace(self, opens=self.opens | {slot})

    def unlinked(self, link: int) -> "State":
        """Return this with a link left out."""
        return replace(self, cut=self.cut | {link})

    def bridged(self, one: int, other: int) -> "State":
        """Return this with two contacts bridged."""
        return replace(self, bridges=self.bridges | {(min(one, other), max(one, other))})

    def exchanged(self, one: int, other: int) -> "State":
        """Return this with what lands in two slots exchanged."""
        places = list(self.places)
        places[one], places[other] = places[other], places[one]
        return replace(self, places=tuple(places))

    def moved(self, slot: int, place: int) -> "State":
        """Return this with a slot on another contact."""
        places = list(self.places)
        places[slot] = place
        return replace(self, places=tuple(places))

    def permuted(self, moves: Mapping[int, int]) -> "State":
        """Return this with every slot on a contact in `moves` taken to another contact."""
        return replace(self, places=tuple(moves.get(place, place) for place in self.places))


def labelled(count: int, edges: Iterator[tuple[int, int]]) -> tuple[int, ...]:
    """Return for each of `count` things the smallest of its net."""
    above = list(range(count))

    def root(node: int) -> int:
        while above[node] != node:
            above[node] = above[above[node]]
            node = above[node]
        return node

    for one, other in edges:
        a, b = root(one), root(other)
        if a < b:
            above[b] = a
        elif b < a:
            above[a] = b
    return tuple(root(node) for node in range(count))


def sound(board: Board) -> State:
    """Return the lead as planned."""
    return State(board, board.place_of)
