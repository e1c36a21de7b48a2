"""Which readings a lead with some faults does not explain, and the faults that may mend the first.

Any set of faults that explains the readings touches the first wrong one: it makes the net of a
missing pair reach further, or breaks the chain of a pair too many. Only those are tried.
"""

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from planner.proving.diagnosing.chains import steps
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


def mends(seen: Observed, state: State, wrong: Wrong, left: int) -> Iterator[State]:
    """Yield the state with one more fault that touches the first wrong reading.

    `left` is how many faults more there may be, that one too.
    """
    mender = _Mender(seen, state, last=left < 2)
    after = mender.joinings if wrong.missing.size else mender.partings
    yield from after(wrong.first)


class _Mender:
    """Tries the faults by which a state may come nearer to what was read."""

    def __init__(self, seen: Observed, state: State, *, last: bool) -> None:
        self.seen, self.state, self.last = seen, state, last
        self.board, self.taken = state.board, frozenset(state.places)

    @cached_property
    def free(self) -> frozenset[int]:
        """The slots that may stand elsewhere.

        Not those of a conductor that readings show joined and whole: to take it away would only
        have to be made good by another fault. But another way may run beside it, or another
        conductor of other reach may come in its place.
        """
        slots_of = self.board.slots_of
        return frozenset(
            slot for wire, slots in enumerate(slots_of) if not self._held(wire) for slot in slots
        )

    def _held(self, wire: int) -> bool:
        slots, group = self.board.slots_of[wire], self.seen.group
        groups = {group[self.state.places[slot]] for slot in slots}
        if len(slots) < 2 or len(groups) > 1 or not self.state.opens.isdisjoint(slots):
            return False
        if not self.last and wire in self._replaceable:
            return False
        return self._ways_within[groups.pop()] < 2 or not self.state.whole_without(wire)

    @cached_property
    def _replaceable(self) -> frozenset[int]:
        """The conductors that share two ends with one of other reach."""
        spans = [span_of(self.state, slots[0]) for slots in self.board.slots_of]
        kinds = set(spans)
        return frozenset(
            wire
            for wire, span in enumerate(spans)
            if any(len({*span} & {*kind}) > 1 for kind in kinds - {span})
        )

    @cached_property
    def _ways_within(self) -> Counter[int]:
        """How many joins lie within each group."""
        group = self.seen.group
        within = Counter(
            group[one] for one, other in self.state.edges() if group[one] == group[other]
        )
        for slots in self.board.slots_of:
            inside = Counter(group[self.state.places[slot]] for slot in slots)
            within.subtract({it: max(count - 2, 0) for it, count in inside.items()})
        return within

    # -- a net that should reach further --------------------------------------------------------

    def joinings(self, pair: Two) -> Iterator[State]:
        """Yield what makes the net of the first contact reach further."""
        label = self.state.label
        net, goal = label[pair[0]], label[pair[1]]
        inside = [place for place in range(len(label)) if label[place] == net]
        outside = [
            (label[other] != goal, one, other)
            for one in inside
            for other in self.board.at[self.board.end_of[one]]
            if label[other] != net and not self.seen.known_apart(one, other)
        ]
        for _, one, other in sorted(outside):
            yield self.state.bridged(one, other)
        for slot, place in enumerate(self.state.places):
            if label[place] == net:
                yield from self._exchanges(slot, lambda other: label[other] != net)
        yield from self._drawn_in(inside)

    def _drawn_in(self, inside: Sequence[int]) -> Iterator[State]:
        """Yield the conductors from elsewhere that may stand on an empty contact of a net."""
        for place in inside:
            if place not in self.taken:
                for slot in self._slots_at(self.board.end_of[place]):
                    if slot in self.free and self._fits(slot, place):
                        yield self.state.moved(slot, place)

    # -- a net that should not reach so far -----------------------------------------------------

    def partings(self, pair: Two) -> Iterator[State]:
        """Yield what breaks the chain of joints between two contacts."""
        for one, other, slots, link in steps(self.state, pair):
            if self.seen.together(one, other):
                continue
            if link >= 0:
                yield self.state.unlinked(link)
            for slot in slots[:1] if self._whole_pair(slots) else slots:
                yield self.state.opened(self._told_as(slot))
            for slot in slots:
                yield from self._exchanges(slot, lambda _: True)

    def _whole_pair(self, slots: tuple[int, ...]) -> bool:
        """Tell whether a conductor has two slots: open at either is all the same."""
        return bool(slots) and len(self.board.slots_of[self.board.wire_of[slots[0]]]) == 2

    def _told_as(self, slot: int) -> int:
        """Return the slot by which an open is told: of a conductor with two always the first."""
        slots = self.board.slots_of[self.board.wire_of[slot]]
        return slots[0] if len(slots) == 2 else slot

    # -- what lands elsewhere -------------------------------------------------------------------

    def _slots_at(self, end: str) -> tuple[int, ...]:
        end_of = self.board.end_of
        return tuple(it for it, place in enumerate(self.state.places) if end_of[place] == end)

    def _exchanges(self, slot: int, wanted: Callable[[int], bool]) -> Iterator[State]:
        """Yield the exchanges of a slot with another at its end, and its moves to empty contacts.

        The last fault has to put one of the two in place.
        """
        place = self.state.places[slot]
        end = self.board.end_of[place]
        for other in self._slots_at(end):
            there = self.state.places[other]
            if there == place or not wanted(there) or not self._may_exchange(slot, other):
                continue
            if self._fits(slot, there) or self._fits(other, place):
                yield self.state.exchanged(slot, other)
        for there in self.board.at[end] if slot in self.free else ():
            if there not in self.taken and wanted(there) and self._fits(slot, there):
                yield self.state.moved(slot, there)

    def _may_exchange(self, slot: int, other: int) -> bool:
        """Tell whether to try an exchange of two slots of one end.

        Of two conductors that run between the same two ends it is told at one of the two only.
        """
        one, two = (span_of(self.state, it) for it in (slot, other))
        told_elsewhere = one == two and len(one) == 2 and one[0] != one[1]
        here = not told_elsewhere or self._end_of(slot) == one[-1]
        return here and {slot, other} <= self.free

    def _end_of(self, slot: int) -> str:
        return self.board.end_of[self.state.places[slot]]

    def _fits(self, slot: int, place: int) -> bool:
        """Tell whether a slot on another contact could be joined to another of its conductor."""
        if not self.last:
            return True
        mates = [it for it in self.board.slots_of[self.board.wire_of[slot]] if it != slot]
        if not mates:
            return True
        live = [it for it in mates if not self.state.opens & {it, slot}]
        return any(not self.seen.known_apart(place, self.state.places[it]) for it in live)


def span_of(state: State, slot: int) -> tuple[str, ...]:
    """Return the ends that the conductor of a slot lands at, sorted."""
    board = state.board
    slots = board.slots_of[board.wire_of[slot]]
    return tuple(sorted(board.end_of[state.places[it]] for it in slots))
