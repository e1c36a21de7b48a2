"""Colours of the style sheet: WCAG 2.2, 1.4.3 (text 4.5 to 1) and 1.4.11 (controls 3 to 1)."""

import re
from pathlib import Path

import pytest
from PySide6.QtCore import QMargins, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from planner.app.theme import qss
from planner.drawing.looks import DARK, LIGHT, Look, contrast

LOOKS = pytest.mark.parametrize("look", [LIGHT, DARK], ids=lambda look: look.name)
RULE = re.compile(r"([^{}]+)\{([^{}]*)\}")


def rules(look):
    """Yield (selector, {property: value}) of the sheet."""
    text = re.sub(r"/\*.*?\*/", "", qss(look), flags=re.DOTALL)
    for selector, body in RULE.findall(text):
        pairs = (part.split(":", 1) for part in body.split(";") if ":" in part)
        yield selector.strip(), {name.strip(): value.strip() for name, value in pairs}


def colour(value):
    found = re.search(r"#[0-9a-f]{6}", value)
    return found.group() if found else ""


@LOOKS
def test_every_token_is_filled_in(look):
    assert "$" not in qss(look)


@LOOKS
def test_text_on_its_own_ground_has_4_5_to_1(look):
    seen = 0
    for selector, style in rules(look):
        text, ground = colour(style.get("color", "")), colour(style.get("background", ""))
        if text and ground:
            seen += 1
            assert contrast(text, ground) >= 4.5, selector
    assert seen >= 8


@LOOKS
def test_text_on_the_grounds_of_the_window_has_4_5_to_1(look):
    grounds = (look.panel, look.paper, look.bench, look.field, look.accent_wash)
    for selector, style in rules(look):
        text = colour(style.get("color", ""))
        if text and not colour(style.get("background", "")):
            fit = grounds if text in {look.ink, look.ink2} else (look.panel, look.paper)
            on = (look.accent,) if text == look.on_accent else (look.ink,)
            for ground in on if text in {look.on_accent, look.paper} else fit:
                assert contrast(text, ground) >= 4.5, selector


@LOOKS
def test_edges_of_controls_have_3_to_1(look):
    for selector, style in rules(look):
        edge = colour(style.get("border", ""))
        if edge and edge != look.rule:
            assert max(contrast(edge, look.panel), contrast(edge, look.paper)) >= 3, selector
    assert min(contrast(look.edge, ground) for ground in (look.panel, look.paper)) >= 3


@LOOKS
def test_pictures_in_the_sheet_exist_in_the_colour_of_the_look(look):
    (picture,) = re.findall(r'url\("([^"]+)"\)', qss(look))
    assert f'stroke="{look.on_accent}"' in Path(picture).read_text(encoding="utf-8")


def test_light_and_dark_have_the_same_tokens():
    assert all(getattr(DARK, name) is not None for name in Look.__slots__)


def test_light_and_dark_look_different_and_the_choice_is_kept(make_shell, plan_file):
    shell = make_shell(plan_file)
    QApplication.processEvents()  # a panel that has just been filled gets its scroll bar
    light = shell.window.grab().toImage()
    shell.window.acts["theme_dark"].trigger()
    dark = shell.window.grab().toImage()
    assert light != dark
    middle = (600, 880)
    assert light.pixelColor(*middle).name() == LIGHT.bench
    assert dark.pixelColor(*middle).name() == DARK.bench
    assert shell.settings.theme == "dark"
    shell.window.acts["theme_light"].trigger()
    assert shell.window.grab().toImage() == light


def test_the_focus_frame_is_ink_and_square_and_goes_with_the_focus(make_shell, plan_file):
    shell = make_shell(plan_file)
    band = shell.window.band
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_F6)
    band.sheet.setFocus()
    ring = shell.bench.focus.ring
    assert ring is not None
    assert ring.isVisible()
    corner = band.sheet.mapTo(shell.window, band.sheet.rect().topLeft())
    assert ring.geometry().contains(corner)
    assert ring.geometry().size() == band.sheet.size().grownBy(QMargins(4, 4, 4, 4))
    picture = ring.grab().toImage()
    assert picture.pixelColor(0, 0).name() == LIGHT.ink
    band.land.setFocus()
    assert shell.bench.focus.ring is not ring
