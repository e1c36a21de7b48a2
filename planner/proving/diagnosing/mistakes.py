"""Mistakes that a builder makes at a whole end, as permutations of the contacts there."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations

from planner.geometry.views import mirrored_point
from planner.model.connector import Connector
from planner.model.signals import channel_of, is_ground, leg_of
from planner.proving.diagnosing.board import Board
from planner.proving.diagnosing.records import FaultKind
from planner.wiring.graph import Wiring


@dataclass(frozen=True)
class Mistake:
    """What lands on a contact lands on `moves[contact]` instead.

    `ends` are where it was made; `channels` the channels that it concerns; `step` by how many
    places it is shifted.
    """

    kind: FaultKind
    ends: tuple[str, ...]
    moves: Mapping[int, int]
    channels: tuple[str, ...] = ()
    step: int = 0

    @cached_property
    def moved(self) -> tuple[int, ...]:
        """The contacts whose conductors land elsewhere."""
        return tuple(sorted(one for one, other in self.moves.items() if one != other))


def mistakes_of(board: Board, wiring: Wiring) -> tuple[Mistake, ...]:
    """Return every mistake that is more than an exchange of two conductors.

    Where two come to the same at the same end, the first counts.
    """
    found: dict[object, Mistake] = {}
    for mistake in _all(board, wiring):
        after = tuple(mistake.moves.get(place, place) for place in board.place_of)
        if sum(one != other for one, other in zip(after, board.place_of, strict=True)) > 2:
            found.setdefault((mistake.ends[0], after), mistake)
    return tuple(found.values())


def _all(board: Board, wiring: Wiring) -> Iterator[Mistake]:
    for end, places in board.at.items():
        connector = board.plan.connector_of(end)
        if connector is not None:
            yield from _by_channel(board, wiring, end)
            mirrored = _mirror(places, connector)
            yield Mistake("mirrored", (end,), dict(zip(places, mirrored, strict=True)))
            for step in (1, -1):
                moves = {it: places[(at + step) % len(places)] for at, it in enumerate(places)}
                yield Mistake("shifted", (end,), moves, step=step)
    for one, other in combinations(board.at, 2):
        yield from _ends_exchanged(board, one, other)


# -- counted from the mating side ---------------------------------------------------------------


def _mirror(places: tuple[int, ...], connector: Connector) -> tuple[int, ...]:
    """Return for each contact the one that stands in its place as seen from the other side.

    Where the face is not its own mirror image, the contacts are counted the other way round from
    the first.
    """
    spots = [(it.terminal.x_mm, it.terminal.y_mm) for it in connector.contacts]
    seen = [mirrored_point(*spot) for spot in spots]
    nearest = [min(range(len(spots)), key=lambda at: math.dist(spots[at], it)) for it in seen]
    apart_mm = min((math.dist(*pair) for pair in combinations(spots, 2)), default=0.0)
    off_mm = max(math.dist(spots[at], it) for at, it in zip(nearest, seen, strict=True))
    if sorted(nearest) == list(range(len(spots))) and off_mm < apart_mm / 2:
        return tuple(places[at] for at in nearest)
    return (places[0], *reversed(places[1:]))


# -- by channel ---------------------------------------------------------------------------------


def _by_channel(board: Board, wiring: Wiring, end: str) -> Iterator[Mistake]:
    legs = _legs(board, wiring, end)
    pairs = {it: legs[it] for it in legs if len(set(legs[it].values())) == 2}
    both = {it: _swap(each["+"], each["-"]) for it, each in pairs.items()}
    places = [place for each in pairs.values() for place in each.values()]
    if len(set(places)) == len(places) > 2:
        moves = {one: other for each in both.values() for one, other in each.items()}
        yield Mistake("polarity", (end,), moves, tuple(pairs))
    for one, other in combinations(legs, 2):
        moves = {}
        for leg in legs[one].keys() & legs[other].keys():
            moves |= _swap(legs[one][leg], legs[other][leg])
        yield Mistake("channels", (end,), moves, (one, other))


def _legs(board: Board, wiring: Wiring, end: str) -> dict[str, dict[str, int]]:
    """Return the contact of each leg of each channel at an end."""
    found: dict[str, dict[str, int]] = {}
    for place in board.at[end]:
        for signal in wiring.signals_at(*board.contacts[place]):
            if not is_ground(signal):
                found.setdefault(channel_of(signal), {})[leg_of(signal)] = place
    return dict(sorted(found.items()))


def _swap(one: int, other: int) -> dict[int, int]:
    return {one: other, other: one}


# -- whole ends ---------------------------------------------------------------------------------


def _ends_exchanged(board: Board, one: str, other: str) -> Iterator[Mistake]:
    """Yield the exchange of two ends with the same hardware: each soldered to the other's leg."""
    plan = board.plan
    same = plan.end_by_id[one].connector == plan.end_by_id[other].connector
    if same and len(board.at) > 2:
        pairs = zip(board.at[one], board.at[other], strict=True)
        moves = {a: b for pair in pairs for a, b in (pair, pair[::-1])}
        channels = tuple(plan.end_by_id[end].channel for end in (one, other))
        yield Mistake("ends", (one, other), moves, channels if all(channels) else ())
