"""Which alike core goes where: against all placings for few, against known good ones for many."""

from itertools import permutations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.dryfit import exchanging
from planner.dryfit.alike import Alike, alike_cores
from planner.dryfit.board import Board, placed
from planner.dryfit.branching import WORST, best_placing
from planner.dryfit.choosing import turns_round
from planner.dryfit.clocking import rank, setting_at
from planner.dryfit.crossings import crossing_pairs
from planner.dryfit.exchanging import flat_end, good_placing, improved, shortest_placing
from planner.dryfit.seats import CAP_MM, GAP_STEP_MM
from planner.dryfit.turning import best_turn
from planner.dryfit.watch import Watch
from planner.edits.turning import apply_turning
from planner.wiring.graph import Wiring, contact_node
from tests.dryfit.moving import moving_gap_mm
from tests.dryfit.plugs import crowded, end_plan, seats_of, stepped
from tests.dryfit.scoring import score_of

FEW = settings(max_examples=8, deadline=None)
SEEDS = st.integers(0, 10_000)
IDLE = Watch()


def all_alike(count):
    return [Alike(tuple(range(count)), everywhere=True)]


def alike_seats(seed, count):
    return seats_of(end_plan(*stepped(seed, count), colour="WH"))


def plain_score(seats, placing, turn_deg):
    """Return the score of a placing from its own leads, counted and measured anew."""
    at = placed(seats, placing)
    crossings = len(crossing_pairs(at.site.leads(turn_deg)))
    gap_mm = min(moving_gap_mm(at.site, turn_deg), CAP_MM)
    return crossings, -round(gap_mm / GAP_STEP_MM), round(at.length_mm(turn_deg), 9)


# -- few cores: every placing ----------------------------------------------------------------------


@FEW
@given(SEEDS, st.permutations(range(5)), st.floats(-180, 180))
def test_board_says_what_a_placing_gives(seed, placing, turn_deg):
    seats = alike_seats(seed, 5)
    board = Board(seats, all_alike(5))
    found = score_of(board, board.table(turn_deg, IDLE), tuple(placing))
    assert found == pytest.approx(plain_score(seats, tuple(placing), turn_deg), abs=1e-8)


def test_branch_and_bound_is_the_best_of_all_placings_at_all_turns():
    wrong, cases = 0, 0
    for seed in range(3):
        seats = alike_seats(seed, 4)
        turns = turns_round(0.0, 24)
        every = [
            plain_score(seats, placing, turn)
            for turn in turns
            for placing in permutations(range(4))
        ]
        board, best = Board(seats, all_alike(4)), WORST
        for turn in turns:
            best = best_placing(board, board.table(turn, IDLE), best, IDLE).score
        cases += 1
        wrong += best != pytest.approx(min(every), abs=1e-8)
    print(f"branch and bound against all placings: {wrong} of {cases} differ")  # noqa: T201 - the proof
    assert wrong == 0


@pytest.mark.parametrize("count", [5, 6, 7])
def test_branch_and_bound_is_the_best_of_all_placings(count):
    wrong = 0
    for seed in range(4):
        seats = alike_seats(seed, count)
        board = Board(seats, all_alike(count))
        table = board.table(37.0 * seed, IDLE)
        found = best_placing(board, table, WORST, IDLE)
        assert found.proved
        every = min(score_of(board, table, placing) for placing in permutations(range(count)))
        wrong += found.score != every or score_of(board, table, found.placing) != every
    print(f"{count} cores: {wrong} of 4 differ")  # noqa: T201 - the proof
    assert wrong == 0


def test_cores_that_stay_count_too():
    seats = alike_seats(5, 6)
    groups = [Alike((0, 3), everywhere=True), Alike((1, 4, 5), everywhere=True)]
    board = Board(seats, groups)
    table = board.table(10.0, IDLE)
    every = []
    for one in permutations((0, 3)):
        for two in permutations((1, 4, 5)):
            placing = [0, 1, 2, 3, 4, 5]
            placing[0], placing[3] = one
            placing[1], placing[4], placing[5] = two
            every.append(plain_score(seats, tuple(placing), 10.0))
    found = best_placing(board, table, WORST, IDLE)
    assert found.score == pytest.approx(min(every), abs=1e-8)
    assert found.placing[2] == 2


