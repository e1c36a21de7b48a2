"""Capacitance against handbook figures of standard lines, and roll-off against its formula."""

import math

import numpy as np
import pytest

from planner.electrical.capacitance import (
    VACUUM_PF_PER_M,
    coax_pf_per_m,
    pair_pf_per_m,
    rolloff_hz,
    shielded_pair_pf_per_m,
)

LIGHT_M_PER_S = 299_792_458  # exact, SI


def impedance(pf_per_m, permittivity):
    """Return the wave impedance of a line without loss: sqrt(eps) / (c C)."""
    return math.sqrt(permittivity) / (LIGHT_M_PER_S * pf_per_m * 1e-12)


@pytest.mark.parametrize("permittivity", [1.0, 2.1, 2.3])
@pytest.mark.parametrize("ratio", [2.0, 3.5, 6.7])
def test_coax_gives_the_impedance_of_the_handbook(ratio, permittivity):
    """Z = 138.06 / sqrt(eps) log10(D/d); handbooks print 138. From memory."""
    found = impedance(coax_pf_per_m(1.0, ratio, permittivity), permittivity)
    assert found == pytest.approx(138 / math.sqrt(permittivity) * math.log10(ratio), rel=0.001)


@pytest.mark.parametrize("ratio", [2.0, 5.0, 20.0])
def test_two_wires_give_the_impedance_of_the_handbook(ratio):
    """Z = 120 acosh(D/d) in air; handbooks print 120 for 119.92. From memory."""
    found = impedance(pair_pf_per_m(1.0, 1.0, ratio, 1.0), 1.0)
    assert found == pytest.approx(120 * math.acosh(ratio), rel=0.001)


def test_a_75_ohm_line_in_solid_polyethylene():
    """75 ohm in solid PE (2.3) is 67 pF/m in every table of coaxes. From memory."""
    ratio = 10 ** (75 * math.sqrt(2.3) / 138)
    assert coax_pf_per_m(0.58, 0.58 * ratio, 2.3) == pytest.approx(67, abs=0.7)


def test_a_wire_off_the_middle_far_from_the_wall_is_a_wire_over_a_plane():
    """Near a wall of great radius: 2 pi eps / acosh(h/r); h over the plane. Any handbook."""
    wide_mm, over_mm, wire_mm = 2e6, 3.0, 1.0
    found = coax_pf_per_m(wire_mm, wide_mm, 1.0, wide_mm / 2 - over_mm)
    assert found == pytest.approx(2 * pair_pf_per_m(wire_mm, wire_mm, 2 * over_mm, 1.0), rel=1e-3)


def test_wires_of_unlike_size_meet_the_middle_of_both():
    assert pair_pf_per_m(1.0, 2.0, 5.0, 1.0) == pytest.approx(pair_pf_per_m(2.0, 1.0, 5.0, 1.0))
    small, large = (pair_pf_per_m(wire, wire, 5.0, 1.0) for wire in (1.0, 2.0))
    assert small < pair_pf_per_m(1.0, 2.0, 5.0, 1.0) < large


def test_what_touches_has_no_figure():
    assert math.isnan(coax_pf_per_m(1.0, 1.0, 2.3))
    assert math.isnan(pair_pf_per_m(1.0, 1.0, 1.0, 2.3))
    assert math.isnan(pair_pf_per_m(1.0, 1.0, 0.0, 2.3))
    assert math.isnan(shielded_pair_pf_per_m(1.0, 1.0, 2.0, 2.3))


def test_rolloff():
    """f = 1 / (2 pi R C): 10 kohm and 1 nF are 15.9 kHz, as every table of RC filters has."""
    assert rolloff_hz(10_000, 1000) == pytest.approx(15_915, abs=1)


# -- against the field itself ---------------------------------------------------------------------


def ring(middle, radius, count):
    turn = 2 * np.pi * (np.arange(count) + 0.5) / count
    return np.c_[middle[0] + radius * np.cos(turn), middle[1] + radius * np.sin(turn)]


def field_pf_per_m(wires, shield_mm=0.0):
    """Solve Laplace's equation in vacuum by line charges inside the wires and behind the shield.

    `wires` are (x, diameter, volt), the shield has 0 V. Returns the charge of the first wire.
    """
    charges = [ring((x, 0), 0.375 * across, 32) for x, across, _ in wires]
    points = [ring((x, 0), across / 2, 72) for x, across, _ in wires]
    volts = [volt for *_, volt in wires for _ in range(72)]
    if shield_mm:
        charges.append(ring((0, 0), 0.6 * shield_mm, 48))
        points.append(ring((0, 0), shield_mm / 2, 96))
        volts += [0.0] * 96
    apart = np.linalg.norm(np.vstack(points)[:, None] - np.vstack(charges)[None], axis=2)
    charge = np.linalg.lstsq(-np.log(apart) / (2 * np.pi), np.array(volts), rcond=1e-14)[0]
    return VACUUM_PF_PER_M * charge[:32].sum()


@pytest.mark.parametrize("off_mm", [0.0, 0.4, 1.2])
def test_a_wire_in_a_shield_against_the_field(off_mm):
    found = coax_pf_per_m(1.0, 4.0, 1.0, off_mm)
    assert found == pytest.approx(field_pf_per_m([(off_mm, 1.0, 1.0)], 4.0), rel=1e-6)


@pytest.mark.parametrize("apart_mm", [1.3, 2.0, 5.0])
def test_two_wires_against_the_field(apart_mm):
    wires = [(-apart_mm / 2, 1.0, 0.5), (apart_mm / 2, 1.0, -0.5)]
    found = pair_pf_per_m(1.0, 1.0, apart_mm, 1.0)
    assert found == pytest.approx(field_pf_per_m(wires), rel=1e-6)


# Wire, lay and shield of pairs of the shipped stock, and a thin one far apart, mm.
@pytest.mark.parametrize(
    "pair", [(0.73, 1.34, 2.64), (0.6, 1.24, 2.44), (0.381, 0.94, 1.84), (0.3, 2.0, 8.0)]
)
def test_a_shielded_pair_against_the_field(pair):
    wire_mm, apart_mm, shield_mm = pair
    wires = [(-apart_mm / 2, wire_mm, 0.5), (apart_mm / 2, wire_mm, -0.5)]
    found = shielded_pair_pf_per_m(wire_mm, apart_mm, shield_mm, 1.0)
    assert found == pytest.approx(field_pf_per_m(wires, shield_mm), rel=0.01)
