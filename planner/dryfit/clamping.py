"""The fewest turns of the plug in the vice while all its joints are soldered.

Clamped, a plug can be reached from a sector of 60 degrees to either side of where the hand is.
Joints only get in each other's way, so what can be soldered last from a side still can when others
are gone: all that can be taken off from one side goes at once, and only the sides are searched.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from planner.dryfit.iron import DIRECTIONS, Cents, Flags, Room

SECTOR_DEG = 60.0
ARC = int(SECTOR_DEG * DIRECTIONS / 360)
# Beyond this many different remainders the search keeps the smallest and proves nothing.
REMAINDERS = 32


@dataclass(frozen=True, slots=True)
class Clampings:
    """Joints in the order of soldering, a group for each clamping; fewer ruled out if `proved`."""

    groups: tuple[tuple[int, ...], ...]
    proved: bool


def fewest_clampings(room: Room, needs: Cents, ranks: Sequence[int]) -> Clampings:
    """Return an order in the fewest clampings in which each joint has the room that it needs.

    `needs` in hundredths of a mm, such that some order gives them; ranks as in `best_order`.
    """
    bench = _Bench(room, needs, tuple(ranks))
    sides, proved = _fewest_sides(bench)
    left = bench.all
    groups: list[tuple[int, ...]] = []
    for side in sides:
        group, left = bench.taken_off(left, side)
        groups.append(tuple(reversed(group)))
    return Clampings(tuple(reversed(groups)), proved)


def _fewest_sides(bench: "_Bench") -> tuple[tuple[int, ...], bool]:
    """Return the sides from the last clamping to the first, level by level, and if it is proved."""
    level: dict[int, tuple[int, ...]] = {bench.all: ()}
    proved = cut = False
    while True:
        proved = not cut
        below: dict[int, tuple[int, ...]] = {}
        for left, sides in level.items():
            for side in range(DIRECTIONS):
                rest = bench.rest(left, side)
                if not rest:
                    return (*sides, side), proved
                if rest != left:
                    below.setdefault(rest, (*sides, side))
        least = _smallest(below)
        cut = cut or len(least) > REMAINDERS
        level = {rest: below[rest] for rest in least[:REMAINDERS]}


def _smallest(remainders: Iterable[int]) -> list[int]:
    """Return the remainders that contain no other, the ones with fewest joints first."""
    kept: list[int] = []
    for rest in sorted(remainders, key=lambda it: (it.bit_count(), it)):
        if not any(other & rest == other for other in kept):
            kept.append(rest)
    return kept


@dataclass(frozen=True)
class _Bench:
    """Sets of joints as bits of whole numbers, and what is in the way of each from each side."""

    room: Room
    needs: Cents
    ranks: tuple[int, ...]

    @cached_property
    def all(self) -> int:
        return (1 << len(self.ranks)) - 1

    @cached_property
    def _ranked(self) -> tuple[tuple[int, ...], ...]:
        """Joints by rank, the highest first: those have to go before others are looked at."""
        return tuple(
            tuple(joint for joint, its in enumerate(self.ranks) if its == rank)
            for rank in sorted(set(self.ranks), reverse=True)
        )

    @cached_property
    def _in_the_way(self) -> list[list[tuple[int, ...]]]:
        """For each joint and side: sets of joints, one of which must be clear of others.

        One set for each direction of the side's sector that no terminal bars.
        """
        needs = self.needs[:, None]
        barred: Flags = self.room.by < needs[:, :, None]
        is_open: Flags = self.room.made >= needs
        packed = np.packbits(barred, axis=2, bitorder="little")
        table = []
        for joint in range(len(self.ranks)):
            sets = [
                int.from_bytes(packed[joint, it].tobytes(), "little") if is_open[joint, it] else -1
                for it in range(DIRECTIONS)
            ]
            table.append([_distinct(sets, side) for side in range(DIRECTIONS)])
        return table

    def _reached(self, joint: int, left: int, side: int) -> bool:
        return any(not blockers & left for blockers in self._in_the_way[joint][side])

    def rest(self, left: int, side: int) -> int:
        """Return what stays when all that can be last from a side is taken off."""
        for group in self._ranked:
            waiting = [joint for joint in group if left >> joint & 1]
            while waiting:
                stay = [joint for joint in waiting if not self._reached(joint, left, side)]
                if len(stay) == len(waiting):
                    return left
                for joint in set(waiting) - set(stay):
                    left &= ~(1 << joint)
                waiting = stay
        return left

    def taken_off(self, left: int, side: int) -> tuple[list[int], int]:
        """Return the same as single steps: the joints, the last to be soldered first."""
        taken: list[int] = []
        for group in self._ranked:
            waiting = [joint for joint in group if left >> joint & 1]
            while waiting:
                ready = [joint for joint in waiting if self._reached(joint, left, side)]
                if not ready:
                    return taken, left
                last = max(ready, key=lambda it: (self.room.height[it], -self._heat(it, left), it))
                left &= ~(1 << last)
                waiting.remove(last)
                taken.append(last)
        return taken, left

    def _heat(self, joint: int, left: int) -> int:
        """Return how much more a joint heats those left when it is last than when it is first."""
        others = [other for other in range(len(self.ranks)) if left >> other & 1]
        return int((self.room.heat[joint, others] - self.room.heat[others, joint]).sum())


def _distinct(sets: Sequence[int], side: int) -> tuple[int, ...]:
    """Return the different sets in a side's sector; one empty set says all."""
    found = {sets[(side + step) % DIRECTIONS] for step in range(-ARC, ARC + 1)} - {-1}
    return (0,) if 0 in found else tuple(sorted(found))
