"""Buttons at every size of the window: words in full, or an icon with a tip and a name."""

import pytest
from PySide6.QtWidgets import QPushButton

from planner.data import data_dir

SIZES = [(640, 400), (720, 450), (1024, 700), (1280, 800), (1440, 900)]


def buttons(window):
    holders = window.regions.holders
    shown = [holders[name] for name in ("band", "head", "bar", "rail", "landings_bar")]
    return [it for holder in shown for it in holder.findChildren(QPushButton) if it.isVisible()]


@pytest.fixture
def spoiled(make_shell):
    return make_shell(data_dir("resources") / "demo" / "spoiled-cue-desk.json")


@pytest.mark.parametrize("size", SIZES)
def test_a_button_shows_its_words_in_full_or_an_icon(spoiled, size, qtbot):
    spoiled.window.resize(*size)
    qtbot.waitUntil(lambda: spoiled.window.regions.width() == size[0])
    found = buttons(spoiled.window)
    assert len(found) > 8
    for button in found:
        assert button.text() or not button.icon().isNull()
        if button.text():
            assert button.width() >= button.sizeHint().width()
        assert button.toolTip() or button.text()
        assert button.accessibleName() or button.text()


def test_in_one_column_landing_by_signal_is_an_icon_and_go_is_a_word(spoiled, qtbot):
    spoiled.window.resize(720, 450)
    band = spoiled.window.band
    qtbot.waitUntil(lambda: band.land.text() == "")
    assert band.land.isVisible()
    assert not band.land.icon().isNull()
    assert band.land.accessibleName() == "Land by signal"
    assert band.go.text() == "Go"
    spoiled.window.resize(1440, 900)
    qtbot.waitUntil(lambda: band.land.text() == "Land by signal")
    assert band.land.icon().isNull()


def test_the_plan_is_told_in_the_band_or_in_the_corner_and_never_twice(spoiled, qtbot):
    window = spoiled.window
    for width, in_band in ((1440, True), (1280, False)):
        window.resize(width, 900)
        qtbot.waitUntil(lambda wide=width: window.band.width() == wide)
        assert window.band.plan_title.isVisible() is in_band
        assert ("Cue desk" in window.corner_label.text()) is not in_band
