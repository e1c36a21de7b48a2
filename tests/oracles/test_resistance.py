"""Resistivities and gauges against libraries that have them from elsewhere."""

import math

import pytest

from planner.electrical.metals import resistivity
from planner.electrical.resistance import ohm_per_km
from planner.model.cable import Core
from planner.units import awg_diameter_mm


def solid(strand_mm, **more):
    fields = {"id": "c", "colours": ("WH",), "insulation_mm": 9.0, "x_mm": 0.0, "y_mm": 0.0}
    return Core(**fields | {"strands": 1, "strand_mm": strand_mm} | more)


@pytest.mark.parametrize(
    ("metal", "symbol", "off"), [("copper", "Cu", 0.03), ("silver", "Ag", 1e-3)]
)
def test_resistivity_against_pymatgen(metal, symbol, off):
    """The element is pure copper; the standard's annealed copper may have 2.75 % more."""
    core = pytest.importorskip("pymatgen.core")
    pure = float(core.Element(symbol).electrical_resistivity) * 1e6  # ohm m to ohm mm2/m
    assert pure * (1 - 1e-3) <= resistivity(metal) <= pure * (1 + off)


@pytest.mark.parametrize("gauge", range(10, 37, 2))
def test_a_gauge_against_fluids(gauge):
    """Diameters after Machinery's Handbook, rounded as printed there: 0.4 %, twice that in area."""
    piping = pytest.importorskip("fluids.piping")
    diameter_mm = piping.t_from_gauge(gauge, SI=True, schedule="AWG") * 1000
    expected = 1000 / 58 / (math.pi / 4 * diameter_mm**2)
    assert ohm_per_km(solid(awg_diameter_mm(gauge))) == pytest.approx(expected, rel=0.008)
