"""The fewest turns of the plug in the vice while all its joints are soldered.

Clamped, a plug can be reached from a sector of 60 degrees to either side of where the hand is.
Joints only get in each other's way, so what can be soldered last from a side still can when others
are gone: all that can be taken off from one side goes at once, and only the sides are searched.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from planner.dryfit.iron import DIRECTIONS, Cents, Room

if TYPE_CHECKING:
    from planner.dryfit.scene import Flags

# How far a hand turns the iron aside: common practice, no source.
SECTOR_DEG = 60.0
ARC = int(SECTOR_DEG * DIRECTIONS / 360)
# The directions within the sector of each side.
SECTORS = [
    [(side + step) % DIRECTIONS for step in range(-ARC, ARC + 1)] for side in range(DIRECTIONS)
]
# So many joints in different remainders are looked at in one level; with more the search keeps the
# smallest remainders and proves nothing.
JOINTS_LOOKED_AT = 1000


@dataclass(frozen=True, slots=True)
class Clampings:
    """Joints in the order of soldering, a group for each clamping; fewer ruled out if `proved`."""

    groups: tuple[tuple[int, ...], ...]
    proved: bool


def fewest_clampings(room: Room, needs: Cents, ranks: Sequence[int]) -> Clampings:
    """Return an order in the fewest clampings in which each joint has the room that it needs.

    `needs` in hundredths of a mm; ranks as in `best_order`. Raises ValueError if no order gives
    each joint what it needs.
    """
    bench = _Bench(room, needs, ranks)
    chain, proved = _shortest_chain(bench)
    groups = [_group(bench, left, rest) for left, rest in pairwise(chain)]
    return Clampings(tuple(reversed(groups)), proved)


def _shortest_chain(bench: "_Bench") -> tuple[tuple[int, ...], bool]:
    """Return what is left before and after each clamping, the last one first, and if it is proved.

    Level by level, and by sets of joints: so which of equal ways is taken does not hang on how the
    plug is turned.
    """
    if bench.free_side is not None:
        return (bench.all, 0), True
    level: dict[int, tuple[int, ...]] = {bench.all: (bench.all,)}
    proved, cut = True, False
    width = max(JOINTS_LOOKED_AT // bench.count, 1)
    while True:
        below: dict[int, tuple[int, ...]] = {}
        for left, chain in level.items():
            for rest in {bench.rest(left, side) for side in range(DIRECTIONS)} - {left}:
                below.setdefault(rest, (*chain, rest))
        if 0 in below:
            return below[0], proved
        if not below:
            raise ValueError("no order gives each joint the room that it needs")
        least = _smallest(below)
        # What is left out of one level could not have ended on the next one any sooner.
        proved = not cut
        cut = cut or len(least) > width
        level = {rest: below[rest] for rest in least[:width]}


def _group(bench: "_Bench", left: int, rest: int) -> tuple[int, ...]:
    """Return in which order the joints of one clamping are soldered, the deepest first if it can.

    From each side that serves them; of different orders the one that holds most to that rule.
    """
    sides = [bench.free_side] if rest == 0 and bench.free_side is not None else range(DIRECTIONS)
    orders = {
        tuple(bench.taken_off(left, side)) for side in sides if bench.rest(left, side) == rest
    }
    return max(orders, key=lambda order: [(bench.height[joint], joint) for joint in order])[::-1]


def _smallest(sets: Iterable[int]) -> list[int]:
    """Return the sets that contain no other, the ones with fewest joints first."""
    kept: list[int] = []
    for one in sorted(sets, key=lambda it: (it.bit_count(), it)):
        if not any(other & one == other for other in kept):
            kept.append(one)
    return kept


class _Bench:
    """Sets of joints as bits of whole numbers, and what is in the way of each from each side."""

    def __init__(self, room: Room, needs: Cents, ranks: Sequence[int]) -> None:
        self.count = len(ranks)
        self.all = (1 << self.count) - 1
        self.height = room.height
        self._heat = room.heat
        self._barred: Flags = room.by < needs[:, None, None]
        self._open: Flags = room.made >= needs[:, None]
        clear = np.asarray(self._open) & ~np.asarray(self._barred.any(axis=2))
        self._free: Flags = np.asarray(in_sector(clear).any(axis=2))
        # Joints by rank, the highest first: those have to go before others are looked at.
        self._ranked = [
            [joint for joint, its in enumerate(ranks) if its == rank]
            for rank in sorted(set(ranks), reverse=True)
        ]
        self._sets: dict[int, list[set[int]]] = {}

    @property
    def free_side(self) -> int | None:
        """A side from which every joint is reached in any order, if there is one."""
        sides = np.flatnonzero(self._free.all(axis=0))
        return int(sides[0]) if len(sides) else None

    def _reached(self, joint: int, left: int, side: int) -> bool:
        if self._free[joint, side]:
            return True
        if joint not in self._sets:
            self._sets[joint] = self._blockers(joint)
        return any(not blockers & left for blockers in self._sets[joint][side])

    def _blockers(self, joint: int) -> list[set[int]]:
        """Return for each side the sets of joints that bar its directions.

        A direction that a terminal bars is left out.
        """
        packed = np.packbits(self._barred[joint], axis=1, bitorder="little")
        sets = [int.from_bytes(row.tobytes(), "little") for row in packed]
        is_open = self._open[joint].tolist()
        return [{sets[it] for it in sector if is_open[it]} for sector in SECTORS]

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

    def taken_off(self, left: int, side: int) -> list[int]:
        """Return what can be last from a side in single steps, the last to be soldered first."""
        # How much more a joint heats those left when it is last than when it is first.
        more = self._heat - self._heat.T
        net = more[:, [joint for joint in range(self.count) if left >> joint & 1]].sum(axis=1)
        taken: list[int] = []
        for group in self._ranked:
            waiting = [joint for joint in group if left >> joint & 1]
            while waiting:
                ready = [joint for joint in waiting if self._reached(joint, left, side)]
                if not ready:
                    return taken
                last = max(ready, key=lambda it: (self.height[it], -net[it], it))
                left &= ~(1 << last)
                net = net - more[:, last]
                waiting.remove(last)
                taken.append(last)
        return taken


def in_sector(rows: NDArray[Any]) -> NDArray[Any]:
    """Return rows of directions as (row, side, direction within the side's sector)."""
    return np.asarray(rows[:, SECTORS])
