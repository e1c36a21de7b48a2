"""The view of proving in the whole window, under the fingers of a builder."""

from datetime import UTC, datetime, timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLabel

from planner.app import furnish
from planner.app.proving_view.rows import ProbeRow
from planner.app.proving_view.under_way import UnderWay
from planner.app.settings import Settings
from planner.app.shell import Shell
from planner.data import data_dir
from planner.files.plans import write_plan
from planner.proving.expected import expected_sweep
from planner.services.opening import open_plan
from planner.wiring.graph import Wiring
from tests.gui.shell import conftest as shell_tests

library = shell_tests.library
NONE, SHIFT, CTRL = (
    Qt.KeyboardModifier.NoModifier,
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.ControlModifier,
)
CUE, LOOM = "cue-desk-headphone-lead", "recording-rack-loom"


class Answers(shell_tests.Answers):
    """Answers the questions of this view too."""

    def __init__(self):
        super().__init__()
        self.file = self.target = None

    def readings_to_open(self):
        return self.file

    def file_to_attach(self):
        return self.file

    def where_to_write_form(self, suggested):
        self.asked.append(suggested)
        return self.target

    where_to_write_certificate = where_to_write_summary = where_to_write_form
    where_to_write_tones = where_to_write_form


class Meter:
    """A meter on a built lead, which may differ from its plan: what it shows, as typed."""

    def __init__(self, plan, zero_ohm=0.2):
        self.sweep = expected_sweep(plan, Wiring(plan))
        self.zero_ohm = zero_ohm

    def shows(self, row):
        joined = [pair for pair in row.pairs() if self.sweep.joined(*pair)]
        if not joined:
            return "o"
        ohm = self.sweep.path(*joined[0]).ohm or 0.0
        return f"{ohm + self.zero_ohm:.2f}"


class Bench:
    """The view with the keys of a builder."""

    def __init__(self, qtbot, shell, answers):
        self.bot, self.shell, self.answers = qtbot, shell, answers
        self.view = shell.bench.proving
        self.state, self.grid = self.view.state, self.view.readings.grid
        self.acts, self.workbench = shell.window.acts, shell.bench.workbench
        self.now = datetime(2026, 3, 14, 15, 9, tzinfo=UTC)
        self.state.clock = self._tick

    def _tick(self):
        self.now += timedelta(seconds=1)
        return self.now

    def settle(self):
        self.bot.waitUntil(lambda: not self.state.busy and not self.state.judge.busy)

    def key(self, key, modifier=NONE):
        self.bot.keyClick(QApplication.focusWidget(), key, modifier)

    def type(self, text):
        """Type as at a keyboard; a new line is Enter."""
        for letter in text:
            if letter == "\n":
                self.key(Qt.Key.Key_Return)
            else:
                self.bot.keyClicks(QApplication.focusWidget(), letter)

    def begin(self, zero="0.2"):
        self.type(f"\n{zero}\n")
        self.settle()

    def read_all(self, meter):
        """Type what the meter shows until nothing is unread."""
        while self.state.next_unread(self.state.at - 1) >= 0:
            self.type(f"{meter.shows(self.state.row)}\n")
        self.settle()

    @property
    def diagnosis(self):
        return self.state.judge.diagnosis

    @property
    def probes(self):
        return [row for row in self.state.rows if isinstance(row, ProbeRow)]

    @property
    def refusal(self):
        """What the box at the cell says; empty where there is none."""
        box = self.grid._box
        if box is None or not box.isVisible():
            return ""
        return " ".join(it.text() for it in box.findChildren(QLabel))

    def words(self, place):
        """Return the words of a row as they stand in the table."""
        model = self.grid.model()
        return [model.index(place, at).data() for at in range(model.columnCount())]


@pytest.fixture(scope="module")
def shell(qapp, library, tmp_path_factory):
    """One window for all tests of a module; each opens its own plan in it."""
    folder = tmp_path_factory.mktemp("prove")
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("CUPWRIGHT_DATA", str(folder))
        patch.setattr(furnish, "load_library", lambda _folders: library)
        made = Shell(qapp, Settings(folder / "settings.ini"), ask=Answers())
        made.window.resize(1440, 900)
        made.window.show()
        made.furnish()
        yield made
        made.take_down()
        qapp.setStyleSheet("")


@pytest.fixture
def plan_path(tmp_path):
    """Return what copies a demo plan to where its units may be kept."""

    def make(name=CUE):
        path = tmp_path / f"{name}.json"
        if not path.exists():
            write_plan(path, open_plan(data_dir("resources") / "demo" / f"{name}.json"))
        return path

    return make


@pytest.fixture
def open_prove(qtbot, shell, plan_path, tmp_path, monkeypatch):
    """Return what opens a demo plan in the view, as if the window were new."""
    monkeypatch.setenv("CUPWRIGHT_DATA", str(tmp_path / "data"))

    def make(name=CUE, size=(1440, 900)):
        ask = shell.bench.ask
        ask.__init__()
        ask.about_unsaved = "discard"
        shell.window.resize(*size)
        shell.window.activateWindow()
        qtbot.waitUntil(shell.window.isActiveWindow)
        state = shell.bench.proving.state
        for unit in (UnderWay(), None):  # with a meter that is not named, as at first
            state.put_unit(unit)
        state.noting.set_who("")
        state.set_method("pairs")
        assert shell.bench.session.open(plan_path(name))
        shell.window.notice.hide()
        shell.window.acts["prove"].trigger()
        bench = Bench(qtbot, shell, ask)
        bench.settle()
        return bench

    return make


@pytest.fixture
def prove(open_prove):
    made = open_prove()
    yield made
    made.settle()
