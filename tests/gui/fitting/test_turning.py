"""Turning the plug by hand: gaps are live, the plan changes once, at the end."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication

from planner.app.fitting.turn_box import angle_of
from planner.dryfit.fit import fit_end
from planner.edits.ends import turn_end
from planner.wiring.graph import Wiring
from tests.gui.fitting.conftest import LEFT, NONE, SHIFT


def fit_at(fit, turn_deg, end="A"):
    plan = turn_end(fit.plan, end=end, turn_deg=turn_deg)
    return fit_end(plan, Wiring(plan), end)


def test_a_drag_turns_with_live_gaps_and_is_one_undo_step(cue):
    start = cue.turn()
    cue.round_the_plug(60, release=False)
    shown = cue.state.turn_deg
    assert shown == pytest.approx(start + 60, abs=1.5)
    assert cue.turn() == start
    assert cue.state.fit == fit_at(cue, shown)
    cue.bot.mouseRelease(cue.face, LEFT)
    assert cue.steps() == 1
    assert cue.turn() == shown
    cue.shell.window.acts["undo"].trigger()
    assert cue.turn() == start
    assert cue.state.turn_deg == start


def test_the_figures_follow_the_drag(cue):
    said = set()
    for turn in (20, 110, 200, 290):
        cue.state.turn_to(turn)
        fit = fit_at(cue, turn)
        words = cue.column.figures.crossings.figure.text()
        assert words.startswith(str(len(fit.crossings)) if fit.crossings else "No crossing")
        said.add(words)
    assert len(said) > 1
    assert cue.steps() == 0


def test_escape_puts_the_plug_back(cue):
    start = cue.turn()
    cue.face.setFocus()
    cue.round_the_plug(45, release=False)
    cue.key(Qt.Key.Key_Escape)
    cue.bot.mouseRelease(cue.face, LEFT)
    assert (cue.state.turn_deg, cue.turn(), cue.steps()) == (start, start, 0)


def test_the_dial_turns_the_plug_too(cue):
    start, dial = cue.turn(), cue.column.turn.dial
    cue.round_the_plug(-30, widget=dial)
    assert cue.turn() == pytest.approx(start - 30, abs=3)
    assert cue.steps() == 1


@pytest.mark.parametrize(
    ("key", "modifier", "by_deg"),
    [
        (Qt.Key.Key_Left, NONE, 1),
        (Qt.Key.Key_Right, NONE, -1),
        (Qt.Key.Key_Left, SHIFT, 15),
        (Qt.Key.Key_Right, SHIFT, -15),
    ],
)
def test_arrows_turn_by_a_degree_and_with_shift_by_fifteen(cue, key, modifier, by_deg):
    start = cue.turn()
    cue.face.setFocus()
    cue.key(key, modifier)
    assert cue.turn() == start + by_deg
    assert cue.steps() == 1


def test_a_key_held_down_is_one_undo_step(cue):
    start = cue.turn()
    cue.face.setFocus()
    for _ in range(5):
        cue.bot.keyPress(cue.face, Qt.Key.Key_Left)
    cue.bot.keyRelease(cue.face, Qt.Key.Key_Left)
    assert cue.turn() == start + 5
    assert cue.steps() == 1


def test_home_turns_back_to_nought(cue):
    cue.face.setFocus()
    cue.key(Qt.Key.Key_Home)
    cue.found()
    assert cue.turn() == 0.0
    assert cue.state.turn_deg == 0.0


def test_a_wheel_turns_and_settles_when_it_rests(cue):
    start = cue.turn()
    for _ in range(3):
        wheel(cue.face, 120)
    assert (cue.state.turn_deg, cue.turn()) == (start + 3, start)
    cue.bot.waitUntil(lambda: cue.turn() == start + 3)
    assert cue.steps() == 1


def wheel(widget, clicks, modifiers=NONE):
    at = QPointF(widget.rect().center())
    event = QWheelEvent(
        at, widget.mapToGlobal(at), QPoint(), QPoint(0, clicks), Qt.MouseButton.NoButton,
        modifiers, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(widget, event)


def test_ctrl_and_the_wheel_zoom(cue):
    start = cue.turn()
    wheel(cue.face, 120, Qt.KeyboardModifier.ControlModifier)
    assert cue.face.zoom > 1
    assert cue.state.turn_deg == start
    assert cue.shell.window.head.zoom.text() == f"{round(cue.face.zoom * 100)} %"
    cue.shell.window.acts["fit"].trigger()
    assert cue.face.zoom == 1


def test_a_turn_can_be_typed(cue):
    field = cue.column.turn.angle
    field.setFocus()
    field.selectAll()
    cue.bot.keyClicks(field, "-12,5")
    cue.bot.keyClick(field, Qt.Key.Key_Return)
    cue.found()
    assert cue.turn() == -12.5
    assert field.text() == "\u221212.5"
    assert cue.steps() == 1


def test_what_is_no_angle_is_said_below_the_field(cue):
    field = cue.column.turn.angle
    field.setFocus()
    field.selectAll()
    cue.bot.keyClicks(field, "left")
    cue.bot.keyClick(field, Qt.Key.Key_Return)
    assert cue.column.turn.error.text() == "Type an angle, such as 12.5."
    assert cue.steps() == 0


@pytest.mark.parametrize(
    ("text", "turn_deg"),
    [
        ("30", 30.0),
        ("30\u00b0", 30.0),
        ("\u22127.25", -7.25),
        ("1,5", 1.5),
        ("", None),
        ("1e3", None),
    ],
)
def test_angles_as_they_are_typed(text, turn_deg):
    assert angle_of(text) == turn_deg


def test_a_large_plug_is_turned_as_a_picture_with_every_gap(fit_of):
    loom = fit_of("recording-rack-loom")
    assert loom.state.is_large
    loom.round_the_plug(40, release=False)
    assert loom.state.fit == fit_at(loom, loom.state.turn_deg)
    shown = loom.face.grab().toImage()
    loom.round_the_plug(20, release=False)
    assert loom.face.grab().toImage() != shown
    loom.face.call_off()
    assert loom.steps() == 0
