"""Compare what was read with the plan and say what is most likely wrong."""

from collections.abc import Callable, Collection
from dataclasses import dataclass
from functools import cached_property

from planner.model.plan import Plan
from planner.proving.diagnosing.board import Board, board_of
from planner.proving.diagnosing.coverage import Coverage, coverage
from planner.proving.diagnosing.mistakes import mistakes_of
from planner.proving.diagnosing.observed import Clash, contact_pair, observed
from planner.proving.diagnosing.records import Contradiction, Diagnosis, Explanation, Verdict
from planner.proving.diagnosing.search import Progress, Search, Searched
from planner.proving.diagnosing.state import sound
from planner.proving.diagnosing.wording import Teller
from planner.proving.reading import Pair, Readings
from planner.wiring.graph import Wiring

DEEPEST = 8
MOST_TOLD = 24


def diagnose(
    plan: Plan,
    wiring: Wiring,
    readings: Readings,
    *,
    asked: Collection[Pair] | None = None,
    progress: Progress | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Diagnosis:
    """Say what is wrong with a unit.

    `asked` are the isolation pairs of a stated plan; without it every two nets are to be read.
    `progress` is told the share that is done; CancelledError where `cancelled` comes true.
    """
    board = board_of(plan, wiring)
    seen, clashes = observed(board, readings)
    start = sound(board)
    mistakes = mistakes_of(board, wiring)
    search = Search(seen, start, mistakes, progress=progress, cancelled=cancelled)
    case = _Case(board, Teller(board, wiring), search.run(DEEPEST), clashes)
    wanted = coverage(seen, start, _numbers(board, asked))
    return case.diagnosis(wanted)


def _numbers(board: Board, asked: Collection[Pair] | None) -> frozenset[tuple[int, int]] | None:
    if asked is None:
        return None
    known = [sorted(board.number[it] for it in pair if it in board.number) for pair in asked]
    return frozenset((pair[0], pair[1]) for pair in known if len(pair) == 2)


@dataclass(frozen=True)
class _Case:
    """What was found on one unit, to be told."""

    board: Board
    teller: Teller
    searched: Searched
    clashes: tuple[Clash, ...]

    def diagnosis(self, wanted: Coverage) -> Diagnosis:
        return Diagnosis(
            self.verdict(wanted),
            self.explanations[:MOST_TOLD],
            more=max(len(self.explanations) - MOST_TOLD, 0),
            counted=self.searched.whole,
            proved=bool(self.searched.found),
            contradictions=tuple(map(self.contradiction, self.clashes)),
            unread_continuity=len(wanted.continuity),
            unread_isolation=len(wanted.isolation),
        )

    @cached_property
    def explanations(self) -> tuple[Explanation, ...]:
        return tuple(
            Explanation(found.cost, tuple(self.teller.faults(found)))
            for found in self.searched.found
            if found.cost
        )

    def verdict(self, wanted: Coverage) -> Verdict:
        if self.explanations:
            return "faulty"
        open_yet = wanted.continuity or wanted.isolation or self.clashes
        return "incomplete" if open_yet else "sound"

    def contradiction(self, clash: Clash) -> Contradiction:
        apart = contact_pair(self.board, clash.apart)
        pairs = [contact_pair(self.board, pair) for pair in clash.chain]
        full = self.teller.full
        joined = ", ".join(f"{full(one)} to {full(other)}" for one, other in pairs)
        words = (
            f"These readings can't all be right: {joined} joined, yet {full(apart[0])} to "
            f"{full(apart[1])} open. Read the last again, then the others; till then none counts."
        )
        return Contradiction(apart, (apart, *pairs), words)
