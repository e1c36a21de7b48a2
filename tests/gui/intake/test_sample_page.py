"""The owner measures a sample. The samples are invented; each reading is what its wiring gives."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest

from planner.drawing.carried_face import stand_of
from planner.proving.identifying.sample_csv import sample_from_text

# Two drivers of 32 ohm, apart from each other; the sleeve is joined to nothing.
SAMPLE = {frozenset({"T", "R1"}): "32.2", frozenset({"R2", "R3"}): "32,0"}


@pytest.fixture
def page(window, qtbot):
    window.browse.look_at("jack-4.4-five-pole", "connector")
    QTest.keyClick(window, Qt.Key.Key_M, Qt.KeyboardModifier.ControlModifier)
    yield window.sample
    window.sample.sample.let_go()


def enter(page, qtbot, text):
    line = page.entry
    QTest.keyClicks(line, text)
    QTest.keyClick(line, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: not page.sample._errands.busy)


def read_on(page, qtbot, most=12):
    """Read what is proposed until it is settled; return how many readings that took."""
    for count in range(most):
        if page.sample.identified is not None and page.sample.identified.certain:
            return count
        enter(page, qtbot, SAMPLE.get(frozenset(page.sample.pair), "o"))
    return most


def answer(page, by_key):
    for key, value in by_key.items():
        box = page.questions.boxes[key]
        box.setCurrentIndex(box.findData(value))
        box.activated.emit(box.currentIndex())


LEFT_FIRST = {"ear-1": "L", "plus-1": "T", "ear-2": "R", "plus-2": "R2"}


def test_the_probes_are_guided_until_it_is_settled(page, qtbot):
    assert read_on(page, qtbot) <= 10

    assert "A driver of 32" in page.said.text()
    assert "Settled" in page.said.text()
    assert not page.write.isEnabled()
    assert "4 still to answer" in page.foot.text()


def test_what_is_in_doubt_has_a_question_mark_until_it_is_settled(page, qtbot):
    enter(page, qtbot, "o")
    doubtful = page.sample.identified.doubtful
    notes = page.face.shown.notes
    assert any(name in doubtful for name in notes)
    assert all(notes[name].endswith(" ?") == (name in doubtful) for name in notes)

    read_on(page, qtbot)

    assert not any("?" in words for words in page.face.shown.notes.values())
    assert page.face.shown.pairs == ()


def test_a_wrong_entry_stays_with_its_reason(page, qtbot):
    QTest.keyClicks(page.entry, "-3")
    QTest.keyClick(page.entry, Qt.Key.Key_Return)

    assert "below zero" in page.error.text()
    assert page.sample.readings.readings == ()
    assert page.entry.text() == "-3"


def test_another_pair_is_chosen_on_the_face(page, qtbot):
    size = (float(page.face.width()), float(page.face.height()))
    joints = stand_of(page.face.shown, size).joints
    for name in ("R2", "S"):
        QTest.mouseClick(
            page.face, Qt.MouseButton.LeftButton, pos=QPoint(*map(round, joints[name]))
        )

    assert page.sample.pair == ("R2", "S")
    enter(page, qtbot, "o")
    assert page.sample.readings.readings[0].one == "R2"
    QTest.keyClick(page, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)


def test_a_reading_is_taken_back(page, qtbot):
    enter(page, qtbot, "32.2")
    page.list.setCurrentRow(0)
    page.list.setFocus()
    QTest.keyClick(page.list, Qt.Key.Key_Delete)

    assert page.sample.readings.readings == ()
    assert page.sample.identified is None


def test_what_was_measured_is_written_with_its_meter(window, page, qtbot):
    read_on(page, qtbot)
    answer(page, LEFT_FIRST)
    QTest.mouseClick(page.write, Qt.MouseButton.LeftButton)

    editor = window.pinout
    assert window.stack.currentWidget() is editor
    assert dict(editor.drafting.draft.signals) == {
        "T": ("L+",),
        "R1": ("L-",),
        "R2": ("R+",),
        "R3": ("R-",),
    }
    editor.save()
    assert window.browse.record.trust == "confirmed"
    assert "pairs of 5 contacts read" in window.browse.record.source.reference


def test_a_record_that_agrees_is_confirmed_by_who_measured(window, page, qtbot):
    read_on(page, qtbot)
    answer(page, LEFT_FIRST)
    page.write_record()
    draft = window.pinout.drafting.draft
    window.pinout.drafting.begin(draft.evolve(source_kind="letter", reference="invented letter"))
    window.pinout.save()
    record = window.browse.record
    assert record.trust == "documented"

    window.measure()
    read_on(page, qtbot)
    answer(page, LEFT_FIRST)
    page.write_record()
    assert window.browse.record.trust == "confirmed"
    assert window.browse.record.revision == 2
    assert window.browse.record.confirmations[0].who == "Saltmarsh Playhouse"

    window.ask.who = "the apprentice"
    window.measure()
    read_on(page, qtbot)
    answer(page, LEFT_FIRST)
    page.write_record()
    assert window.browse.record.trust == "confirmed-by-two"


def test_the_readings_are_kept_with_the_record_that_they_made(window, page, qtbot):
    read_on(page, qtbot)
    answer(page, LEFT_FIRST)
    read = page.sample.readings
    page.write_record()
    window.pinout.save()

    (paper,) = window.browse.record.documents
    kept = window.owner.store.papers.read(paper).decode()
    assert sample_from_text(kept, paper.name) == read


def test_a_record_that_differs_is_not_confirmed(window, page, qtbot):
    read_on(page, qtbot)
    answer(page, LEFT_FIRST)
    page.write_record()
    window.pinout.save()
    record = window.browse.record
    window.measure()
    read_on(page, qtbot)
    answer(page, LEFT_FIRST | {"ear-1": "R", "ear-2": "L"})
    page.write_record()

    assert window.stack.currentWidget() is window.pinout
    assert "differs" in window.said.text()
    assert window.owner.library.pinout(record.id).confirmations == ()
    assert window.pinout.likeness.shown.told == "left and right exchanged"
