from functools import partial

import pytest
from PySide6.QtCore import QMimeData, QUrl

from planner.app.session import file_name_for
from planner.edits.landings import lift
from planner.edits.texts import set_title
from planner.files.plans import read_plan
from planner.model.plan import Plan


def rename(shell, title="Another lead"):
    assert shell.bench.workbench.do("Set title", partial(set_title, title=title))


def trigger(shell, name):
    shell.window.acts[name].trigger()


def test_opening_shows_the_plan_and_its_name(make_shell, plan_file, cue_plan):
    shell = make_shell(plan_file)
    assert shell.bench.workbench.plan == cue_plan
    assert shell.window.windowTitle() == "cue desk.json[*] – Cupwright"
    assert not shell.window.isWindowModified()
    assert shell.window.hints.state.text() == "Saved"
    assert [plan.path for plan in shell.settings.recent] == [plan_file]
    assert shell.settings.recent[0].order == "SP-0417"


def test_an_edit_marks_the_title_and_saving_takes_the_mark_away(make_shell, plan_file):
    shell = make_shell(plan_file)
    rename(shell)
    assert shell.window.isWindowModified()
    trigger(shell, "save")
    assert not shell.window.isWindowModified()
    assert read_plan(plan_file).title == "Another lead"
    trigger(shell, "undo")
    assert shell.window.isWindowModified()


def test_saving_a_new_plan_asks_where_to(shell, answers, tmp_path, cue_plan):
    shell.bench.session.take_up(cue_plan, None)
    answers.to_save = tmp_path / "lead.json"
    trigger(shell, "save")
    assert answers.asked == ["SP-0417 Cue desk headphone lead.json"]
    assert read_plan(answers.to_save) == cue_plan
    assert not shell.bench.session.dirty


def test_save_as_goes_on_in_the_new_file(make_shell, answers, plan_file, tmp_path):
    shell = make_shell(plan_file)
    answers.to_save = tmp_path / "second.json"
    trigger(shell, "save_as")
    rename(shell, "Second")
    trigger(shell, "save")
    assert (read_plan(plan_file).title, read_plan(answers.to_save).title) == (
        "Cue desk headphone lead",
        "Second",
    )
    assert [plan.path.name for plan in shell.settings.recent] == ["second.json", "cue desk.json"]


@pytest.mark.parametrize(
    ("answer", "stays", "title"),  # what is answered, is the plan kept, what the file says then
    [
        ("cancel", True, "Cue desk headphone lead"),
        ("discard", False, "Cue desk headphone lead"),
        ("save", False, "Another lead"),
    ],
)
def test_what_is_not_saved_is_asked_about(  # noqa: PLR0917 - a table of three columns
    make_shell, answers, plan_file, answer, stays, title
):
    shell = make_shell(plan_file)
    rename(shell)
    answers.about_unsaved = answer
    trigger(shell, "new")
    assert answers.asked == ["unsaved cue desk.json"]
    assert (shell.bench.workbench.plan != Plan()) is stays
    assert read_plan(plan_file).title == title


def test_closing_asks_and_stays_open_on_cancel(make_shell, answers, plan_file):
    shell = make_shell(plan_file)
    rename(shell)
    assert not shell.window.close()
    assert shell.window.isVisible()
    answers.about_unsaved = "discard"
    assert shell.window.close()


def test_a_save_that_was_called_off_keeps_the_window_open(shell, answers, cue_plan):
    shell.bench.session.take_up(cue_plan, None)
    answers.about_unsaved, answers.to_save = "save", None
    assert not shell.window.close()


def test_a_file_that_cannot_be_read_changes_nothing(make_shell, answers, plan_file, tmp_path):
    shell = make_shell(plan_file)
    before = shell.bench.workbench.plan
    bad = tmp_path / "bad.json"
    bad.write_text('{"format": "cupwright-plan", "version": 1, "titel": "x"}', encoding="utf-8")
    answers.to_open = bad
    trigger(shell, "open")
    (headline, problems) = answers.troubles[0]
    assert headline == "bad.json can’t be opened"
    assert all(problem.what and problem.where and problem.mend for problem in problems)
    assert shell.bench.workbench.plan is before
    assert shell.bench.session.path == plan_file


def test_a_file_that_cannot_be_written_keeps_the_older_one(
    make_shell, answers, plan_file, tmp_path
):
    shell = make_shell(plan_file)
    rename(shell)
    answers.to_save = tmp_path / "no such folder" / "lead.json"
    trigger(shell, "save_as")
    assert answers.troubles[0][0] == "lead.json can’t be saved"
    assert shell.bench.session.path == plan_file
    assert shell.bench.session.dirty


def test_recent_menu_opens_what_it_lists(make_shell, plan_file):
    shell = make_shell(plan_file)
    trigger(shell, "new")
    menu = shell.window.menus["Recent"]
    menu.aboutToShow.emit()
    (action,) = menu.actions()
    assert action.text() == "Cue desk headphone lead"
    action.trigger()
    assert shell.bench.session.path == plan_file


def test_a_dropped_plan_file_is_opened(shell, plan_file):
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(plan_file))])
    assert shell.window.dropped_file(mime) == plan_file
    shell.window.dropped.emit(plan_file)
    assert shell.bench.session.path == plan_file
    mime.setUrls([QUrl.fromLocalFile("/bench/picture.png")])
    assert shell.window.dropped_file(mime) is None


def test_undo_and_redo_from_the_menu_bring_back_the_same_plan(make_shell, plan_file, cue_plan):
    shell = make_shell(plan_file)
    bench = shell.bench.workbench
    assert not shell.window.acts["undo"].isEnabled()
    bench.do("Lift WH at A", partial(lift, end="A", conductor="WH"))
    after = bench.plan
    assert shell.window.acts["undo"].text() == "&Undo lift WH at A"
    trigger(shell, "undo")
    assert bench.plan == cue_plan
    trigger(shell, "redo")
    assert bench.plan == after


@pytest.mark.parametrize(
    ("plan", "name"),
    [
        (Plan(title="Cue desk: L/R", order="SP-0417"), "SP-0417 Cue desk L R"),
        (Plan(title="../../etc"), "etc"),
        (Plan(), "lead"),
    ],
)
def test_suggested_file_names_are_safe(plan, name):
    assert file_name_for(plan) == name
