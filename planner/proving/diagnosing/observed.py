"""What was read, as numbers: groups that hang together, and groups that are apart."""

from collections import deque
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from planner.proving.diagnosing.board import Board
from planner.proving.diagnosing.state import Labels, labelled
from planner.proving.reading import Contact, Readings

Two = tuple[int, int]


@dataclass(frozen=True)
class Observed:
    """Pairs read joined and pairs read apart, by number; what is in neither is unknown."""

    board: Board
    joined: tuple[Two, ...]
    apart: tuple[Two, ...]

    @cached_property
    def group(self) -> tuple[int, ...]:
        """The group of each contact: what readings join, each named by its first contact."""
        return labelled(len(self.board.contacts), iter(self.joined))

    @cached_property
    def parted(self) -> frozenset[Two]:
        """The groups known to be apart, both ways round."""
        one = {(self.group[a], self.group[b]) for a, b in self.apart}
        return frozenset(one | {(b, a) for a, b in one})

    def known_apart(self, one: int, other: int) -> bool:
        """Tell whether readings say that two contacts are apart."""
        return (self.group[one], self.group[other]) in self.parted

    def together(self, one: int, other: int) -> bool:
        """Tell whether readings say that two contacts are joined."""
        return self.group[one] == self.group[other]

    @cached_property
    def joins(self) -> Labels:
        """The pairs read joined: a row of first contacts, and one of second."""
        return _rows(self.joined)

    @cached_property
    def parts(self) -> Labels:
        """The pairs read apart, likewise."""
        return _rows(self.apart)


def _rows(pairs: tuple[Two, ...]) -> Labels:
    return np.array(pairs, dtype=np.intp).reshape(-1, 2).T


@dataclass(frozen=True, slots=True)
class Clash:
    """A pair read apart that a chain of joined pairs joins: `apart`, and the chain."""

    apart: Two
    chain: tuple[Two, ...]


def observed(board: Board, readings: Readings) -> tuple[Observed, tuple[Clash, ...]]:
    """Return what was read, and what contradicts itself; that is left out as if unread.

    Readings of contacts that the lead does not have are left out too.
    """
    joined, apart = set[Two](), set[Two]()
    for reading in readings.by_pair.values():
        one, other = board.number.get(reading.one), board.number.get(reading.other)
        if one is not None and other is not None:
            (joined if reading.joined else apart).add((min(one, other), max(one, other)))
    clashes = []
    while clash := _first_clash(board, joined, apart):
        clashes.append(clash)
        joined -= set(clash.chain)
        apart.discard(clash.apart)
    return Observed(board, tuple(sorted(joined)), tuple(sorted(apart))), tuple(clashes)


def _first_clash(board: Board, joined: set[Two], apart: set[Two]) -> Clash | None:
    group = labelled(len(board.contacts), iter(joined))
    pair = min((pair for pair in apart if group[pair[0]] == group[pair[1]]), default=None)
    return None if pair is None else Clash(pair, _chain(joined, pair))


def _chain(joined: Iterable[Two], pair: Two) -> tuple[Two, ...]:
    """Return the shortest chain of joined pairs between two contacts; empty if none."""
    beside: dict[int, list[int]] = {}
    for one, other in sorted(joined):
        beside.setdefault(one, []).append(other)
        beside.setdefault(other, []).append(one)
    start, goal = pair
    before, waiting = {start: start}, deque([start])
    while waiting and goal not in before:
        at = waiting.popleft()
        for other in beside.get(at, ()):
            if other not in before:
                before[other] = at
                waiting.append(other)
    if goal not in before:
        return ()
    chain = []
    while goal != start:
        chain.append((min(goal, before[goal]), max(goal, before[goal])))
        goal = before[goal]
    return tuple(reversed(chain))


def contact_pair(board: Board, pair: Two) -> tuple[Contact, Contact]:
    """Return a pair of contacts by their names."""
    return board.contacts[pair[0]], board.contacts[pair[1]]
