"""Work that was not saved survives a kill of the process."""

import os
import signal
import subprocess
import sys
from functools import partial
from threading import Timer

import pytest

from planner.app.autosave import DELAY_MS
from planner.edits.texts import set_title
from planner.files.folders import recovery_folder
from planner.files.recovery import left_behind

EDIT_AND_WAIT = """
import sys
from functools import partial
from pathlib import Path
from planner.app.shell import Shell
from planner.edits.texts import set_title
shell = Shell.start()
shell.show()
bench = shell.furnish(Path(sys.argv[1]))
bench.workbench.do("Set title", partial(set_title, title="Half done"))
bench.autosave.told.connect(lambda text: print(text, flush=True))
shell.exec()
"""


@pytest.fixture
def killed(plan_file):
    """Edit a plan in a process of its own, and kill it once a copy was kept."""
    process = subprocess.Popen(
        [sys.executable, "-c", EDIT_AND_WAIT, str(plan_file)],
        stdout=subprocess.PIPE,
        text=True,
        env=os.environ | {"QT_QPA_PLATFORM": "offscreen"},
    )
    watchdog = Timer(30, process.kill)
    watchdog.start()
    for line in process.stdout:
        if line.startswith("Autosaved"):
            break
    process.send_signal(signal.SIGKILL)
    process.wait(10)
    watchdog.cancel()
    process.stdout.close()
    return plan_file


def test_a_killed_process_leaves_a_copy_that_is_offered(make_shell, answers, killed):
    answers.about_recovery = "open"
    shell = make_shell()
    assert answers.asked[0][0] == "recover"
    assert answers.asked[0][1].startswith("cue desk.json, ")
    assert shell.bench.workbench.plan.title == "Half done"
    assert shell.bench.session.path == killed
    assert shell.bench.session.dirty


def test_a_copy_that_is_discarded_is_gone_and_one_put_off_is_not(make_shell, answers, killed):
    make_shell()
    assert len(left_behind()) == 1
    answers.about_recovery = "discard"
    make_shell()
    assert left_behind() == ()


def test_a_copy_is_kept_a_moment_after_an_edit_and_dropped_when_saved(make_shell, qtbot, plan_file):
    shell = make_shell(plan_file)
    autosave = shell.bench.autosave
    assert autosave.timer.interval() == DELAY_MS
    autosave.timer.setInterval(1)
    shell.bench.workbench.do("Set title", partial(set_title, title="Half done"))
    folder = recovery_folder()
    qtbot.waitUntil(lambda: len(list(folder.glob("*.json"))) == 1)
    assert shell.window.hints.state.text().startswith("Autosaved ")
    shell.window.acts["save"].trigger()
    assert list(folder.glob("*.json")) == []


def test_no_copy_is_kept_where_the_builder_wants_none(make_shell, plan_file):
    shell = make_shell(plan_file)
    shell.settings.autosave = False
    shell.bench.workbench.do("Set title", partial(set_title, title="Half done"))
    assert not shell.bench.autosave.timer.isActive()
    shell.bench.autosave.keep()
    assert not recovery_folder().exists()
