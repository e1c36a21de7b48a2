import pytest

from planner.drawing.cores import (
    core_stroke,
    joint_radius_mm,
    lead,
    plate,
    plate_width,
    tail_stroke,
)
from planner.drawing.looks import DARK, LIGHT, PRINT
from planner.drawing.primitives import Circle, Path, Poly, Rect, Text
from planner.model.cable import COLOUR_WORDS
from tests.drawing.samples import BRAID, core

LINE = ((0.0, 0.0), (120.0, 0.0))


def strokes(items):
    return [(item.style.stroke, item.style.width) for item in items if isinstance(item, Poly)]


@pytest.mark.parametrize("look", [LIGHT, DARK], ids=lambda look: look.name)
def test_casing_then_body_at_true_width_then_hatch(look):
    items = core_stroke(LINE, core("RD"), scale=20, look=look)
    body, hatch = look.core("RD")
    assert strokes(items) == [(look.casing, 16 + 2.6), (body, 16)]
    assert [item.style.stroke for item in items if isinstance(item, Path)] == [hatch]


def lines_of(items):
    (path,) = [item for item in items if isinstance(item, Path)]
    return path.commands


def pairs(lines):
    return zip(lines[::2], lines[1::2], strict=True)


def test_red_is_hatched_across_and_blue_along():
    across = lines_of(core_stroke(LINE, core("RD"), scale=20, look=LIGHT))
    assert {round(start[1][0] - stop[1][0]) for start, stop in pairs(across)} == {0}
    along = lines_of(core_stroke(LINE, core("BU"), scale=20, look=LIGHT))
    assert {round(figures[1], 2) for _, figures in along} == {-3.52, 3.52}


def test_green_slants_as_engravers_have_it_and_violet_the_other_way():
    def leans(code):
        lines = lines_of(core_stroke(LINE, core(code), scale=20, look=LIGHT))
        return {(b[0] - a[0]) * (b[1] - a[1]) > 0 for (_, a), (_, b) in pairs(lines)}

    assert leans("GN") == {True}  # from the upper left to the lower right, y down
    assert leans("VT") == {False}


@pytest.mark.parametrize("code", sorted(set(COLOUR_WORDS) - {"WH"}))
@pytest.mark.parametrize("scale", [8, 10, 30])
def test_hatch_stays_inside_the_body(code, scale):
    items = core_stroke(LINE, core(code), scale=scale, look=LIGHT)
    half = 0.8 * scale / 2
    for _, figures in lines_of(items):
        assert abs(figures[1]) <= half
        assert -0.01 <= figures[0] <= 120.01


def test_green_yellow_is_green_s_slant_in_pairs_of_yellow():
    items = core_stroke(LINE, core("GNYE"), scale=20, look=LIGHT)
    single = lines_of(core_stroke(LINE, core("GN"), scale=20, look=LIGHT))
    starts = [start[1][0] for start, _ in pairs(lines_of(items))]
    assert {round(b - a, 1) for a, b in zip(starts[::2], starts[1::2], strict=True)} == {3.4}
    assert {(b[0] - a[0]) * (b[1] - a[1]) > 0 for (_, a), (_, b) in pairs(single)} == {True}
    assert {(b[0] - a[0]) * (b[1] - a[1]) > 0 for (_, a), (_, b) in pairs(lines_of(items))} == {
        True
    }


def test_white_is_plain_and_thin_cores_have_no_hatch():
    assert not [
        i for i in core_stroke(LINE, core("WH"), scale=20, look=LIGHT) if isinstance(i, Path)
    ]
    assert not [
        i for i in core_stroke(LINE, core("RD"), scale=7, look=LIGHT) if isinstance(i, Path)
    ]


def test_below_nine_px_one_line_is_enough():
    along = lines_of(core_stroke(LINE, core("BU"), scale=10, look=LIGHT))
    assert {figures[1] for _, figures in along} == {0.0}


def test_a_second_colour_is_a_band_a_third_of_the_width():
    items = core_stroke(LINE, core("WH", "RD"), scale=20, look=LIGHT)
    assert strokes(items)[-1] == (LIGHT.core("RD")[0], pytest.approx(16 / 3))


def test_on_paper_the_second_colour_is_dashed_and_nothing_is_hatched():
    items = core_stroke(LINE, core("RD", "BK"), scale=800, look=PRINT)
    assert not [item for item in items if isinstance(item, Path)]
    assert items[-1].style.dash == (320, 128)
    assert items[-1].style.width == pytest.approx(230.4)


def test_a_lead_is_bare_for_its_last_millimetre():
    items = lead(LINE, core("WH"), scale=20, look=LIGHT, bare_mm=1.0)
    bodies = [item for item in items if isinstance(item, Poly) and item.style.stroke == "#ffffff"]
    assert max(x for x, _ in bodies[0].points) == 100


def test_only_a_landed_lead_has_a_joint():
    loose = lead(LINE, core(), scale=20, look=LIGHT)
    landed = lead(LINE, core(), scale=20, look=LIGHT, joint_on_mm=1.0)
    assert [item.radius for item in loose if isinstance(item, Circle)] == []
    assert [item.radius for item in landed if isinstance(item, Circle)] == [0.42 * 20]
    assert joint_radius_mm(1.0) == 0.42


def test_a_short_lead_still_shows_insulation():
    items = lead(((0, 0), (10, 0)), core("RD"), scale=20, look=LIGHT, bare_mm=1.0)
    assert any(item.style.stroke == LIGHT.core("RD")[0] for item in items if isinstance(item, Poly))


def test_a_sleeved_tail_is_outlined_but_for_its_tip():
    def outlined(sleeved):
        items = tail_stroke(LINE, BRAID, scale=20, look=LIGHT, sleeved=sleeved)
        return [i for i in items if isinstance(i, Poly) and i.style.stroke == LIGHT.casing]

    assert outlined(False) == []
    assert max(x for x, _ in outlined(True)[0].points) < 120


def test_a_plate_names_core_and_signal_and_fits_its_text():
    items = plate((50, 50), "WHRD", "L\u2212", look=LIGHT, lit=True, selected=True)
    assert [item.text for item in items if isinstance(item, Text)] == ["WHRD", "L\u2212"]
    (box,) = [item for item in items if isinstance(item, Rect)]
    assert (box.width, box.height) == (plate_width("WHRD", "L\u2212"), 18)
    assert (box.style.stroke, box.style.width) == (LIGHT.accent, 2)
