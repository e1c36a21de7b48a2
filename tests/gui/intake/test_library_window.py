"""The owner takes in a pinout by keyboard and mouse; the letter and its maker are invented."""

from shutil import copy

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from planner.app.recent import RecentPlan
from planner.data import data_dir
from planner.drawing.carried_face import stand_of
from planner.files.definitions import pinout_text
from planner.files.plans import read_plan
from tests.gui.intake.hands import choose, typed

CTRL = Qt.KeyboardModifier.ControlModifier


def take_in(window, signals):
    window.browse.look_at("jack-4.4-five-pole", "connector")
    QTest.keyClick(window, Qt.Key.Key_N, Qt.KeyboardModifier.ControlModifier)
    editor = window.pinout
    QTest.mouseClick(editor.question.buttons["mating"], Qt.MouseButton.LeftButton)
    for contact, signal in signals.items():
        typed(editor.table.fields[contact], signal)
    choose(editor.drive, "driven-balanced")
    typed(editor.fields["use"], "balanced headphone output")
    typed(editor.fields["maker"], "Tarn & Wicket")
    choose(editor.source.kind, "letter")
    typed(editor.source.fields["reference"], "letter about the pit amplifier, invented")
    return editor


ODD = {"T": "left plus", "R1": "R+", "R2": "L-", "R3": "R-", "S": "screen"}


def test_a_letter_becomes_a_record(window):
    editor = take_in(window, ODD)
    assert "ring 1 and ring 2 exchanged" in {it.told for it in editor.likeness.found}
    assert "(the standard)" in editor.likeness.list.item(0).text()
    assert editor.missing.text().startswith("Nothing is missing")

    QTest.keyClick(editor, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)

    saved = window.owner.library.pinout("tarn-wicket-jack-4.4-five-pole")
    assert saved.signals["R1"] == ("R+",)
    assert (saved.trust, saved.source.recorded_by) == ("documented", "Saltmarsh Playhouse")
    assert window.stack.currentWidget() is window.browse
    assert window.browse.record == saved
    assert len(window.owner.changes(saved)) == 1


def test_the_connector_that_was_searched_for_is_begun_with(window):
    QTest.keyClicks(window.browse.search, "XLR-5 male")
    assert window.browse.record.fits[0] == "xlr-5-female"

    QTest.keyClick(window, Qt.Key.Key_N, CTRL)

    assert window.pinout.drafting.draft.connector == "xlr-5-male"


def test_the_reason_for_the_side_gives_way_to_the_mirror_image(window):
    editor = take_in(window, {})
    assert editor.mirror.isHidden()
    window.browse.look_at("xlr-5-male", "connector")
    editor.connector.box.setCurrentIndex(editor.connector.box.findData("xlr-5-male"))
    editor.connector.box.activated.emit(editor.connector.box.currentIndex())
    assert editor.question.why.isVisible()

    typed(editor.table.fields["1"], "mic return")

    assert editor.mirror.isVisible()
    assert not editor.question.why.isVisible()


def test_enter_goes_to_the_next_contact_and_a_wrong_word_stays(window):
    editor = take_in(window, {})
    fields = editor.table.fields
    typed(fields["T"], "lefft")

    assert "no signal" in fields["T"].error.text()
    assert fields["T"].line.hasFocus()
    typed(fields["T"], "L+")
    assert fields["R1"].line.hasFocus()
    assert not fields["T"].error.isVisible()


def test_pressing_a_contact_goes_to_its_line_and_marks_the_face(window):
    editor = take_in(window, ODD)
    size = (float(editor.face.width()), float(editor.face.height()))
    joint = stand_of(editor.face.shown, size).joints["R2"]

    QTest.mouseClick(editor.face, Qt.MouseButton.LeftButton, pos=QPoint(*map(round, joint)))

    assert editor.table.fields["R2"].line.hasFocus()
    assert editor.face.shown.chosen == "R2"
    assert editor.face.shown.pairs == (("R1", "R2"),)
    assert editor.face.shown.side == "mating"


def test_the_face_shows_the_nearest_until_another_is_picked(window):
    editor = take_in(window, {"T": "L+", "R1": "L-", "R2": "R-", "R3": "R+"})
    found = editor.likeness
    standard = found.found[0].record.id
    nearest = min(found.found, key=lambda it: it.cost).record.id
    assert found.shown.record.id == nearest != standard

    found.list.setFocus()
    QTest.keyClick(found.list, Qt.Key.Key_Home)
    typed(editor.table.fields["S"], "shield")
    assert found.shown.record.id == standard


def test_every_answer_is_one_undo_step(window):
    editor = take_in(window, {"T": "L+", "R1": "L-"})
    editor.drafting.undo_stack.setIndex(0)
    assert editor.drafting.draft.signals == {}
    while editor.drafting.undo_stack.canRedo():
        QTest.keyClick(
            editor,
            Qt.Key.Key_Z,
            Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier,
        )
    assert editor.drafting.draft.signals == {"T": ("L+",), "R1": ("L-",)}


def test_what_is_missing_keeps_it_from_being_saved(window):
    window.take_in_pinout("xlr-5-male")
    window.pinout.save()

    assert "from which side" in window.pinout.missing.text()
    assert window.stack.currentWidget() is window.pinout


def test_a_draft_is_not_left_unasked(window):
    editor = take_in(window, {"T": "L+"})
    QTest.mouseClick(editor.cancel, Qt.MouseButton.LeftButton)
    assert window.stack.currentWidget() is editor
    window.ask.leave = True
    QTest.mouseClick(editor.cancel, Qt.MouseButton.LeftButton)
    assert window.stack.currentWidget() is window.browse


