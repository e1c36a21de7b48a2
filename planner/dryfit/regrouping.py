"""A good placing of whole groups at one turn: exchanges, insertions, legs the other way round."""

import math
from collections.abc import Iterator, Sequence
from itertools import combinations, permutations, product

import numpy as np

from planner.dryfit.board import Placing
from planner.dryfit.branching import Score, as_score
from planner.dryfit.exchanging import BATCH, FlatEnd, State
from planner.dryfit.grouping import Legs, Peers
from planner.dryfit.watch import Watch
from planner.geometry.assigning import least_cost
from planner.geometry.turning import Index

SEED = 21
MOST_ROUNDS = 40
SHAKES = 2
# Orders of legs that an exchange tries for each of its units; of longer units only the plain one.
MOST_BOTH = 4
NEAREST = 7
# Up to so many units every exchange is tried.
MOST_FOR_ALL = 12

# Cores that move, and the places they move to; both (m, cores moved).
Moves = tuple[Index, Index]


def count_placings(peers: Sequence[Peers]) -> float:
    """Return how many placings there are; infinite where the legs are not all listed."""
    if not all(each.complete for each in peers):
        return math.inf
    logs = (math.lgamma(len(it.units) + 1) + len(it.units) * math.log(len(it.legs)) for it in peers)
    total = sum(logs)
    return round(math.exp(total)) if total < 30 else math.inf


def all_placings(peers: Sequence[Peers], count: int) -> Index:
    """Return every placing of `count` cores, (m, count), the present one first."""
    found = np.arange(count)[None]
    for each in peers:
        found = np.concatenate([_with_units(found, each, order) for order in _orders(each)])
    return found


def _orders(peers: Peers) -> Iterator[tuple[tuple[int, Legs], ...]]:
    """Yield for each unit whose place it takes, with its legs in which order; as it is first."""
    for slots in permutations(range(len(peers.units))):
        for legs in product(peers.legs, repeat=len(peers.units)):
            yield tuple(zip(slots, legs, strict=True))


def _with_units(placings: Index, peers: Peers, order: tuple[tuple[int, Legs], ...]) -> Index:
    found = placings.copy()
    for unit, (slot, legs) in zip(peers.units, order, strict=True):
        places = peers.units[slot].members
        found[:, unit.members] = [places[leg] for leg in legs]
    return found


