"""An explanation where there are too many faults to search: step by step, and how few it takes.

It is no proof that fewer would not do; for one-to-one leads read in full the closed form gives one.
"""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import combinations, islice

from planner.proving.diagnosing.board import Board
from planner.proving.diagnosing.mending import least_faults, mends
from planner.proving.diagnosing.mistakes import Mistake
from planner.proving.diagnosing.observed import Observed
from planner.proving.diagnosing.search import Found, Search
from planner.proving.diagnosing.state import State

_STARTS = 6
_TRIED_A_STEP = 48
_TRIED_CONTACTS = 2_000  # of a large lead less is tried


def repaired(search: Search) -> tuple[Found, ...]:
    """Return the smallest explanations found by mending one reading after the other."""
    found = [it for start in _starts(search) if (it := _mended(search, start))]
    least = min((it.cost for it in found), default=0)
    kept = {(it.mistakes_key, it.state.key): it for it in found if it.cost == least}
    return tuple(kept.values())


def _starts(search: Search) -> list[Found]:
    """Return the sets of named mistakes that leave least to be mended."""
    if closed(search.seen):
        bases = sorted(
            search.bases(2), key=lambda it: len(it[0]) + exchanged_cost(search.seen, it[1])
        )
        return [Found(len(done), done, state) for done, state in bases[:_STARTS]]
    single = [Found(len(done), done, state) for done, state in search.bases(1)]
    single = sorted(single, key=lambda it: _promise(search, it))[:_STARTS]
    double = [
        Found(2, (*one.mistakes, *other.mistakes), one.state.permuted(other.mistakes[0].moves))
        for one, other in combinations([it for it in single if it.mistakes], 2)
        if not set(one.mistakes[0].ends) & set(other.mistakes[0].ends)
    ]
    return sorted([*single, *double], key=lambda it: _promise(search, it))[:_STARTS]


def _promise(search: Search, start: Found) -> tuple[int, int]:
    wrong = search.looked_at(start.state)
    if wrong is None:
        return start.cost, 0
    return start.cost + least_faults(start.state, wrong), wrong.count


def _mended(search: Search, start: Found) -> Found | None:
    """Mend the first wrong reading by what leaves least wrong, till none is; None if stuck."""
    at, wrong = start, search.looked_at(start.state)
    most = min(_TRIED_A_STEP, max(_TRIED_CONTACTS // len(at.state.board.contacts), 4))
    while wrong is not None:
        tried = islice(mends(search.seen, at.state, wrong, 1), most)
        after = [(it, search.looked_at(it)) for it in tried]
        if not after or at.cost > 2 * len(at.state.board.contacts):
            return None
        state, wrong = min(after, key=lambda it: it[1].count if it[1] else -1)
        at = replace(at, cost=at.cost + 1, state=state)
    return at


# -- the closed form ----------------------------------------------------------------------------


def least_cost(seen: Observed, bases: Iterable[tuple[tuple[Mistake, ...], State]]) -> int:
    """Return a cost that no explanation is below; 0 where the closed form does not hold.

    It holds for a one-to-one lead with every pair read: with C groups of contacts, n conductors and
    after exchanges s, the faults are (2n - C) + n - 2 #{i: A_i ~ B_s(i)} and the cost of s.
    """
    if not closed(seen):
        return 0
    return min(len(mistakes) + exchanged_cost(seen, state) for mistakes, state in bases)


def closed(seen: Observed) -> bool:
    """Tell whether the closed form holds: one to one, and every pair read."""
    count = len(seen.board.contacts)
    whole = len(seen.joined) + len(seen.apart) == count * (count - 1) // 2
    return whole and _one_to_one(seen.board)


def _one_to_one(board: Board) -> bool:
    return (
        not board.links
        and len(board.at) == 2
        and sorted(board.place_of) == list(range(len(board.contacts)))
        and all(_crosses(board, slots) for slots in board.slots_of)
    )


def _crosses(board: Board, slots: tuple[int, ...]) -> bool:
    return len(slots) == 2 == len({board.end_of[board.place_of[slot]] for slot in slots})


def exchanged_cost(seen: Observed, state: State) -> int:
    """Return the closed form with the best exchanges.

    A conductor is an arrow from the group of the one contact to that of the other. An exchange
    makes one arrow more return to its own group; the last of a cycle comes without one.
    """
    arrows = [
        (seen.group[state.places[one]], seen.group[state.places[other]])
        for one, other in _by_end(state)
    ]
    astray = [(one, other) for one, other in arrows if one != other]
    leaving, coming = Counter(one for one, _ in astray), Counter(other for _, other in astray)
    mended = sum(min(leaving[group], coming[group]) for group in leaving)
    plain = all(number < 2 for each in (leaving, coming) for number in each.values())
    cycles = _cycles(dict(astray)) if plain else mended // 2
    right = len(arrows) - len(astray)
    return 3 * len(arrows) - len(set(seen.group)) - 2 * right - mended - cycles


def _by_end(state: State) -> Iterator[tuple[int, int]]:
    """Yield the two slots of each conductor, those of one end first."""
    board = state.board
    first = board.end_of[0]
    for one, other in board.slots_of:
        yield (one, other) if board.end_of[state.places[one]] == first else (other, one)


def _cycles(after: dict[int, int]) -> int:
    """Return how many cycles the arrows close, where none meets another."""
    count, left = 0, dict(after)
    while left:
        start = at = next(iter(left))
        while at in left:
            at = left.pop(at)
        count += at == start
    return count