def test_of_two_owners_the_second_is_shown_the_difference(window):
    take_in(window, ODD)
    window.pinout.save()
    window.revise()
    record = window.browse.record
    saved = window.owner.found("pinout", record.id)
    theirs = record.evolve(remarks="written by somebody else")
    window.owner.store.save(theirs, saved.digest, who="the other bench")

    typed(window.pinout.table.fields["S"], "chassis")
    window.pinout.save()
    assert [it.key for it in window.ask.conflicts[0].difference]
    assert window.owner.found("pinout", record.id).record.remarks == "written by somebody else"

    window.ask.over = True
    window.pinout.save()
    window.pinout.save()
    assert window.owner.found("pinout", record.id).record.signals["S"] == ("chassis",)
    assert len(window.owner.store.history("pinout", record.id)) == 3


def test_a_shipped_record_is_retired_with_its_reason(window):
    window.browse.look_at("odalisk-2.5-balanced")
    window.retire()

    kept = window.owner.library.pinout("odalisk-2.5-balanced")
    assert kept.retired.reason == window.ask.why
    ids = {row.record.id for row in window.browse.model.rows}
    assert "odalisk-2.5-balanced" not in ids
    QTest.mouseClick(window.browse.retired, Qt.MouseButton.LeftButton, pos=QPoint(8, 8))
    ids = {row.record.id for row in window.browse.model.rows}
    assert "odalisk-2.5-balanced" in ids


def test_a_paper_is_kept_and_named(window, tmp_path):
    window.ask.paper = tmp_path / "letter.txt"
    window.ask.paper.write_text("ring 1 is the right plus", encoding="utf-8")
    editor = take_in(window, ODD)
    QTest.mouseClick(editor.source.add, Qt.MouseButton.LeftButton)

    assert "letter.txt" in editor.source.papers.text()
    editor.save()
    record = window.browse.record
    assert record.documents[0].digest in pinout_text(record)
    assert window.owner.store.papers.read(record.documents[0]) == window.ask.paper.read_bytes()


def test_filters_list_what_they_say(window):
    window.browse.trust.show_value("hearsay")
    window.browse.renew()

    trusts = {row.record.trust for row in window.browse.model.rows if row.record is not None}
    assert trusts == {"hearsay"}


def test_a_record_is_sent_to_another_bench_with_its_paper(window, tmp_path, monkeypatch):
    window.ask.paper = tmp_path / "letter.txt"
    window.ask.paper.write_text("ring 1 is the right plus", encoding="utf-8")
    editor = take_in(window, ODD)
    QTest.mouseClick(editor.source.add, Qt.MouseButton.LeftButton)
    editor.save()
    window.ask.export_to = window.ask.parcel = tmp_path / "odd.parcel.json"
    sent = window.browse.record
    QTest.keyClick(window, Qt.Key.Key_S, CTRL | Qt.KeyboardModifier.ShiftModifier)

    monkeypatch.setenv("CUPWRIGHT_DATA", str(tmp_path / "the other bench"))
    window.owner.folder = tmp_path / "the other bench" / "library"
    window.owner.renew()
    assert window.owner.library.pinout(sent.id) is None
    QTest.keyClick(window, Qt.Key.Key_O, CTRL)
    assert [it.state for it in window.ask.arrived] == ["new"]
    got = window.owner.library.pinout(sent.id)
    assert got.signals == sent.signals
    assert window.owner.store.papers.read(got.documents[0]) == window.ask.paper.read_bytes()
    assert window.browse.record == got


def test_a_spoilt_parcel_is_told_and_changes_nothing(window, tmp_path):
    window.ask.parcel = tmp_path / "spoilt.json"
    window.ask.parcel.write_text('{"format": "cupwright-parcel", "version": 99}', encoding="utf-8")
    window.take_in_parcel()

    assert window.ask.troubles
    assert not window.owner.folder.exists()


def test_another_title_keeps_the_short_name(window):
    window.browse.look_at("odalisk-2.5-balanced")
    window.ask.why = "Odalisk, as the lid says"
    QTest.keyClick(window, Qt.Key.Key_F2)

    kept = window.owner.library.pinout("odalisk-2.5-balanced")
    assert (kept.title, kept.revision) == ("Odalisk, as the lid says", 2)


def test_the_card_says_which_plans_use_it(window, tmp_path):
    demo = data_dir("resources") / "demo" / "cue-desk-headphone-lead.json"
    copy(demo, tmp_path / "cue.json")
    plan = read_plan(demo)
    window.owner.settings.remember(RecentPlan(tmp_path / "cue.json", plan.title))
    window.owner.renew()
    window.browse.look_at(plan.ends[0].pinout)

    told = [it.text() for it in window.browse.card.widget().findChildren(QLabel)]
    assert "Used in 1 plan" in told


def test_a_shared_folder_is_saved_into_and_read_by_all(window, tmp_path):
    shared = tmp_path / "shared"
    shared.mkdir()
    window.owner.settings.folders = (shared,)
    window.owner.renew()
    choose(window.browse.into, str(shared))
    take_in(window, ODD)
    window.pinout.save()

    assert list(shared.rglob("tarn-wicket*.toml"))
    assert window.owner.library.pinout("tarn-wicket-jack-4.4-five-pole") is not None


def test_a_folder_that_can_only_be_read_says_where_else(window, tmp_path):
    gone = tmp_path / "a drive that is off"
    window.owner.settings.folders = (gone,)
    window.owner.renew()
    choose(window.browse.into, str(gone))
    editor = take_in(window, ODD)
    editor.save()

    assert window.ask.troubles
    assert window.stack.currentWidget() is editor, "what was written is still there"
    assert editor.drafting.dirty
