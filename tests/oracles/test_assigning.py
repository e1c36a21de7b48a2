"""Placing of many alike cores against a constraint solver (CP-SAT of OR-Tools)."""

import math

import numpy as np
import pytest

from planner.dryfit.alike import Alike
from planner.dryfit.board import Board
from planner.dryfit.choosing import EFFORTS
from planner.dryfit.exchanging import flat_end, good_placing, shortest_placing
from planner.dryfit.watch import Watch
from tests.dryfit.plugs import end_plan, seats_of, stepped

IDLE = Watch()
NEAREST = 12
# Deterministic units of work of the solver, about a second each; one worker, so runs agree.
LIMIT = 15.0
# As many as the search takes for up to 40 cores.
STARTS = EFFORTS[0][3]
LENGTHS_PER_MM = 10_000


def candidates(end, shortest):
    """Return arcs worth trying: each core to its nearest places, and the shortest placing's own."""
    away = np.linalg.norm(end.exits[:, None] - end.places[None], axis=2)
    near = np.argsort(away, axis=1, kind="stable")[:, :NEAREST]
    arcs = {(core, int(place)) for core, places in enumerate(near) for place in places}
    return sorted(arcs | set(enumerate(shortest.tolist())))


def model_of(cp_model, end, arcs):
    """Return a model with a yes or no for each arc, none of which cross."""
    model = cp_model.CpModel()
    takes = [model.new_bool_var(f"{core} to {place}") for core, place in arcs]
    for side in (0, 1):
        for one in range(len(end.exits)):
            model.add_exactly_one(
                take for take, arc in zip(takes, arcs, strict=True) if arc[side] == one
            )
    core, place = np.array(arcs).T
    first, second = np.triu_indices(len(arcs), 1)
    crossed = end.cross(core[first], place[first], core[second], place[second])
    for one, other in zip(first[crossed], second[crossed], strict=True):
        model.add_at_most_one(takes[one], takes[other])
    return model, takes


def solved(cp_model, model):
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    solver.parameters.max_deterministic_time = LIMIT
    status = solver.solve(model)
    return solver, status


def oracle(cp_model, end, shortest):
    """Return the widest gap in steps without a crossing, then the shortest length with it, mm.

    The last tells whether both are proved among the candidates.
    """
    arcs = candidates(end, shortest)
    model, takes = model_of(cp_model, end, arcs)
    gap = model.new_int_var(-1000, end.rest_steps, "gap")
    for one in range(len(end.exits)):
        mine = [at for at, (core, _) in enumerate(arcs) if core == one]
        model.add(gap <= sum(int(end.steps[arcs[at]]) * takes[at] for at in mine))
    model.maximize(gap)
    for take, (core, place) in zip(takes, arcs, strict=True):
        model.add_hint(take, shortest[core] == place)
    solver, status = solved(cp_model, model)
    if status not in {cp_model.OPTIMAL, cp_model.FEASIBLE}:
        return None
    widest, proved = int(solver.value(gap)), status == cp_model.OPTIMAL
    placing = np.empty(len(end.exits), dtype=np.intp)
    for take, (core, place) in zip(takes, arcs, strict=True):
        if solver.value(take):
            placing[core] = place
    model.add(gap >= widest)
    away = [math.dist(end.exits[core], end.places[place]) for core, place in arcs]
    model.minimize(
        sum(round(mm * LENGTHS_PER_MM) * take for mm, take in zip(away, takes, strict=True))
    )
    model.clear_hints()
    for take, (core, place) in zip(takes, arcs, strict=True):
        model.add_hint(take, placing[core] == place)
    solver, status = solved(cp_model, model)
    return widest, solver.objective_value / LENGTHS_PER_MM, proved and status == cp_model.OPTIMAL


@pytest.mark.parametrize("count", [12, 16, 25, 37])
def test_search_against_the_solver(count):
    cp_model = pytest.importorskip("ortools.sat.python.cp_model")
    said, proofs = {"worse": 0, "as good": 0, "better": 0}, 0
    crossed, longer, shortfall = 0, 0.0, 0
    for seed in range(6):
        seats = seats_of(end_plan(*stepped(seed, count), colour="WH"))
        board = Board(seats, [Alike(tuple(range(count)), everywhere=True)])
        end = flat_end(board, 15.0 * seed, IDLE)
        shortest = shortest_placing(end, IDLE)
        _, found = good_placing(end, shortest, STARTS, IDLE)
        crossed += found[0] > 0
        widest, length_mm, proved = oracle(cp_model, end, shortest)
        proofs += proved
        shortfall = max(shortfall, int(widest + found[1]))
        if -found[1] == widest:
            longer = max(longer, found[2] / length_mm - 1)
        verdict = "worse" if -found[1] < widest else "better" if -found[1] > widest else "as good"
        said[verdict] += 1
    print(  # noqa: T201 - the counts are the result
        f"{count} cores: gap of the search {said} of the solver's ({proofs} of 6 proved), at most "
        f"{shortfall / 100:.2f} mm less, {longer:.1%} longer where as good; {crossed} crossed"
    )
    assert crossed == 0
