"""What was not read yet: continuity within nets, isolation between them."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from planner.proving.diagnosing.observed import Observed, Two
from planner.proving.diagnosing.state import State


@dataclass(frozen=True, slots=True)
class Coverage:
    """Pairs still to be read: one for each joint of a net, one for each two nets."""

    continuity: tuple[Two, ...]
    isolation: tuple[Two, ...]


def coverage(seen: Observed, sound: State, asked: frozenset[Two] | None = None) -> Coverage:
    """Return what is unread of a sound lead.

    A pair that was read otherwise than it should is read. Of two nets any reading between them
    counts. With `asked` only its pairs of nets are wanted: a
    stated plan may stop before the last.
    """
    return Coverage(tuple(_continuity(seen, sound)), tuple(_isolation(seen, sound, asked)))


def _continuity(seen: Observed, sound: State) -> Iterator[Two]:
    first: dict[int, int] = {}
    linked = set[Two]()
    for place, net in enumerate(sound.label):
        start = first.setdefault(net, place)
        key = (net, seen.group[place])
        unknown = not seen.together(start, place) and not seen.known_apart(start, place)
        if unknown and key not in linked:
            linked.add(key)
            yield start, place


def _isolation(seen: Observed, sound: State, asked: frozenset[Two] | None) -> Iterator[Two]:
    label = sound.label
    done = {frozenset((label[one], label[other])) for one, other in (*seen.apart, *seen.joined)}
    if asked is None:
        pairs: Iterator[Two] = combinations(sorted(set(label)), 2)
    else:
        pairs = iter(sorted(asked))
    for one, other in pairs:
        nets = frozenset((label[one], label[other]))
        if len(nets) == 2 and nets not in done:
            done.add(nets)
            yield one, other
