"""Text as outlines fills the same ground as the letters do."""

import numpy as np
import pytest

from planner.drawing.metrics import text_width
from planner.drawing.outlines import outlined
from planner.drawing.pdf import PdfPage, pdf_bytes
from planner.drawing.primitives import Path, Rect, Style, Text
from planner.drawing.safe_svg import unsafe_parts
from planner.drawing.svg import svg_text
from tests.drawing.rendered import by_poppler, needs_poppler, strange

LINE = Text((1000, 5000), "R1 4.5 mm", 688, "#000000", bold=True)


def points(item):
    return [
        pair
        for _, figures in item.commands
        for pair in zip(figures[::2], figures[1::2], strict=True)
    ]


def box(item):
    xs, ys = zip(*points(item), strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def test_a_line_becomes_one_path_of_its_colour_and_shapes_stay():
    bar = Rect((0, 0), 10, 10, Style(fill="#000000"))
    shape, kept = outlined((LINE, bar))
    assert (type(shape), shape.style.fill, kept) == (Path, "#000000", bar)


def test_capitals_stand_on_the_baseline_and_are_as_high_as_the_face_says():
    # Inter: capitals are 0.727 em high.
    (shape,) = outlined((Text((0, 0), "H", 1000, "#000000"),))
    _, top, _, bottom = box(shape)
    assert (top, bottom) == (pytest.approx(-727, abs=1), pytest.approx(0, abs=1))


@pytest.mark.parametrize(("anchor", "share"), [("start", 0.0), ("middle", 0.5), ("end", 1.0)])
def test_the_anchor_moves_the_line_by_its_width(anchor, share):
    start, moved = (
        outlined((Text((0, 0), "HEAT", 500, "#000000", anchor=one),))[0]
        for one in ("start", anchor)
    )
    shift = share * text_width("HEAT", 500)
    assert box(moved)[0] == pytest.approx(box(start)[0] - shift)


def test_a_quarter_turn_turns_the_line_clockwise():
    (flat,) = outlined((Text((0, 0), "L", 500, "#000000"),))
    (turned,) = outlined((Text((0, 0), "L", 500, "#000000", turn_deg=90),))
    assert points(turned) == [(pytest.approx(-y), pytest.approx(x)) for x, y in points(flat)]


def test_blank_text_draws_nothing():
    assert outlined((Text((0, 0), " ", 500, "#000000"),)) == ()


def test_the_file_is_safe_and_has_no_text():
    text = svg_text(outlined((LINE,)), width=21000, height=29700, unit_mm=0.01)
    assert unsafe_parts(text) == ()
    assert "<text" not in text


@needs_poppler
def test_outlines_cover_what_the_letters_of_the_pdf_cover(tmp_path):
    letters, shapes = (
        by_poppler(pdf_bytes([PdfPage(items, 8000, 8000)]), tmp_path, 300)
        for items in ((LINE,), outlined((LINE,)))
    )
    assert (letters < 128).sum() > 1000
    assert strange(letters, shapes) == 0.0
    assert strange(letters, np.roll(shapes, 6)) > 0.1
