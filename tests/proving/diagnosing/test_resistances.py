"""The resistance tells at which end a bridge is, on a lead that is long enough (invented units)."""

import pytest

from planner.electrical.network import network_of
from planner.proving.diagnosing import diagnose
from planner.proving.diagnosing.resistances import Resistances
from planner.proving.reading import Meter, Readings
from planner.wiring.graph import Wiring
from tests.electrical.leads import plain_network, plain_ohm
from tests.proving.diagnosing.leads import FIVE, LINE
from tests.proving.diagnosing.units import bench, read_all


def lead_of(sample, length_mm=20_000):
    sections = tuple(it.evolve(length_mm=length_mm) for it in sample.plan.sections)
    return bench(sample.plan.evolve(sections=sections))


def figures(its, unit, pairs=()):
    """Return all readings of a unit; those of `pairs` (or all) with their resistance."""
    found = Resistances(network_of(its.plan, its.wiring), Readings())
    number = unit.board.number
    taken = []
    for it in read_all(unit).readings:
        wanted = not pairs or {it.one, it.other} in pairs
        ohm = None
        if it.joined and wanted:
            ohm = found.ohm(unit, (number[it.one], number[it.other]))
        taken.append(it.evolve(ohm=ohm))
    return Readings(readings=tuple(taken))


@pytest.mark.parametrize("end", ["A", "B"])
def test_a_bridge_of_a_long_lead_is_placed(end):
    its = lead_of(FIVE)
    unit = its.sound.bridged(its.place(f"{end}.R1"), its.place(f"{end}.R2"))
    found = diagnose(its.plan, its.wiring, figures(its, unit))
    assert found.best.words == f"bridge between ring 1 and ring 2 at {end}"
    assert found.best.likelihood > 0.95


def test_without_figures_it_asks_for_the_one_that_tells():
    its = lead_of(FIVE)
    unit = its.sound.bridged(its.place("B.R1"), its.place("B.R2"))
    found = diagnose(its.plan, its.wiring, read_all(unit))
    assert [it.likelihood for it in found.explanations] == pytest.approx([0.5, 0.5], abs=0.05)
    assert {name for _, name in found.next_probe.pair} == {"R1", "R2"}
    assert "take the resistance; about 0 Ω means bridge" in found.next_probe.words


def test_on_a_short_lead_the_meter_can_not_tell():
    its = lead_of(FIVE, 300)
    unit = its.sound.bridged(its.place("B.R1"), its.place("B.R2"))
    assert diagnose(its.plan, its.wiring, read_all(unit)).next_probe is None


def test_a_better_meter_can():
    its = lead_of(FIVE, 300)
    unit = its.sound.bridged(its.place("B.R1"), its.place("B.R2"))
    readings = read_all(unit, meter=Meter(percent=0.5, offset_ohm=0.005))
    assert diagnose(its.plan, its.wiring, readings).next_probe is not None


@pytest.mark.parametrize("sample", [LINE, FIVE])
def test_a_sound_lead_has_the_resistances_of_another_way(sample):
    """networkx's resistance distance on a network built from the records is the reference."""
    its = bench(sample.plan)
    network = network_of(its.plan, Wiring(its.plan))
    ohm_of = {(run[0][1], frozenset((run[0][2], run[1][2]))): run[2] for run in network.known}
    graph, name = plain_network(
        its.plan, lambda section, core: ohm_of[core, frozenset((section.near, section.far))]
    )
    found, board = Resistances(network, Readings()), its.sound.board
    for one, end in enumerate(board.contacts):
        for other, far in enumerate(board.contacts[one + 1 :], one + 1):
            wanted = plain_ohm(graph, name[end], name[far])
            assert found.ohm(its.sound, (one, other)) == pytest.approx(wanted)
