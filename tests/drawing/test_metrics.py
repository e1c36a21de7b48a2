"""Text widths against the bundled font files themselves."""

import json

import pytest
from fontTools.ttLib import TTFont

from planner.data import data_dir
from planner.drawing.metrics import CHARACTERS, clipped, text_width, wrapped
from planner.drawing.primitives import CAP_HEIGHT

FONTS = data_dir("resources") / "fonts"


def font(bold):
    return TTFont(FONTS / ("Inter-Bold.otf" if bold else "Inter-Regular.otf"))


@pytest.mark.parametrize("bold", [False, True])
def test_each_advance_is_the_font_files(bold):
    file = font(bold)
    names, widths, em = file.getBestCmap(), file["hmtx"], file["head"].unitsPerEm
    wrong = [
        mark
        for mark in CHARACTERS
        if abs(text_width(mark, 1000, bold) - 1000 * widths[names[ord(mark)]][0] / em) > 0.01
    ]
    assert wrong == []


@pytest.mark.parametrize("bold", [False, True])
def test_cap_height_is_the_font_files(bold):
    file = font(bold)
    assert round(file["OS/2"].sCapHeight / file["head"].unitsPerEm, 3) == CAP_HEIGHT


def test_table_has_just_the_listed_characters():
    tables = json.loads((FONTS / "inter-advances.json").read_text(encoding="utf-8"))
    assert [set(table) for table in tables.values()] == [set(CHARACTERS)] * 2


def test_bold_is_wider_and_size_scales():
    assert text_width("SOLDER", 10, bold=True) > text_width("SOLDER", 10)
    assert text_width("SOLDER", 20) == pytest.approx(2 * text_width("SOLDER", 10))


def test_an_unknown_character_counts_as_the_widest():
    assert text_width("\u4e00", 10) == max(text_width(mark, 10) for mark in CHARACTERS)


def test_wrapping_keeps_every_word_and_the_width():
    text = "Twist the shield to one tail and push its sleeve on"
    lines = wrapped(text, 13, 120)
    assert " ".join(lines) == text
    assert all(text_width(line, 13) <= 120 for line in lines)


def test_a_word_too_long_is_broken():
    lines = wrapped("x" * 200, 13, 100)
    assert "".join(lines) == "x" * 200
    assert all(text_width(line, 13) <= 100 for line in lines)


def test_nothing_wraps_to_nothing():
    assert wrapped("  ", 13, 100) == ()


def test_clipping_ends_in_an_ellipsis_and_fits():
    cut = clipped("a very long connector title", 13, 90)
    assert cut.endswith("\u2026")
    assert text_width(cut, 13) <= 90
    assert clipped("short", 13, 90) == "short"
