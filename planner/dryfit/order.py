"""In which order the joints of an end are best soldered, and from where the iron comes to each."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from planner.dryfit.clamping import SECTORS, Clampings, fewest_clampings, in_sector
from planner.dryfit.iron import DIRECTIONS, ROOMY_MM, Cents, Room, cents
from planner.dryfit.scene import Flags
from planner.geometry.segments import Array

# With this much room the iron is free; more is no reason to clamp the plug anew. Common practice,
# no source.
GOOD_MM = 0.5

Proof = Literal["proved", "found"]


@dataclass(frozen=True, slots=True)
class Step:
    """One joint in the order: its number, the iron's direction and room, which clamping."""

    joint: int
    direction: int
    cents: int
    clamping: int


@dataclass(frozen=True, slots=True)
class Order:
    """An order of soldering: `margin_mm` is the smallest room of the iron in it.

    `best_mm` is the largest smallest room that any order allows, and is always proved. `reclamps`
    counts how often the plug is turned in the vice; `proof` tells whether fewer are ruled out.
    """

    contacts: tuple[str, ...]
    margin_mm: float
    reclamps: int
    proof: Proof
    best_mm: float
    steps: tuple[Step, ...]


def best_order(contacts: Sequence[str], room: Room, ranks: Sequence[int]) -> Order:
    """Return the order with the largest smallest room, then the fewest re-clampings.

    `contacts` names the joints of `room`; a joint of lower rank comes before one of higher rank. An
    order counts as good if each joint has `GOOD_MM`, or at least what it has in the safest order:
    so nothing is hidden for the sake of a clamping. Ties: the deepest first, then what heats less
    finished insulation, then the lowest number.
    """
    if not contacts:
        return Order((), ROOMY_MM, 0, "proved", ROOMY_MM, ())
    safest = safest_order(room, ranks)
    needs = needs_of(safest)
    found = fewest_clampings(room, needs, ranks)
    steps = _aimed(room, needs, found)
    return Order(
        tuple(contacts[step.joint] for step in steps),
        min(step.cents for step in steps) / 100,
        len(found.groups) - 1,
        "proved" if found.proved else "found",
        min(margin for _, margin in safest) / 100,
        steps,
    )


def safest_order(room: Room, ranks: Sequence[int]) -> tuple[tuple[int, int], ...]:
    """Return (joint, its room in hundredths of a mm) in the order of largest smallest room.

    Fix the last first: of those that may be last, the one with most room among all others; repeat.
    Room only shrinks as joints are added, so this is exact (Lawler, Management Science 19 (1973)
    544-546, from memory).
    """
    left = list(range(len(ranks)))
    there = np.ones(len(ranks), dtype=bool)
    least = np.minimum(room.made, room.by.min(axis=2))
    found = []
    while left:
        most, top = least.max(axis=1), max(ranks[joint] for joint in left)
        last = max(
            (joint for joint in left if ranks[joint] == top),
            key=lambda joint: (most[joint], room.height[joint], joint),
        )
        found.append((last, int(most[last])))
        left.remove(last)
        there[last] = False
        _take_away(room, least, last, there)
    return tuple(reversed(found))


def needs_of(safest: Sequence[tuple[int, int]]) -> Cents:
    """Return the room that each joint needs in a good order, hundredths of a mm."""
    needs = np.zeros(len(safest), dtype=np.int16)
    for joint, margin in safest:
        needs[joint] = min(margin, cents(GOOD_MM))
    return needs


def _take_away(room: Room, least: Cents, gone: int, there: Flags) -> None:
    """Bring the least room up to date where the joint that is gone was the nearest."""
    was = room.by[:, :, gone]
    joint, direction = np.nonzero((was == least) & (was < cents(ROOMY_MM)) & there[:, None])
    if not len(joint):
        return
    rows = np.where(there, room.by[joint, direction], cents(ROOMY_MM))
    least[joint, direction] = np.minimum(room.made[joint, direction], rows.min(axis=1))


def _aimed(room: Room, needs: Cents, found: Clampings) -> tuple[Step, ...]:
    """Choose for each clamping the side that the hand comes from, and a direction for each joint.

    The side with the largest smallest room; then the one on which its joints lie. The direction
    with most room; then the one that leads outwards.
    """
    steps: list[Step] = []
    least = room.made.copy()
    turns = _turns(room)
    for number, group in enumerate(found.groups):
        rows = np.empty((len(group), DIRECTIONS), dtype=np.int16)
        for place, joint in enumerate(group):
            rows[place] = least[joint]
            np.minimum(least, room.by[:, :, joint], out=least)
        side = _side(rows, needs[list(group)], turns[list(group)])
        merit = rows.astype(float) * DIRECTIONS - turns[list(group)]
        outside = np.setdiff1d(np.arange(DIRECTIONS), SECTORS[side])
        merit[:, outside] = -np.inf
        for joint, row, direction in zip(group, rows, merit.argmax(axis=1).tolist(), strict=True):
            steps.append(Step(joint, direction, int(row[direction]), number))
    return tuple(steps)


def _side(rows: Cents, needs: Cents, turns: Array) -> int:
    most = in_sector(rows).max(axis=2)
    serves = (most >= needs[:, None]).all(axis=0)
    # Squares: the middle between two joints is better than the way out of either.
    turn = (turns**2).sum(axis=0).round(6)
    # Any difference in room weighs more than all turns together.
    merit = most.min(axis=0).astype(float) * DIRECTIONS**2 * len(rows) - turn
    return int(np.where(serves, merit, -np.inf).argmax())


def _turns(room: Room) -> Array:
    """Return how many steps each direction is off the way outwards; 0 for a joint on the axis."""
    outward = np.array([np.nan if it is None else it for it in room.outward])
    off = np.abs(outward[:, None] - np.arange(DIRECTIONS)) % DIRECTIONS
    return np.asarray(np.nan_to_num(np.minimum(off, DIRECTIONS - off)).round(6))
