"""Every way in which drivers and wires may join the contacts of a sample, as far as was read.

A layout is a set of nets (contacts joined without resistance) in pieces (nets with a path).
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache
from itertools import permutations
from typing import Literal

from planner.proving.identifying.sample import ANY, Join

Kind = Literal["loose", "pair", "common", "hub", "chain"]
Net = tuple[int, ...]
Joins = Mapping[tuple[int, int], Join]  # by contact numbers, the smaller first

MOST_LAYOUTS = 4_000
LONGEST_CHAIN = 5  # nets; a longer row of drivers is told as a network


class TooManyError(Exception):
    """So little was read that the layouts are too many to weigh."""


@dataclass(frozen=True, slots=True)
class Piece:
    """Nets that hang together.

    `pair`: one element between two nets. `common`: the first net is the return, one element from
    each of the others to a hidden hub, and the return's own wire from there. `hub`: the same with
    an element in each. `chain`: an element from each net to the next. `loose`: one net alone.
    `microphone` is the number of the element that is one, or None.
    """

    kind: Kind
    nets: tuple[Net, ...]
    microphone: int | None = None
    elements: int = field(init=False)  # drivers and microphones
    edges: int = field(init=False)  # these, and last the return's own wire where there is one

    def __post_init__(self) -> None:
        elements = len(self.nets) if self.kind == "hub" else len(self.nets) - 1
        object.__setattr__(self, "elements", elements)
        object.__setattr__(self, "edges", elements + (self.kind == "common"))

    def path(self, one: int, other: int) -> tuple[int, ...]:
        """Return the edges between two of the nets, by number."""
        low, high = sorted((one, other))
        if self.kind == "pair":
            return (0,)
        if self.kind == "chain":
            return tuple(range(low, high))
        if self.kind == "hub":
            return (low, high)
        return (self.elements if low == 0 else low - 1, high - 1)

    def ends(self, element: int) -> tuple[Net, Net | None]:
        """Return the nets of an element, hot first; the other is None at a hidden hub."""
        if self.kind == "hub":
            return self.nets[element], None
        if self.kind == "chain":
            return self.nets[element], self.nets[element + 1]
        return self.nets[element + 1], self.nets[0]


Layout = tuple[Piece, ...]


def layouts(count: int, joins: Joins) -> tuple[Layout, ...]:
    """Return all layouts of `count` contacts that `joins` allow; TooManyError beyond reckoning."""
    return _layouts(count, tuple(sorted(joins.items(), key=lambda item: item[0])))


@lru_cache(maxsize=16)
def _layouts(count: int, items: tuple[tuple[tuple[int, int], Join], ...]) -> tuple[Layout, ...]:
    found: list[Layout] = []
    joins = dict(items)
    for pieces in _groupings(count, joins):
        found += _told(pieces)
        if len(found) > MOST_LAYOUTS:
            raise TooManyError
    return tuple(found)


def _groupings(count: int, joins: Joins) -> Iterator[tuple[tuple[Net, ...], ...]]:
    """Yield the contacts put into nets, and the nets into pieces, one contact after the other."""
    level: list[tuple[tuple[Net, ...], ...]] = [()]
    for contact in range(count):
        level = [later for pieces in level for later in _with_one_more(pieces, contact, joins)]
        if len(level) > MOST_LAYOUTS:
            raise TooManyError
    yield from level


def _with_one_more(
    pieces: tuple[tuple[Net, ...], ...], contact: int, joins: Joins
) -> Iterator[tuple[tuple[Net, ...], ...]]:
    may = [
        [_common([joins.get((it, contact), ANY) for it in net]) for net in nets] for nets in pieces
    ]
    apart = [all(Join.OPEN in each for each in piece) for piece in may]
    if all(apart):
        yield (*pieces, ((contact,),))
    for at, nets in enumerate(pieces):
        if not all(apart[:at] + apart[at + 1 :]):
            continue
        before, after = pieces[:at], pieces[at + 1 :]
        paths = [Join.PATH in each for each in may[at]]
        if all(paths):
            yield (*before, (*nets, (contact,)), *after)
        for which, net in enumerate(nets):
            if Join.SHORT in may[at][which] and all(paths[:which] + paths[which + 1 :]):
                wider = (*nets[:which], (*net, contact), *nets[which + 1 :])
                yield (*before, wider, *after)


def _common(joins: Sequence[Join]) -> Join:
    common = ANY
    for join in joins:
        common &= join
    return common


def _told(pieces: tuple[tuple[Net, ...], ...]) -> Iterator[Layout]:
    """Yield the layouts of nets in pieces: each piece of each kind, one microphone at most."""
    if not pieces:
        yield ()
        return
    for rest in _told(pieces[1:]):
        taken = any(piece.microphone is not None for piece in rest)
        for piece in _kinds(pieces[0]):
            yield (piece, *rest)
            if not taken and piece.kind in {"pair", "common"}:
                for element in range(piece.elements):
                    yield (replace(piece, microphone=element), *rest)


def _kinds(nets: tuple[Net, ...]) -> Iterator[Piece]:
    if len(nets) <= 2:
        yield Piece("loose" if len(nets) == 1 else "pair", nets)
        return
    for at in range(len(nets)):
        yield Piece("common", (nets[at], *nets[:at], *nets[at + 1 :]))
    yield Piece("hub", nets)
    if 4 <= len(nets) <= LONGEST_CHAIN:
        for order in permutations(nets):
            if order[0] < order[-1]:
                yield Piece("chain", order)
