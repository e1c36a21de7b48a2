"""Samples for the rules of threading. All figures are invented."""

from planner.model.plan import PartUse
from tests.checks.samples import bad, good
from tests.checks.samples_fit import line, with_part

SHRINK = {"kind": "heat-shrink", "bore_mm": 9.5, "recovered_mm": 4.75, "outside_mm": 10.3}


def short(length_mm):
    """Return a line of this length with heat-shrink of 20 mm at A."""
    plan = with_part(line(), **SHRINK)
    (section,) = plan.sections
    return plan.evolve(sections=(section.evolve(length_mm=length_mm),))


@bad("no-room-to-park")
def shrink_on_a_short_line():
    """Heat-shrink of 20 mm, which waits 50 mm from the iron, on a line of 60 mm."""
    return short(60)


@good("no-room-to-park")
def shrink_on_a_line_just_long_enough():
    """The same heat-shrink on a line of 70 mm."""
    return short(70)


@bad("threaded-too-late")
def boots_the_wrong_way_round():
    """The boot of B is planned from A, where the boot of A would shut it out: both are alike."""
    plan = with_part(line(), bore_mm=8, outside_mm=12)
    far = PartUse(id="boot-b", part="part", at="A", comes_from="B")
    near = PartUse(id="boot-a", part="part", at="B", comes_from="A")
    return plan.evolve(parts=(near, far))
