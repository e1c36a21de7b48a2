"""The dry fit of the demo lead in the real window: once by keyboard alone, once by mouse."""

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest

from planner.app.dialogs.workmanship import WorkmanshipDialog
from planner.dryfit.fit import fit_end
from planner.dryfit.turning import best_turn
from planner.wiring.graph import Wiring
from tests.e2e.hands import CTRL, ENTER, LEFT, NONE

ALT = Qt.KeyboardModifier.AltModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier


def fit_of(hands):
    plan = hands.plan()
    return fit_end(plan, Wiring(plan), "A")


def open_demo(hands):
    hands.shell.window.acts["demo"].trigger()
    hands.settle()


def wait_for(hands, done):
    for _ in range(500):
        hands.settle()
        if done():
            return
        QTest.qWait(10)
    raise AssertionError("it never came")


def still(hands):
    acts = hands.shell.bench.fitting.acts
    wait_for(hands, lambda: not acts.seeker.busy and not acts.glide.running)


def test_by_keyboard_alone(hands):
    open_demo(hands)
    hands.key(Qt.Key.Key_2, modifiers=ALT)
    hands.key(*[Qt.Key.Key_Left] * 12, modifiers=SHIFT)  # 180 degrees away: leads cross
    spoiled = hands.plan()
    assert fit_of(hands).crossings
    hands.key(Qt.Key.Key_B)
    wait_for(hands, lambda: hands.plan() is not spoiled)
    still(hands)
    turning = best_turn(spoiled, Wiring(spoiled), "A")
    assert hands.plan().end_by_id["A"].turn_deg == turning.turn_deg
    assert fit_of(hands).crossings == ()
    hands.key(Qt.Key.Key_Z, modifiers=CTRL)
    assert hands.plan() == spoiled
    hands.key(Qt.Key.Key_Down, Qt.Key.Key_S)
    joint = fit_of(hands).order[0]
    assert [it.contact for it in hands.plan().landings if it.sleeved] == [joint]
    hands.key(Qt.Key.Key_Down, modifiers=ALT)
    assert fit_of(hands).order[1] == joint
    hands.key(Qt.Key.Key_1, modifiers=ALT)
    assert hands.shell.bench.stack.currentWidget() is hands.canvas


def test_by_mouse(hands):
    open_demo(hands)
    hands.click(hands.shell.window.head.views["dry_fit"])
    view = hands.shell.bench.fitting
    start = hands.plan()
    turn_by_hand(hands, view.face)
    assert hands.plan().end_by_id["A"].turn_deg != start.end_by_id["A"].turn_deg
    hands.click(hands.shell.window.band.undo)
    assert hands.plan() == start
    x, y = view.face.stand.joints["R2"]
    hands.click(view.face, QPoint(round(x), round(y)))
    assert hands.shell.bench.workbench.selection.contact == "R2"
    hands.click(view.column.turn.best)
    still(hands)
    assert "Proved" in view.column.said.text()


def turn_by_hand(hands, face):
    """Take the plug beside its middle and carry it a quarter round."""
    centre = QPoint(*(round(part) for part in face.stand.centre))
    window, at = hands._spot(face, centre + QPoint(0, -150))
    to = face.mapTo(face.window(), centre + QPoint(-150, 0))
    QTest.mouseMove(window, at)
    QTest.mousePress(window, LEFT, NONE, at)
    for step in range(1, 9):
        QTest.mouseMove(window, at + (to - at) * (step / 8))
    QTest.mouseRelease(window, LEFT, NONE, to)
    hands.settle()


def test_workmanship_is_chosen_in_its_dialog(hands):
    open_demo(hands)

    def choose(dialog):
        dialog.choices["shield_joint"].setFocus()
        hands.key(Qt.Key.Key_Down)
        hands.key(ENTER)

    begin = hands.shell.window.acts["workmanship"].trigger
    hands.in_dialog(WorkmanshipDialog, choose, begin)
    assert hands.plan().workmanship.shield_joint == "first"
    assert fit_of(hands).order[0] == "S"
