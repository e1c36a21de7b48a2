"""A bench view on a demo plan, and a mouse that works on its viewport."""

import pytest
from PySide6.QtCore import QPointF, Qt

from planner.app.canvas.view import BenchView
from planner.app.workbench import Workbench
from planner.data import data_dir
from planner.drawing.looks import LIGHT
from planner.files.plans import read_plan
from planner.library.loading import load_library

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
SHIFT, CTRL = Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.ControlModifier


@pytest.fixture(scope="session")
def library():
    return load_library()


def demo(name):
    return read_plan(data_dir("resources") / "demo" / f"{name}.json")


class Bench:
    """The view with the moves of a hand: points are contacts, tips, or scene points."""

    def __init__(self, qtbot, view):
        self.bot, self.view, self.workbench = qtbot, view, view.workbench

    @property
    def drawn(self):
        return self.view.bench_scene.bench

    def contact(self, end, contact):
        return self.drawn.contacts[end, contact]

    def tip(self, end, conductor):
        return self.drawn.tips[end, conductor]

    def on_stroke(self, end, conductor):
        placed = self.drawn.ends[end]
        return placed.at(placed.block.strands[conductor].points[8])

    def spot(self, point):
        return self.view.mapFromScene(QPointF(*point))

    def move(self, point):
        self.bot.mouseMove(self.view.viewport(), self.spot(point))

    def press(self, point):
        self.bot.mousePress(self.view.viewport(), LEFT, NONE, self.spot(point))

    def release(self, point, modifier=NONE):
        self.bot.mouseRelease(self.view.viewport(), LEFT, modifier, self.spot(point))

    def click(self, point, modifier=NONE):
        self.bot.mouseClick(self.view.viewport(), LEFT, modifier, self.spot(point))

    def carry(self, start, stop):
        """Press at `start` and move to `stop` in steps, without letting go."""
        self.press(start)
        for step in range(1, 6):
            share = step / 5
            x, y = (start[k] + (stop[k] - start[k]) * share for k in (0, 1))
            self.move((x, y))

    def drag(self, start, stop, modifier=NONE):
        self.carry(start, stop)
        self.release(stop, modifier)

    def key(self, key, modifier=NONE):
        self.bot.keyClick(self.view, key, modifier)

    def landed(self, end):
        return {
            landing.conductor: landing.contact
            for landing in self.workbench.plan.landings
            if landing.end == end
        }

    def steps(self):
        return self.workbench.undo_stack.count()


@pytest.fixture
def bench_of(qtbot, library):
    """Give a function that opens a plan in a bench view of the usual size.

    The views are held until the test is over: Qt may still paint what Python has let go of.
    """
    held = []

    def open_plan(plan, size=(920, 544)):
        workbench = Workbench(library)
        view = BenchView(workbench, LIGHT)
        qtbot.addWidget(view)
        view._hover.rest_ms = (
            10**6
        )  # no tooltip: the screenless platform warns that it can't raise one
        view.resize(*size)
        view.show()
        workbench.open_plan(plan)
        view.fit()
        held.append(view)
        return Bench(qtbot, view)

    yield open_plan
    held.clear()


@pytest.fixture
def cue(bench_of):
    return bench_of(demo("cue-desk-headphone-lead"))
