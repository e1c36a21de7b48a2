"""Best turn: off the UI thread, one undo step, called off for good, dropped when it is stale."""

import threading
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QStyle

from planner.app.canvas.tools import drag_core
from planner.app.fitting import fit_acts, glide
from planner.app.fitting.words import swaps_said
from planner.dryfit.turning import best_turn
from planner.dryfit.watch import Cancelled
from planner.edits.turning import apply_turning
from planner.wiring.graph import Wiring
from tests.gui.fitting.conftest import ALT, CTRL


class Slow:
    """Stands where the search stands: it waits until it is let on, and hears that it is off."""

    def __init__(self, monkeypatch):
        self.go, self.off = threading.Event(), threading.Event()
        self.threads = []
        monkeypatch.setattr(fit_acts, "best_turn", self)

    def __call__(self, plan, wiring, end, *, free, progress, cancelled):
        self.threads.append(threading.current_thread())
        progress(0.5)
        while not self.go.wait(0.005):
            if cancelled():
                self.off.set()
                raise Cancelled
        return best_turn(plan, wiring, end, free=free)


@pytest.fixture
def slow(monkeypatch):
    made = Slow(monkeypatch)
    yield made
    made.go.set()


def spoil(fit):
    """Turn the plug to where leads cross."""
    fit.acts.set_turn(fit.turn() + 180)
    fit.found()
    fit.workbench.undo_stack.clear()
    assert fit.state.fit.crossings


def test_the_way_by_keyboard_alone(make_shell, qtbot):
    from tests.gui.fitting.conftest import Fit  # noqa: PLC0415 - of this alone

    shell = make_shell(demo=True)
    fit = Fit(qtbot, shell)
    fit.key(Qt.Key.Key_2, ALT)
    assert shell.bench.stack.currentWidget() is fit.view
    spoil(fit)
    before = fit.plan
    fit.key(Qt.Key.Key_B)
    fit.found()
    qtbot.waitUntil(lambda: fit.steps() == 1)
    assert fit.state.fit.crossings == ()
    assert fit.plan == apply_turning(before, turning=best_turn(before, Wiring(before), "A"))
    assert "Proved" in fit.column.said.text()
    fit.key(Qt.Key.Key_Z, CTRL)
    assert fit.plan == before
    fit.key(Qt.Key.Key_1, ALT)
    assert shell.bench.stack.currentWidget() is shell.bench.canvas


def test_it_runs_off_the_ui_thread_and_shows_its_progress(cue, slow):
    spoil(cue)
    cue.acts.best_turn()
    row = cue.column.turn.progress
    cue.bot.waitUntil(row.isVisible)
    cue.bot.waitUntil(lambda: row.bar.share == 0.5)
    assert row.bar.accessibleName() == "50 % done"
    assert not cue.column.turn.best.isEnabled()
    assert slow.threads[0] is not threading.main_thread()
    slow.go.set()
    cue.found()
    assert row.isHidden()
    assert cue.steps() == 1


def test_cancel_calls_it_off_and_nothing_changes(cue, slow):
    spoil(cue)
    before = cue.plan
    cue.acts.best_turn()
    row = cue.column.turn.progress
    cue.bot.waitUntil(row.isVisible)
    cue.bot.mouseClick(row.cancel, Qt.MouseButton.LeftButton)
    assert slow.off.wait(2)
    assert not cue.acts.seeker.busy
    slow.go.set()
    cue.bot.wait(50)
    assert cue.plan is before
    assert row.isHidden()
    assert cue.column.said.text() == "Best turn: called off, nothing was changed."


def test_escape_calls_it_off_too(cue, slow):
    cue.face.setFocus()
    cue.key(Qt.Key.Key_B)
    assert cue.acts.seeker.busy
    cue.key(Qt.Key.Key_Escape)
    assert not cue.acts.seeker.busy
    assert slow.off.wait(2)


def test_a_result_for_a_plan_that_has_changed_is_dropped(cue, slow):
    spoil(cue)
    cue.acts.best_turn()
    cue.workbench.lift("A", "BU")
    after = cue.plan
    slow.go.set()
    slow.threads[0].join(5)
    cue.bot.wait(30)
    assert cue.plan is after
    assert cue.steps() == 1


def test_leaving_the_view_calls_it_off(cue, slow):
    cue.acts.best_turn()
    cue.shell.window.acts["wire"].trigger()
    assert slow.off.wait(2)
    assert not cue.acts.seeker.busy


def test_the_plug_goes_round_to_its_place_the_short_way(cue, monkeypatch):
    monkeypatch.setattr(glide, "animated", lambda: True)
    cue.workbench.undo_stack.clear()
    seen = []
    cue.state.turned.connect(lambda: seen.append(cue.state.turn_deg))
    cue.acts.set_turn(cue.turn() + 90)
    assert cue.acts.glide.running
    cue.found()
    assert len(seen) > 2
    assert all(19 <= turn <= 111 for turn in seen)
    assert cue.state.turn_deg == cue.turn() == 110
    assert cue.steps() == 1


def test_a_hand_takes_the_plug_out_of_its_way(cue, monkeypatch):
    monkeypatch.setattr(glide, "animated", lambda: True)
    cue.acts.set_turn(cue.turn() + 90)
    assert cue.acts.glide.running
    cue.state.turn_to(33)
    assert not cue.acts.glide.running
    cue.bot.wait(60)
    assert cue.state.turn_deg == 33


def test_with_reduced_motion_it_is_there_at_once(cue, monkeypatch):
    monkeypatch.setattr(glide, "animated", lambda: False)
    cue.acts.set_turn(100)
    assert not cue.acts.glide.running
    assert cue.state.turn_deg == 100


def test_reduced_motion_is_what_the_style_says(cue):
    hint = QStyle.StyleHint.SH_Widget_Animation_Duration
    style = cue.view.style()
    assert drag_core.animated() is (style.styleHint(hint) > 0)


def test_any_core_of_the_same_make_is_asked_for_by_the_check_box(cue, slow, monkeypatch):
    asked = []

    def remember(plan, wiring, end, *, free, progress, cancelled):
        asked.append(free)

    monkeypatch.setattr(fit_acts, "best_turn", remember)
    cue.acts.best_turn()
    cue.found()
    cue.column.turn.free.click()
    cue.acts.best_turn()
    cue.found()
    assert asked == [False, True]


def test_swaps_are_told_in_words(fit_of):
    loom = fit_of("recording-rack-loom")
    turning = best_turn(loom.plan, loom.workbench.wiring, "A", free=True)
    assert turning.groups, "the pairs of the loom are alike"
    said = swaps_said(loom.plan, turning)
    assert said.count(" takes the place of pair ") == len(turning.groups)
    each = swaps_said(loom.plan, replace(turning, groups=()))
    assert each.count(" goes to ") == len(turning.swaps)


def test_a_search_that_fails_is_told_and_the_view_lives(cue, monkeypatch, qtbot):
    def fails(*_args, **_more):
        raise ArithmeticError("odd")

    monkeypatch.setattr(fit_acts, "best_turn", fails)
    with qtbot.captureExceptions() as caught:
        cue.acts.best_turn()
        cue.bot.waitUntil(lambda: bool(caught))
    assert caught[0][0] is ArithmeticError
    assert not cue.acts.seeker.busy
