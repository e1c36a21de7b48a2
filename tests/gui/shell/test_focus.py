"""The frame of the focus: for what the keyboard came to, and for what is typed in."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from planner.app.panels.guide_draft import Chosen


def click(shell, widget):
    """Press and let go in the window, as a pointer does."""
    at = widget.mapTo(shell.window, widget.rect().center())
    QTest.mouseClick(shell.window.windowHandle(), Qt.MouseButton.LeftButton, pos=at)


def key(code, modifiers=Qt.KeyboardModifier.NoModifier):
    QTest.keyClick(QApplication.focusWidget(), code, modifiers)


def framed(shell):
    """The widget that the frame is round, or None."""
    ring = shell.bench.focus.ring
    if ring is None or not ring.isVisible():
        return None
    focused = QApplication.focusWidget()
    centre = focused.mapTo(focused.window(), QPoint()) + focused.rect().center()
    assert abs((ring.geometry().center() - centre).manhattanLength()) < 8
    return focused


@pytest.fixture
def lead(make_shell, plan_file):
    return make_shell(plan_file)


def test_nothing_is_framed_at_the_start(lead):
    assert QApplication.focusWidget() is lead.bench.canvas
    assert framed(lead) is None


def test_a_click_frames_neither_the_canvas_nor_the_landings(lead):
    for panel in (lead.bench.landings.table, lead.bench.canvas):
        click(lead, panel)
        assert QApplication.focusWidget() is panel
        assert framed(lead) is None


@pytest.mark.parametrize(
    ("code", "modifiers"),
    [
        (Qt.Key.Key_F6, Qt.KeyboardModifier.NoModifier),
        (Qt.Key.Key_L, Qt.KeyboardModifier.ControlModifier),
    ],
)
def test_what_a_key_goes_to_is_framed_until_the_next_click(lead, code, modifiers):
    click(lead, lead.bench.canvas)
    key(code, modifiers)
    assert framed(lead) is lead.bench.landings.table
    click(lead, lead.bench.landings.table)
    assert framed(lead) is None


def test_a_button_that_is_clicked_gives_the_bench_no_frame(make_shell, library):
    shell = make_shell()
    key(Qt.Key.Key_Tab)
    guide = shell.bench.guide
    guide.shapes["one"].click()
    for end in ("A", "B"):
        guide.put(end, Chosen(library.connector("phono-male")))
    guide.offer(library.cable("star-quad"))
    QApplication.processEvents()
    click(shell, guide.start)
    assert QApplication.focusWidget() is shell.bench.canvas
    assert framed(shell) is None


def test_a_held_modifier_is_no_key(lead):
    key(Qt.Key.Key_Shift)
    click(lead, lead.bench.canvas)
    key(Qt.Key.Key_Control)
    lead.bench.landings.table.setFocus()
    assert framed(lead) is None
