"""Qt without a screen, the bundled face, and no warning that a test did not expect."""

import gc
import logging
import os

os.environ["QT_QPA_PLATFORM"] = "offscreen"

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QtMsgType

from planner.app.fonts import load_fonts

# Said by the platform without a screen of dialogs and menus; it has no window manager to ask.
_OFFSCREEN = {
    "This plugin does not support propagateSizeHints()",
    "This plugin does not support raise()",
    "This plugin does not support grabbing the keyboard",
}
_BAD = {QtMsgType.QtWarningMsg, QtMsgType.QtCriticalMsg, QtMsgType.QtFatalMsg}


@pytest.fixture(scope="session")
def qapp(qapp):
    """Dress the application as the program does: Fusion, the bundled face, a still cursor."""
    qapp.setStyle("Fusion")
    qapp.setCursorFlashTime(0)
    load_fonts()
    return qapp


@pytest.hookimpl(wrapper=True)
def pytest_runtest_protocol(item):
    """Collect between tests only, so that no old window goes inside a paint or in a thread.

    A fixture would come too late for a window that a whole module shares, and too early for what
    pytest holds of a test until it is over.
    """
    gc.disable()
    done = yield
    gc.collect()
    gc.enable()
    return done


@pytest.fixture(autouse=True)
def no_unexpected_warnings(qapp, qtlog, caplog):
    """Fail on any Qt warning or log record of WARNING and above; `caplog.clear()` takes it back."""
    yield
    # Qt itself deletes what was taken down, children first, before it is collected as it comes.
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    said = [
        f"Qt: {record.message}"
        for record in qtlog.records
        if record.type in _BAD and record.message not in _OFFSCREEN
    ]
    said += [
        f"{record.name}: {record.getMessage()}"
        for phase in ("setup", "call")
        for record in caplog.get_records(phase)
        if record.levelno >= logging.WARNING
    ]
    assert said == []
