"""What was found, read as changes: which conductors changed places, and at which end."""

from collections.abc import Iterator
from dataclasses import dataclass

from planner.proving.diagnosing.mending import span_of
from planner.proving.diagnosing.search import Found
from planner.proving.diagnosing.state import State, sound


@dataclass(frozen=True, slots=True)
class Ring:
    """Conductors that changed places at one end.

    Slot `slots[i]` should be on `places[i]` and stands on `places[i + 1]`; the last on the first,
    unless it went to an empty contact: then there is one place more.
    """

    slots: tuple[int, ...]
    places: tuple[int, ...]

    @property
    def closed(self) -> bool:
        """Tell whether they exchanged among themselves."""
        return len(self.slots) == len(self.places)

    @property
    def cost(self) -> int:
        """How many exchanges it takes."""
        return len(self.slots) - self.closed


def base_of(found: Found) -> State:
    """Return the lead with the named mistakes alone."""
    state = sound(found.state.board)
    for mistake in found.mistakes:
        state = state.permuted(mistake.moves)
    return state


def rings_of(found: Found) -> Iterator[Ring]:
    """Yield the rings in which conductors changed places, the small ones first."""
    base, state = base_of(found), found.state
    steps: dict[int, list[tuple[int, int]]] = {}
    for slot, (one, other) in enumerate(zip(base.places, state.places, strict=True)):
        if one != other:
            steps.setdefault(one, []).append((slot, other))
    while ring := _shortest(steps):
        for slot, place in zip(ring.slots, ring.places, strict=False):
            steps[place] = [step for step in steps[place] if step[0] != slot]
        yield ring


def _shortest(steps: dict[int, list[tuple[int, int]]]) -> Ring | None:
    """Return the shortest ring; where none closes, the longest open chain."""
    starts = sorted(place for place, left in steps.items() if left)
    rings = [ring for place in starts if (ring := _closing(steps, place))]
    if rings:
        return min(rings, key=lambda ring: len(ring.slots))
    reached = {place for left in steps.values() for _, place in left}
    first = next((place for place in starts if place not in reached), starts[0] if starts else -1)
    return _chain(steps, first) if first >= 0 else None


def _closing(steps: dict[int, list[tuple[int, int]]], start: int) -> Ring | None:
    waiting: list[Ring] = [Ring((), (start,))]
    seen = set[int]()
    while waiting:
        at = waiting.pop(0)
        for slot, place in steps.get(at.places[-1], ()):
            if place == start:
                return Ring((*at.slots, slot), at.places)
            if place not in seen:
                seen.add(place)
                waiting.append(Ring((*at.slots, slot), (*at.places, place)))
    return None


def _chain(steps: dict[int, list[tuple[int, int]]], start: int) -> Ring:
    ring = Ring((), (start,))
    while left := steps.get(ring.places[-1]):
        slot, place = left[0]
        ring = Ring((*ring.slots, slot), (*ring.places, place))
    return ring


def ends_of(state: State, ring: Ring) -> tuple[str, ...]:
    """Return the ends at which a ring may be, all the same to a meter: the one, or both."""
    end = state.board.end_of[ring.places[0]]
    if not ring.closed:
        return (end,)
    spans = {span_of(state, slot) for slot in ring.slots}
    span = spans.pop()
    return span if not spans and len(set(span)) == len(span) == 2 else (end,)
