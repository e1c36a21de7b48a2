"""A furnished shell whose questions are answered by the test."""

import pytest

from planner.app import furnish
from planner.app.settings import Settings
from planner.app.shell import Shell
from planner.edits.by_signal import land_by_signal
from planner.edits.cables import choose_cable
from planner.edits.ends import choose_connector
from planner.edits.landings import exchange
from planner.edits.shapes import one_to_two
from planner.files.plans import write_plan
from planner.library.loading import load_library


class Answers:
    """Stands where Ask stands: it answers what the test set, and remembers what was asked."""

    def __init__(self):
        self.asked = []
        self.to_open = self.to_save = self.sheet_at = self.folder = None
        self.about_unsaved = "cancel"
        self.about_recovery = "later"
        self.copy_after_mishap = False
        self.written = None
        self.workmanlike = None
        self.troubles = []
        self.take_newer = False
        self.act_on_sheet = lambda desk: None

    def plan_to_open(self):
        self.asked.append("open")
        return self.to_open

    def where_to_save(self, suggested):
        self.asked.append(suggested)
        return self.to_save

    def where_to_write_sheet(self, suggested):
        self.asked.append(suggested)
        return self.sheet_at

    def where_to_write_cuts(self, suggested):
        self.asked.append(suggested)
        return self.sheet_at

    def sheet(self, desk):
        self.asked.append(desk.file_name(".pdf"))
        self.act_on_sheet(desk)

    def library_folder(self):
        return self.folder

    def unsaved(self, name):
        self.asked.append(f"unsaved {name}")
        return self.about_unsaved

    def recover(self, names):
        self.asked.append(("recover", *names))
        return self.about_recovery

    def trouble(self, headline, problems, said=""):
        self.troubles.append((headline, tuple(problems)))

    def mishap(self, sentence):
        self.asked.append(sentence)
        return self.copy_after_mishap

    def details(self, plan):
        return self.written

    def workmanship(self, plan):
        self.asked.append("workmanship")
        return self.workmanlike

    def newer(self, found, told):
        self.asked.append(("newer", found, told))
        return self.take_newer

    def settings(self):
        self.asked.append("settings")

    def show_keys(self, actions):
        self.asked.append("keys")

    def about(self):
        self.asked.append("about")


@pytest.fixture
def answers():
    return Answers()


@pytest.fixture(scope="session")
def library():
    return load_library()


@pytest.fixture
def make_shell(  # noqa: PLR0917 - fixtures
    qapp, qtbot, answers, tmp_path, library, monkeypatch
):
    """Return what makes a shown and furnished shell; each is taken down after the test."""
    made = []
    monkeypatch.setattr(furnish, "load_library", lambda _folders: library)

    def make(plan=None, *, demo=False, size=(1440, 900)):
        shell = Shell(qapp, Settings(tmp_path / "settings.ini"), ask=answers)
        shell.window.resize(*size)
        shell.window.show()
        shell.window.activateWindow()
        qtbot.waitUntil(shell.window.isActiveWindow)
        shell.furnish(plan, demo=demo)
        made.append(shell)
        return shell

    yield make
    for shell in made:
        shell.take_down()
    qapp.setStyleSheet("")


@pytest.fixture
def shell(make_shell):
    return make_shell()


@pytest.fixture(scope="session")
def cue_plan(library):
    """An invented cue-desk headphone lead: 4.4 five-pole to two slim 3.5 cups, all landed."""
    plan = one_to_two(title="Cue desk headphone lead", order="SP-0417")
    for end, plug, pinout in (
        ("A", "jack-4.4-five-pole", "jack-4.4-balanced-headphone"),
        ("L", "jack-3.5-two-pole-slim", "cup-two-pole"),
        ("R", "jack-3.5-two-pole-slim", "cup-two-pole"),
    ):
        plan = choose_connector(
            plan, end=end, connector=library.connector(plug), pinout=library.pinout(pinout)
        )
    plan = choose_cable(plan, section="trunk", cable=library.cable("hp4-braid"))
    return land_by_signal(plan)[0]


@pytest.fixture
def spoiled_plan(cue_plan):
    """The same with the right channel reversed."""
    here, there = [landing for landing in cue_plan.landings if landing.end == "R"]
    return exchange(cue_plan, end="R", conductor=here.conductor, contact=there.contact)


@pytest.fixture
def plan_file(cue_plan, tmp_path):
    path = tmp_path / "cue desk.json"
    write_plan(path, cue_plan)
    return path
