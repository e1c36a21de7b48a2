"""The furnished window: answer, panels by keyboard, forms, looks, and what goes wrong."""

import sys
from functools import partial
from itertools import pairwise

import pytest
from PySide6.QtCore import QSize, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel

from planner.app.arrangement import Form
from planner.app.dialogs.details import Details
from planner.app.labels import ElidedLabel
from planner.app.panels.guide_draft import Draft
from planner.edits.landings import lift
from planner.files.plans import read_plan, write_plan
from planner.model.place import Place
from planner.model.plan import Plan


def band_says(shell):
    band = shell.window.band
    return band.title.text(), band.sentence.text()


def key(shell, code, modifiers=Qt.KeyboardModifier.NoModifier):
    QTest.keyClick(QApplication.focusWidget() or shell.window, code, modifiers)


# -- the answer ---------------------------------------------------------------------------------


def test_a_new_plan_has_nothing_to_check(shell):
    assert band_says(shell) == ("New plan", "Nothing to check yet: choose the ends and the cable.")
    assert shell.window.windowTitle() == "Untitled plan[*] – Cupwright"
    assert not shell.window.acts["sheet"].isEnabled()
    assert shell.window.regions.holders["lately"].isVisible()


@pytest.mark.parametrize("before", ["a lead from the guide", "the demo"])
def test_a_new_plan_begins_with_an_empty_guide(make_shell, answers, library, before):
    shell = make_shell()
    answers.about_unsaved = "discard"
    guide = shell.bench.guide
    for record in (library.connector("phono-male"), library.cable("star-quad")):
        guide.offer(record)
    if before == "the demo":
        shell.window.acts["demo"].trigger()
    else:
        guide.shapes["one"].click()
        guide.offer(library.connector("phono-male"))
        guide.start.click()
    assert shell.bench.stack.currentWidget() is shell.bench.canvas
    shell.window.acts["new"].trigger()
    assert shell.bench.stack.currentWidget() is guide
    assert guide.draft == Draft()
    assert QApplication.focusWidget() is guide.shapes["two"]


def test_undoing_the_first_step_keeps_the_answers_of_the_guide(shell, library):
    guide = shell.bench.guide
    guide.shapes["one"].click()
    for record in (library.connector("phono-male"), library.connector("phono-male")):
        guide.offer(record)
    guide.offer(library.cable("star-quad"))
    guide.start.click()
    shell.window.acts["undo"].trigger()
    assert shell.bench.stack.currentWidget() is guide
    assert set(guide.draft.chosen) == {"A", "B"}


def test_the_shapes_of_the_guide_keep_their_height_in_a_low_window(make_shell):
    shell = make_shell(size=(720, 450))
    QApplication.processEvents()
    assert {choice.height() for choice in shell.bench.guide.shapes.values()} == {60}


