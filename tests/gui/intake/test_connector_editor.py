"""The owner draws a connector: by rule, by hand, over a picture. All of them are invented."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtTest import QTest

from planner.files.definitions import connector_text
from tests.gui.intake.hands import choose, typed

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def editor(window):
    QTest.keyClick(
        window,
        Qt.Key.Key_N,
        Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier,
    )
    QTest.mouseClick(window.connector.question.buttons["solder"], LEFT)
    return window.connector


def at(editor, x_mm, y_mm):
    return QPoint(*map(round, editor.plot.stand.to_px((x_mm, y_mm))))


def name_it(editor):
    for name, text in (("title", "Odd five-pole male"), ("id", "odd-five"), ("family", "odd")):
        typed(editor.fields[name], text)
    choose(editor.gender, "male")


def test_a_ring_is_placed_named_and_saved(window, editor):
    for name, figure in (("count", "5"), ("circle", "7,0"), ("start", "180"), ("step", "45")):
        editor.rule.fields[name].line.setText(figure)
    editor.rule.clockwise.setChecked(True)
    editor.rule.numbers.line.setText("1 4 2 5 3")
    QTest.mouseClick(editor.rule.button, LEFT)
    name_it(editor)
    QTest.keyClick(editor, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)

    assert window.ask.troubles == []
    saved = window.owner.library.connector("odd-five")
    assert [it.id for it in saved.contacts] == ["1", "4", "2", "5", "3"]
    assert saved.by_id["4"].terminal.x_mm == pytest.approx(-2.475, abs=0.001)
    assert window.browse.record == saved
    assert saved.to_measure()


def test_contacts_are_added_dragged_nudged_and_taken_away(editor):
    plot = editor.plot
    QTest.mouseDClick(plot, LEFT, pos=at(editor, 2, 1))
    contact = editor.drafting.draft.contacts[0]
    assert (contact.terminal.x_mm, contact.terminal.y_mm) == pytest.approx((2, 1), abs=0.06)
    steps = editor.drafting.undo_stack.count()

    QTest.mousePress(plot, LEFT, pos=at(editor, 2, 1))
    for x in (2.5, 3.0, 3.5):
        QTest.mouseMove(plot, at(editor, x, 1))
    QTest.mouseRelease(plot, LEFT, pos=at(editor, 3.5, 1))
    moved = editor.drafting.draft.contacts[0].terminal
    assert moved.x_mm == pytest.approx(3.5, abs=0.1)
    assert editor.drafting.undo_stack.count() == steps + 1, "one drag is one step"

    plot.setFocus()
    QTest.keyClick(plot, Qt.Key.Key_Right)
    assert editor.drafting.draft.contacts[0].terminal.x_mm == pytest.approx(moved.x_mm + 0.1)
    QTest.keyClick(plot, Qt.Key.Key_Delete)
    assert editor.drafting.draft.contacts == ()
    QTest.keyClick(editor, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert len(editor.drafting.draft.contacts) == 1


def test_figures_of_several_contacts_are_set_at_once(editor):
    QTest.mouseClick(editor.rule.button, LEFT)
    QTest.keyClick(editor, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
    typed(editor.contact.across, "0.05 in")

    bores = {it.terminal.bore_mm for it in editor.drafting.draft.contacts}
    assert bores == {1.27}
    choose(editor.contact.kind, "post")
    assert {it.terminal.kind for it in editor.drafting.draft.contacts} == {"post"}


def test_a_wrong_figure_is_told_at_the_field_and_changes_nothing(editor):
    QTest.mouseClick(editor.rule.button, LEFT)
    editor.choose(("1",))
    before = editor.drafting.draft
    typed(editor.contact.places["x"], "far")
    assert "not a length" in editor.contact.places["x"].error.text()
    typed(editor.hull.fields["barrel", "outside_mm"], "-3")
    assert editor.hull.fields["barrel", "outside_mm"].error.text()
    typed(editor.contact.number, "2")
    assert "already" in editor.contact.number.error.text()
    assert editor.drafting.draft == before


def test_what_is_odd_is_said_while_drawing_and_keeps_it_from_being_saved(window, editor):
    QTest.mouseClick(editor.rule.button, LEFT)
    name_it(editor)
    editor.choose(("1",))
    typed(editor.contact.places["x"], "9")

    told = [it.what for it in editor.remarks.shown]
    assert any("out of the shell" in it for it in told)
    editor.save()
    assert "Not saved" in editor.said.text()
    assert window.owner.library.connector("odd-five") is None


def test_a_picture_is_scaled_levelled_and_stays_attached(window, editor, tmp_path):
    path = tmp_path / "scan.png"
    image = QImage(400, 300, QImage.Format.Format_RGB32)
    image.fill(QColor("white"))
    painter = QPainter(image)
    painter.fillRect(100, 140, 20, 20, QColor("black"))
    painter.fillRect(300, 140, 20, 20, QColor("black"))
    painter.end()
    image.save(str(path))
    window.ask.paper = path
    QTest.mouseClick(editor.trace.picture, LEFT)
    tracing = editor.drafting.draft.tracing
    assert tracing.axis_px == (200, 150)

    QTest.mouseClick(editor.trace.scale, LEFT)
    for px in ((110, 150), (310, 150)):
        place = editor.plot.stand.to_px(tracing.to_mm(px))
        QTest.mouseClick(editor.plot, LEFT, pos=QPoint(*map(round, place)))
    typed(editor.trace.apart, "8 mm")
    tracing = editor.drafting.draft.tracing
    assert tracing.mm_per_px == pytest.approx(8 / 200, rel=0.02)

    QTest.mouseClick(editor.rule.button, LEFT)
    name_it(editor)
    editor.save()
    assert window.ask.troubles == []
    saved = window.owner.library.connector("odd-five")
    assert saved.tracing == tracing
    assert saved.documents[0].name == "scan.png"
    QTest.keyClick(window, Qt.Key.Key_E, Qt.KeyboardModifier.ControlModifier)
    assert editor.plot.image.width() == 400


def test_a_hand_made_comment_survives_the_next_revision(window, editor):
    QTest.mouseClick(editor.rule.button, LEFT)
    name_it(editor)
    editor.save()
    path = window.owner.found("connector", "odd-five").path
    path.write_text(
        "# measured by lamplight\n" + path.read_text(encoding="utf-8"), encoding="utf-8"
    )
    window.owner.renew()
    window.browse.look_at("odd-five", "connector")
    window.revise()
    editor.choose(("1",))
    typed(editor.contact.places["y"], "3.4")
    editor.save()

    saved = window.owner.found("connector", "odd-five")
    assert saved.text.startswith("# measured by lamplight")
    assert saved.record.revision == 2
    assert connector_text(saved.record, saved.text) == saved.text


def test_one_like_another_begins_with_its_drawing(window):
    window.browse.look_at("dsub-25-male", "connector")
    window.draw_alike()
    editor = window.connector

    assert len(editor.drafting.draft.contacts) == 25
    assert editor.drafting.draft.seen_from == "mating"
    assert (editor.drafting.draft.id, editor.drafting.draft.title) == ("", "")


def test_numbers_that_run_the_other_way_round_are_told_however_the_family_is_spelled(editor):
    editor.rule.show_page(1)
    editor.rule.fields["counts"].line.setText("5 4")
    QTest.mouseClick(editor.rule.button, LEFT)
    choose(editor.gender, "male")
    assert not [it for it in editor.remarks.shown if "other way round" in it.what]

    typed(editor.fields["family"], "D-Sub")

    assert editor.drafting.draft.family == "dsub"
    assert [it for it in editor.remarks.shown if "other way round" in it.what]
