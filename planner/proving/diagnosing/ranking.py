"""How likely an explanation is beside its rivals of the same cost.

How often each kind of fault is met is common practice, no source; it is shared among all faults of
that kind that the lead has room for, bridges by how near the metal is in the dry fit.
"""

import math
from collections import Counter
from collections.abc import Sequence
from functools import cached_property

from planner.proving.diagnosing.board import Board
from planner.proving.diagnosing.mistakes import Mistake
from planner.proving.diagnosing.search import Found
from planner.proving.diagnosing.told import rings_of
from planner.proving.nearness import contact_gaps_mm
from planner.wiring.graph import Wiring

# Of all faults met at the bench: common practice, no source.
_OPEN, _BRIDGE, _EXCHANGE, _MOVED, _LINK = 0.35, 0.3, 0.15, 0.03, 0.05
_MISTAKES = {"mirrored": 0.02, "shifted": 0.005, "channels": 0.02, "ends": 0.02, "polarity": 0.01}
# The gap at which a bridge is half as likely as where the metal nearly touches: no source.
_HALF_MM = 0.5
# Two legs of one channel are taken for each other more often than any two cores: no source.
_SAME_CHANNEL = 1.5


class Ranking:
    """Ranks the explanations of one lead."""

    def __init__(self, board: Board, wiring: Wiring, mistakes: Sequence[Mistake]) -> None:
        self.board, self.wiring = board, wiring
        self.kinds = Counter(mistake.kind for mistake in mistakes)

    def ranked(
        self, found: Sequence[Found], fits: Sequence[float] = ()
    ) -> list[tuple[float, Found]]:
        """Return the explanations with their shares, the likeliest first.

        `fits` say for each how well the resistances fit.
        """
        fits = fits or [1.0] * len(found)
        weights = [self.weight(it) * fit for it, fit in zip(found, fits, strict=True)]
        total = sum(weights) or 1.0
        pairs = [(weight / total, it) for weight, it in zip(weights, found, strict=True)]
        return sorted(pairs, key=lambda pair: (-round(pair[0], 9), _order(pair[1])))

    def weight(self, found: Found) -> float:
        """Return how often a set of faults is met, up to a factor."""
        state = found.state
        weight = math.prod(_MISTAKES[it.kind] / self.kinds[it.kind] for it in found.mistakes)
        for ring in rings_of(found):
            each = _EXCHANGE / self.pairs if ring.closed else _MOVED / self.pairs
            weight *= each**ring.cost * (_SAME_CHANNEL if self._same_channel(ring.places) else 1)
        weight *= (_OPEN / max(len(self.board.wires), 1)) ** len(state.opens)
        weight *= (_LINK / max(len(self.board.links), 1)) ** len(state.cut)
        return weight * math.prod(self.bridge(*pair) for pair in state.bridges)

    @cached_property
    def pairs(self) -> int:
        """How many pairs of conductors there are."""
        count = len(self.board.wires)
        return max(count * (count - 1) // 2, 1)

    def _same_channel(self, places: Sequence[int]) -> bool:
        signals = [self.wiring.signals_at(*self.board.contacts[place]) for place in places]
        channels = {tuple(sorted(signal[:-1] for signal in each)) for each in signals}
        return len(places) == 2 and len(channels) == 1 and all(signals)

    def bridge(self, one: int, other: int) -> float:
        """Return how often a bridge between two contacts of an end is met."""
        return _BRIDGE * self._near[one, other] / self._near_in_all

    def gap_mm(self, one: int, other: int) -> float:
        """Return the gap between two contacts of an end as the dry fit has it, mm."""
        return self._gaps[min(one, other), max(one, other)]

    @cached_property
    def _gaps(self) -> dict[tuple[int, int], float]:
        number = self.board.number
        return {
            (number[end, one], number[end, other]): gap_mm
            for end in self.board.at
            for (one, other), gap_mm in contact_gaps_mm(self.board.plan, self.wiring, end).items()
        }

    @cached_property
    def _near(self) -> dict[tuple[int, int], float]:
        return {pair: 1 / (1 + max(mm, 0.0) / _HALF_MM) for pair, mm in self._gaps.items()}

    @cached_property
    def _near_in_all(self) -> float:
        return sum(self._near.values()) or 1.0


def _order(found: Found) -> tuple[object, ...]:
    state = found.state
    return (
        found.mistakes_key,
        sorted(state.opens),
        sorted(state.cut),
        sorted(state.bridges),
        state.places,
    )
