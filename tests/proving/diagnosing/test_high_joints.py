"""High joints: against wire and meter, and against siblings (invented units)."""

import pytest

from planner.proving.diagnosing import diagnose
from planner.proving.expected import expected_sweep
from planner.proving.reading import Meter, Reading, Readings
from tests.proving.diagnosing.leads import FIVE, LINE, ONE_TO_TWO
from tests.proving.diagnosing.units import bench, read_all


def figures(its, more, meter=None):
    """Return all readings of a sound unit, with so much more ohm on some contacts' joints."""
    meter = meter or Meter()
    sweep = expected_sweep(its.plan, its.wiring)
    taken = []
    for reading in read_all(its.sound).readings:
        if not reading.joined:
            taken.append(reading)
            continue
        ohm = sweep.path(reading.one, reading.other).ohm + meter.zero_ohm
        ohm += sum(more.get(".".join(it), 0.0) for it in (reading.one, reading.other))
        taken.append(Reading(one=reading.one, other=reading.other, joined=True, ohm=ohm))
    return Readings(meter=meter, readings=tuple(taken))


def judged(sample, more, meter=None):
    its = bench(sample.plan)
    return diagnose(its.plan, its.wiring, figures(its, more, meter))


def test_a_good_unit_has_none():
    found = judged(FIVE, {})
    assert (found.verdict, found.high_joints, found.remarks) == ("sound", (), ())


def test_a_high_joint_is_told_with_its_figure_and_what_is_expected():
    found = judged(LINE, {"B.2": 0.5})
    (joint,) = found.high_joints
    assert found.verdict == "faulty"
    assert joint.fault.words.startswith("high joint on pin 2 at A or pin 2 at B: ")
    assert joint.ohm == pytest.approx(joint.expected_ohm + 0.5)
    assert "read again" in joint.fault.look
    assert joint.fault in found.faults


def test_a_third_end_tells_which_joint_it_is():
    found = judged(ONE_TO_TWO, {"B.2": 0.7})
    assert {it.fault.contacts for it in found.high_joints} == {(("B", "2"),)}
    assert found.high_joints[0].fault.words.startswith("high joint on pin 2 at B: ")


def test_three_times_the_meter_s_error_is_the_line():
    """(R - R_expected) / sigma > 3, sigma being the meter's own error at that reading."""
    meter = Meter(percent=0, offset_ohm=0.1)
    assert judged(LINE, {"B.2": 0.29}, meter).high_joints == ()
    assert len(judged(LINE, {"B.2": 0.31}, meter).high_joints) == 1


def test_beside_siblings_a_smaller_excess_shows():
    """Four good siblings of five: 0.2 ohm are below the meter's error, but not below theirs."""
    found = judged(FIVE, {"B.R1": 0.2})
    (joint,) = found.high_joints
    assert joint.sigmas < 3
    assert "ring 1 at A or ring 1 at B" in joint.fault.words


def test_all_alike_too_high_is_the_meter():
    found = judged(FIVE, {f"B.{it}": 0.5 for it in ("T", "R1", "R2", "R3", "S")})
    assert found.high_joints == ()
    assert found.remarks[0].startswith("Paths of one kind all read about 0.5")


def test_the_meter_s_zero_is_taken_off():
    assert judged(LINE, {}, Meter(zero_ohm=0.8)).high_joints == ()


def test_a_beep_without_a_figure_says_nothing_of_a_joint():
    its = bench(LINE.plan)
    assert diagnose(its.plan, its.wiring, read_all(its.sound)).high_joints == ()


def test_what_joins_with_more_than_solder_is_a_load_still_plugged_in():
    its = bench(LINE.plan)
    taken = (Reading(one=("A", "2"), other=("A", "3"), joined=True, ohm=32.4),)
    found = diagnose(its.plan, its.wiring, Readings(readings=taken))
    assert found.remarks == (
        "pin 2 at A to pin 3 at A reads 32.4 Ω, which is more than solder has: is something still "
        "plugged in? Else clean off flux and damp.",
    )


@pytest.mark.parametrize(("ohm", "verdict"), [(1.9, "sound"), (2.1, "faulty"), (900.0, "faulty")])
def test_where_the_wire_is_not_known_the_flat_limit_holds(ohm, verdict):
    """2 ohm: the rule of IPC/WHMA-A-620 rev. A for an unknown wire (see proving/limits)."""
    known = LINE.plan
    its = bench(known.evolve(definitions=known.definitions.evolve(cables=())))
    joined = [it.evolve(ohm=ohm) if it.joined else it for it in read_all(its.sound).readings]
    found = diagnose(its.plan, its.wiring, Readings(readings=joined))
    assert found.verdict == verdict
    assert all(it.expected_ohm is None for it in found.high_joints)
    assert all(it.fault.words.endswith("2 Ω is allowed") for it in found.high_joints)


def test_figures_far_below_the_meter_s_zero_are_not_sound():
    shown = figures(bench(LINE.plan), {})
    found = diagnose(LINE.plan, bench(LINE.plan).wiring, shown.evolve(meter=Meter(zero_ohm=100.0)))
    assert found.verdict == "incomplete"
    assert any("zero can't be right" in it for it in found.remarks)
