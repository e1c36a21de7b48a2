"""The library has a newer record than the plan carries; the records are invented."""

import pytest
from PySide6.QtWidgets import QLabel

from planner.app.dialogs.newer import NewerDialog
from planner.files.plans import write_plan
from planner.library.collection import Library
from planner.model.signals import signals_text


@pytest.fixture
def changed(library):
    record = library.pinout("jack-4.4-balanced-headphone")
    signals = dict(record.signals)
    signals["R1"], signals["R2"] = signals["R2"], signals["R1"]
    newer = record.evolve(signals=signals, revision=record.revision + 1)
    others = [it for it in library.pinouts() if it.id != record.id]
    return Library(library.connectors(), [*others, newer], library.cables(), library.parts())


@pytest.fixture
def opened(make_shell, tmp_path, cue_plan, changed):
    path = tmp_path / "cue.json"
    write_plan(path, cue_plan)
    shell = make_shell()
    shell.bench.workbench.library = changed
    shell.bench.session.open(path)
    return shell


def pinout(shell):
    return shell.bench.workbench.plan.pinout_of("A")


def test_a_plan_keeps_its_own_and_says_what_is_newer(opened):
    assert "newer definitions" in opened.window.notice.text
    assert pinout(opened).revision == 1


def test_it_is_taken_on_request_as_one_undo_step(opened, answers):
    opened.window.acts["newer"].trigger()
    assert pinout(opened).revision == 1, "asked first"
    _, found, told = answers.asked[-1]
    assert [it.known.id for it in found] == ["jack-4.4-balanced-headphone"]
    assert any("instead of" in words for words in told.moved)
    assert told.appeared

    answers.take_newer = True
    opened.window.acts["newer"].trigger()
    assert pinout(opened).revision == 2
    assert signals_text(pinout(opened).signals["R1"]) == "R+"
    opened.window.acts["undo"].trigger()
    assert pinout(opened).revision == 1
    assert not opened.bench.workbench.undo_stack.canUndo()


def test_nothing_newer_is_said(make_shell, tmp_path, cue_plan):
    path = tmp_path / "cue.json"
    write_plan(path, cue_plan)
    shell = make_shell(path)
    assert "newer" not in shell.window.notice.text
    shell.window.acts["newer"].trigger()
    assert "as the library has it" in shell.window.notice.text


def test_the_dialog_tells_change_and_meaning(opened, answers, qtbot):
    opened.window.acts["newer"].trigger()
    _, found, told = answers.asked[-1]
    dialog = NewerDialog(opened.window, found, told)
    qtbot.addWidget(dialog)
    words = [it.text() for it in dialog.findChildren(QLabel)]

    assert any("revision 1 to 2" in it for it in words)
    assert any("instead of" in it for it in words)
    assert any(it.startswith("New stop") for it in words)
