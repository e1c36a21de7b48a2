"""What goes into what at an end, on small leads with invented figures."""

import pytest

from planner.dryfit.wires import into_bore


@pytest.mark.parametrize(
    ("wires", "bore", "answer"),
    [([0.48], 1.0, "fits"), ([1.2], 1.0, "fails"), ([0.48, 0.48], 1.0, "fits"),
     ([0.5, 0.5, 0.1], 1.05, "fits"), ([0.6, 0.6], 1.0, "fails"), ([], 1.0, "fits"),
     ([0.5], 0.0, "fails")],
)  # fmt: skip
def test_wires_into_a_bore(wires, bore, answer):
    assert into_bore(wires, bore).answer == answer
