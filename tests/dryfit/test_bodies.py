"""Bodies of an end by hand: tabs, joints, strips and cuts, on small invented figures."""

import math

import pytest

from planner.dryfit.bodies import (
    CUP_WALL_MM,
    SLEEVE_WALL_MM,
    SOLDER_MM,
    cut_mm,
    insulation_gap_mm,
    joint_bodies,
    lead_bodies,
    proposed_room_mm,
    strip_mm,
    terminal_bodies,
)
from planner.model.connector import Contact, Terminal
from planner.model.workmanship import Workmanship
from tests.dryfit.crowds import site
from tests.dryfit.test_fit import connector, plan


def lug(width_mm, depth_mm, opening_deg):
    terminal = Terminal(
        kind="lug", x_mm=3, y_mm=1, width_mm=width_mm, depth_mm=depth_mm, opening_deg=opening_deg
    )
    return Contact(id="L", terminal=terminal)


def extent(bodies):
    """Return how far bodies reach: left, right, down, up."""
    xs = [(end[0], it.radius_mm) for it in bodies for end in (it.start, it.end)]
    ys = [(end[1], it.radius_mm) for it in bodies for end in (it.start, it.end)]
    return (
        min(x - r for x, r in xs),
        max(x + r for x, r in xs),
        min(y - r for y, r in ys),
        max(y + r for y, r in ys),
    )


@pytest.mark.parametrize(
    ("width_mm", "depth_mm", "opening_deg", "turn_deg", "reach"),
    [
        (1.2, 3.0, 0, 0, (1.5, 4.5, 0.4, 1.6)),
        (1.2, 3.0, 90, 0, (2.4, 3.6, -0.5, 2.5)),
        (3.0, 1.2, 90, 0, (1.5, 4.5, 0.4, 1.6)),
        (6.0, 1.2, 90, 0, (0.0, 6.0, 0.4, 1.6)),
        (2.0, 2.0, 180, 0, (2.0, 4.0, 0.0, 2.0)),
        (1.2, 3.0, 0, 90, (-1.6, -0.4, 1.5, 4.5)),
    ],
)
def test_a_tab_reaches_all_four_sides(width_mm, depth_mm, opening_deg, turn_deg, reach):
    """Round its middle (3, 1): along its opening as long as it is deep, across as it is wide."""
    bodies = terminal_bodies(lug(width_mm, depth_mm, opening_deg), turn_deg)
    assert extent(bodies) == pytest.approx(reach)


def test_a_cup_goes_down_from_its_mouth():
    cup = Terminal(kind="cup", x_mm=0, y_mm=0, z_mm=2, bore_mm=1, depth_mm=3)
    (body,) = terminal_bodies(Contact(id="C", terminal=cup), 0.0)
    assert (body.start, body.end) == ((0, 0, -1), (0, 0, 2))
    assert body.radius_mm == pytest.approx(0.5 + CUP_WALL_MM)


@pytest.mark.parametrize(("covered", "more"), [(False, 0.0), (True, SLEEVE_WALL_MM)])
def test_a_joint_has_solder_and_a_covered_one_its_sleeve(covered, more):
    contact = lug(1.2, 3.0, 0)
    bare = terminal_bodies(contact, 0.0)[0].radius_mm
    for body in joint_bodies(contact, 0.0, covered=covered):
        assert body.radius_mm == pytest.approx(bare + SOLDER_MM + more)
        assert body.bare is not covered


LANDED = {"WH": "1", "RD": "2", "SH": "3"}


@pytest.mark.parametrize(
    ("rule", "low", "high"),
    [("one-to-two", 0.8, 1.6), ("below-two", 0.0, 0.96)],
)
def test_the_insulation_gap_is_within_its_profile(rule, low, high):
    """0.8 mm with insulation: 1 to 2 of it (STP 11-25R13-SM-TG, App. A). Seven strands of 0.16 mm
    are 0.48 mm: under 2 of that (NASA-STD-8739.3, 9.1)."""
    rules = Workmanship(insulation_gap=rule)
    for lead in site(plan(LANDED, workmanship=rules)).leads(0.0):
        if not lead.is_shield:
            assert low <= insulation_gap_mm(lead.part, rules) < high
            assert lead.gap_mm == insulation_gap_mm(lead.part, rules)


def test_strip_and_cut_lengths():
    """A cup 2.5 mm deep and a gap of 0.8 mm; a cut no shorter than straight up to the jacket."""
    each = site(plan(LANDED))
    for lead in each.leads(0.0):
        if not lead.is_shield:
            assert strip_mm(lead) == pytest.approx(2.5 + 0.8)
            straight = math.dist(lead.exit, lead.way[-2])
            assert straight <= cut_mm(lead) - strip_mm(lead) < 1.3 * straight


def test_the_insulation_never_ends_beyond_half_the_way():
    thick = plan({"WH": "1"})
    cable = thick.definitions.cables[0]
    fat = cable.evolve(cores=tuple(it.evolve(insulation_mm=15) for it in cable.cores), jacket_mm=40)
    thick = thick.evolve(definitions=thick.definitions.evolve(cables=(fat,)))
    (lead,) = site(thick).leads(0.0)
    assert lead.gap_mm == (lead.exit[2] - lead.mouth[2]) / 2


@pytest.mark.parametrize(
    ("barrel_mm", "reach_mm", "room_mm"),
    [(30, 3, 10), (10, 3, 7.5), (8, 3, 5.5), (5, 3, 3.6), (5, 1, 3), (30, 10, 12)],
)
def test_the_room_that_is_proposed(barrel_mm, reach_mm, room_mm):
    """Cups 2.5 mm deep: 10 mm or what the barrel has, not below 3 mm, nor 1.2 of the reach."""
    hardware = connector({"1": (0.0, reach_mm), "2": (0.0, 0.0)})
    barrel = hardware.barrel.evolve(length_mm=barrel_mm)
    assert proposed_room_mm(hardware.evolve(barrel=barrel)) == pytest.approx(room_mm)


def test_a_tail_is_bare_unless_it_is_sleeved():
    for sleeved in (False, True):
        landed = plan(LANDED)
        landed = landed.evolve(
            landings=tuple(
                it.evolve(sleeved=sleeved and it.conductor == "SH") for it in landed.landings
            )
        )
        tail = next(lead for lead in site(landed).leads(0.0) if lead.is_shield)
        bodies = lead_bodies(tail, 0.05)
        assert {it.bare for it in bodies} == {not sleeved}
        wall = SLEEVE_WALL_MM if sleeved else 0.0
        assert [it.radius_mm for it in bodies] == pytest.approx([0.45 + wall + 0.05] * len(bodies))


@pytest.mark.parametrize(
    ("landed", "sleeved", "covered"),
    [
        ({"WH": "1", "SH": "1"}, {"SH"}, False),
        ({"WH": "1", "SH": "1"}, {"WH"}, True),
        ({"WH": "2", "SH": "1"}, {"SH"}, True),
    ],
)
def test_a_sleeve_on_a_tail_leaves_a_joint_bare_that_a_core_is_in(landed, sleeved, covered):
    each = plan(landed)
    landings = tuple(it.evolve(sleeved=it.conductor in sleeved) for it in each.landings)
    bodies = site(each.evolve(landings=landings)).at(0.0)
    metal = [it for it in bodies if it.contact == "1" and it.kind in {"joint", "strands"}]
    assert {it.bare for it in metal} == {not covered}
