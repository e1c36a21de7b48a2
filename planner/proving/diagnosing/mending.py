"""Which readings a lead with some faults does not explain, and the faults that may mend the first.

Any set of faults that explains the readings touches the first wrong one: it makes the net of a
missing pair reach further, or breaks the chain of a pair too many. Only those are tried.
"""

from collections import deque
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from planner.proving.diagnosing.observed import Observed, Two
from planner.proving.diagnosing.state import Labels, State


@dataclass(frozen=True, eq=False)
class Wrong:
    """Readings against a state: `missing` are joined and it has them apart, `extra` the reverse.

    Each has a row of first and one of second contacts.
    """

    missing: Labels
    extra: Labels

    @property
    def count(self) -> int:
        """How many readings are not explained."""
        return int(self.missing.shape[1] + self.extra.shape[1])

    @property
    def first(self) -> Two:
        """The first of the missing, or where none is missing of the extra."""
        pairs = self.missing if self.missing.size else self.extra
        return int(pairs[0, 0]), int(pairs[1, 0])


def wrong_pairs(seen: Observed, state: State) -> Wrong | None:
    """Return the readings that a state does not explain; None if it explains all."""
    labels = state.labels
    joined, apart = labels[seen.joins], labels[seen.parts]
    missing, extra = joined[0] != joined[1], apart[0] == apart[1]
    if not missing.any() and not extra.any():
        return None
    return Wrong(seen.joins[:, missing], seen.parts[:, extra])


def least_faults(state: State, wrong: Wrong) -> int:
    """Return a number of faults that it takes at least.

    A fault touches two nets at most. Every net with a pair too many must be touched, and of two
    nets that should be one at least one.
    """
    touched = set(state.labels[wrong.extra[0]].tolist())
    count = len(touched)
    nets = state.labels[wrong.missing]
    for one, other in zip(nets[0].tolist(), nets[1].tolist(), strict=True):
        if one not in touched and other not in touched:
            touched |= {one, other}
            count += 1
    return (count + 1) // 2


def mends(seen: Observed, state: State, wrong: Wrong) -> Iterator[State]:
    """Yield the state with one more fault that touches the first wrong reading."""
    after = _joinings if wrong.missing.size else _partings
    yield from after(seen, state, wrong.first)


def _joinings(seen: Observed, state: State, pair: Two) -> Iterator[State]:
    """Yield what makes the net of the first contact reach further."""
    board, label = state.board, state.label
    net = label[pair[0]]
    inside = [place for place in range(len(label)) if label[place] == net]
    goal = label[pair[1]]
    outside = [
        (label[other] != goal, one, other)
        for one in inside
        for other in board.at[board.end_of[one]]
        if label[other] != net and not seen.known_apart(one, other)
    ]
    for _, one, other in sorted(outside):
        yield state.bridged(one, other)
    for slot, place in enumerate(state.places):
        if label[place] == net:
            yield from _exchanges(seen, state, slot, lambda other: label[other] != net)
    yield from _drawn_in(seen, state, inside)


def _drawn_in(seen: Observed, state: State, inside: Sequence[int]) -> Iterator[State]:
    """Yield the conductors from elsewhere that may stand on an empty contact of a net."""
    taken = set(state.places)
    for place in inside:
        if place not in taken:
            for slot in _slots_at(state, state.board.end_of[place]):
                if not _confirmed(seen, state, slot) and _fits(seen, state, slot, place):
                    yield state.moved(slot, place)


def _slots_at(state: State, end: str) -> tuple[int, ...]:
    end_of = state.board.end_of
    return tuple(slot for slot, place in enumerate(state.places) if end_of[place] == end)


def _partings(seen: Observed, state: State, pair: Two) -> Iterator[State]:
    """Yield what breaks the chain of joints between two contacts."""
    for one, other, slots, link in _steps(state, pair):
        if seen.together(one, other):
            continue
        if link >= 0:
            yield state.unlinked(link)
        for slot in slots[:1] if _whole_pair(state, slots) else slots:
            yield state.opened(_told_as(state, slot))
        for slot in slots:
            yield from _exchanges(seen, state, slot, lambda _: True)


