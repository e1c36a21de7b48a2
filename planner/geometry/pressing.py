"""Press round wires together: a search for the smallest circle round them, many starts at once.

Wires push each other and the wall like springs where they overlap. At a wall a little too tight the
springs settle into an arrangement, and their energy says how far the wall must give: energy over
the wall's push is what is missing to first order. Nothing here is certain: the caller proves what
comes out. Everything is deterministic: the random starts have a fixed seed.
"""

import math
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from planner.geometry.segments import Array

_SEED = 1967
_TINY = 1e-12
# How far a ring is turned against the one round it, radians: the same rings settle differently.
_LEADS = (0.1, 0.35, 0.7)
# How many layouts are looked at where nothing is pressed.
_LAID = 4
# How much tighter than what is reached the wall stands when a changed arrangement is pressed.
_TIGHT = 0.97


@dataclass(frozen=True, slots=True)
class Effort:
    """How much to search: arrangements to start from, kept and changed, and steps for each.

    `walls` are how much tighter than what is reached the wall stands, coarse then fine. The best
    one is settled once more in `finish_steps`.
    """

    starts: int
    kept: int
    press_steps: int
    settle_steps: int
    walls: tuple[float, ...]
    rounds: int = 0
    changed: int = 0
    finish_steps: int = 0


def searched(radii: Array, least: float, effort: Effort, enough: float = 0.0) -> Array:
    """Return centres (n, 2) for wires of `radii` (n), in a round bore about the origin.

    `least` is a radius below which the wires surely do not go. A reach of `enough` ends the search.
    """
    rng = np.random.default_rng(_SEED + radii.size)
    pressed = _pressed(_starts(radii, effort.starts, rng), radii, least, effort)
    found = _settled(_best(pressed, radii, effort.kept), radii, effort)
    for _ in range(effort.rounds):
        found = _best(found, radii, effort.kept)
        reach = float(reaches(found, radii)[0])
        if reach <= enough:
            return np.asarray(found[0])
        changed = _changed(found, radii, reach, effort.changed, rng)
        pressed = _pressed(changed, radii, reach * _TIGHT, effort)
        settled = _settled(_best(pressed, radii, effort.kept), radii, effort)
        found = np.concatenate([found, settled])
    finish = replace(effort, settle_steps=effort.finish_steps)
    return np.asarray(_settled(_best(found, radii, 1), radii, finish)[0])


def laid(radii: Array) -> Array:
    """Return centres (n, 2) for wires in the ring or lattice that does best as it stands."""
    layouts = layouts_of(radii.size)[:_LAID] * radii.max()
    return np.asarray(_best(layouts, radii, 1)[0])


def _best(places: Array, radii: Array, count: int) -> Array:
    """Return the `count` smallest arrangements, the smallest first; of alike ones, one."""
    reach = np.round(reaches(places, radii), 6)
    _, first = np.unique(reach, return_index=True)
    return np.asarray(places[first[:count]])


def reaches(places: Array, radii: Array) -> Array:
    """Return for each of the places (b, n, 2) the radius of a bore, once no wire overlaps."""
    spread = spreads(places, radii)
    out = np.hypot(places[..., 0], places[..., 1])
    return np.asarray((spread[:, None] * out + radii).max(axis=1))


def spreads(places: Array, radii: Array) -> Array:
    """Return by how much each of the places (b, n, 2) must be drawn apart so that none overlap."""
    if radii.size == 1:
        return np.ones(len(places))
    x, y = places[..., 0], places[..., 1]
    apart = np.hypot(x[:, :, None] - x[:, None, :], y[:, :, None] - y[:, None, :])
    own = np.arange(radii.size)
    apart[:, own, own] = np.inf
    touching = radii[:, None] + radii[None, :]
    return np.asarray((touching / np.maximum(apart, _TINY)).max(axis=(1, 2)))


