"""Panels on a workbench with the shipped library; a lead of an invented theatre to work on."""

from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, Qt
from PySide6.QtGui import QKeyEvent

from planner.app.workbench import Workbench
from planner.data import data_dir
from planner.drawing.looks import LIGHT
from planner.edits import cables, ends, shapes
from planner.files.plans import read_plan
from planner.library.loading import load_library


@pytest.fixture(scope="session")
def library():
    return load_library(())


@pytest.fixture
def bench(qapp, library):
    return Workbench(library)


@pytest.fixture
def show(qtbot):
    """Show a panel at a size, and let go of it after the test.

    The panels are held until then: one that only a cycle holds may be collected while it paints.
    """
    held = []

    def make(panel_type, bench, size=(920, 300)):
        panel = panel_type(bench, LIGHT)
        held.append(panel)
        qtbot.addWidget(panel)
        panel.resize(*size)
        panel.show()
        panel.activateWindow()
        qtbot.waitExposed(panel)
        return panel

    yield make
    for panel in held:
        panel.close()
    QCoreApplication.processEvents()


@pytest.fixture
def demo():
    """Read a demo plan by name."""
    return lambda name: read_plan(Path(data_dir("resources")) / "demo" / f"{name}.json")


@pytest.fixture
def bare_lead(library):
    """A cue-desk lead with everything chosen and nothing landed."""
    plan = shapes.one_to_two()
    chosen = (
        ("A", "jack-4.4-five-pole", None),
        ("L", "jack-3.5-two-pole-slim", "odalisk-cup"),
        ("R", "jack-3.5-two-pole-slim", "odalisk-cup"),
    )
    for end, connector, pinout in chosen:
        record = library.connector(connector)
        wanted = library.pinout(pinout) if pinout else library.pinouts_for(connector)[0]
        plan = ends.choose_connector(plan, end=end, connector=record, pinout=wanted)
    return cables.choose_cable(plan, section=shapes.TRUNK, cable=library.cable("hp4-braid"))


@pytest.fixture
def press(qtbot):
    """Press keys as a person does: text goes to whatever has the focus in the panel."""

    def send(panel, *keys):
        for key in keys:
            # One by one: the first letter may open a line that takes the rest.
            for one in key if isinstance(key, str) else (key,):
                qtbot.keyClick(panel.window().focusWidget() or panel, one)

    return send


@pytest.fixture
def send_key():
    """Send one key with modifiers to a widget."""

    def send(widget, key, modifiers=Qt.KeyboardModifier.NoModifier):
        QCoreApplication.sendEvent(widget, QKeyEvent(QEvent.Type.KeyPress, key, modifiers))

    return send
