"""The palettes against the contrast that WCAG 2.2 asks of text (1.4.3) and lines (1.4.11)."""

import pytest

from planner.drawing.hues import PATTERNS
from planner.drawing.looks import DARK, LIGHT, PRINT, contrast, luminance
from planner.model.cable import COLOUR_WORDS

LOOKS = pytest.mark.parametrize("look", [LIGHT, DARK, PRINT], ids=lambda look: look.name)
SCREENS = pytest.mark.parametrize("look", [LIGHT, DARK], ids=lambda look: look.name)


def test_black_on_white_is_21_to_1_wcag():
    assert round(contrast("#000000", "#ffffff"), 3) == 21


def test_a_mid_grey_has_the_luminance_of_the_srgb_formula():
    # IEC 61966-2-1: (0.5020 + 0.055) / 1.055 to the power of 2.4.
    assert round(luminance("#808080"), 4) == 0.2159


@LOOKS
@pytest.mark.parametrize("ink", ["ink", "ink2"])
@pytest.mark.parametrize("ground", ["paper", "panel", "bench", "field", "stop_wash", "accent_wash"])
def test_text_is_readable_on_every_ground(look, ink, ground):
    assert contrast(getattr(look, ink), getattr(look, ground)) >= 4.5


@LOOKS
@pytest.mark.parametrize("word", ["accent", "stop", "caution", "note", "clear"])
@pytest.mark.parametrize("ground", ["paper", "panel"])
def test_coloured_words_are_readable(look, word, ground):
    assert contrast(getattr(look, word), getattr(look, ground)) >= 4.5


@LOOKS
def test_text_on_the_accent_and_on_a_caution_is_readable(look):
    assert contrast(look.on_accent, look.accent) >= 4.5
    assert contrast(look.caution_ink, look.caution_fill) >= 4.5


@LOOKS
@pytest.mark.parametrize("ground", ["paper", "panel", "bench"])
def test_control_edges_are_visible(look, ground):
    assert contrast(look.edge, getattr(look, ground)) >= 2.99


@LOOKS
@pytest.mark.parametrize("line", ["casing", "brass_edge", "tin_edge"])
def test_outlines_are_visible_on_the_insulator(look, line):
    if (look.name, line) == ("dark", "tin_edge"):
        assert contrast(look.tin, look.insulator) >= 3
    assert contrast(getattr(look, line), look.insulator) >= 3


# The figures that the palette states, ink on ground, light and dark.
@pytest.mark.parametrize(
    ("ink", "ground", "light", "dark"),
    [
        ("ink", "paper", 15.8, 13.6),
        ("ink", "bench", 12.5, 16.1),
        ("ink2", "paper", 7.0, 7.6),
        ("ink2", "bench", 5.6, 9.0),
        ("accent", "panel", 6.8, 9.0),
        ("on_accent", "accent", 7.5, 9.4),
        ("stop", "panel", 6.7, 7.7),
        ("caution", "panel", 6.4, 9.7),
        ("note", "panel", 6.9, 8.7),
        ("clear", "panel", 5.9, 9.0),
        ("casing", "insulator", 14.3, 12.2),
        ("bore", "brass", 6.8, 8.5),
    ],
)
def test_stated_ratios_are_true(ink, ground, light, dark):
    found = [contrast(getattr(look, ink), getattr(look, ground)) for look in (LIGHT, DARK)]
    assert found == [pytest.approx(light, abs=0.06), pytest.approx(dark, abs=0.06)]


@LOOKS
@pytest.mark.parametrize("code", sorted(COLOUR_WORDS))
def test_a_core_stands_off_the_paper_or_its_casing_carries_it(look, code):
    body, _ = look.core(code)
    carried = contrast(look.casing, body) >= 3 and contrast(look.casing, look.paper) >= 3
    assert carried or contrast(body, look.paper) >= 3


@LOOKS
@pytest.mark.parametrize("code", sorted(COLOUR_WORDS))
def test_hatch_shows_on_its_core(look, code):
    assert contrast(*look.core(code)) >= 3


@LOOKS
def test_every_colour_of_iec_60757_has_a_hue_and_a_hatch(look):
    assert set(look.cores) == set(PATTERNS) == set(COLOUR_WORDS)


def test_no_two_hues_share_a_hatch():
    assert len(set(PATTERNS.values())) == len(PATTERNS)


@SCREENS
def test_no_two_hues_share_a_body(look):
    bodies = [body for body, _ in look.cores.values()]
    assert len(set(bodies)) == len(bodies)


def test_ink_shows_on_every_printed_body_but_black():
    dark = [code for code, (body, _) in PRINT.cores.items() if contrast("#000000", body) < 4.5]
    assert dark == ["BK"]
