"""Compare what was read with the plan and say what is most likely wrong."""

from collections.abc import Callable, Collection
from dataclasses import dataclass
from functools import cached_property

from planner.electrical.network import network_of
from planner.model.plan import Plan
from planner.proving.diagnosing.board import Board, board_of
from planner.proving.diagnosing.coverage import Coverage, coverage
from planner.proving.diagnosing.high_joints import high_joints, judged, load_remark, meter_remark
from planner.proving.diagnosing.mending import Wrong, wrong_pairs
from planner.proving.diagnosing.mistakes import mistakes_of
from planner.proving.diagnosing.next_reading import Advice, look_for
from planner.proving.diagnosing.observed import Clash, Observed, Two, contact_pair, observed
from planner.proving.diagnosing.ranking import Ranking
from planner.proving.diagnosing.records import (
    Contradiction,
    Diagnosis,
    Explanation,
    NextProbe,
    Verdict,
)
from planner.proving.diagnosing.repairing import least_cost, repaired
from planner.proving.diagnosing.resistances import Resistances
from planner.proving.diagnosing.search import Found, Progress, Search, Searched
from planner.proving.diagnosing.state import sound
from planner.proving.diagnosing.unseen import unseen
from planner.proving.diagnosing.wording import Teller
from planner.proving.expected import expected_sweep
from planner.proving.reading import Pair, Readings
from planner.wiring.graph import Wiring

DEEPEST = 8
MOST_TOLD = 24
_NOTHING_JOINED = (
    "Nothing at all reads joined: hold the probes together, and see that it is this plan's lead."
)
_UNEXPLAINED = (
    "No faults that the tool knows explain these readings: see that it is this plan's lead, then "
    "read again what is not as planned."
)
_UNDER_ZERO = (
    "A figure is far below the meter's zero, so that zero can't be right: hold the probes "
    "together, set the zero anew, and read again."
)


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
    mistakes = mistakes_of(board, wiring)
    search = Search(seen, sound(board), mistakes, progress=progress, cancelled=cancelled)
    searched = explained(search)
    ranking = Ranking(board, wiring, mistakes)
    case = _Case(wiring, readings, seen, clashes, searched, ranking)
    return case.diagnosis(coverage(seen, search.start, _numbers(board, asked)))


def explained(search: Search) -> Searched:
    """Return the smallest explanations, or where that is too long what mending step by step gave.

    Then `least` is what is proved to be the least cost.
    """
    searched = search.run(DEEPEST)
    if searched.found:
        return searched
    least = max(searched.least, least_cost(search.seen, search.bases(2)))
    return Searched(repaired(search), least, whole=False)


def _numbers(board: Board, asked: Collection[Pair] | None) -> frozenset[Two] | None:
    if asked is None:
        return None
    known = [sorted(board.number[it] for it in pair if it in board.number) for pair in asked]
    return frozenset((pair[0], pair[1]) for pair in known if len(pair) == 2)


@dataclass(frozen=True)
class _Case:
    """What was found on one unit, to be told."""

    wiring: Wiring
    readings: Readings
    seen: Observed
    clashes: tuple[Clash, ...]
    searched: Searched
    ranking: Ranking

    @cached_property
    def board(self) -> Board:
        return self.seen.board

    @cached_property
    def teller(self) -> Teller:
        return Teller(self.board, self.wiring)

    def diagnosis(self, wanted: Coverage) -> Diagnosis:
        sweep = expected_sweep(self.board.plan, self.wiring)
        figures = judged(self.readings, sweep)
        high = high_joints(self.teller, figures)
        probe = self.next_probe(wanted)
        alike = probe is None or not self.told
        remarks = (
            meter_remark(figures),
            load_remark(self.readings, sweep, self.teller.full),
            _UNDER_ZERO if self._under_zero else "",
            _NOTHING_JOINED if self._nothing_joined else "",
            "" if self.searched.found else _UNEXPLAINED,
        )
        return Diagnosis(
            "faulty" if high or self._wrong else self._verdict(wanted),
            self.told,
            more=len(self.rivals) - len(self.told),
            counted=self.searched.whole,
            proved=self._is_proved,
            high_joints=high,
            contradictions=tuple(map(self._contradiction, self.clashes)),
            next_probe=probe,
            look=look_for(self.told, alike=alike),
            unseen=unseen(self.board.plan, self.wiring, sweep, self.told),
            remarks=tuple(text for text in remarks if text),
            unread_continuity=len(wanted.continuity),
            unread_isolation=len(wanted.isolation),
        )

    @cached_property
    def rivals(self) -> list[tuple[float, Found]]:
        found = [it for it in self.searched.found if it.cost]
        return self.ranking.ranked(found, self.resistances.weights(found))

    @cached_property
    def resistances(self) -> Resistances:
        return Resistances(network_of(self.board.plan, self.wiring), self.readings)

    @cached_property
    def told(self) -> tuple[Explanation, ...]:
        return tuple(
            Explanation(found.cost, tuple(self.teller.faults(found)), likelihood)
            for likelihood, found in self.rivals[:MOST_TOLD]
        )

    def next_probe(self, wanted: Coverage) -> NextProbe | None:
        advice = Advice(self.teller, self.seen)
        if self.clashes:
            return advice.again(self.clashes[0])
        if self.told:
            by_ohm = self.resistances.splitting([found for _, found in self.rivals])
            return advice.telling(self.rivals, self.told) or advice.by_ohm(by_ohm, self.told)
        if self._wrong:
            return advice.wrong(self._wrong.first)
        return advice.unread(wanted)

    @cached_property
    def _wrong(self) -> Wrong | None:
        """The readings that are not as planned."""
        return wrong_pairs(self.seen, sound(self.board))

    @property
    def _is_proved(self) -> bool:
        found = self.searched.found
        return bool(found) and all(it.cost == self.searched.least for it in found)

    def _verdict(self, wanted: Coverage) -> Verdict:
        unread = wanted.continuity or wanted.isolation
        return "incomplete" if unread or self.clashes or self._under_zero else "sound"

    @property
    def _under_zero(self) -> bool:
        return any(map(self.readings.under_zero, self.readings.by_pair.values()))

    @property
    def _nothing_joined(self) -> bool:
        return len(self.seen.apart) > 2 and not self.seen.joined and self._wrong is not None

    def _contradiction(self, clash: Clash) -> Contradiction:
        apart = contact_pair(self.board, clash.apart)
        pairs = [contact_pair(self.board, pair) for pair in clash.chain]
        full = self.teller.full
        joined = ", ".join(f"{full(one)} to {full(other)}" for one, other in pairs)
        words = (
            f"These readings can't all be right: {joined} joined, yet {full(apart[0])} to "
            f"{full(apart[1])} open. Read the last again, then the others; till then none counts."
        )
        return Contradiction(apart, (apart, *pairs), words)
