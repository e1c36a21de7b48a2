"""Starting: light until the window is shown, and one sentence where no window can open."""

import os
import subprocess
import sys

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtWidgets import QGraphicsScene

from planner.app import main
from planner.app.settings import Settings
from planner.app.shell import Shell
from planner.cli.main import COMMANDS

HEAVY = ("pydantic", "networkx", "svgwrite", "tomlkit", "numpy", "fontTools")
SHOW = """
import sys
import planner.__main__
from planner.app.shell import Shell
shell = Shell.start()
shell.show()
shell.app.processEvents()
print(*sorted(name for name in {heavy} if name in sys.modules))
shell.furnish()
print("pydantic" in sys.modules)
shell.take_down()
"""


def python(code, **environment):
    return subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
        env=os.environ | environment,
    )


def test_nothing_heavy_is_imported_before_the_window_is_shown():
    done = python(SHOW.format(heavy=HEAVY))
    assert done.stderr == ""
    assert done.stdout.splitlines() == ["", "True"]


def test_without_a_display_one_sentence_and_status_2(monkeypatch, capsys):
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setattr(sys, "platform", "linux")
    assert main.run() == 2
    said = capsys.readouterr().err
    assert said.count("\n") == 1
    assert all(command in said for command in COMMANDS)


def test_missing_libraries_are_named_by_their_packages(monkeypatch, capsys):
    monkeypatch.setenv("QT_QPA_PLATFORM", "xcb")
    monkeypatch.setattr(sys, "platform", "linux")
    lacking = {True: ("libxcb-cursor0", "libxcb-xkb1"), False: ()}
    monkeypatch.setattr(main, "missing_packages", lambda *, x11: lacking[x11])
    assert main.run() == 2
    assert capsys.readouterr().err == (
        "cupwright: The window needs system libraries that are missing here: "
        "sudo apt-get install libxcb-cursor0 libxcb-xkb1\n"
    )


@pytest.mark.parametrize(
    ("environment", "asked"),
    [
        ({"DISPLAY": ":0"}, True),
        ({"DISPLAY": ":0", "WAYLAND_DISPLAY": "wayland-0"}, False),
        ({"QT_QPA_PLATFORM": "offscreen"}, False),
    ],
)
def test_x11_libraries_are_asked_for_only_where_x11_is_used(monkeypatch, environment, asked):
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(name, raising=False)
    for name, value in environment.items():
        monkeypatch.setenv(name, value)
    monkeypatch.setattr(sys, "platform", "linux")
    heard = []
    monkeypatch.setattr(main, "missing_packages", lambda *, x11: heard.append(x11) or ())
    monkeypatch.setattr(main, "x_server_answers", lambda: True)
    assert main.why_no_window() == ""
    assert heard == [asked]


def test_a_display_that_does_not_answer_is_said(monkeypatch, capsys):
    monkeypatch.delenv("QT_QPA_PLATFORM", raising=False)
    monkeypatch.delenv("WAYLAND_DISPLAY", raising=False)
    monkeypatch.setenv("DISPLAY", ":4711")
    monkeypatch.setattr(sys, "platform", "linux")
    monkeypatch.setattr(main, "missing_packages", lambda *, x11: ())
    assert main.run() == 2
    assert capsys.readouterr().err.startswith("cupwright: The display ':4711' does not answer; ")


@pytest.mark.parametrize("kept", ["", "5000x4000", "700x500"])
def test_the_first_window_with_its_title_bar_fits_the_screen(qapp, tmp_path, kept):
    settings = Settings(tmp_path / "settings.ini")
    settings.geometry = kept
    shell = Shell(qapp, settings)
    shell.show()
    room = qapp.primaryScreen().availableGeometry()
    assert shell.window.height() + 32 <= room.height()
    assert shell.window.width() <= room.width()
    if kept == "700x500":
        assert (shell.window.width(), shell.window.height()) == (700, 500)
    shell.take_down()
    qapp.setStyleSheet("")


def test_a_fresh_profile_leaves_nothing_behind():
    done = python(
        "from planner.app.settings import *\n"
        "with use_fresh_profile() as folder:\n"
        "    path = settings_path()\n"
        "    Settings(path).choose('paper', 'letter')\n"
        "    print(str(path).startswith(folder))\n"
        "print(path.exists())"
    )
    assert done.stdout.split() == ["True", "False"]


def test_calls_that_return_none_do_not_wear_none_out(qapp):
    """A binding that dropped a reference to None at each call would end the process later."""
    scene = QGraphicsScene()
    before = sys.getrefcount(None)
    for _ in range(10_000):
        scene.invalidate(QRectF())
    assert sys.getrefcount(None) >= before - 100
