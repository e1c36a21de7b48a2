"""Marks of faults on a face: each kind by a shape of its own, within reach of its contacts."""

import math

import pytest

from planner.drawing.looks import DARK, LIGHT, PRINT
from planner.drawing.primitives import Circle, Poly, Text
from planner.drawing.proving_face import MOST_ARROWS, Spot, fault_marks
from planner.proving.diagnosing import Fault

CENTRE = (100.0, 100.0)
SPOTS = {
    name: Spot((100 + 60 * math.cos(turn), 100 + 60 * math.sin(turn)), 10.0)
    for name, turn in (("T", 0.3), ("R1", 1.9), ("R2", 3.4), ("S", 4.9))
}


def contacts(*names, end="A"):
    return tuple((end, name) for name in names)


def fault(kind, *names, moves=(), figure=""):
    steps = tuple((("A", one), ("A", other)) for one, other in moves)
    return Fault(kind, "A", contacts(*names), "", "", ("A",), moves=steps, figure=figure)


def drawn(*faults, end="A", look=LIGHT):
    return fault_marks(faults, end, SPOTS, CENTRE, look)


BRIDGE = fault("bridge", "T", "R1")
EXCHANGE = fault("exchange", "T", "R1", moves=(("T", "R1"), ("R1", "T")))
OPEN = fault("open", "R2")
HIGH = fault("high-joint", "S", figure="0.6 Ω")
LINK = fault("link-open", "T", "S")


def shapes(items):
    """Return what is drawn without its colours: kinds, points, dashes."""
    return [
        (type(it).__name__, getattr(it, "points", getattr(it, "centre", None)), dash_of(it))
        for it in items
    ]


def dash_of(item):
    return item.style.dash if hasattr(item, "style") else ()


def test_a_bridge_is_a_dashed_link_with_a_stop():
    items = drawn(BRIDGE)
    link = [it for it in items if isinstance(it, Poly) and it.style.dash]
    assert len(link) == 1
    assert len([it for it in items if isinstance(it, Poly) and len(it.points) == 8]) == 1


def test_an_exchange_is_an_arrow_each_way_and_the_two_lie_apart():
    heads = [it for it in drawn(EXCHANGE) if isinstance(it, Poly) and it.closed]
    assert [len(head.points) for head in heads] == [3, 3]
    assert math.dist(heads[0].points[0], heads[1].points[0]) > 10


def test_an_open_joint_is_a_lead_broken_off_outside_its_contact():
    lines = [it for it in drawn(OPEN) if isinstance(it, Poly)]
    away = [math.dist(point, SPOTS["R2"].at) for line in lines for point in line.points]
    assert min(away) > SPOTS["R2"].reach
    assert next(it for it in drawn(OPEN) if isinstance(it, Circle)).style.dash


def test_a_high_joint_is_a_double_ring_with_its_figure():
    rings = [it for it in drawn(HIGH) if isinstance(it, Circle)]
    assert [ring.centre for ring in rings] == [SPOTS["S"].at] * 2
    assert [it.text for it in drawn(HIGH) if isinstance(it, Text)] == ["0.6 Ω"]
    assert min(it.size for it in drawn(HIGH) if isinstance(it, Text)) >= 12


def test_no_two_kinds_look_alike_without_colour():
    alike = [shapes(drawn(it)) for it in (BRIDGE, EXCHANGE, OPEN, HIGH, LINK)]
    assert all(one != other for at, one in enumerate(alike) for other in alike[at + 1 :])


def test_many_moves_are_rings_without_arrows():
    few = fault("mirrored", *SPOTS, moves=(("T", "S"), ("S", "T")))
    many = fault("mirrored", *SPOTS, moves=(("T", "S"),) * (MOST_ARROWS + 1))
    assert any(isinstance(it, Poly) for it in drawn(few))
    assert {type(it) for it in drawn(many)} == {Circle}


def test_another_end_and_contacts_that_are_not_drawn_get_no_mark():
    assert drawn(BRIDGE, end="B") == ()
    assert drawn(fault("open", "X")) == ()
    assert drawn(fault("bridge", "T", "X"))


@pytest.mark.parametrize("look", [LIGHT, DARK, PRINT])
def test_marks_are_owned_and_lines_keep_the_look_s_width(look):
    items = drawn(BRIDGE, HIGH, look=look)
    assert {it.owner for it in items} == {"fault/bridge", "fault/high-joint"}
    link = next(it for it in items if isinstance(it, Poly) and it.style.dash)
    assert link.style.width == pytest.approx(6 * look.line)


def test_rings_of_crowded_contacts_do_not_cross():
    row = {str(it): Spot((20.0 * it, 100.0), 9.0) for it in range(6)}
    marks = fault_marks([fault("shifted", *row)], "A", row, CENTRE, LIGHT)
    radii = [it.radius for it in marks if isinstance(it, Circle)]
    assert max(radii) < 10
