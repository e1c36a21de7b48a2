"""The wall of a shell, by hand."""

import numpy as np
import pytest

from planner.dryfit.bodies import Capsule
from planner.dryfit.measuring import measured
from planner.dryfit.shell import wall_gaps_mm, wall_spot
from planner.model.connector import Shell
from tests.building import record
from tests.dryfit.crowds import site
from tests.dryfit.test_fit import connector, plan

ROUND = Shell(bore_mm=10)
FLAT = Shell(shape="d", width_mm=20, height_mm=8)


def gap(shell, start, end, radius, turn_deg=0.0):
    ends = np.array([[*start, 0.0]]), np.array([[*end, 1.0]])
    return wall_gaps_mm(shell, *ends, np.array([radius]), turn_deg)[0]


@pytest.mark.parametrize(
    ("shell", "start", "end", "turn_deg", "gap_mm"),
    [
        (ROUND, (3, 0), (0, 0), 0, 1.5),
        (ROUND, (0, 0), (0, 0), 0, 4.5),
        (ROUND, (3, 4), (0, 0), 45, -0.5),
        (FLAT, (0, 0), (0, 3), 0, 0.5),
        (FLAT, (9, 0), (-2, 0), 0, 0.5),
        (FLAT, (0, 9), (0, 0), 90, 0.5),
        (FLAT, (0, 12), (0, 0), 0, -8.5),
    ],
)
def test_gap_to_the_wall(shell, start, end, turn_deg, gap_mm):
    """A capsule of radius 0.5 mm in a bore of 10 mm, and in 20 by 8 mm."""
    assert gap(shell, start, end, 0.5, turn_deg) == pytest.approx(gap_mm)


@pytest.mark.parametrize(
    ("shell", "at", "turn_deg", "spot"),
    [
        (ROUND, (3, 0), 0, (5, 0)),
        (ROUND, (0, 0), 0, (5, 0)),
        (FLAT, (1, -3), 0, (1, -4)),
        (FLAT, (-9, 1), 0, (-10, 1)),
        (FLAT, (1, 9), 90, (1, 10)),
        (FLAT, (5, 3), 0, (5, 4)),
    ],
)
def test_the_spot_of_the_wall_is_the_nearest(shell, at, turn_deg, spot):
    body = Capsule((*at, 0.0), (*at, 0.0), 0.5, "joint", "1", "", bare=True)
    wall = wall_spot(shell, body, turn_deg)
    assert wall.start[:2] == pytest.approx(spot)
    assert (wall.kind, wall.contact, wall.conductor) == ("shell", "", "")


def near_wall(*, pinout=None, **changes):
    """A tail on contact 3, whose strands are thicker than the wall is far from its cup."""
    hardware = connector({"1": (-2.0, 0.0), "2": (2.0, 0.0), "3": (0.0, 3.0)}).evolve(
        shell=Shell(bore_mm=8), **changes
    )
    sample = plan({"WH": "1", "SH": "3"}, hardware)
    cable = sample.definitions.cables[0]
    fat = cable.evolve(shields=(cable.shields[0].evolve(tail_mm=1.7),))
    definitions = sample.definitions.evolve(cables=(fat,), pinouts=(pinout,) if pinout else ())
    ends = tuple(end.evolve(pinout="p") if pinout and end.id == "B" else end for end in sample.ends)
    return sample.evolve(definitions=definitions, ends=ends)


def at_wall(sample):
    gaps, _ = measured(site(sample), 0.0)
    return sorted({it.first.contact for it in gaps if it.second.kind == "shell"})


def test_a_joint_near_the_wall_is_found():
    assert at_wall(near_wall()) == ["3"]


def test_the_sleeve_of_a_concentric_plug_may_touch_its_shell():
    assert at_wall(near_wall(mating="concentric")) == []


@pytest.mark.parametrize("signal", ["shield", "chassis"])
def test_a_shield_may_touch_the_shell(signal):
    pinout = record("p", "sample", f"3 {signal}", drive="line")
    assert at_wall(near_wall(pinout=pinout)) == []


@pytest.mark.parametrize(("jacket_mm", "found"), [(7.6, ["3"]), (9, [])])
def test_a_tail_counts_where_the_shell_holds_the_jacket(jacket_mm, found):
    """A shell of 8 mm: a thin tail bent aside at the rim of a thicker jacket is not inside it."""
    sample = near_wall()
    cable = sample.definitions.cables[0]
    thin = cable.evolve(jacket_mm=jacket_mm, shields=(cable.shields[0].evolve(tail_mm=0.9),))
    definitions = sample.definitions.evolve(cables=(thin,))
    assert at_wall(sample.evolve(definitions=definitions)) == found


def test_a_flat_shell_turns_with_its_plug():
    """The wall goes round with the joints: one row of cups 1 mm from the side at every turn."""
    flat = Shell(shape="d", width_mm=14, height_mm=5)
    sample = near_wall()
    hardware = connector({"1": (-3.0, 0.0), "2": (0.0, 0.0), "3": (3.0, 0.0)}).evolve(shell=flat)
    definitions = sample.definitions.evolve(connectors=(hardware,))
    each = site(sample.evolve(definitions=definitions))
    near = [each.least_to_wall_mm(each.scene(turn), turn) for turn in (0.0, 30.0, 90.0, -200.0)]
    assert near == pytest.approx([near[0]] * 4)
    assert 0 < near[0] < 2.5
