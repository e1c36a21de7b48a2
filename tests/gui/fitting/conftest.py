"""The whole window in its dry fit, on a demo plan."""

from math import cos, radians, sin

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtWidgets import QApplication

from planner.data import data_dir
from tests.gui.shell.conftest import answers, library, make_shell

__all__ = ["answers", "library", "make_shell"]

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
SHIFT, CTRL, ALT = (
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.ControlModifier,
    Qt.KeyboardModifier.AltModifier,
)


def demo(name):
    return data_dir("resources") / "demo" / f"{name}.json"


class Fit:
    """The view with the moves of a hand and the keys of a keyboard."""

    def __init__(self, qtbot, shell):
        self.bot, self.shell = qtbot, shell
        self.view = shell.bench.fitting
        self.state, self.acts = self.view.state, self.view.acts
        self.face, self.column = self.view.face, self.view.column
        self.workbench = shell.bench.workbench

    @property
    def plan(self):
        return self.workbench.plan

    def turn(self, end="A"):
        return self.plan.end_by_id[end].turn_deg

    def steps(self):
        return self.workbench.undo_stack.count()

    def key(self, key, modifier=NONE):
        self.bot.keyClick(QApplication.focusWidget(), key, modifier)

    def round_the_plug(self, by_deg, widget=None, steps=6, release=True, modifier=NONE):
        """Press beside the plug, go round its middle, and let go."""
        widget = widget or self.face
        centre = QPointF(*(widget.stand.centre if widget is self.face else widget.centre))
        reach = min(widget.width(), widget.height()) / 2 - 6
        arm = QPointF(0.0, -reach)
        self.bot.mousePress(widget, LEFT, NONE, (centre + arm).toPoint())
        for step in range(1, steps + 1):
            self.bot.mouseMove(widget, (centre + turned(arm, by_deg * step / steps)).toPoint())
        if release:
            at = (centre + turned(arm, by_deg)).toPoint()
            self.bot.mouseRelease(widget, LEFT, modifier, at)

    def joint(self, contact):
        return QPointF(*self.face.stand.joints[contact]).toPoint()

    def found(self):
        """Wait until nothing is sought and nothing moves."""
        self.bot.waitUntil(lambda: not self.acts.seeker.busy and not self.acts.glide.running)

    def open(self, name, end="A"):
        self.shell.bench.session.open(demo(name))
        self.shell.bench.view_acts.end_steps.show_end(end)
        self.bot.waitUntil(lambda: self.state.dial is not None)


def turned(arm, by_deg):
    """Turn a vector of the screen counter-clockwise, as it is seen."""
    angle = radians(by_deg)
    return QPointF(
        arm.x() * cos(angle) + arm.y() * sin(angle), arm.y() * cos(angle) - arm.x() * sin(angle)
    )


@pytest.fixture
def fit_of(qtbot, make_shell):
    """Give a function that opens a demo plan in the dry fit of an end."""

    def open_fit(name="cue-desk-headphone-lead", end="A", size=(1440, 900)):
        shell = make_shell(demo(name), size=size)
        shell.window.acts["dry_fit"].trigger()
        shell.bench.view_acts.end_steps.show_end(end)
        fit = Fit(qtbot, shell)
        qtbot.waitUntil(lambda: fit.state.dial is not None)
        return fit

    return open_fit


@pytest.fixture
def cue(fit_of):
    return fit_of()
