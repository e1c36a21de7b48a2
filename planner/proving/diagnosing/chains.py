"""The chain of joints by which two contacts of a lead with faults are joined."""

from collections import deque
from collections.abc import Iterator
from itertools import combinations

from planner.proving.diagnosing.observed import Two
from planner.proving.diagnosing.state import State

Step = tuple[int, tuple[int, ...], int]  # the contact beyond, the slots or the link between


def steps(state: State, pair: Two) -> Iterator[tuple[int, int, tuple[int, ...], int]]:
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
