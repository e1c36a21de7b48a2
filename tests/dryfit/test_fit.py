"""The dry fit on small leads with invented figures, where the answer can be seen by eye."""

import numpy as np
import pytest

from planner.dryfit.bodies import terminal_bodies
from planner.dryfit.fit import fit_end, fit_plan
from planner.dryfit.gaps import own_gap_mm, pair_gaps_mm
from planner.model.cable import Cable, Core, Shield
from planner.model.connector import Barrel, Clamp, Connector, Contact, Shell, Terminal
from planner.model.plan import Conductor, Definitions, End, Landing, Link, Plan, Run, Section
from planner.wiring.graph import Wiring

PLACES = {"1": (-2.0, 0.0), "2": (2.0, 0.0), "3": (0.0, 3.0)}


def connector(places=PLACES, bore_mm=1.2) -> Connector:
    contacts = tuple(
        Contact(
            id=name,
            terminal=Terminal(kind="cup", x_mm=x, y_mm=y, bore_mm=bore_mm, depth_mm=2.5, takes=2),
        )
        for name, (x, y) in places.items()
    )
    return Connector(
        id="sample",
        title="Sample",
        family="xlr",
        gender="male",
        drawn_from="solder",
        shell=Shell(bore_mm=12),
        clamp=Clamp(min_mm=3, max_mm=6),
        barrel=Barrel(outside_mm=15, bore_mm=12, length_mm=30),
        contacts=contacts,
    )


def cable() -> Cable:
    cores = tuple(
        Core(
            id=name,
            colours=(name,),
            strands=7,
            strand_mm=0.16,
            insulation_mm=0.8,
            x_mm=x,
            y_mm=0.0,
        )
        for name, x in (("WH", -0.6), ("RD", 0.6))
    )
    shield = Shield(id="SH", kind="braid", tail_mm=0.9)
    return Cable(id="pair", title="Pair", jacket_mm=4, cores=cores, shields=(shield,))


def plan(landed: dict[str, str], hardware: Connector | None = None, turn_deg=0.0, **more) -> Plan:
    """A line whose far end is landed; the far cut end shows the lay as the record has it."""
    hardware = hardware or connector()
    names = {"WH": "core", "RD": "core", "SH": "shield"}
    return Plan(
        ends=(End(id="A"), End(id="B", connector=hardware.id, turn_deg=turn_deg)),
        sections=(Section(id="s1", near="A", far="B", cable="pair", length_mm=1000),),
        conductors=tuple(
            Conductor(id=name, kind=kind, runs=(Run(section="s1", core=name),))
            for name, kind in names.items()
        ),
        landings=tuple(
            Landing(end="B", conductor=core, contact=contact) for core, contact in landed.items()
        ),
        definitions=Definitions(connectors=(hardware,), cables=(cable(),)),
        **more,
    )


def fit_b(sample: Plan):
    return fit_end(sample, Wiring(sample), "B")


def test_straight_leads_do_not_cross():
    assert fit_b(plan({"WH": "1", "RD": "2"})).crossings == ()


def test_exchanged_leads_cross_once():
    """Both leads run along y = 0 in opposite order, so they are tilted by a core above the axis."""
    places = {"1": (-2.0, 0.4), "2": (2.0, 0.4)}
    assert fit_b(plan({"WH": "2", "RD": "1"}, connector(places))).crossings == (("RD", "WH"),)


def test_the_near_end_shows_the_lay_mirrored():
    straight = plan({"WH": "1", "RD": "2"}, connector({"1": (-2.0, 0.4), "2": (2.0, 0.4)}))
    section = straight.sections[0].evolve(near="B", far="A")
    assert fit_b(straight.evolve(sections=(section,))).crossings == (("RD", "WH"),)


def test_own_gap_is_centre_distance_less_both_cups():
    """Cups 4 mm apart, bore 1.2 mm, wall 0.15 mm: 4 - 1.5; the third is nearer: sqrt(13) - 1.5."""
    assert own_gap_mm(connector()) == pytest.approx(13**0.5 - 1.5)


def test_well_spread_leads_have_no_small_gap():
    assert fit_b(plan({"WH": "1", "RD": "2"})).gaps == ()


def test_a_tail_over_a_foreign_cup_is_small_and_names_both():
    places = {"1": (0.0, 2.0), "2": (0.0, 4.6), "3": (4.0, 0.0)}
    found = fit_b(plan({"WH": "1", "SH": "2"}, connector(places))).gaps
    assert [(gap.first.contact, gap.second.conductor, gap.second.kind) for gap in found] == []
    low = {"1": (0.0, 2.6), "2": (0.0, 4.6), "3": (4.0, 0.0)}
    tall = connector(low)
    raised = tall.contacts[0].evolve(terminal=tall.contacts[0].terminal.evolve(z_mm=4.0))
    found = fit_b(plan({"SH": "2"}, tall.evolve(contacts=(raised, *tall.contacts[1:])))).gaps
    assert {(gap.first.contact, gap.second.conductor) for gap in found} == {("1", "SH")}


def test_the_same_net_is_left_out():
    """A link makes two contacts one net, so that their bodies may touch."""
    places = {"1": (0.0, 2.6), "2": (0.0, 4.6), "3": (4.0, 0.0)}
    hardware = connector(places)
    raised = hardware.contacts[0].evolve(terminal=hardware.contacts[0].terminal.evolve(z_mm=4.0))
    hardware = hardware.evolve(contacts=(raised, *hardware.contacts[1:]))
    linked = plan({"SH": "2"}, hardware, links=(Link(end="B", contacts=("1", "2")),))
    assert fit_b(linked).gaps == ()


@pytest.mark.parametrize("turn", [0, 37, 90, 180, -120])
def test_turning_plug_and_cable_together_changes_nothing(turn):
    """Own gaps do not depend on the turn: the terminals turn as one."""
    bodies = [body for it in connector().contacts for body in terminal_bodies(it, turn)]
    gaps = pair_gaps_mm(bodies, np.array([0, 0, 1]), np.array([1, 2, 2]))
    assert min(gaps) == pytest.approx(own_gap_mm(connector()))


def test_an_iron_reaches_open_joints():
    assert all(way.margin_mm > 0 for way in fit_b(plan({"WH": "1", "RD": "2"})).access)


def test_a_joint_deep_between_tall_ones_is_hidden():
    ring = {"1": (0.0, 0.0)} | {
        str(n): (1.55 * x, 1.55 * y)
        for n, (x, y) in enumerate(
            [(1, 0), (0.7, 0.7), (0, 1), (-0.7, 0.7), (-1, 0), (-0.7, -0.7), (0, -1), (0.7, -0.7)],
            2,
        )
    }
    hardware = connector(ring, bore_mm=0.8)
    tall = tuple(
        contact.evolve(terminal=contact.terminal.evolve(z_mm=6.0, depth_mm=8.0))
        for contact in hardware.contacts[1:]
    )
    hidden = fit_b(plan({"WH": "1"}, hardware.evolve(contacts=(hardware.contacts[0], *tall))))
    assert [way.margin_mm < 0 for way in hidden.access] == [True]


def test_an_end_with_nothing_landed_has_no_fit():
    assert fit_plan(plan({}), Wiring(plan({}))) == ()
