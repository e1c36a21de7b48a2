"""A furnished shell whose questions are answered by the test."""

import pytest

from planner.app.settings import Settings
from planner.app.shell import Shell


class Answers:
    """Stands where Ask stands: it answers what the test set, and remembers what was asked."""

    def __init__(self):
        self.asked = []
        self.to_open = self.to_save = self.sheet_at = self.folder = None
        self.about_unsaved = "cancel"
        self.about_recovery = "later"
        self.copy_after_mishap = False
        self.written = None
        self.troubles = []

    def plan_to_open(self):
        self.asked.append("open")
        return self.to_open

    def where_to_save(self, suggested):
        self.asked.append(suggested)
        return self.to_save

    def where_to_write_sheet(self, suggested):
        self.asked.append(suggested)
        return self.sheet_at

    def library_folder(self):
        return self.folder

    def unsaved(self, name):
        self.asked.append(f"unsaved {name}")
        return self.about_unsaved

    def recover(self, names):
        self.asked.append(("recover", *names))
        return self.about_recovery

    def trouble(self, headline, problems):
        self.troubles.append((headline, tuple(problems)))

    def mishap(self, sentence):
        self.asked.append(sentence)
        return self.copy_after_mishap

    def details(self, plan):
        return self.written

    def settings(self):
        self.asked.append("settings")

    def show_keys(self, actions):
        self.asked.append("keys")

    def about(self):
        self.asked.append("about")


@pytest.fixture
def answers():
    return Answers()


@pytest.fixture
def make_shell(qapp, qtbot, answers, tmp_path):
    """Return what makes a shown and furnished shell; each is taken down after the test."""
    made = []

    def make(plan=None, *, demo=False, size=(1440, 900)):
        shell = Shell(qapp, Settings(tmp_path / "settings.ini"), ask=answers)
        shell.window.resize(*size)
        shell.window.show()
        qtbot.waitExposed(shell.window)
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
