"""The picture of a fit: what is in it, and that it says the same as the answer."""

import math

import pytest

from planner.drawing.looks import DARK, LIGHT, PRINT
from planner.drawing.packing import fit_picture, within
from planner.drawing.primitives import Circle, Rect, Text
from planner.dryfit.wires import FitLine, into_bore, onto_tab
from planner.model.cable import Core, Shield
from planner.model.place import Place

PARTS = {
    name: Core(id=name, colours=colours, strands=7, strand_mm=0.1, insulation_mm=1, x_mm=0, y_mm=0)
    for name, colours in (("RD", ("RD",)), ("GN", ("GN",)), ("WHBU", ("WH", "BU")))
} | {"SH": Shield(id="SH", kind="braid", tail_mm=0.8)}
LOOKS = {"light": (LIGHT, 264, 13.0), "dark": (DARK, 264, 13.0), "print": (PRINT, 6000, 344.0)}


def line(bore_mm, diameters=(0.6, 0.5, 0.7), wires=("RD", "GN", "SH")):
    inside = into_bore(diameters, bore_mm)
    return FitLine("strands", Place("A", "S"), "cup of S", inside, wires, diameters)


def drawn(shown, look="light"):
    given, width, size = LOOKS[look]
    return fit_picture(
        shown, PARTS, corner=(0, 0), width=width, height=width / 2, size=size, look=given
    )


def texts(items):
    return [item.text for item in items if isinstance(item, Text)]


def circles(items):
    return [item for item in items if isinstance(item, Circle)]


@pytest.mark.parametrize("look", LOOKS)
def test_a_proof_shows_every_wire_inside_the_bore(look):
    items = circles(drawn(line(1.4), look))
    ground, wires = items[0], [item for item in items[1:-1] if item.style.fill]
    assert len(wires) == 3
    for wire in wires:
        assert math.dist(wire.centre, ground.centre) + wire.radius <= ground.radius * (1 + 1e-9)
    for one, other in ((0, 1), (0, 2), (1, 2)):
        apart = math.dist(wires[one].centre, wires[other].centre)
        assert apart >= (wires[one].radius + wires[other].radius) * (1 - 1e-9)


@pytest.mark.parametrize("look", LOOKS)
def test_figures_and_verdict_stand_beside_it_in_the_box(look):
    _, width, _ = LOOKS[look]
    items = drawn(line(1.4), look)
    assert texts(items)[-3:] == ["needs 1.32 mm", "bore 1.4 mm", "fits, 0.08 mm to spare"]
    assert all(0 < item.at[0] < width for item in items if isinstance(item, Text))


def test_wires_are_lettered_where_there_is_room_and_hatched():
    assert {"RD", "GN", "SH"} <= set(texts(drawn(line(1.4))))
    many = tuple(0.05 for _ in range(60))
    assert "RD" not in texts(drawn(line(3.0, many, ("RD",) * 60)))


def test_a_no_shows_the_bound_that_fails_as_a_broken_circle_round_the_bore():
    items = circles(drawn(line(1.1)))
    bore, bound = items[-2:]
    assert bound.style.dash
    assert bound.style.stroke == LIGHT.stop
    assert bound.radius / bore.radius == pytest.approx(line(1.1).fit.least_mm / 1.1)


def test_a_second_colour_is_a_band():
    items = drawn(line(1.5, (1.2,), ("WHBU",)))
    assert LIGHT.core("BU")[0] in {item.style.fill for item in items if isinstance(item, Rect)}


def test_wires_on_a_post_stand_side_by_side_on_it():
    shown = FitLine(
        "strands", Place("A", "S"), "post of S", onto_tab([0.6, 0.5], 0.8), ("RD", "GN"), (0.6, 0.5)
    )
    items = drawn(shown)
    post = next(item for item in items if isinstance(item, Rect))
    wires = [item for item in circles(items) if item.style.fill]
    assert [wire.centre[1] + wire.radius for wire in wires] == pytest.approx([post.corner[1]] * 2)
    assert texts(items)[-1] == "0.3 mm over the edge"


def test_everything_in_the_picture_belongs_to_its_fit():
    owners = {item.owner for item in drawn(line(1.4)) if not isinstance(item, Text)}
    assert owners == {"fit/strands/A/S"}


def test_a_line_is_cut_at_a_circle():
    assert list(within(((-5, 0), (5, 0)), (0, 0), 2)) == [((-2, 0), (2, 0))]
    assert list(within(((-5, 3), (5, 3)), (0, 0), 2)) == []
    assert list(within(((0, 0), (0, 0)), (0, 0), 2)) == []
