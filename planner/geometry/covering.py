"""The smallest set of points that has one end of every line of a small graph: a vertex cover."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from heapq import heapify, heappop, heappush
from typing import Literal

Pair = tuple[int, int]

# Points looked at in one component, each as often as a branch has it: a second or two, well above
# what flat connectors need.
MOST_LOOKS = 100_000


@dataclass(frozen=True, slots=True)
class Cover:
    """The points chosen, in rising order; `at_least`: no cover is smaller than that.

    `proved`: there is no smaller cover. `found`: the search was given up, there may be one.
    """

    chosen: tuple[int, ...]
    verdict: Literal["proved", "found"]
    at_least: int


class _TooHardError(Exception):
    """The looks allowed are used up."""


def smallest_cover(
    pairs: Iterable[Pair], order: Sequence[int] = (), *, looks: int = MOST_LOOKS
) -> Cover:
    """Return the smallest set of points with one of every pair; points are numbers from 0.

    A pair of a point with itself forces that point. Of equally small covers it is the one that has
    the first point of `order` if any of them has it, then the second, and so on; points that
    `order` leaves out follow by number. The answer depends on the graph and the order alone.
    Branch and bound, each component by itself; at most `looks` points are looked at in each.
    """
    beside, forced = _graph(pairs)
    graph = _Graph(beside, looks)
    ranked = [*dict.fromkeys(point for point in order if point < len(beside))]
    ranked += [point for point in range(len(beside)) if point not in set(ranked)]
    covers = [graph.cover(part, ranked) for part in graph.parts(graph.all & ~forced)]
    chosen = sum((mask for mask, _ in covers), forced)
    at_least = forced.bit_count() + sum(least for _, least in covers)
    proved = at_least == chosen.bit_count()
    return Cover(tuple(_points(chosen)), "proved" if proved else "found", at_least)


def _graph(pairs: Iterable[Pair]) -> tuple[list[int], int]:
    """Return for each point the set of its neighbours as bits, and the points that are forced."""
    known = list(pairs)
    beside = [0] * (1 + max((max(pair) for pair in known), default=-1))
    forced = 0
    for one, other in known:
        if one == other:
            forced |= 1 << one
        else:
            beside[one] |= 1 << other
            beside[other] |= 1 << one
    return beside, forced


def _points(mask: int) -> Iterator[int]:
    while mask:
        low = mask & -mask
        yield low.bit_length() - 1
        mask ^= low


class _Graph:
    """A graph in bits; sets of points are integers."""

    def __init__(self, beside: list[int], looks: int) -> None:
        self.beside = beside
        self.all = (1 << len(beside)) - 1
        self._allowed = looks
        self._left = looks

    def parts(self, alive: int) -> list[int]:
        """Return the components of the points alive that have a line."""
        found = []
        while alive:
            part = front = alive & -alive
            while front:
                grown = 0
                for point in _points(front):
                    grown |= self.beside[point]
                front = grown & alive & ~part
                part |= front
            alive &= ~part
            if part & (part - 1):
                found.append(part)
        return found

    def cover(self, part: int, ranked: Sequence[int]) -> tuple[int, int]:
        """Return the cover of one component, and the size below which there is none."""
        self._left = self._allowed
        best = self._greedy(part)
        try:
            smaller = self._least(part, best.bit_count() - 1)
        except _TooHardError:
            return best, self._bound(part)
        best = best if smaller is None else smaller
        self._left = self._allowed
        return self._preferred(part, best, ranked), best.bit_count()

    def _preferred(self, part: int, best: int, ranked: Sequence[int]) -> int:
        """Return, of the covers as small as `best`, the one that comes first by rank.

        A point is asked for in turn; one that no smallest cover has leaves all its neighbours in.
        """
        alive, sure = part, 0
        for point in ranked:
            bit = 1 << point
            if not (alive & bit and self.beside[point] & alive):
                continue
            if not best & bit:
                room = best.bit_count() - sure.bit_count() - 1
                try:
                    rest = self._least(alive & ~bit, room)
                except _TooHardError:
                    return best
                best = best if rest is None else sure | bit | rest
            taken = bit if best & bit else self.beside[point] & alive
            sure |= taken
            alive &= ~(taken | bit)
        return best

    def _greedy(self, part: int) -> int:
        """Return a small cover: what is certain, then the busiest point, again and again."""
        taken, alive = self._reduced(part)
        while alive:
            bit = 1 << self._busiest(alive)
            sure, alive = self._reduced(alive & ~bit)
            taken |= bit | sure
        for point in _points(taken):
            if not self.beside[point] & part & ~taken:
                taken &= ~(1 << point)
        return taken

    def _busiest(self, alive: int) -> int:
        beside = self.beside
        return max(_points(alive), key=lambda point: ((beside[point] & alive).bit_count(), -point))

    def _least(self, alive: int, most: int) -> int | None:
        """Return the smallest cover of the points alive, or None if it takes more than `most`."""
        self._left -= alive.bit_count()
        if self._left < 0:
            raise _TooHardError
        taken, alive = self._reduced(alive)
        room = most - taken.bit_count()
        parts = self.parts(alive)
        bounds = [self._bound(part) for part in parts]
        spare = room - sum(bounds)
        if spare < 0:
            return None
        for part, bound in zip(parts, bounds, strict=True):
            found = self._branch(part, bound + spare)
            if found is None:
                return None
            taken |= found
            spare -= found.bit_count() - bound
        return taken

    def _branch(self, part: int, most: int) -> int | None:
        """Take the busiest point, or else all its neighbours; return the smaller cover."""
        point = self._busiest(part)
        bit, around = 1 << point, self.beside[point] & part
        best = self._least(part & ~bit, most - 1)
        if best is not None:
            best |= bit
            most = best.bit_count() - 1
        other = self._least(part & ~(around | bit), most - around.bit_count())
        return best if other is None else other | around

    def _reduced(self, alive: int) -> tuple[int, int]:
        """Take each point that has a neighbour all of whose neighbours are its own as well.

        A point with one neighbour is the simplest case: that neighbour is taken.
        """
        taken, waiting = 0, alive
        while waiting:
            point = (waiting & -waiting).bit_length() - 1
            waiting &= waiting - 1
            around = self.beside[point] & alive
            if not around:
                alive &= ~(1 << point)
                continue
            for other in _points(around):
                if not around & ~self.beside[other] & ~(1 << other):
                    taken |= 1 << other
                    alive &= ~(1 << other)
                    waiting = (waiting | self.beside[other]) & alive
                    break
        return taken, alive

    def _bound(self, alive: int) -> int:
        """Return a size below which there is no cover: disjoint cliques need all but one each.

        Pairs are a matching; beginning with the point that has fewest left finds a large one.
        """
        beside, need = self.beside, 0
        left = {point: (beside[point] & alive).bit_count() for point in _points(alive)}
        waiting = [(lines, point) for point, lines in left.items()]
        heapify(waiting)
        while waiting:
            lines, point = heappop(waiting)
            if lines != left[point] or not alive >> point & 1:
                continue
            clique = self._clique(point, alive, left)
            alive &= ~clique
            need += clique.bit_count() - 1
            for gone in _points(clique):
                for other in _points(beside[gone] & alive):
                    left[other] -= 1
                    heappush(waiting, (left[other], other))
        return need

    def _clique(self, point: int, alive: int, left: dict[int, int]) -> int:
        clique, near = 1 << point, self.beside[point] & alive
        while near:
            other = min(_points(near), key=lambda it: (left[it], it))
            clique |= 1 << other
            near &= self.beside[other]
        return clique
