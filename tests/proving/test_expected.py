"""What a sound lead shows: who is joined, by how many ohm, and the limit of each path."""

import pytest

from planner.proving.expected import expected_sweep
from planner.wiring.graph import Wiring
from tests import building
from tests.building import lead

FIVE = ("T", "R1", "R2", "R3", "S")


def sweep_of(plan):
    return expected_sweep(plan, Wiring(plan))


def five_pole():
    wires = [
        f"{core} A.{pole} B.{pole}"
        for core, pole in zip(("RD", "GN", "BU", "WH", "BK"), FIVE, strict=True)
    ]
    return lead({"A": building.BALANCED, "B": building.BALANCED_IN}, wires)


def test_a_five_pole_balanced_lead_is_one_to_one_and_nothing_else():
    """4.4 mm plugs at both ends: common practice, no source."""
    found = sweep_of(five_pole())
    for one in found.contacts:
        for other in found.contacts:
            assert found.joined(one, other) == (one[0] != other[0] and one[1] == other[1])
    assert [(it.one, it.other) for it in found.paths] == [
        (("A", pole), ("B", pole)) for pole in FIVE
    ]


def test_a_path_between_contacts_that_are_apart_is_refused():
    with pytest.raises(ValueError, match="not joined"):
        sweep_of(five_pole()).path(("A", "T"), ("B", "S"))
