"""The best turn of a plug whose netlist is fixed: fewest crossings, widest gap, shortest leads."""

import heapq
import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from planner.dryfit.seats import CAP_MM, GAP_STEP_MM, Seats
from planner.dryfit.watch import Watch
from planner.geometry.turning import Index, Sweep
from planner.geometry.views import half_turn_deg

# How far the search may leave the gap below the best there is; with a step kept for the present
# turn and half a step of rounding the shortfall is 0.02 mm at most.
SEARCH_MM = 0.005
COARSE_DEG = 5.0
FINE_DEG = 0.1
LEAST_STEP_DEG = 0.001
# A window is searched up to so near its ends, where leads touch.
INSET_DEG = 1e-4
# Leads of one end that differ by less in all are as short: then the plug is turned less.
SAME_LENGTH_MM = 0.01
MOST_PROBES = 3000

Span = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Setting:
    """A turn of the plug with what it gives; `proved` where no better one is left out."""

    turn_deg: float
    crossings: int
    gap_mm: float
    length_mm: float
    proved: bool = True


def setting_at(seats: Seats, turn_deg: float, *, proved: bool = True) -> Setting:
    """Return what a turn gives."""
    gap_mm = round(seats.gap_steps(turn_deg) * GAP_STEP_MM, 2)
    return Setting(turn_deg, seats.crossings(turn_deg), gap_mm, seats.length_mm(turn_deg), proved)


def best_setting(seats: Seats, sweep: Sweep, present_deg: float, watch: Watch) -> Setting:
    """Return the best turn of the plug; the present one where none is better by what counts."""
    spans = fewest_spans(sweep, present_deg)
    gaps = _WidestGap(seats, spans, present_deg)
    proved = gaps.search(watch.part(0.0, 0.6))
    turn_deg = _Shortest(seats, spans, present_deg).search(watch.part(0.6, 1.0))
    found = setting_at(seats, round(half_turn_deg(turn_deg), 4), proved=proved)
    present = setting_at(seats, present_deg, proved=proved)
    return present if as_good(present, found) else found


def rank(setting: Setting) -> tuple[int, float, float]:
    """Return what settings are compared by, the least first."""
    return setting.crossings, -setting.gap_mm, round(setting.length_mm, 9)


def as_good(present: Setting, found: Setting) -> bool:
    """Tell whether the present setting is as good as the one found, to what a builder can set.

    That is a gap less by one step of 0.01 mm at most, and leads as short to 0.01 mm in all.
    """
    if present.crossings != found.crossings:
        return present.crossings < found.crossings
    steps = round((present.gap_mm - found.gap_mm) / GAP_STEP_MM)
    shorter = present.length_mm <= found.length_mm + SAME_LENGTH_MM
    return steps > 0 or (steps >= -1 and shorter)


def fewest_spans(sweep: Sweep, present_deg: float) -> list[Span]:
    """Return the spans of turn with the fewest crossings, degrees, within a turn from -180 on.

    The angles are from the present turn, so that what is found does not hang on where 0 is.
    """
    fewest = sweep.counts == sweep.counts.min()
    spans = []
    pairs = zip(np.degrees(sweep.starts[fewest]), np.degrees(sweep.ends[fewest]), strict=True)
    for start, end in pairs:
        if end - start >= 360:
            return [(present_deg - 180, present_deg + 180)]
        inset = min(INSET_DEG, (end - start) / 4)
        begin = present_deg + half_turn_deg(float(start) - present_deg)
        spans.append((begin + inset, begin + float(end - start) - inset))
    return sorted(spans)


def _marks(span: Span, present_deg: float, step_deg: float) -> list[float]:
    """Return the turns of a span that lie a whole number of steps from the present turn."""
    first = math.ceil((span[0] - present_deg) / step_deg)
    last = math.floor((span[1] - present_deg) / step_deg)
    return [present_deg + step * step_deg for step in range(first, last + 1)]


