"""How near contacts come: against plain sampling, by the turn, bare ends, the shell of a jack."""

import itertools
import math

import pytest

from planner.data import data_dir
from planner.dryfit.gaps import own_gaps_mm
from planner.dryfit.site import site_of
from planner.files.plans import read_plan
from planner.proving.expected import expected_sweep
from planner.proving.nearness import contact_gaps_mm, near_pairs, stop_line_mm
from planner.wiring.graph import Wiring

DEMO = data_dir("resources") / "demo"


def demo(name):
    return read_plan(DEMO / f"{name}.json")


def gaps(plan, end):
    return contact_gaps_mm(plan, Wiring(plan), end)


def turned(plan, end, turn_deg):
    ends = tuple(it.evolve(turn_deg=turn_deg) if it.id == end else it for it in plan.ends)
    return plan.evolve(ends=ends)


def points(body, steps=60):
    for step in range(steps + 1):
        share = step / steps
        yield tuple(a + share * (b - a) for a, b in zip(body.start, body.end, strict=True))


def sampled_gap_mm(ones, others):
    """Return the smallest gap of two sets of capsules by points along them: never too small."""
    return min(
        math.dist(p, q) - one.radius_mm - other.radius_mm
        for one in ones
        for other in others
        for p, q in itertools.product(points(one), points(other))
    )


def test_gaps_against_points_along_the_bodies():
    plan = demo("stage-left-balanced-line")
    scene = site_of(plan, Wiring(plan), "A").scene(plan.end_by_id["A"].turn_deg)
    metal = {}
    for body in scene.bodies:
        if body.kind != "core":
            metal.setdefault(body.contact, []).append(body)
    for (one, other), gap_mm in gaps(plan, "A").items():
        assert gap_mm == pytest.approx(sampled_gap_mm(metal[one], metal[other]), abs=0.02)


def test_the_turn_of_the_plug_does_not_matter_to_joints():
    plan = demo("stage-left-balanced-line").evolve(
        conductors=tuple(
            it for it in demo("stage-left-balanced-line").conductors if it.kind == "core"
        ),
        landings=tuple(
            it
            for it in demo("stage-left-balanced-line").landings
            if it.contact != "1"  # the shield's tail is bent to its contact from the jacket
        ),
    )
    here, there = gaps(turned(plan, "A", 0), "A"), gaps(turned(plan, "A", 77), "A")
    assert there == pytest.approx(here, abs=0.05)


def test_a_sleeve_does_not_take_a_pair_out():
    plan = demo("cue-desk-headphone-lead")
    sleeved = plan.evolve(landings=tuple(it.evolve(sleeved=True) for it in plan.landings))
    bare, covered = gaps(plan, "A"), gaps(sleeved, "A")
    assert bare.keys() == covered.keys()
    assert all(math.isfinite(it) for it in covered.values())


def test_an_end_without_a_cable_has_its_gaps_as_made():
    plan = demo("recording-rack-loom")
    bare = plan.evolve(sections=tuple(it.evolve(cable="", fan_of="") for it in plan.sections))
    connector = plan.connector_of("A")
    assert gaps(bare, "A") == own_gaps_mm(connector)


def test_a_joint_beside_the_shell_of_a_jack_is_beside_its_sleeve():
    """The shell screws onto the outermost contact: common practice, no source."""
    plan = demo("cue-desk-headphone-lead")
    found = gaps(plan, "A")
    apart = own_gaps_mm(plan.connector_of("A"))
    assert found["T", "S"] < apart["T", "S"] / 2


def test_the_stop_line_has_the_nearest_neighbour_of_every_terminal_within():
    for plan in map(read_plan, sorted(DEMO.glob("*.json"))):
        for connector in plan.definitions.connectors:
            made, line_mm = own_gaps_mm(connector), stop_line_mm(connector)
            for contact in connector.by_id:
                assert min(mm for names, mm in made.items() if contact in names) < line_mm


def test_nets_meet_where_they_are_nearest():
    plan = demo("recording-rack-loom")
    wiring = Wiring(plan)
    sweep = expected_sweep(plan, wiring)
    found = near_pairs(plan, wiring, sweep)
    assert len(found) == math.comb(len(sweep.nets), 2)
    lines = {end.id: stop_line_mm(plan.connector_of(end.id)) for end in plan.ends}
    every = {end.id: contact_gaps_mm(plan, wiring, end.id) for end in plan.ends}
    for (one, other), pair in found.items():
        assert (sweep.net_of[pair.one], sweep.net_of[pair.other]) == (one, other)
        between = [
            (round(mm, 2) > lines[end], round(mm, 2))
            for end, known in every.items()
            for names, mm in known.items()
            if {sweep.net_of[end, name] for name in names} == {one, other}
        ]
        assert (not pair.beside, pair.gap_mm) == min(between, default=(True, None))
