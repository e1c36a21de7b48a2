"""The whole program in one process: real dialogs, real files, no screen."""

import os

os.environ["QT_QPA_PLATFORM"] = "offscreen"

import pytest

from planner.app.settings import Settings
from planner.app.shell import Shell
from tests.e2e.hands import Hands
from tests.gui.conftest import no_unexpected_warnings, qapp

__all__ = ["no_unexpected_warnings", "qapp"]


@pytest.fixture
def hands(qapp, qtbot, tmp_path):
    """An empty window that has just been opened, and hands on it; files go to `tmp_path`."""
    settings = Settings(tmp_path / "settings.ini")
    settings.last_folder = tmp_path
    shell = Shell(qapp, settings)
    shell.window.resize(1440, 900)
    shell.window.show()
    qtbot.waitExposed(shell.window)
    shell.window.activateWindow()
    qtbot.waitUntil(shell.window.isActiveWindow)
    shell.furnish()
    # The platform without a screen warns of every tip that it shows.
    shell.bench.canvas._hover.rest_ms = 10**6
    qapp.processEvents()
    yield Hands(shell)
    shell.take_down()
    qapp.setStyleSheet("")


@pytest.fixture
def no_pointer(monkeypatch):
    """Let no test use the pointer by mistake."""

    def refuse(*_args):
        pytest.fail("a pointer was used")

    for name in ("mouseClick", "mousePress", "mouseMove", "mouseRelease"):
        monkeypatch.setattr(f"tests.e2e.hands.QTest.{name}", refuse)