def test_ctrl_enter_in_the_guide_starts_landing_and_mends_nothing(shell, library):
    guide = shell.bench.guide
    guide.shapes["one"].click()
    for record in (library.connector("phono-male"), library.connector("phono-male")):
        guide.offer(record)
    guide.offer(library.cable("star-quad"))
    guide.order.setFocus()
    assert not shell.window.acts["mend_finding"].isEnabled()
    key(shell, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert len(shell.bench.workbench.plan.ends) == 2
    assert shell.window.regions.panel == "canvas"


def test_a_mistake_is_said_and_counted(make_shell, spoiled_plan):
    shell = make_shell()
    shell.bench.workbench.open_plan(spoiled_plan)
    shell.bench.session.opened.emit()
    title, sentence = band_says(shell)
    assert title == "1 stop"
    assert sentence.startswith("Don’t heat the iron: right channel")
    assert shell.window.band.landed.text() == "9 of 9 landed"
    assert shell.window.band.plan_order.text() == "Order SP-0417, revision 1"
    assert not shell.window.regions.holders["lately"].isVisible()


def test_a_lifted_core_is_still_to_land_and_never_clear(make_shell, plan_file):
    shell = make_shell(plan_file)
    for conductor in ("WH", "BU"):
        edit = partial(lift, end="A", conductor=conductor)
        shell.bench.workbench.do(f"Lift {conductor}", edit)
    assert band_says(shell)[0] == "2 to land"
    assert shell.window.band.landed.text() == "7 of 9 landed"
    shell.bench.workbench.undo_stack.setIndex(0)
    assert shell.window.band.landed.text() == "9 of 9 landed"
    assert "to land" not in band_says(shell)[0]


def test_land_by_signal_is_one_undo_step_and_says_what_it_did(make_shell, cue_plan, tmp_path):
    bare = cue_plan.evolve(landings=())
    write_plan(tmp_path / "bare.json", bare)
    shell = make_shell(tmp_path / "bare.json")
    shell.window.acts["land_by_signal"].trigger()
    assert shell.bench.workbench.plan.landings != ()
    assert shell.window.notice.isVisible()
    assert shell.window.notice.text.startswith("Landed 9 by signal.")
    shell.window.acts["undo"].trigger()
    assert shell.bench.workbench.plan == bare


def test_the_sheet_is_shown_and_what_was_written_is_said(make_shell, answers, plan_file, tmp_path):
    shell = make_shell(plan_file)
    answers.act_on_sheet = lambda desk: desk.write(tmp_path / "cut list.csv")
    shell.window.acts["sheet"].trigger()
    assert answers.asked == ["SP-0417 Cue desk headphone lead.pdf"]
    assert (tmp_path / "cut list.csv").read_bytes().startswith(b"list,kind")
    assert str(tmp_path / "cut list.csv") in shell.window.notice.text


def test_a_refused_edit_is_said_with_its_reason(make_shell, plan_file):
    shell = make_shell(plan_file)
    assert not shell.bench.workbench.land("R", "WH", "no such contact")
    assert shell.window.notice.isVisible()
    assert shell.window.notice.text.endswith(".")


def test_title_and_order_are_one_step(make_shell, answers, plan_file):
    shell = make_shell(plan_file)
    answers.written = Details("Pit lead", "SP-0500", 4, "Red heat-shrink on R")
    shell.window.acts["details"].trigger()
    plan = shell.bench.workbench.plan
    assert (plan.title, plan.order, plan.revision) == ("Pit lead", "SP-0500", 4)
    assert plan.remarks == "Red heat-shrink on R"
    assert shell.bench.workbench.undo_stack.count() == 1
    assert shell.window.band.plan_title.text() == "Pit lead"


def test_the_title_bar_follows_the_title_of_a_plan_without_a_file(make_shell, answers):
    shell = make_shell(demo=True)
    answers.written = Details("Pit lead", "SP-0500", 4, "")
    shell.window.acts["details"].trigger()
    answers.written = Details("Cue lead", "SP-0500", 4, "")
    shell.window.acts["details"].trigger()
    assert shell.window.windowTitle().startswith("Cue lead")


def test_turning_a_plug_stays_within_half_a_turn(make_shell, plan_file):
    shell = make_shell(plan_file)
    shell.bench.workbench.select(Place(end="L"))
    for _ in range(19):
        shell.window.acts["turn_left"].trigger()
    assert shell.bench.workbench.plan.end_by_id["L"].turn_deg == -170


# -- panels and forms ---------------------------------------------------------------------------


def test_f6_goes_round_all_panels_and_shift_f6_back(make_shell, plan_file):
    shell = make_shell(plan_file)
    regions = shell.window.regions
    assert regions.panel == "canvas"
    seen = []
    for _ in range(6):
        key(shell, Qt.Key.Key_F6)
        seen.append(regions.panel)
    assert seen == ["landings", "findings", "in_hand", "band", "shelf", "canvas"]
    key(shell, Qt.Key.Key_F6, Qt.KeyboardModifier.ShiftModifier)
    assert regions.panel == "shelf"


def test_slash_searches_the_shelf_and_ctrl_l_enters_the_landings(make_shell, plan_file):
    shell = make_shell(plan_file)
    key(shell, Qt.Key.Key_Slash)
    assert QApplication.focusWidget() is shell.bench.shelf.search
    key(shell, Qt.Key.Key_Slash)
    assert shell.bench.shelf.search.text() == "/"
    key(shell, Qt.Key.Key_L, Qt.KeyboardModifier.ControlModifier)
    assert shell.window.regions.panel == "landings"


def test_single_letters_do_nothing_while_text_is_typed(make_shell, plan_file):
    shell = make_shell(plan_file)
    shell.window.acts["search"].trigger()
    for letter in (Qt.Key.Key_G, Qt.Key.Key_N, Qt.Key.Key_S):
        key(shell, letter)
    assert shell.bench.shelf.search.text() == "gns"
    assert not shell.window.acts["one_scale"].isChecked()


def test_hints_follow_the_panel_and_the_hand(make_shell, plan_file):
    shell = make_shell(plan_file)
    assert shell.window.hints.context == "canvas"
    shell.bench.workbench.pick_up("A", "WH")
    assert shell.window.hints.context == "hand"
    shell.bench.workbench.put_back()
    shell.window.regions.enter("landings")
    assert shell.window.hints.context == "landings"


@pytest.mark.parametrize(
    ("size", "form", "shown"),
    [
        ((1440, 900), Form.WIDE, {"shelf", "landings", "findings", "in_hand", "hints"}),
        ((1024, 700), Form.COMPACT, {"rail", "landings_bar", "findings", "in_hand", "hints"}),
        ((720, 450), Form.COLUMN, {"ends", "bar", "hints"}),
    ],
)
def test_each_size_has_its_form(make_shell, plan_file, size, form, shown):
    shell = make_shell(plan_file, size=size)
    regions = shell.window.regions
    assert shell.window.size() == QSize(*size)
    assert regions.form is form
    visible = {name for name, holder in regions.holders.items() if holder.isVisible()}
    assert visible == shown | {"band", "head", "canvas"}


def test_in_one_column_every_panel_can_be_reached(make_shell, plan_file):
    shell = make_shell(plan_file, size=(720, 450))
    regions = shell.window.regions
    for name in ("shelf", "landings", "findings", "in_hand", "canvas"):
        shell.window.bar.chosen.emit(name)
        assert regions.holders[name].isVisible()
        assert regions.holders[name].width() == 720


def test_in_one_column_a_panel_s_fold_button_goes_back_to_the_bench(make_shell, plan_file):
    shell = make_shell(plan_file, size=(720, 450))
    for name in ("shelf", "landings"):
        shell.window.acts[name].trigger()
        assert shell.window.regions.folds.sheet == name
        shell.window.acts[name].trigger()
        assert shell.window.regions.folds.sheet == "canvas"


def test_folding_the_shelf_and_the_landings_gives_the_room_to_the_bench(make_shell, plan_file):
    shell = make_shell(plan_file)
    canvas = shell.window.regions.holders["canvas"]
    before = canvas.size()
    shell.window.acts["shelf"].trigger()
    shell.window.acts["landings"].trigger()
    assert canvas.width() == before.width() + 168
    assert canvas.height() == before.height() + 152
    shell.window.acts["shelf"].trigger()
    shell.window.acts["landings"].trigger()
    assert canvas.size() == before


def cut_labels(shell):
    """The labels of the shell that show less than their text."""
    cut = []
    for part in (shell.window.band, shell.window.head, shell.window.hints, shell.window.bar):
        for found in part.findChildren(QLabel):
            if not found.isVisible():
                continue
            short = (
                found.is_cut()
                if isinstance(found, ElidedLabel)
                else (found.width() < found.sizeHint().width())
            )
            cut += [found.text()] if short or found.height() < found.fontMetrics().height() else []
    return cut


@pytest.mark.parametrize("size", [(1440, 900), (1024, 700)])
def test_no_text_of_the_shell_is_cut(make_shell, spoiled_plan, tmp_path, size):
    write_plan(tmp_path / "lead.json", spoiled_plan)
    shell = make_shell(tmp_path / "lead.json", size=size)
    QApplication.processEvents()
    assert cut_labels(shell) == []


def test_what_is_cut_in_one_column_is_told_by_its_tip(make_shell, spoiled_plan, tmp_path):
    write_plan(tmp_path / "lead.json", spoiled_plan)
    shell = make_shell(tmp_path / "lead.json", size=(720, 450))
    QApplication.processEvents()
    sentence = shell.window.band.sentence
    assert cut_labels(shell) in ([], [sentence.text()])
    assert sentence.toolTip() == (sentence.text() if sentence.is_cut() else "")


def test_band_parts_stand_in_order_without_overlap(make_shell, plan_file):
    band = make_shell(plan_file).window.band
    parts = [
        band.mark,
        band.sentence,
        band.landed,
        band.plan_title,
        band.undo,
        band.redo,
        band.land,
    ]
    spans = [
        (part.mapTo(band, part.rect().topLeft()).x(), part.width()) for part in (*parts, band.sheet)
    ]
    assert all(left + width <= right for (left, width), (right, _) in pairwise(spans))


# -- faults -------------------------------------------------------------------------------------


def test_an_unforeseen_fault_is_said_and_a_copy_can_be_saved(  # noqa: PLR0917 - fixtures
    make_shell, answers, plan_file, tmp_path, caplog, cue_plan
):
    shell = make_shell(plan_file)
    answers.copy_after_mishap, answers.to_save = True, tmp_path / "copy.json"
    try:
        raise RuntimeError("the iron slipped")  # noqa: TRY301 - what a slot would raise
    except RuntimeError as error:
        sys.excepthook(type(error), error, error.__traceback__)
    assert answers.asked[0] == "RuntimeError: the iron slipped"
    assert read_plan(answers.to_save) == cue_plan
    assert [record.getMessage() for record in caplog.records] == ["unforeseen fault"]
    assert shell.bench.workbench.plan == cue_plan
    assert shell.bench.session.path == plan_file
    caplog.clear()


def test_the_hook_is_taken_back_on_closing(make_shell, plan_file):
    before = sys.excepthook
    shell = make_shell(plan_file)
    assert sys.excepthook is not before
    shell.window.close()
    assert sys.excepthook is before


def test_demo_and_shipped_plans_open_without_a_file(make_shell):
    shell = make_shell(demo=True)
    assert shell.bench.session.path is None
    assert shell.bench.workbench.plan != Plan()
    assert not shell.bench.session.dirty
    for action in shell.window.menus["Demos"].actions():
        action.trigger()
        assert shell.bench.workbench.plan.title