def _pressed(places: Array, radii: Array, least: float, effort: Effort) -> Array:
    """Press each arrangement in a wall that starts too tight and gives what is missing."""
    wall = np.full(len(places), least)
    for _ in range(3):
        places, overlap, push = _relaxed(places, radii, wall, effort.press_steps)
        energy = (overlap**2).sum(axis=(1, 2)) / 2 + (push**2).sum(axis=1)
        total = push.sum(axis=1)
        wall = wall + np.where(total > _TINY, energy / np.maximum(total, _TINY), 0.0)
    return places


def _settled(places: Array, radii: Array, effort: Effort) -> Array:
    """Press again and again a little tighter than what is reached, and keep what is better.

    A soft arrangement passes the press before it has come to rest; this brings it there.
    """
    best = reaches(places, radii)
    for share in effort.walls if effort.settle_steps else ():
        tried, _, _ = _relaxed(places, radii, best * (1 - share), effort.settle_steps)
        reach = reaches(tried, radii)
        better = reach < best
        places = np.where(better[:, None, None], tried, places)
        best = np.where(better, reach, best)
    return places


def _relaxed(places: Array, radii: Array, wall: Array, steps: int) -> tuple[Array, Array, Array]:
    """Follow the forces in `steps` steps; return places, overlaps of pairs and pushes at the wall.

    Step lengths after Barzilai and Borwein, IMA J. Numer. Anal. 8 (1988) 141-148, in turns.
    """
    touching = radii[:, None] + radii[None, :]
    np.fill_diagonal(touching, 0.0)
    slope, overlap, push = _slopes(places, touching, radii, wall)
    step = np.full(len(places), 0.3)
    for number in range(steps):
        move = -step[:, None, None] * slope
        places = places + move
        after, overlap, push = _slopes(places, touching, radii, wall)
        step = _next_step(move, after - slope, long=bool(number % 2))
        slope = after
    return places, overlap, push


def _next_step(move: Array, change: Array, *, long: bool) -> Array:
    along = (move * change).sum(axis=(1, 2))
    whole = (move * move if long else change * change).sum(axis=(1, 2))
    over, under = (whole, along) if long else (along, whole)
    step = np.where(along > 1e-30, over / np.maximum(under, 1e-30), 0.3)
    return np.asarray(np.clip(step, 0.05, 8.0))


def _slopes(
    places: Array, touching: Array, radii: Array, wall: Array
) -> tuple[Array, Array, Array]:
    """Return the slope (b, n, 2), overlaps (b, n, n) and pushes at the wall (b, n)."""
    x, y = places[..., 0], places[..., 1]
    dx, dy = x[:, :, None] - x[:, None, :], y[:, :, None] - y[:, None, :]
    apart = np.sqrt(dx * dx + dy * dy) + _TINY
    overlap = np.maximum(touching - apart, 0.0)
    weight = overlap / apart
    out = np.hypot(x, y) + _TINY
    push = np.maximum(out + radii - wall[:, None], 0.0)
    own = push / out - weight.sum(axis=2)
    return places * own[..., None] + weight @ places, overlap, push


# -- where to start, and what to change -------------------------------------------------------


def _starts(radii: Array, count: int, rng: np.random.Generator) -> Array:
    """Return starts (count, n, 2): rings and lattices, with everything jolted a little.

    The layouts that are smallest as they stand come first, with the thickest wires outside, as they
    are best; later starts mix the wires and jolt them more.
    """
    n = radii.size
    mean = float(np.sqrt((radii**2).mean()))
    layouts = layouts_of(n)
    found = np.empty((count, n, 2))
    for number in range(count):
        again = number >= len(layouts)
        mixed = rng.permutation(n) if again else np.arange(n)
        jolt = rng.normal(0.0, 0.2 if again else 0.05, (n, 2))
        found[number, mixed] = (layouts[number % len(layouts)] + jolt) * mean
    return found


