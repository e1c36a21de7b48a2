"""A fault inside a paint leaves no painter open: whoever keeps the fault would keep it too.

With a painter still open on a window Qt ends the program at the next paint.
"""

import re
from traceback import walk_tb

from planner.app.panels.widgets.drawn import Drawn
from planner.data import data_dir
from planner.drawing.looks import LIGHT

APP = data_dir("resources").parent / "planner" / "app"


def test_a_fault_in_a_drawing_leaves_no_painter_open(qtbot):
    def drawing(_look):
        raise ValueError("out of ink")

    shown = Drawn((20, 20), LIGHT)
    qtbot.addWidget(shown)
    shown.show_drawing(drawing)
    with qtbot.captureExceptions() as faults:
        shown.show()
        qtbot.waitUntil(lambda: bool(faults))
    _, fault, trace = faults[0]
    assert "out of ink" in str(fault)
    kept = [frame.f_locals["painter"] for frame, _ in walk_tb(trace) if "painter" in frame.f_locals]
    assert kept
    assert not any(painter.isActive() for painter in kept)


def test_every_painter_in_the_window_ends_with_its_block():
    texts = {path: path.read_text(encoding="utf-8") for path in APP.rglob("*.py")}
    assert sum("with QPainter(" in text for text in texts.values()) > 10
    assert [
        path.name for path, text in texts.items() if re.search(r"(?<!with )\bQPainter\([^)]", text)
    ] == []