def scores_of(end: FlatEnd, placings: Index, watch: Watch) -> list[Score]:
    """Return the score of each placing, (m, cores)."""
    cores = np.arange(placings.shape[1])
    first, second = np.triu_indices(len(cores), 1)
    batch = max(1, BATCH // max(1, len(first)))
    scores: list[Score] = []
    for begin in range(0, len(placings), batch):
        watch(0.0)
        some = placings[begin : begin + batch]
        shape = (len(some), len(first))
        one, other = (np.broadcast_to(it, shape) for it in (first, second))
        crossings = end.cross(one, some[:, first], other, some[:, second]).sum(axis=1)
        steps = end.steps[cores, some].min(axis=1, initial=end.rest_steps)
        lengths = end.lengths_mm(np.broadcast_to(cores, some.shape), some).sum(axis=1)
        rows = zip(crossings.tolist(), steps.tolist(), lengths.tolist(), strict=True)
        scores += [as_score(*row) for row in rows]
    return scores


def shortest_units(end: FlatEnd, peers: Sequence[Peers], watch: Watch) -> Index:
    """Return the placing of whole units with the shortest leads."""
    placing = np.arange(len(end.exits))
    for each in peers:
        members = np.array([unit.members for unit in each.units], dtype=np.intp)
        legs = np.array(each.legs, dtype=np.intp)
        away = end.exits[members][:, None, None] - end.places[members[:, legs]][None]
        cost = np.hypot(away[..., 0], away[..., 1]).sum(axis=-1)
        slots = least_cost(cost.min(axis=-1), lambda _: watch(0.0))
        for unit, slot in enumerate(slots.tolist()):
            order = legs[int(cost[unit, slot].argmin())]
            placing[members[unit]] = members[slot][order]
    return placing


def good_units(
    end: FlatEnd, peers: Sequence[Peers], first: Index, starts: int, watch: Watch
) -> tuple[Placing, Score]:
    """Return the best placing found from `first` and from some shaken ones."""
    chance = np.random.default_rng(SEED)
    best, score = improved_units(end, peers, first, watch)
    for _ in range(starts):
        shaken = best
        for _ in range(SHAKES):
            shaken = _shaken(shaken, peers, chance)
        again, other = improved_units(end, peers, shaken, watch)
        if other < score:
            best, score = again, other
    return tuple(best.tolist()), score


def improved_units(
    end: FlatEnd, peers: Sequence[Peers], placing: Index, watch: Watch
) -> tuple[Index, Score]:
    """Return a placing that no exchange or insertion of units, nor of their legs, betters."""
    state = State(end, placing)
    for _ in range(MOST_ROUNDS):
        better = _best_move(state, near_moves(state.placing, peers, state.tightest()), watch)
        if better is None:
            better = _best_move(state, _insertions(state, peers), watch)
        if better is None:
            break
        state = State(end, better)
    return state.placing, state.score


def _best_move(state: State, moves: Iterator[Moves], watch: Watch) -> Index | None:
    """Return the placing after the move that gives the best score, or None if none is better."""
    score, best = state.score, None
    for cores, at in moves:
        batch = max(1, BATCH // (cores.shape[1] * len(state.placing)))
        for begin in range(0, len(cores), batch):
            watch(0.0)
            some = slice(begin, begin + batch)
            scores = state.scores_at(cores[some], at[some])
            row = min(range(len(scores)), key=scores.__getitem__)
            if scores[row] < score:
                score, best = scores[row], state.placing.copy()
                best[cores[begin + row]] = at[begin + row]
    return best


def near_moves(placing: Index, peers: Sequence[Peers], tightest: Sequence[int]) -> Iterator[Moves]:
    """Yield other orders of the legs of each unit, then exchanges of two units.

    Of many units only those exchange that have one of the tightest cores.
    """
    for each in peers:
        members = np.array([unit.members for unit in each.units], dtype=np.intp)
        at, legs = placing[members], np.array(each.legs, dtype=np.intp)
        if legs[1:].size:
            flipped = at[:, legs[1:]].reshape(-1, members.shape[1])
            yield np.repeat(members, len(legs) - 1, axis=0), flipped
        first, second = np.triu_indices(len(members), 1)
        rings = np.stack([first, second], axis=1)
        if len(members) > MOST_FOR_ALL:
            tight = np.flatnonzero(np.isin(members, tightest).any(axis=1))
            rings = rings[np.isin(rings, tight).any(axis=1)]
        if len(rings):
            yield _round(members, at, rings, legs)


def _round(members: Index, at: Index, rings: Index, legs: Index) -> Moves:
    """Return the moves of rings of units, each to the next one's place, in all orders of legs."""
    orders = legs if len(legs) <= MOST_BOTH else legs[:1]
    onward = np.roll(rings, -1, axis=1)
    cores, places = [], []
    for chosen in product(orders, repeat=rings.shape[1]):
        cores.append(members[rings].reshape(len(rings), -1))
        taken = [at[onward[:, it]][:, order] for it, order in enumerate(chosen)]
        places.append(np.concatenate(taken, axis=1))
    return np.concatenate(cores), np.concatenate(places)


def _insertions(state: State, peers: Sequence[Peers]) -> Iterator[Moves]:
    """Yield moves of the tightest units to the place of another, which takes that of a third."""
    tight = set(state.tightest())
    for each in peers:
        members = np.array([unit.members for unit in each.units], dtype=np.intp)
        at, legs = state.placing[members], np.array(each.legs, dtype=np.intp)
        middles = state.end.places[at].mean(axis=1)
        rings = []
        for unit in range(len(members)):
            if tight.isdisjoint(members[unit].tolist()):
                continue
            away = np.hypot(*(middles - middles[unit]).T)
            near = [it for it in away.argsort(kind="stable").tolist() if it != unit][:NEAREST]
            rings += [(unit, one, two) for one, two in permutations(near, 2)]
        if rings:
            yield _round(members, at, np.array(rings, dtype=np.intp), legs)


def _shaken(placing: Index, peers: Sequence[Peers], chance: np.random.Generator) -> Index:
    """Exchange two units by chance, or the legs of a lone one."""
    each = peers[int(chance.integers(len(peers)))]
    pairs = list(combinations(each.units, 2)) or [(each.units[0], each.units[0])]
    one, other = pairs[int(chance.integers(len(pairs)))]
    legs = list(each.legs[int(chance.integers(len(each.legs)))])
    new = placing.copy()
    new[list(one.members)] = placing[list(other.members)][legs]
    if one is not other:
        new[list(other.members)] = placing[list(one.members)]
    return new
