"""Gaps against every pair of bodies, their properties, and mistakes that these must show."""

import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.dryfit import scene as scenes
from planner.dryfit.fit import fit_end
from planner.dryfit.gaps import Limits, limits_of, own_gap_mm, small_gaps
from planner.dryfit.measuring import limits_at, measured
from planner.dryfit.scene import Near, Scene, least_between, near_in
from planner.dryfit.seats import CAP_MM, Seats
from planner.library.loading import load_library
from planner.model.connector import Contact, Shell
from planner.model.plan import Link
from planner.model.workmanship import Workmanship
from planner.wiring.graph import Wiring
from tests.dryfit import crowds
from tests.dryfit.crowds import moved, site
from tests.dryfit.moving import moving_gap_mm
from tests.dryfit.rows import every_gap, nets_of, places, rows_plan, site_at_b
from tests.dryfit.test_fit import connector
from tests.dryfit.test_fit import plan as lead_plan

CROWDS = {"seed": st.integers(0, 10_000), "count": st.integers(1, 14)}


# Wide limits, so that most ends have gaps to speak of.
STRICT = Workmanship(sleeve_share=0.9, watch_share=1.6)


def crowd(seed, count, *, shields=0, workmanship=STRICT):
    """Return a crowd whose cups stand near places in rows, at heights of their own, none in one."""
    plan = crowds.crowd(seed, count, shields=shields, workmanship=workmanship)
    rng = np.random.default_rng(seed)
    connector = plan.definitions.connectors[0]
    contacts = tuple(
        contact.evolve(
            terminal=contact.terminal.evolve(
                x_mm=0.55 * x + rng.uniform(-0.2, 0.2), y_mm=0.55 * y + rng.uniform(-0.2, 0.2)
            )
        )
        for contact, (x, y) in zip(connector.contacts, places(count), strict=True)
    )
    listed = (connector.evolve(contacts=contacts),)
    return plan.evolve(definitions=plan.definitions.evolve(connectors=listed))


def test_the_samples_have_gaps_to_find():
    grades = {grade for seed in range(20) for *_, grade in found_at(crowd(seed, 9, shields=2))[0]}
    assert grades >= {"sleeve", "watch"}


def near_as_dict(near):
    pairs = zip(near.first.tolist(), near.second.tolist(), strict=True)
    return dict(zip(pairs, near.gap.tolist(), strict=True))


def apart_only(near, nets):
    """Keep the pairs in different nets, as {pair: gap}."""
    net = nets[near.scene.spots]
    return {(i, j): gap for (i, j), gap in near_as_dict(near).items() if net[i] != net[j]}


def found_at(plan, turn_deg=0.0):
    """Return the small gaps of end B as plain figures, and the smallest of all."""
    gaps, least = measured(site(plan), turn_deg)
    said = [(it.first.contact, it.second.contact, it.gap_mm, it.grade) for it in gaps]
    return sorted(said), least


