"""Which of the alike cores goes to which contact, together with the best turn of the plug."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from planner.dryfit.alike import Alike
from planner.dryfit.board import Board, Placing, placed
from planner.dryfit.branching import WORST, Score, best_placing
from planner.dryfit.clocking import Setting, as_good, best_setting, rank
from planner.dryfit.exchanging import flat_end, good_placing, shortest_placing
from planner.dryfit.group_search import group_placings, turns_for
from planner.dryfit.grouping import Peers, as_peers, lone_peers
from planner.dryfit.seats import Seats
from planner.dryfit.watch import Watch
from planner.geometry.views import half_turn_deg

Verdict = Literal["proved", "proved among candidates", "found"]

TURNS = 72
# With up to so many arcs (8 cores to 8 places) every placing is looked at or ruled out.
MOST_ARCS = 64
FINALISTS = 3
# At how many turns a placing is looked for, at how many of them with care, from how many starts:
# up to so many cores.
EFFORTS = ((40, TURNS, 4, 10), (64, TURNS // 3, 4, 2), (math.inf, TURNS // 9, 2, 1))


@dataclass(frozen=True, eq=False)
class Choice:
    """A placing of the cores with its best turn."""

    placing: Placing
    seats: Seats
    setting: Setting
    verdict: Verdict


def choose(
    seats: Seats,
    groups: Sequence[Alike],
    present_deg: float,
    watch: Watch,
    *,
    peers: Sequence[Peers] = (),
    keep: bool = False,
) -> Choice:
    """Return the best placing of the cores with the best turn of the plug.

    Units of the `peers` change places as a whole. Where no cores are alike this is the best turn.
    Otherwise placings are ranked at turns all round, and the best few, and the present one, are
    each turned to their best. Of equal ones it is the one nearest to the present turn; with `keep`,
    first of all the one that moves no core.
    """
    part = watch.part(0.0, 0.6)
    if peers:
        placings, verdict = _by_groups(seats, groups, peers, present_deg, part)
    else:
        placings, verdict = candidates(seats, groups, present_deg, part)
    stay = tuple(range(len(seats.cores)))
    wanted = [stay, *(placing for placing in placings if placing != stay)]
    found = []
    for done, placing in enumerate(wanted):
        share = 0.6 + 0.4 * done / len(wanted), 0.6 + 0.4 * (done + 1) / len(wanted)
        found.append(_turned(seats, placing, present_deg, watch.part(*share)))
    best = min(found, key=lambda it: rank(it[2]))
    equal = [it for it in found if as_good(it[2], best[2])]
    stays = [it for it in equal if it[0] == stay] if keep else []
    placing, at, setting = min(stays or equal, key=lambda it: _nearness(it[0], it[2], present_deg))
    if verdict != "found" and not setting.proved:
        verdict = "found"
    return Choice(placing, at, setting, verdict)


def _turned(
    seats: Seats, placing: Placing, present_deg: float, watch: Watch
) -> tuple[Placing, Seats, Setting]:
    stays = placing == tuple(range(len(placing)))
    at = seats if stays else placed(seats, placing)
    sweep = at.sweep(watch.part(0.0, 0.1))
    return placing, at, best_setting(at, sweep, present_deg, watch.part(0.1, 1.0))


def _nearness(placing: Placing, setting: Setting, present_deg: float) -> tuple[float, int, Placing]:
    away = abs(half_turn_deg(setting.turn_deg - present_deg))
    moved = sum(core != place for core, place in enumerate(placing))
    return round(away, 1), moved, placing


def candidates(
    seats: Seats, groups: Sequence[Alike], present_deg: float, watch: Watch
) -> tuple[list[Placing], Verdict]:
    """Return the placings worth turning to their best, the best last, and what is known of them."""
    if not groups:
        return [], "proved"
    arcs = sum(len(group.members) ** 2 for group in groups)
    if arcs <= MOST_ARCS:
        return _by_branching(seats, groups, present_deg, watch)
    return _by_exchanging(seats, groups, present_deg, watch), "found"


def turns_round(present_deg: float, count: int = TURNS) -> list[float]:
    """Return turns all round, the nearest to the present one first."""
    steps = sorted(range(-(count // 2), count - count // 2), key=lambda step: (abs(step), step))
    return [present_deg + step * 360.0 / count for step in steps]


def _by_groups(
    seats: Seats,
    groups: Sequence[Alike],
    peers: Sequence[Peers],
    present_deg: float,
    watch: Watch,
) -> tuple[list[Placing], Verdict]:
    """Return the placings of whole groups worth turning, alike cores outside them placed too."""
    movable = (*peers, *map(as_peers, lone_peers(groups, peers)))
    turns = turns_round(present_deg, turns_for(len(seats.cores)))
    found, every = group_placings(seats, movable, turns, watch)
    return found[-FINALISTS:], "proved among candidates" if every else "found"


def _by_branching(
    seats: Seats, groups: Sequence[Alike], present_deg: float, watch: Watch
) -> tuple[list[Placing], Verdict]:
    board = Board(seats, groups)
    best: Score = WORST
    found: list[Placing] = []
    verdict: Verdict = "proved among candidates"
    turns = turns_round(present_deg)
    for done, turn_deg in enumerate(turns):
        part = watch.part(done / len(turns), (done + 1) / len(turns))
        part(0.0)
        better = best_placing(board, board.table(turn_deg, part), best, part)
        if not better.proved:
            verdict = "found"
        if better.placing is not None:
            best = better.score
            found = [placing for placing in found if placing != better.placing]
            found.append(better.placing)
    return found[-FINALISTS:], verdict


def _by_exchanging(
    seats: Seats, groups: Sequence[Alike], present_deg: float, watch: Watch
) -> list[Placing]:
    board = Board(seats, groups)
    _, count, careful, again = next(it for it in EFFORTS if len(board.movable) <= it[0])
    turns = turns_round(present_deg, count)
    starts = []
    for done, turn_deg in enumerate(turns):
        part = watch.part(0.5 * done / len(turns), 0.5 * (done + 1) / len(turns))
        part(0.0)
        end = flat_end(board, turn_deg, part)
        shortest = shortest_placing(end, part)
        starts.append((end.score(shortest), done, shortest))
    starts.sort(key=lambda it: it[:2])
    goods = []
    for done, (_, number, shortest) in enumerate(starts[:careful]):
        part = watch.part(0.5 + 0.5 * done / careful, 0.5 + 0.5 * (done + 1) / careful)
        end = flat_end(board, turns[number], part)
        placing, score = good_placing(end, shortest, again, part)
        goods.append((score, done, placing))
    goods.sort(reverse=True)
    ordered = list(dict.fromkeys(placing for _, _, placing in goods))
    return ordered[-FINALISTS:]