def test_choice_is_never_worse_than_any_placing_at_the_turns_tried():
    for seed in range(3):
        plan = end_plan(*stepped(seed, 4), colour="WH")
        found, seats = best_turn(plan, Wiring(plan), "B"), seats_of(plan)
        every = min(
            plain_score(seats, placing, turn)[:2]
            for turn in turns_round(0.0, 24)
            for placing in permutations(range(4))
        )
        assert found.verdict == "proved among candidates"
        assert found.crossings <= every[0]
        assert found.dial.best_gap_mm >= -every[1] * GAP_STEP_MM - 0.02


# -- many cores ------------------------------------------------------------------------------------


def test_search_for_many_is_as_good_as_the_proof_for_few():
    worse = []
    for seed in range(8):
        seats = alike_seats(seed, 7)
        board = Board(seats, all_alike(7))
        end = flat_end(board, 20.0, IDLE)
        _, found = good_placing(end, shortest_placing(end, IDLE), 3, IDLE)
        proved = best_placing(board, board.table(20.0, IDLE), WORST, IDLE).score
        assert found[:2] >= proved[:2]
        worse += [seed] if found[:2] > proved[:2] else []
    print(f"search against proof at 7 cores: {len(worse)} of 8 worse")  # noqa: T201 - the count
    assert len(worse) <= 2


def all_pairs_crossed(end, placing):
    cores = np.arange(len(placing))
    one, other = (it.ravel() for it in np.meshgrid(cores, cores, indexing="ij"))
    return end.cross(one, placing[one], other, placing[other]).sum() // 2


@FEW
@given(SEEDS, st.integers(9, 16))
def test_shortest_placing_never_crosses(seed, count):
    board = Board(alike_seats(seed, count), all_alike(count))
    end = flat_end(board, 0.0, IDLE)
    assert all_pairs_crossed(end, shortest_placing(end, IDLE)) == 0


def test_squared_length_is_caught(monkeypatch):
    right = exchanging.least_cost
    monkeypatch.setattr(exchanging, "least_cost", lambda cost, look: right(cost**2, look))
    crossed = 0
    for seed in range(6):
        end = flat_end(Board(alike_seats(seed, 16), all_alike(16)), 0.0, IDLE)
        crossed += all_pairs_crossed(end, shortest_placing(end, IDLE)) > 0
    assert crossed > 2


@FEW
@given(SEEDS)
def test_score_of_a_move_is_that_of_its_placing(seed):
    """The search counts only what a ring of cores changes."""
    chance = np.random.default_rng(seed)
    end = flat_end(Board(alike_seats(seed, 9), all_alike(9)), 50.0, IDLE)
    placing = chance.permutation(9)
    state = exchanging.State(end, placing)
    for size in (2, 3):
        rings = np.array([chance.choice(9, size, replace=False) for _ in range(6)])
        for ring, score in zip(rings, state.scores(rings), strict=True):
            after = end.score(exchanging._moved(placing, tuple(ring)))
            assert score == pytest.approx(after, abs=1e-8)


def test_search_is_never_worse_than_where_it_starts():
    end = flat_end(Board(alike_seats(3, 14), all_alike(14)), 0.0, IDLE)
    start = np.random.default_rng(3).permutation(14)
    assert improved(end, start, IDLE)[1] <= end.score(start)


def test_many_alike_cores_are_found_and_the_same_every_time():
    plan = end_plan(*crowded(7, 12, lay_mm=2.5), colour="WH")
    one, two = (best_turn(plan, Wiring(plan), "B") for _ in range(2))
    assert one == two
    assert (one.verdict, one.crossings) == ("found", 0)
    assert one.crossings <= one.before_crossings


def rank_of(found):
    return found.crossings, -found.dial.best_gap_mm


# -- which cores are alike -------------------------------------------------------------------------

SQUARE = [(1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0)]
WIDE = [(3 * x, 3 * y) for x, y in SQUARE]


def groups_of(plan, *, free=False):
    seats = seats_of(plan)
    return [
        (it.members, it.everywhere) for it in alike_cores(plan, seats.site, seats.cores, free=free)
    ]


def test_cores_of_one_colour_are_alike():
    assert groups_of(end_plan(SQUARE, WIDE, colour="WH")) == [((0, 1, 2, 3), True)]
    assert groups_of(end_plan(SQUARE, WIDE)) == []


def test_free_cores_of_one_make_are_alike_whatever_their_colour():
    assert groups_of(end_plan(SQUARE, WIDE), free=True) == [((0, 1, 2, 3), True)]