def _whole_pair(state: State, slots: tuple[int, ...]) -> bool:
    """Tell whether a conductor has two slots: open at the one or the other is all the same."""
    return bool(slots) and len(state.board.slots_of[state.board.wire_of[slots[0]]]) == 2


def _told_as(state: State, slot: int) -> int:
    """Return the slot by which an open is told: of a conductor with two always the first."""
    slots = state.board.slots_of[state.board.wire_of[slot]]
    return slots[0] if len(slots) == 2 else slot


Step = tuple[int, tuple[int, ...], int]  # the contact beyond, the slots or the link between


def _steps(state: State, pair: Two) -> Iterator[tuple[int, int, tuple[int, ...], int]]:
    """Yield the steps of a shortest chain: its two contacts, the slots or the link between."""
    beside = _beside(state)
    start, at = pair
    before: dict[int, Step] = {start: (start, (), -1)}
    waiting = deque([start])
    while waiting and at not in before:
        here = waiting.popleft()
        for other, slots, link in beside.get(here, ()):
            if other not in before:
                before[other] = (here, slots, link)
                waiting.append(other)
    while at != start:
        here, slots, link = before[at]
        yield here, at, slots, link
        at = here


def _beside(state: State) -> dict[int, list[Step]]:
    """Return for each contact what it is joined to directly, and by what."""
    found: dict[int, list[Step]] = {}

    def add(one: int, other: int, slots: tuple[int, ...] = (), link: int = -1) -> None:
        found.setdefault(one, []).append((other, slots, link))
        found.setdefault(other, []).append((one, slots, link))

    for slots in state.board.slots_of:
        live = [slot for slot in slots if slot not in state.opens]
        for one, other in combinations(live, 2):
            add(state.places[one], state.places[other], (one, other))
    for number, (one, other) in enumerate(state.board.links):
        if number not in state.cut:
            add(one, other, link=number)
    for one, other in sorted(state.bridges):
        add(one, other)
    return found


def _exchanges(
    seen: Observed, state: State, slot: int, wanted: Callable[[int], bool]
) -> Iterator[State]:
    """Yield the exchanges of a slot with another at its end, and its moves to an empty contact.

    Each exchange puts one of the two in place for good; any cycle can be told in that order.
    """
    board, place = state.board, state.places[slot]
    if _confirmed(seen, state, slot):
        return
    end = board.end_of[place]
    for other in _slots_at(state, end):
        there = state.places[other]
        if there == place or not wanted(there):
            continue
        if _confirmed(seen, state, other) or _told_at_other_end(state, slot, other):
            continue
        if _fits(seen, state, slot, there) or _fits(seen, state, other, place):
            yield state.exchanged(slot, other)
    taken = set(state.places)
    for there in board.at[end]:
        if there not in taken and wanted(there) and _fits(seen, state, slot, there):
            yield state.moved(slot, there)


def _told_at_other_end(state: State, slot: int, other: int) -> bool:
    """Tell whether the same exchange at another end is all the same to a meter, and told there."""
    span = shared_span(state, slot, other)
    return span is not None and state.board.end_of[state.places[slot]] != span[-1]


def shared_span(state: State, slot: int, other: int) -> tuple[str, str] | None:
    """Return the two ends that two conductors both run between, and no others; or None."""
    board = state.board
    spans = [
        tuple(sorted(board.end_of[state.places[it]] for it in board.slots_of[board.wire_of[one]]))
        for one in (slot, other)
    ]
    if spans[0] != spans[1] or len(spans[0]) != 2 or spans[0][0] == spans[0][1]:
        return None
    return spans[0][0], spans[0][1]


def _confirmed(seen: Observed, state: State, slot: int) -> bool:
    """Tell whether readings show a slot joined to all the others of its conductor."""
    mates = state.board.slots_of[state.board.wire_of[slot]]
    here = state.places[slot]
    return len(mates) > 1 and all(seen.together(here, state.places[mate]) for mate in mates)


def _fits(seen: Observed, state: State, slot: int, place: int) -> bool:
    """Tell whether a slot on another contact could be joined to another of its conductor."""
    mates = [it for it in state.board.slots_of[state.board.wire_of[slot]] if it != slot]
    if not mates:
        return True
    live = [it for it in mates if it not in state.opens and slot not in state.opens]
    return any(not seen.known_apart(place, state.places[it]) for it in live)
