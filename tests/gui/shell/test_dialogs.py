import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QFileDialog, QLabel, QLineEdit, QWidget

from planner.app.dialogs.ask import CUT_FILES, PLAN_FILES, SHEET_FILES, Ask
from planner.app.dialogs.details import DetailsDialog
from planner.app.dialogs.message import Choice, Message
from planner.app.dialogs.settings import SettingsDialog
from planner.app.settings import Settings
from planner.model.plan import Plan
from planner.problem import Problem

SAVE = (
    Choice("save", "Save", primary=True),
    Choice("discard", "Discard"),
    Choice("cancel", "Cancel", escape=True),
)


def texts(dialog):
    return [part.text() for part in dialog.findChildren(QLabel)]


def answer(qtbot, act):
    dialog = Message(None, "Save the changes?", "They are lost else.", SAVE)
    qtbot.addWidget(dialog)
    dialog.show()
    act(dialog)
    return dialog._answer


def test_each_button_is_its_answer(qtbot):
    for place, name in enumerate(("save", "discard", "cancel")):
        assert answer(qtbot, lambda dialog, at=place: dialog.buttons[at].click()) == name


def test_escape_chooses_the_safe_one(qtbot):
    assert answer(qtbot, lambda dialog: qtbot.keyClick(dialog, Qt.Key.Key_Escape)) == "cancel"


def test_enter_presses_the_button_with_the_focus(qtbot):
    def act(dialog):
        dialog.buttons[1].setFocus()
        qtbot.keyClick(dialog.buttons[1], Qt.Key.Key_Return)

    assert answer(qtbot, act) == "discard"


def test_a_problem_shows_place_what_and_mend_as_plain_text(qtbot):
    problem = Problem("<b>titel</b> is not known", "lead.json: titel", "Did you mean 'title'?")
    dialog = Message(None, "It can’t be opened", "", SAVE[2:], problems=(problem,))
    qtbot.addWidget(dialog)
    assert texts(dialog)[2:] == [
        "lead.json: titel",
        "<b>titel</b> is not known.",
        "Did you mean 'title'?",
    ]
    formats = {part.textFormat() for part in dialog.findChildren(QLabel)}
    assert formats == {Qt.TextFormat.PlainText}


def test_settings_are_stored_on_ok_only(qtbot, tmp_path):
    settings = Settings(tmp_path / "settings.ini")
    dialog = SettingsDialog(None, settings, lambda: tmp_path)
    qtbot.addWidget(dialog)
    dialog.bench_name.setText("Saltmarsh Playhouse bench")
    dialog.choices["paper"].setCurrentIndex(1)
    dialog._on_add()
    dialog._on_add()
    assert settings.bench_name == ""
    dialog.accept()
    assert settings.bench_name == "Saltmarsh Playhouse bench"
    assert settings.paper == "letter"
    assert settings.folders == (tmp_path,)
    dialog.folders.setCurrentRow(0)
    dialog._on_remove()
    dialog.accept()
    assert settings.folders == ()


def test_details_begin_with_what_the_plan_says(qtbot):
    dialog = DetailsDialog(
        None, Plan(title="Cue desk", order="SP-0417", revision=3, remarks="a\nb")
    )
    qtbot.addWidget(dialog)
    shown = (dialog.title.text(), dialog.order.text(), dialog.revision.value())
    assert shown == ("Cue desk", "SP-0417", 3)
    assert dialog.remarks.toPlainText() == "a\nb"
    assert dialog.title.selectedText() == "Cue desk"


@pytest.mark.parametrize(
    ("act", "kind", "name", "written"),
    [
        ("where_to_save", PLAN_FILES, "lead", "lead.json"),
        ("where_to_write_sheet", SHEET_FILES[0], "sheet", "sheet.pdf"),
        ("where_to_write_sheet", SHEET_FILES[1], "sheet", "sheet.svg"),
        ("where_to_save", PLAN_FILES, "lead.json", "lead.json"),
        ("where_to_write_cuts", CUT_FILES[0], "cuts", "cuts.csv"),
    ],
)
def test_a_name_without_an_ending_gets_that_of_its_kind(  # noqa: PLR0917 - a table
    qtbot, tmp_path, act, kind, name, written
):
    parent = QWidget()
    qtbot.addWidget(parent)
    settings = Settings(tmp_path / "settings.ini")
    settings.last_folder = tmp_path

    def answer_it():
        dialog = parent.findChild(QFileDialog)
        dialog.selectNameFilter(kind)
        dialog.filterSelected.emit(kind)
        dialog.findChild(QLineEdit).setText(name)
        dialog.accept()

    QTimer.singleShot(0, answer_it)
    assert getattr(Ask(parent, settings), act)("suggested") == tmp_path / written
