"""The rules of workmanship: chosen in a dialog, with their sources, as one undo step."""

import pytest
from PySide6.QtWidgets import QDialog

from planner.app.dialogs.workmanship import WorkmanshipDialog
from planner.model.workmanship import Workmanship
from tests.gui.shell.test_accessible import nameless


@pytest.fixture
def dialog(qtbot):
    made = WorkmanshipDialog(None, Workmanship())
    qtbot.addWidget(made)
    made.show()
    return made


def test_what_is_chosen_already_stays(dialog):
    assert Workmanship(**dialog.chosen()) == Workmanship()


def test_each_choice_names_its_source(dialog):
    said = {name: label.text() for name, label in dialog._sources.items()}
    assert said["insulation_gap"] == "Source: US Army STP 11-25R13-SM-TG, Appendix A"
    dialog.choices["insulation_gap"].setCurrentIndex(1)
    assert "NASA-STD-8739.3" in dialog._sources["insulation_gap"].text()
    assert all(label.text() for label in dialog._sources.values())


def test_figures_are_typed_in_percent_and_mm(dialog):
    dialog.figures["watch_share"].setText("80")
    dialog.figures["tolerance_mm"].setText("0,1")
    dialog.figures["trim_mm"].setText("12,5")
    dialog.choices["shield_joint"].setCurrentIndex(1)
    assert Workmanship(**dialog.chosen()) == Workmanship(
        watch_share=0.8, tolerance_mm=0.1, trim_mm=12.5, shield_joint="first"
    )


@pytest.mark.parametrize("typed", ["", "much", "0", "-4", "900"])
def test_a_figure_that_can_not_be_keeps_the_dialog_open(dialog, typed):
    dialog.figures["watch_share"].setText(typed)
    dialog.accept()
    assert dialog.isVisible()
    assert "Gap to watch" in dialog.error.text()
    dialog.figures["watch_share"].setText("70")
    dialog.accept()
    assert dialog.result() == QDialog.DialogCode.Accepted


def test_everything_in_it_is_named(dialog):
    assert nameless(dialog) == []


def test_it_changes_the_plan_as_one_undo_step(cue, answers):
    answers.workmanlike = Workmanship(sleeve_overlap="six-mm", shield_joint="first").model_dump()
    cue.shell.window.acts["workmanship"].trigger()
    assert answers.asked[-1] == "workmanship"
    assert cue.plan.workmanship == Workmanship(sleeve_overlap="six-mm", shield_joint="first")
    assert cue.column.order.rows[0].contact == "S"
    assert cue.steps() == 1
    cue.shell.window.acts["undo"].trigger()
    assert cue.plan.workmanship == Workmanship()


def test_leaving_it_changes_nothing(cue, answers):
    answers.workmanlike = None
    cue.shell.window.acts["workmanship"].trigger()
    assert cue.steps() == 0
