"""The canvas on the nine-ended loom: edits, drags and light, at fit and at 100 %.

Ratios: an edit's layout and paint against a full layout and paint from nothing, and the p95 of
each kind of repaint against one frame of 16.7 ms. No time is asserted.
"""

import os
from functools import partial
from statistics import median, quantiles
from time import perf_counter

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPixmapCache
from PySide6.QtWidgets import QApplication

from planner.app.canvas.tools.drag_core import DragCore
from planner.app.canvas.view import BenchView
from planner.app.workbench import Workbench
from planner.data import data_dir
from planner.drawing.looks import LIGHT
from planner.files.plans import read_plan
from planner.library.loading import load_library
from planner.model.place import Place

FRAME_MS = 16.7
ROUNDS = 60


class Seen:
    """A shown bench view on a plan; `timed` returns the ms of some work and of its painting."""

    def __init__(self, plan, library, zoom=None):
        self.app = QApplication.instance() or QApplication([])
        self.workbench = Workbench(library)
        self.view = BenchView(self.workbench, LIGHT)
        self.view.resize(920, 544)
        self.view.show()
        self.workbench.open_plan(plan)
        self.view.fit() if zoom is None else self.view.zoom_to(zoom)
        self.paint()

    def paint(self):
        for _ in range(2):  # what the first round posts is painted by the second
            self.app.processEvents()

    def timed(self, work):
        start = perf_counter()
        work()
        self.paint()
        return (perf_counter() - start) * 1000

    def inside(self, point):
        """Bring a point of the bench into sight and return it."""
        self.view.ensureVisible(point[0] - 40, point[1] - 40, 80, 80)
        self.paint()
        return point


def edits_ms(seen, rounds=ROUNDS):
    """Return the times of lifting and landing, findings and painting included."""
    times = []
    landings = seen.workbench.plan.landings
    for turn in range(rounds):
        landing = landings[(turn * 7) % len(landings)]
        end, conductor = landing.end, landing.conductor
        times.append(seen.timed(partial(seen.workbench.lift, end, conductor)))
        land = partial(seen.workbench.land, end, conductor, landing.contact)
        times.append(seen.timed(land))
    return times


def drags_ms(seen, rounds=4):
    """Return the times of each move of a core that is carried past the contacts of its end."""
    times, bench = [], seen.view.bench_scene.bench
    for landing in seen.workbench.plan.landings[:rounds]:
        x, y = seen.inside(bench.tips[landing.end, landing.conductor])
        drag = DragCore(seen.view, landing.end, landing.conductor)
        for step in range(24):
            at = QPointF(x + 1.5 * step, y + 4.0 * (step % 12))
            times.append(seen.timed(partial(drag.move, at, at, seen.app.keyboardModifiers())))
        drag.cancel()
        seen.paint()
    return times


def lights_ms(seen, rounds=ROUNDS):
    """Return the times of lighting one net after another."""
    places = [
        Place(end=end, contact=contact) for end, contact in seen.view.bench_scene.bench.contacts
    ]
    return [
        seen.timed(partial(seen.workbench.light, places[turn % len(places)]))
        for turn in range(rounds)
    ]


def zooms_ms(seen, rounds=12):
    """Return the times of the first draw after each change of the zoom."""
    start = seen.view.zoom
    zooms = [start * (1.1 if turn % 2 else 1.0) for turn in range(rounds)]
    return [seen.timed(partial(seen.view.zoom_to, zoom)) for zoom in zooms[1:]]


def afresh_ms(plan, library, zoom=None, rounds=5):
    """Return the times of a full layout and paint from nothing."""
    times = []
    for _ in range(rounds):
        QPixmapCache.clear()
        start = perf_counter()
        Seen(plan, library, zoom)
        times.append((perf_counter() - start) * 1000)
    return times


def main():
    plan = read_plan(data_dir("resources") / "demo" / "recording-rack-loom.json")
    library = load_library()
    for name, zoom in (("fit", None), ("100 %", 1.0)):
        whole = median(afresh_ms(plan, library, zoom))
        seen = Seen(plan, library, zoom)
        for what, measure in (
            ("edit", edits_ms), ("drag", drags_ms), ("light", lights_ms), ("zoom", zooms_ms),
        ):  # fmt: skip
            times = measure(seen)
            p95 = quantiles(times, n=20)[-1]
            print(
                f"  {name:>5} {what:>5}: median {median(times):.1f} ms, p95 {p95:.1f} ms, "
                f"p95 against one frame {p95 / FRAME_MS:.2f}, "
                f"median against all from nothing {median(times) / whole:.3f}"
            )


if __name__ == "__main__":
    main()