def test_legs_stay_in_their_pair():
    plan = end_plan(SQUARE, WIDE, groups=["1", "1", "2", "2"])
    assert groups_of(plan, free=True) == [((0, 1), True), ((2, 3), True)]


def test_cores_of_another_make_are_not_alike():
    plan = end_plan(SQUARE, WIDE, colour="WH")
    cable = plan.definitions.cables[0]
    thick = tuple(
        core.evolve(insulation_mm=0.9) if core.id == "w2" else core for core in cable.cores
    )
    carried = plan.definitions.evolve(cables=(cable.evolve(cores=thick),))
    assert groups_of(plan.evolve(definitions=carried)) == [((0, 1, 3), True)]


def test_cores_on_linked_contacts_may_change_here():
    plan = end_plan(SQUARE, WIDE, links=[("B", "c0", "c2")])
    assert groups_of(plan) == [((0, 2), False)]
    assert nets_stay(plan, (0, 2))


def test_cores_joined_at_the_other_end_may_change_here():
    plan = end_plan(SQUARE, WIDE, back=(0, 0, 2, 3))
    assert groups_of(plan) == [((0, 1), False)]
    assert nets_stay(plan, (0, 1))


def test_core_that_keeps_a_net_together_stays():
    """At B w1 and w2 share c1, at A w0 and w1 do: exchanged, w0 and w2 would tear the net."""
    plan = end_plan(SQUARE[:3], WIDE[:3], back=(0, 0, 2))
    landings = tuple(
        it.evolve(contact="c1") if (it.end, it.conductor) == ("B", "w2") else it
        for it in plan.landings
    )
    plan = plan.evolve(landings=landings)
    assert not nets_stay(plan, (0, 2))
    assert groups_of(plan) == []


def nets_stay(plan, members):
    """Tell whether every placing of these cores of end B leaves the nets of contacts alone."""
    names = [f"w{core}" for core in members]
    at = {it.conductor: it.contact for it in plan.landings if it.end == "B"}
    for order in permutations(names):
        contact = {one: at[other] for one, other in zip(names, order, strict=True)}
        landings = tuple(
            it.evolve(contact=contact.get(it.conductor, it.contact)) if it.end == "B" else it
            for it in plan.landings
        )
        if nets(plan.evolve(landings=landings)) != nets(plan):
            return False
    return True


def nets(plan):
    """Return the nets of a plan as sets of contacts."""
    wiring = Wiring(plan)
    places = [(end.id, it.id) for end in plan.ends for it in plan.connector_of(end.id).contacts]
    found = {place: wiring.net_of(contact_node(*place)) for place in places}
    return {
        frozenset(other for other in places if found[other] == found[place]) for place in places
    }


@FEW
@given(SEEDS, st.permutations(range(5)), st.booleans())
def test_choice_leaves_the_wiring_as_it_is(seed, back, free):
    exits, cups = crowded(seed, 5)
    plan = end_plan(exits, cups, colour=None if free else "WH", back=back)
    found = best_turn(plan, Wiring(plan), "B", free=free)
    after = apply_turning(plan, turning=found)
    assert nets(after) == nets(plan)
    contacts = {it.conductor: it.contact for it in after.landings if it.end == "B"}
    assert all(contacts[conductor] == contact for conductor, contact in found.swaps)
    assert rank(setting_at(seats_of(after), found.turn_deg))[:2] == rank_of(found)


def test_colours_change_only_where_that_gains_something():
    """At 80 degrees other cores would save turning the plug; to go back to 0 is as good a lead."""
    plan = end_plan(SQUARE, WIDE, turn_deg=80.0)
    found = best_turn(plan, Wiring(plan), "B", free=True)
    assert (found.swaps, found.exchanges) == ((), ())
    assert found.turn_deg == pytest.approx(0.0, abs=0.01)
    crossed = end_plan(SQUARE, [WIDE[2], WIDE[1], WIDE[0], WIDE[3]])
    found = best_turn(crossed, Wiring(crossed), "B", free=True)
    assert found.swaps
    assert found.crossings == 0


def test_reason_is_told_where_no_core_moves():
    lone = end_plan(SQUARE, WIDE)
    assert "alike" in best_turn(lone, Wiring(lone), "B").reason
    alike = end_plan(SQUARE, WIDE, colour="WH")
    assert "better" in best_turn(alike, Wiring(alike), "B").reason
