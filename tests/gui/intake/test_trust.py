"""On whose word a record rests, and who found it right; people and letters are invented."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from planner.app.intake.confirm_dialog import ConfirmDialog
from planner.app.intake.face_view import FaceView
from tests.gui.intake.hands import choose, typed
from tests.gui.intake.test_library_window import ODD, take_in

CTRL_SHIFT = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier


def test_some_contacts_rest_on_another_word_and_the_record_is_as_weak(window):
    editor = take_in(window, ODD)
    box = editor.source.statements
    QTest.mouseClick(box.open, Qt.MouseButton.LeftButton)
    typed(box.contacts, "ring 3")
    choose(box.kind, "hearsay")
    typed(box.reference, "said on the telephone")
    QTest.mouseClick(box.add, Qt.MouseButton.LeftButton)
    editor.save()

    record = window.browse.record
    assert [(it.contacts, it.kind) for it in record.statements] == [(("R3",), "hearsay")]
    assert record.trust == "hearsay"


def test_a_wrong_contact_of_a_statement_is_told_and_nothing_is_stated(window):
    editor = take_in(window, ODD)
    box = editor.source.statements
    QTest.mouseClick(box.open, Qt.MouseButton.LeftButton)
    typed(box.contacts, "R9")
    QTest.mouseClick(box.add, Qt.MouseButton.LeftButton)

    assert "no contact" in box.error.text()
    assert editor.drafting.draft.statements == ()


def test_two_persons_confirm_by_hand_one_twice_counts_once(window):
    take_in(window, ODD).save()
    trusts = []
    for who in ("the owner", "The  Owner", "the apprentice"):
        window.ask.who, window.ask.how = who, "continuity to the board, contact by contact"
        QTest.keyClick(window, Qt.Key.Key_M, CTRL_SHIFT)
        trusts.append(window.browse.record.trust)

    assert trusts == ["confirmed", "confirmed", "confirmed-by-two"]
    assert len(window.owner.store.history("pinout", window.browse.record.id)) == 4


@pytest.mark.parametrize(("how", "taken"), [("", False), ("heard it", True)])
def test_how_it_was_found_must_be_written(qtbot, window, how, taken):
    dialog = ConfirmDialog(window, window.browse.record, ("the owner", "2026-01-02", ""))
    qtbot.addWidget(dialog)
    dialog.lines["how"].setText(how)
    with qtbot.waitSignal(dialog.accepted, raising=False, timeout=50) as got:
        QTest.mouseClick(dialog.ok, Qt.MouseButton.LeftButton)

    assert got.signal_triggered is taken


def test_a_long_way_of_finding_is_read_from_its_beginning_and_who_is_typed_over(qtbot, window):
    proposed = ("this bench", "2026-01-02", "7 pairs of 5 contacts read with a meter; " * 4)
    dialog = ConfirmDialog(window, window.browse.record, proposed)
    qtbot.addWidget(dialog)

    assert dialog.lines["how"].cursorPosition() == 0
    assert dialog.lines["who"].selectedText() == "this bench"


def card_words(window):
    return " ".join(it.text() for it in window.browse.card.widget().findChildren(QLabel))


def test_while_two_records_disagree_the_card_shows_the_difference(window):
    take_in(window, ODD).save()
    first = window.browse.record
    editor = take_in(window, ODD | {"R1": "L-", "R2": "R+"})
    editor.save()

    assert window.browse.record.id != first.id
    assert "ring 1 and ring 2 exchanged" in card_words(window)
    assert "Both stand until one is retired" in card_words(window)
    face = window.browse.card.widget().findChild(FaceView)
    assert face.shown.pairs == (("R1", "R2"),)

    window.browse.card.look_at(first.id)
    assert window.browse.record.id == first.id
    window.retire()
    window.browse.retired.setChecked(True)
    window.browse.look_at(first.id)
    assert "Both stand" not in card_words(window)
