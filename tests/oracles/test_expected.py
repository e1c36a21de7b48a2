"""Expected figures of whole paths against resistivities from elsewhere."""

import math

import pytest

from planner.proving.expected import expected_sweep
from planner.wiring.graph import Wiring
from tests.building import PHONES, PHONES_IN, lead


@pytest.mark.parametrize(
    ("metal", "symbol", "more"), [("copper", "Cu", 1.0275), ("silver", "Ag", 1.0)]
)
def test_a_solid_metre_against_pymatgen(metal, symbol, more):
    """The element is pure; the standard's annealed copper may have 2.75 % more."""
    element = pytest.importorskip("pymatgen.core").Element(symbol)
    plan = lead({"A": PHONES, "B": PHONES_IN}, ["RD A.T B.T"])
    cable = plan.definitions.cables[0]
    core = cable.cores[0].evolve(strands=1, strand_mm=0.5, metal=metal)
    plan = plan.evolve(
        definitions=plan.definitions.evolve(cables=(cable.evolve(cores=(core,)),)),
        assumed=plan.assumed.evolve(temperature_c=20),
    )
    length_m = plan.sections[0].length_mm / 1000
    pure_ohm = float(element.electrical_resistivity) * length_m / (math.pi / 4 * 0.0005**2)
    found = expected_sweep(plan, Wiring(plan)).paths[0].ohm
    assert pure_ohm * 0.999 < found < pure_ohm * more * 1.001
