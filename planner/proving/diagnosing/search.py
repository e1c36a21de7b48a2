"""Iterative deepening: the smallest sets of faults that explain all that was read."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field

from planner.proving.diagnosing.mending import Wrong, least_faults, mends, wrong_pairs
from planner.proving.diagnosing.mistakes import Mistake
from planner.proving.diagnosing.observed import Observed
from planner.proving.diagnosing.state import State

# A search ends, not whole, when it has looked at so many contacts in all: about a second.
MOST_LOOKED = 200_000
MOST_FOUND = 2_000

Progress = Callable[[float], None]


class CancelledError(Exception):
    """The diagnosis was given up."""


@dataclass(frozen=True)
class Found:
    """A smallest explanation: the named mistakes in it and the lead as it then is."""

    cost: int
    mistakes: tuple[Mistake, ...]
    state: State

    @property
    def mistakes_key(self) -> tuple[object, ...]:
        """What tells one set of named mistakes from another."""
        return tuple((it.kind, it.ends, it.channels, it.step) for it in self.mistakes)


@dataclass(frozen=True)
class Searched:
    """All that was found at the smallest cost; `whole` unless the search was cut short.

    `least` is what is proved: no explanation costs less.
    """

    found: tuple[Found, ...]
    least: int
    whole: bool = True


@dataclass
class Search:
    """One search; it counts the states that it looked at."""

    seen: Observed
    start: State
    mistakes: Sequence[Mistake]
    most: int = MOST_LOOKED
    cancelled: Callable[[], bool] | None = None
    progress: Progress | None = None
    looked: int = 0
    found: dict[object, Found] = field(default_factory=dict)
    tried: dict[object, int] = field(default_factory=dict)

    def run(self, deepest: int) -> Searched:
        """Deepen until something explains the readings, or the search grows too long."""
        self.found = {}
        for cost in range(deepest + 1):
            if self.progress is not None:
                self.progress(cost / (deepest + 1))
            whole = self._at(cost)
            if self.found or not whole:
                return Searched(tuple(self.found.values()), cost, whole)
        return Searched((), deepest + 1)

    def _at(self, cost: int) -> bool:
        """Try every set of `cost` faults; tell whether all were tried."""
        for mistakes, state in self.bases(cost):
            self.tried = {}
            wrong = self.looked_at(state)
            if not self._mend(Found(cost, mistakes, state), wrong, cost - len(mistakes)):
                return False
        return True

    def bases(self, cost: int) -> Iterator[tuple[tuple[Mistake, ...], State]]:
        """Yield the lead with every set of named mistakes: two at most, and not at one end."""
        yield (), self.start
        for number, one in enumerate(self.mistakes if cost >= 1 else ()):
            state = self.start.permuted(one.moves)
            yield (one,), state
            for other in self.mistakes[number + 1 :] if cost >= 2 else ():
                if not set(one.ends) & set(other.ends):
                    yield (one, other), state.permuted(other.moves)

    def _mend(self, at: Found, wrong: Wrong | None, left: int) -> bool:
        """Try all that mends a state with so many faults more; tell whether all was tried."""
        state = at.state
        if wrong is None:
            self.found.setdefault((at.mistakes_key, state.key), at)
            return len(self.found) < MOST_FOUND
        if left <= 0 or least_faults(state, wrong) > left:
            return True
        if self.tried.get(state.key, -1) >= left:
            return True
        self.tried[state.key] = left
        after = [(it, self.looked_at(it)) for it in mends(self.seen, state, wrong, left)]
        # What leaves least wrong comes first, so that a search cut short has seen the likeliest.
        after.sort(key=lambda it: it[1].count if it[1] else 0)
        for it, still in after:
            if self._is_long() or not self._mend(Found(at.cost, at.mistakes, it), still, left - 1):
                return False
        return True

    def looked_at(self, state: State) -> Wrong | None:
        """Return what a state does not explain, and count it."""
        self.looked += 1
        if self.cancelled is not None and self.looked % 64 == 0 and self.cancelled():
            raise CancelledError
        return wrong_pairs(self.seen, state)

    def _is_long(self) -> bool:
        return self.looked * len(self.start.board.contacts) > self.most
