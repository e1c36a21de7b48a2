"""The owner's window with its questions answered by the test."""

import pytest

from planner.app.intake.window import LibraryWindow
from planner.app.settings import Settings
from planner.app.workbench import Workbench
from planner.drawing.looks import LIGHT
from planner.library.loading import load_library
from tests.gui.intake.hands import Answers


@pytest.fixture
def window(qtbot, tmp_path, monkeypatch):
    monkeypatch.setenv("CUPWRIGHT_DATA", str(tmp_path / "data"))
    settings = Settings(tmp_path / "s.ini")
    settings.bench_name = "Saltmarsh Playhouse"
    made = LibraryWindow(Workbench(load_library()), settings, Answers(), LIGHT)
    qtbot.addWidget(made)
    made.show()
    made.activateWindow()
    qtbot.waitUntil(made.isActiveWindow)
    return made
