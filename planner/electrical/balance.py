"""How well the channels of a lead match: the resistance of their loops compared."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from planner.electrical.loops import Loop, loops
from planner.model.plan import Plan
from planner.wiring.graph import Wiring


@dataclass(frozen=True, slots=True)
class Balance:
    """The loops of most and least resistance among channels of one kind.

    `percent`: how much the larger is above the smaller. `level_db`: how much softer the channel of
    the larger is, from equal sources of no resistance into the assumed load. `over`: whether
    `percent` is above the plan's limit.
    """

    kind: str
    low: Loop
    high: Loop
    low_ohm: float
    high_ohm: float
    percent: float
    level_db: float
    over: bool


def level_db(low_ohm: float, high_ohm: float, load_ohm: float) -> float:
    """Return how many dB less reaches the load through the larger resistance (a divider)."""
    return 20 * math.log10((load_ohm + high_ohm) / (load_ohm + low_ohm))


def balances(plan: Plan, wiring: Wiring) -> tuple[Balance, ...]:
    """Compare the channels of each kind, where two or more are known.

    Channels that one load takes together are compared there; loads of one channel each, such as
    the two cups of a headphone, are compared with one another.
    """
    return tuple(_balances(plan, loops(plan, wiring)))


def _balances(plan: Plan, found: tuple[Loop, ...]) -> Iterator[Balance]:
    taken: dict[tuple[str, str], set[str]] = {}
    for loop in found:
        taken.setdefault((loop.kind, loop.load), set()).add(loop.channel)
    groups: dict[tuple[str, str], list[tuple[float, str, str, Loop]]] = {}
    for loop in found:
        if loop.ohm:
            together = loop.load if len(taken[loop.kind, loop.load]) > 1 else ""
            row = (loop.ohm, loop.channel, loop.load, loop)
            groups.setdefault((loop.kind, together), []).append(row)
    for (kind, _), rows in sorted(groups.items()):
        if len({channel for _, channel, _, _ in rows}) > 1:
            low, *_, high = sorted(rows, key=lambda row: row[:3])
            yield _compared(plan, kind, (low[0], low[3]), (high[0], high[3]))


def _compared(plan: Plan, kind: str, low: tuple[float, Loop], high: tuple[float, Loop]) -> Balance:
    percent = 100 * (high[0] / low[0] - 1)
    softer_db = level_db(low[0], high[0], plan.assumed.load_ohm)
    # Sums of the same figures in another order differ in their last bits: that is no imbalance.
    over = percent > plan.assumed.balance_limit_percent + 1e-9
    return Balance(kind, low[1], high[1], low[0], high[0], percent, softer_db, over)
