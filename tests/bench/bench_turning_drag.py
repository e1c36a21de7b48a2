"""Turning the 25-way plug by hand, gaps live: each step of the drag with all that is painted.

Ratios: the p95 of a step against one frame of 16.7 ms, for the drag, for pointing at joints and
for the change of a plan in this view; and a step against the whole view from nothing. No time is
asserted.
"""

import math
import os
from functools import partial
from statistics import median, quantiles
from time import perf_counter

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtWidgets import QApplication, QMainWindow

from planner.app.actions import Actions
from planner.app.fitting.turning_hand import TurningHand
from planner.app.fitting.view import FitView
from planner.app.workbench import Workbench
from planner.data import data_dir
from planner.drawing.looks import LIGHT
from planner.files.plans import read_plan
from planner.library.loading import load_library

FRAME_MS = 16.7
STEPS = 120


class Seen:
    """A shown dry fit of one end; `timed` returns the ms of some work and of its painting."""

    def __init__(self, plan, library, end):
        self.app = QApplication.instance() or QApplication([])
        self.window = QMainWindow()
        self.workbench = Workbench(library)
        self.view = FitView(self.workbench, Actions(self.window), LIGHT)
        self.window.setCentralWidget(self.view)
        self.window.resize(920, 536)
        self.window.show()
        self.workbench.open_plan(plan)
        self.view.show_end(end)
        self.paint()

    def paint(self):
        for _ in range(2):  # what the first round posts is painted by the second
            self.app.processEvents()

    def rest(self):
        """Let what is made in threads be made, so that it is not made beside what is timed."""
        view = self.view
        while view.state.dial is None or not view.state.joints or view.face.backdrop.image is None:
            self.app.processEvents()

    def timed(self, work):
        start = perf_counter()
        work()
        self.paint()
        return (perf_counter() - start) * 1000

    def close(self):
        self.view.let_go()
        self.window.close()


def drags_ms(seen):
    """Return the times of each step of a drag once round the plug."""
    centre = seen.view.face.stand.centre
    hand = TurningHand(seen.view.state, centre, (centre[0] + 200, centre[1]))
    times = []
    for step in range(1, STEPS + 1):
        angle = 2 * math.pi * step / STEPS
        at = (centre[0] + 200 * math.cos(angle), centre[1] - 200 * math.sin(angle))
        times.append(seen.timed(partial(hand.move, at, coarse=False)))
    hand.cancel()
    seen.paint()
    return times


def joints_ms(seen):
    """Return the times of pointing at one joint after another, each with its iron."""
    joints = seen.view.state.joints
    times = [seen.timed(partial(seen.view.state.point_at, joint)) for joint in joints]
    seen.view.state.point_at("")
    return times


def edits_ms(seen, rounds=20):
    """Return the times of turns that go into the plan, findings and all."""
    return [seen.timed(partial(seen.view.acts.set_turn, turn)) for turn in range(1, rounds)]


def from_nothing_ms(plan, library, end):
    """Return the time of the whole view from nothing."""
    start = perf_counter()
    Seen(plan, library, end).close()
    return (perf_counter() - start) * 1000


def main():
    plan = read_plan(data_dir("resources") / "demo" / "recording-rack-loom.json")
    library = load_library()
    whole = median(from_nothing_ms(plan, library, "A") for _ in range(3))
    seen = Seen(plan, library, "A")
    seen.rest()
    for what, measure in (("drag", drags_ms), ("point", joints_ms), ("edit", edits_ms)):
        times = measure(seen)
        p95 = quantiles(times, n=20)[-1]
        print(
            f"  {what:>6}: median {median(times):.1f} ms, p95 {p95:.1f} ms, "
            f"p95 against one frame {p95 / FRAME_MS:.2f}, "
            f"median against all from nothing {median(times) / whole:.3f}"
        )
    seen.close()


if __name__ == "__main__":
    main()