def all_sites():
    """Yield sites of all sizes, every other one with contacts that a link makes one net."""
    for seed in range(60):
        plan = crowd(seed, 1 + seed % 16, shields=seed % 3 if seed % 16 > 3 else 0)
        joined = tuple(it.id for it in plan.definitions.connectors[0].contacts[:3])
        linked = seed % 2 and len(joined) > 1
        yield site(plan.evolve(links=(Link(end="B", contacts=joined),)) if linked else plan)
    for count in (5, 12, 25, 37, 64):
        yield site_at_b(rows_plan(count, tails=count // 5))


def test_boxes_find_what_every_pair_gives():
    mismatches = pairs = 0
    for number, each in enumerate(all_sites()):
        turn = 37.0 * number
        for reach in (0.4, 1.4, 5.0):
            near = near_in(each.scene(turn), reach)
            every = every_gap(each.at(turn), nets_of(each))
            wanted = {pair: gap for pair, gap in every.items() if gap <= reach}
            mismatches += len(wanted.items() ^ apart_only(near, each.nets_by_spot).items())
            pairs += len(wanted)
    print(f"near pairs: {mismatches} of {pairs} differ")  # noqa: T201 - the count is the proof
    assert pairs > 5000
    assert mismatches == 0


def test_the_smallest_gap_of_all_is_that_of_every_pair():
    wrong = 0
    for each in all_sites():
        every = every_gap(each.at(10.0), nets_of(each)).values()
        least = least_between(each.scene(10.0), each.nets_by_spot)
        wrong += least != min(every, default=math.inf)
    assert wrong == 0


def test_a_gap_wider_than_any_limit_is_told_as_well():
    """Two cups 0.5 mm apart are one net, and the third is far from both."""
    places = {"1": (-2.0, 0.0), "2": (0.0, 0.0), "3": (0.0, 9.0)}
    hardware = connector(places).evolve(shell=Shell(bore_mm=60))
    linked = (Link(end="B", contacts=("1", "2")),)
    each = site(lead_plan({"WH": "1", "RD": "3"}, hardware, links=linked))
    gaps, least = measured(each, 0.0)
    assert (gaps, own_gap_mm(hardware)) == ((), pytest.approx(0.5))
    assert least == min(every_gap(each.at(0.0), nets_of(each)).values())
    assert least > 2


def test_what_a_turn_changes_is_that_of_every_pair():
    """As seats measure it, in the plug's own frame and capped, against the bodies as they stand."""
    worst = 0.0
    for number, each in enumerate(all_sites()):
        for turn in (0.0, 11.0 * number, -123.4):
            bodies = each.at(turn)
            every = every_gap(bodies, nets_of(each)).items()
            moving = [gap for pair, gap in every if any(bodies[k].kind == "core" for k in pair)]
            theirs = min(moving, default=math.inf)
            worst = max(worst, abs(Seats(each).gap_mm(turn) - min(theirs, CAP_MM)))
            by_all = moving_gap_mm(each, turn)
            worst = max(worst, abs(by_all - theirs)) if by_all != theirs else worst
    print(f"largest difference {worst:.1e} mm")  # noqa: T201 - the figure is the proof
    assert worst < 1e-12


def test_after_edits_all_is_as_if_measured_afresh():
    """One lead after another is moved, with bodies kept, and with none."""
    plan, wrong = crowd(7, 12), 0
    for number in range(12):
        landing = plan.landings[number % 12]
        other = plan.landings[(5 * number + 1) % 12]
        swapped = {landing: other.contact, other: landing.contact}
        plan = plan.evolve(
            landings=tuple(
                it.evolve(contact=swapped[it], sleeved=number % 3 == 0) if it in swapped else it
                for it in plan.landings
            )
        )
        kept = found_at(plan, 10.0 * number)
        scenes.lead_party.cache_clear()
        scenes.contact_party.cache_clear()
        wrong += kept != found_at(plan, 10.0 * number)
    print(f"edited against afresh: {wrong} of 12 differ")  # noqa: T201 - the count is the proof
    assert wrong == 0


@given(**CROWDS, turn=st.floats(-180, 180))
@settings(max_examples=40, deadline=None)
def test_turning_the_plug_leaves_the_gaps_between_bare_metal(seed, count, turn):
    plan = crowd(seed, count, shields=min(count - 1, 2))
    assert found_at(plan, turn)[0] == found_at(plan)[0]


def rotated(angle_deg):
    cos, sin = math.cos(math.radians(angle_deg)), math.sin(math.radians(angle_deg))
    return lambda x, y: (x * cos - y * sin, x * sin + y * cos)


@given(**CROWDS, turn=st.integers(-180, 180), by=st.integers(-180, 180))
@settings(max_examples=40, deadline=None)
def test_turning_plug_and_cable_together_shifts_the_turn(seed, count, turn, by):
    """A cable drawn turned asks for a plug turned by as much more."""
    plan = crowd(seed, count)
    cores = rotated(by)
    cable = plan.definitions.cables[0]
    turned = cable.evolve(
        cores=tuple(
            core.evolve(**dict(zip(("x_mm", "y_mm"), cores(core.x_mm, core.y_mm), strict=True)))
            for core in cable.cores
        )
    )
    other = plan.evolve(definitions=plan.definitions.evolve(cables=(turned,)))
    gap = moving_gap_mm(site(plan), turn)
    assert moving_gap_mm(site(other), turn + by) == pytest.approx(gap, abs=1e-9)


@given(**CROWDS, turn=st.integers(-180, 180))
@settings(max_examples=40, deadline=None)
def test_mirroring_both_sides_negates_the_turn(seed, count, turn):
    plan = crowd(seed, count)
    mirrored = moved(plan, lambda x, y: (-x, y))
    gap = moving_gap_mm(site(plan), turn)
    assert moving_gap_mm(site(mirrored), -turn) == pytest.approx(gap, abs=1e-9)
    assert found_at(mirrored)[0] == found_at(plan)[0]


def test_mirroring_one_side_alone_is_seen():
    """The mutation of a missing mirror: the near end's lay taken as it is drawn."""
    seen = 0
    for seed in range(20):
        plan = crowd(seed, 6)
        near = plan.evolve(sections=(plan.sections[0].evolve(near="B", far="A"),))
        seen += abs(moving_gap_mm(site(near), 0.0) - moving_gap_mm(site(plan), 0.0)) > 1e-6
    assert seen > 10


@given(**CROWDS)
@settings(max_examples=30, deadline=None)
def test_contacts_in_another_order_have_the_same_gaps(seed, count):
    plan = crowd(seed, count)
    connector = plan.definitions.connectors[0]
    listed = connector.evolve(contacts=tuple(reversed(connector.contacts)))
    other = plan.evolve(definitions=plan.definitions.evolve(connectors=(listed,)))

    def by_pair(found):
        return sorted((*sorted(it[:2]), *it[2:]) for it in found)

    assert by_pair(found_at(other)[0]) == by_pair(found_at(plan)[0])
    assert found_at(other)[1] == pytest.approx(found_at(plan)[1], abs=1e-12)


@given(**CROWDS)
@settings(max_examples=30, deadline=None)
def test_an_unused_contact_far_away_changes_nothing(seed, count):
    """Far below: a wider or higher one would lift the end of the jacket and so all leads."""
    plan = crowd(seed, count + 1)
    connector = plan.definitions.connectors[0]
    below = connector.contacts[0].terminal.evolve(x_mm=0, y_mm=0, z_mm=-60)
    more = connector.evolve(contacts=(*connector.contacts, Contact(id="more", terminal=below)))
    other = plan.evolve(definitions=plan.definitions.evolve(connectors=(more,)))
    assert found_at(other) == found_at(plan)


@given(**CROWDS, bores=st.tuples(st.floats(12, 100), st.floats(12, 100)))
@settings(max_examples=30, deadline=None)
def test_a_larger_shell_never_hurts(seed, count, bores):
    plan, (small, large) = crowd(seed, count), sorted(bores)
    connector = plan.definitions.connectors[0]
    least = []
    for bore_mm in (small, large):
        shell = connector.evolve(shell=Shell(bore_mm=bore_mm))
        changed = plan.evolve(definitions=plan.definitions.evolve(connectors=(shell,)))
        least.append(found_at(changed)[1])
    assert least[0] <= least[1]


@given(**CROWDS, by=st.sampled_from([2.0, 4.0, 8.0]))
@settings(max_examples=30, deadline=None)
def test_geometry_and_limits_scaled_together_scale_the_result(seed, count, by):
    """By powers of two, so that nothing is rounded on the way."""
    each = site(crowd(seed, count))
    scene = each.scene(0.0)
    near = near_in(scene, 1.0)
    parties = tuple(
        replace(
            party,
            bodies=tuple(
                replace(
                    it,
                    start=tuple(by * x for x in it.start),
                    end=tuple(by * x for x in it.end),
                    radius_mm=by * it.radius_mm,
                )
                for it in party.bodies
            ),
        )
        for party in scene.parties
    )
    scaled = near_in(Scene(parties), by)
    assert near_as_dict(scaled) == {pair: by * gap for pair, gap in near_as_dict(near).items()}
    limits, larger = Limits(0.25, 0.5), Limits(0.25 * by, 0.5 * by)
    exact = Near(near.scene, near.reach_mm, near.first, near.second, near.gap.round(1))
    more = Near(scaled.scene, by, near.first, near.second, by * exact.gap)
    grades = [it.grade for it in small_gaps(exact, each.nets_by_spot, limits)]
    assert [it.grade for it in small_gaps(more, each.nets_by_spot, larger)] == grades


def test_one_net_left_in_is_seen():
    """The mutation of same-net pairs not left out: links join every contact into one net."""
    joined = Wiring(crowd(3, 8)).plan
    near = near_in(site(joined).scene(0.0), 1.0)
    one_net = np.zeros(8, dtype=np.intp)
    assert small_gaps(near, one_net, Limits(0.5, 1.0)) == []
    assert len(small_gaps(near, np.arange(8), Limits(0.5, 1.0))) > 5


@pytest.mark.parametrize("rule", ["one-to-two", "below-two"])
def test_no_lead_passes_above_the_cut_end_or_below_its_mouth(rule):
    for seed in range(20):
        plan = crowd(seed, 9, shields=2, workmanship=Workmanship(insulation_gap=rule))
        each = site(plan)
        for lead in each.leads(13.0 * seed):
            heights = [z for _, _, z in lead.way]
            assert max(heights) <= each.height_mm + 1e-12
            assert min(heights) == lead.mouth[2]
            assert heights == sorted(heights, reverse=True)


@pytest.mark.parametrize(
    ("gap_mm", "grade"),
    [(-0.1, "touch"), (0.0, "touch"), (0.1, "sleeve"), (0.35, "watch"), (0.7, "clear")],
)
def test_classes_by_shares_of_the_own_gap(gap_mm, grade):
    """An own gap of 1 mm: a sleeve below 0.35, to watch below 0.7."""
    limits = limits_of(1.0, Workmanship())
    near = near_in(site(crowd(1, 2)).scene(0.0), np.inf)
    one = Near(near.scene, np.inf, near.first[:1], near.second[:1], np.array([gap_mm]))
    grades = [it.grade for it in small_gaps(one, np.arange(2), limits)]
    assert grades == ([] if grade == "clear" else [grade])


def test_no_limit_is_drawn_from_more_than_the_flat_rule():
    """1.6 mm up to 64 V: IPC/WHMA-A-620B draft, table 1-1, as quoted in a secondary page."""
    assert limits_of(11.0, Workmanship()) == limits_of(1.6, Workmanship()) == Limits(0.56, 1.12)


def test_what_wants_a_sleeve_is_never_wider_than_what_is_watched():
    rules = Workmanship(sleeve_share=0.9, watch_share=0.5)
    assert limits_of(1.0, rules) == Limits(0.5, 0.5)


def test_a_connector_with_one_contact_has_no_limit_but_its_shell():
    each = site(crowd(2, 1, workmanship=Workmanship()))
    assert own_gap_mm(each.connector) is None
    between, wall = limits_at(each)
    assert between is None
    assert wall == Limits(0.56, 1.12)


def test_the_shell_asks_no_more_than_terminals_ask_of_each_other():
    between, wall = limits_at(site(crowd(3, 8)))
    assert between is not None
    assert wall == between


def test_a_sleeved_joint_is_no_bare_metal():
    plan = crowd(3, 8)
    touching = found_at(plan)[0]
    contact = touching[0][0]
    sleeved = plan.evolve(
        landings=tuple(it.evolve(sleeved=it.contact == contact) for it in plan.landings)
    )
    left = found_at(sleeved)[0]
    assert any(contact in pair[:2] for pair in touching)
    assert not any(contact in pair[:2] for pair in left)


def test_fit_has_the_gaps_that_are_measured():
    plan = crowd(3, 8)
    fit = fit_end(plan, Wiring(plan), "B")
    assert (fit.gaps, fit.least_gap_mm) == measured(site(plan), 0.0)


@pytest.mark.parametrize("hardware", load_library().connectors(), ids=lambda it: it.id)
def test_a_connector_as_made_and_landed_with_care_has_nothing_to_mend(hardware):
    """A core on every contact, each of another net: no wider than half of what its cup takes."""
    count = len(hardware.contacts)
    plan = rows_plan(count)
    (cable,), connector = plan.definitions.cables, hardware.evolve(id="rows")
    across = min(it.terminal.across_mm for it in hardware.contacts)
    cores = tuple(
        core.evolve(strand_mm=across / 6, insulation_mm=max(across, 0.9)) for core in cable.cores
    )
    landings = tuple(
        landing.evolve(contact=contact.id)
        for landing, contact in zip(plan.landings, hardware.contacts, strict=True)
    )
    definitions = plan.definitions.evolve(
        connectors=(connector,), cables=(cable.evolve(cores=cores),)
    )
    landed = plan.evolve(landings=landings, definitions=definitions)
    gaps, least = measured(site_at_b(landed), 0.0)
    assert [(it.grade, it.gap_mm, it.limit_mm) for it in gaps] == []
    assert least > 0
