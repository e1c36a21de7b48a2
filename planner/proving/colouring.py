"""Colour a small graph with few colours, so that no line joins two points of one colour."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

Pair = tuple[int, int]

# Tries of the exact search; flat connectors need a few hundred.
MOST_LOOKS = 100_000
# Above so many points the greedy colouring stands: the search goes as deep as there are points.
MOST_POINTS = 400


@dataclass(frozen=True, slots=True)
class Colouring:
    """The colour of each point, from 0; no colouring has fewer than `at_least` colours."""

    colours: tuple[int, ...]
    at_least: int

    @property
    def count(self) -> int:
        """How many colours there are."""
        return max(self.colours, default=-1) + 1

    @property
    def proved(self) -> bool:
        """Tell whether there is no colouring with fewer."""
        return self.count == self.at_least


class _TooHardError(Exception):
    """The looks allowed are used up."""


def coloured(count: int, pairs: Iterable[Pair], *, looks: int = MOST_LOOKS) -> Colouring:
    """Return a colouring of points 0 to count - 1 with the fewest colours that was found.

    A clique gives the least number; from there up each is tried exactly, the point with most
    colours round it first (Brelaz, Commun. ACM 22 (1979) 251-256). After `looks` tries the greedy
    colouring in that order stands, and what was ruled out till then.
    """
    search = _Search(count, pairs, looks)
    best = search.greedy()
    least = min(search.clique_size(), max(best, default=-1) + 1)
    try:
        while count <= MOST_POINTS and least < max(best, default=-1) + 1:
            found = search.within(least)
            if found is not None:
                return Colouring(tuple(found), least)
            least += 1
    except _TooHardError:
        pass
    return Colouring(tuple(best), least)


class _Search:
    def __init__(self, count: int, pairs: Iterable[Pair], looks: int) -> None:
        self.beside: list[set[int]] = [set() for _ in range(count)]
        self.left = looks
        for one, other in pairs:
            self.beside[one].add(other)
            self.beside[other].add(one)

    def clique_size(self) -> int:
        """Return the size of a large clique: greedy from every point."""
        return max((sum(1 for _ in self._clique(it)) for it in range(len(self.beside))), default=0)

    def _clique(self, point: int) -> Iterator[int]:
        near = set(self.beside[point])
        yield point
        while near:
            other = max(near, key=lambda it: (len(self.beside[it] & near), -it))
            near &= self.beside[other]
            yield other

    def greedy(self) -> list[int]:
        """Return a colouring, each point taking the first colour that is free."""
        colours = [-1] * len(self.beside)
        for _ in colours:
            point = self._next(colours)
            colours[point] = next(
                it for it in range(len(colours)) if it not in self._round(point, colours)
            )
        return colours

    def within(self, most: int) -> list[int] | None:
        """Return a colouring with at most so many colours, or None if there is none."""
        colours = [-1] * len(self.beside)
        return colours if self._fill(colours, most, 0) else None

    def _fill(self, colours: list[int], most: int, used: int) -> bool:
        self.left -= 1
        if self.left < 0:
            raise _TooHardError
        if -1 not in colours:
            return True
        point = self._next(colours)
        round_it = self._round(point, colours)
        # One colour that is not yet in use stands for all such.
        for colour in range(min(used + 1, most)):
            if colour not in round_it:
                colours[point] = colour
                if self._fill(colours, most, max(used, colour + 1)):
                    return True
        colours[point] = -1
        return False

    def _next(self, colours: Sequence[int]) -> int:
        waiting = (it for it, colour in enumerate(colours) if colour < 0)
        return max(
            waiting, key=lambda it: (len(self._round(it, colours)), len(self.beside[it]), -it)
        )

    def _round(self, point: int, colours: Sequence[int]) -> set[int]:
        return {colours[it] for it in self.beside[point]} - {-1}