class _WidestGap:
    """Search the spans for the widest gap.

    Halve the stretch of turn that could still hold the widest gap, known how fast the gap of each
    piece of a lead can change, until none could hold one wider by more than `SEARCH_MM` (after
    Piyavskii, USSR Comput. Math. Math. Phys. 12 (1972) 57-67; Shubert, SIAM J. Numer. Anal. 9
    (1972) 379-388).
    """

    def __init__(self, seats: Seats, spans: Sequence[Span], present_deg: float) -> None:
        self.seats = seats
        self.starts = [sorted({*span, *_marks(span, present_deg, COARSE_DEG)}) for span in spans]
        self.best_mm = -math.inf
        # Less the widest gap there can be, begin, end.
        self.stretches: list[tuple[float, float, float]] = []

    def search(self, watch: Watch) -> bool:
        """Probe gaps until the widest is known; return False if that took too many probes."""
        total = sum(len(turns) for turns in self.starts)
        done = 0
        for turns in self.starts:
            for turn_deg in turns:
                watch(done / (2 * total))
                self.best_mm = max(self.best_mm, self.seats.gap_mm(turn_deg))
                done += 1
            self._keep(turns)
        for probe in range(MOST_PROBES):
            if self._is_settled():
                return True
            watch(0.5 + probe / (2 * MOST_PROBES))
            _, begin, end = heapq.heappop(self.stretches)
            middle = (begin + end) / 2
            self.best_mm = max(self.best_mm, self.seats.gap_mm(middle))
            self._keep([begin, middle, end])
        return False

    def _is_settled(self) -> bool:
        if not self.stretches or self.best_mm >= CAP_MM:
            return True
        return -self.stretches[0][0] <= self.best_mm + SEARCH_MM

    def _keep(self, turns: Sequence[float]) -> None:
        for begin, end in pairwise(turns):
            both = self.seats.pieces_mm(begin) + self.seats.pieces_mm(end)
            most_mm = (both + self.seats.speeds * (end - begin)) / 2
            heapq.heappush(self.stretches, (-float(most_mm.min(initial=CAP_MM)), begin, end))


class _Shortest:
    """Search the turns that have the widest gap for the shortest leads."""

    def __init__(self, seats: Seats, spans: Sequence[Span], present_deg: float) -> None:
        self.seats, self.spans, self.present_deg = seats, spans, present_deg
        self.wanted = self._widest()
        marks = {(begin + end) / 2 for begin, end in spans}
        for span in spans:
            marks.update(_marks(span, present_deg, FINE_DEG))
        marks.update(turn for turn in seats.probed if self._has_gap(turn) and self._inside(turn))
        self.turns = np.array(sorted(marks))
        self.lengths_mm = seats.lengths_mm(self.turns)
        self.open = np.ones(len(self.turns), dtype=bool)

    def _widest(self) -> int:
        inside = [turn for turn in self.seats.probed if self._inside(turn)]
        return max(self.seats.gap_steps(turn) for turn in inside)

    def search(self, watch: Watch) -> float:
        """Return the turn with the shortest leads; of equal ones, the nearest to the present."""
        every = np.arange(len(self.turns))
        shortest = self._first(every, watch)
        near = self.lengths_mm <= self.lengths_mm[shortest] + SAME_LENGTH_MM
        places = np.flatnonzero(near)
        breaks = np.flatnonzero(np.diff(self.turns[places]) > 1.5 * FINE_DEG) + 1
        found = [shortest]
        for valley in np.split(places, breaks):
            if shortest not in valley:
                found += [place for place in [self._first(valley, watch)] if place >= 0]
        away = [abs(self.turns[place] - self.present_deg) for place in found]
        return self._refined(float(self.turns[found[int(np.argmin(away))]]))

    def _first(self, places: Index, watch: Watch) -> int:
        """Return the place of the shortest turn that has the gap, or -1."""
        away = np.abs(self.turns[places] - self.present_deg).round(6)
        order = np.lexsort((away, self.lengths_mm[places].round(9)))
        for done, place in enumerate(places[order]):
            if not self.open[place]:
                continue
            watch(done / len(places))
            turn = float(self.turns[place])
            if self._has_gap(turn):
                return int(place)
            self._close_round(turn)
        return -1

    def _close_round(self, turn: float) -> None:
        """Leave out the turns to which the gap cannot have grown enough from here."""
        lack_mm = (self.wanted - 0.5) * GAP_STEP_MM - self.seats.pieces_mm(turn)
        speeds = self.seats.speeds
        reach = np.divide(lack_mm, speeds, out=np.full(len(speeds), np.inf), where=speeds > 0)
        reach[lack_mm <= 0] = 0.0
        self.open &= np.abs(self.turns - turn) >= reach.max(initial=0.0)
        self.open[self.turns == turn] = False

    def _refined(self, turn: float) -> float:
        step = FINE_DEG / 2
        while step >= LEAST_STEP_DEG:
            for other in (turn - step, turn + step):
                shorter = self.seats.length_mm(other) < self.seats.length_mm(turn) - 1e-9
                if shorter and self._inside(other) and self._has_gap(other):
                    turn = other
            step /= 2
        return turn

    def _inside(self, turn: float) -> bool:
        return any(begin <= turn <= end for begin, end in self.spans)

    def _has_gap(self, turn: float) -> bool:
        return self.seats.gap_steps(turn) >= self.wanted