def _changed(
    places: Array, radii: Array, reach: float, count: int, rng: np.random.Generator
) -> Array:
    """Return changed arrangements (count, n, 2): inside turned, a wire moved, two exchanged."""
    found = places[np.arange(count) % len(places)].copy()
    for number in range(count):
        _ACTS[number // len(places) % len(_ACTS)](found[number], radii, reach, rng)
    return found


def _turn_inside(place: Array, radii: Array, reach: float, rng: np.random.Generator) -> None:
    turn = rng.uniform(0, 2 * math.pi)
    cos, sin = math.cos(turn), math.sin(turn)
    inner = np.hypot(place[:, 0], place[:, 1]) + radii < reach * rng.uniform(0.4, 0.98)
    place[inner] = place[inner] @ np.array([[cos, sin], [-sin, cos]])
    place += rng.normal(0.0, 0.2 * float(radii.mean()), place.shape)


def _move_one(place: Array, radii: Array, reach: float, rng: np.random.Generator) -> None:
    angle, out = rng.uniform(0, 2 * math.pi), 0.9 * reach * math.sqrt(rng.random())
    place[rng.integers(radii.size)] = out * math.cos(angle), out * math.sin(angle)


def _exchange_two(place: Array, radii: Array, reach: float, rng: np.random.Generator) -> None:
    """Exchange two wires; where they are alike, move both instead."""
    one, other = rng.permutation(radii.size)[:2]
    if radii[one] != radii[other]:
        place[[one, other]] = place[[other, one]]
        return
    _move_one(place, radii, reach, rng)
    _move_one(place, radii, reach, rng)


_ACTS = (_turn_inside, _move_one, _exchange_two)


@lru_cache(maxsize=256)
def layouts_of(n: int) -> Array:
    """Return layouts (k, n, 2) of n wires of radius 1, outermost first; the smallest first."""
    rings = [_ring_places(counts, lead) for counts in _rings(n) for lead in _LEADS]
    found = np.array([*rings, *_lattices(n)])
    order = np.argsort(np.round(reaches(found, np.ones(n)), 9), kind="stable")
    return np.asarray(found[order])


def _lattices(n: int) -> list[Array]:
    """Return the n places of a close lattice that are nearest to a place, a gap, or a contact."""
    half = math.ceil(math.sqrt(n)) + 2
    row, column = np.mgrid[-half : half + 1, -half : half + 1]
    lattice = np.stack([2.0 * column + row, math.sqrt(3) * row], axis=-1).reshape(-1, 2)
    found = []
    for middle in ((0.0, 0.0), (1.0, 1 / math.sqrt(3)), (1.0, 0.0)):
        places = lattice - middle
        order = np.argsort(np.round(np.hypot(*places.T), 9), kind="stable")[:n]
        found.append(places[order[::-1]])
    return found


def _ring_places(counts: tuple[int, ...], lead: float) -> Array:
    """Return places of wires of radius 1 in rings, outermost first, each turned by `lead` more."""
    found = []
    for number, count in enumerate(counts):
        reach = 0.0 if count == 1 else 1 / math.sin(math.pi / count)
        angles = lead * number + 2 * math.pi * np.arange(count) / count
        found.append(reach * np.stack([np.cos(angles), np.sin(angles)], axis=1))
    return np.concatenate(found)


def _rings(n: int) -> list[tuple[int, ...]]:
    """Return ways to put n wires into rings, outermost first, each ring about six fewer."""
    fullest = max(int(math.pi * (1.12 * math.sqrt(n) - 1)), 1)
    found = {
        _counts(n, outer, fewer)
        for outer in range(max(fullest - 3, 1), min(n, fullest + 2) + 1)
        for fewer in (5, 6, 7)
    }
    return sorted((rings for rings in found if rings), reverse=True) or [(n,)]


def _counts(n: int, outer: int, fewer: int) -> tuple[int, ...]:
    """Return the counts of rings; empty where so few rings do not hold n wires."""
    counts: list[int] = []
    while n > 0 and outer > 0:
        counts.append(min(outer, n))
        n -= counts[-1]
        outer -= fewer
    return tuple(counts) if n == 0 else ()
