"""Trace a scan: an invented five-pole face, drawn at 300 dots an inch and laid 7 degrees askew."""

import math

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtTest import QTest

from tests.gui.intake.hands import typed

LEFT = Qt.MouseButton.LeftButton
DOT_MM = 25.4 / 300
ASKEW_DEG = 7.0
MIDDLE = (180, 190)
FACE = {"1": (-3.2, 1.3), "2": (-2.3, -1.9), "3": (0.4, -3.3), "4": (2.9, -1.2), "5": (2.2, 2.6)}
RULE = ((-6.0, 6.0), (6.0, 6.0))  # two marks of a rule that lay beside it, 12 mm apart
CLICK_PX = 3.0  # axis, contact, and what scale and level bring in, each click half a pixel


def dot(mm):
    """Where a place of the face is in the scan: y goes down, all turned counter-clockwise."""
    angle = math.radians(ASKEW_DEG)
    x = mm[0] * math.cos(angle) - mm[1] * math.sin(angle)
    y = mm[0] * math.sin(angle) + mm[1] * math.cos(angle)
    return (MIDDLE[0] + x / DOT_MM, MIDDLE[1] - y / DOT_MM)


@pytest.fixture
def scan(tmp_path):
    image = QImage(360, 380, QImage.Format.Format_RGB32)
    image.fill(QColor("white"))
    painter = QPainter(image)
    painter.setBrush(QColor("black"))
    for mm in (*FACE.values(), *RULE):
        painter.drawEllipse(QPointF(*dot(mm)), 6, 6)
    painter.end()
    path = tmp_path / "scan.png"
    image.save(str(path))
    return path


def spot(editor, mm):
    """Where a place of the face is seen: a whole pixel of the screen, as a click is."""
    tracing = editor.drafting.draft.tracing
    return QPoint(*map(round, editor.plot.stand.to_px(tracing.to_mm(dot(mm)))))


def point_out(editor, button, *places):
    QTest.mouseClick(button, LEFT)
    for mm in places:
        QTest.mouseClick(editor.plot, LEFT, pos=spot(editor, mm))


def test_places_come_out_as_well_as_a_click_can_give(window, scan):
    window.take_in_connector()
    editor = window.connector
    QTest.mouseClick(editor.question.buttons["solder"], LEFT)
    window.ask.paper = scan
    QTest.mouseClick(editor.trace.picture, LEFT)
    point_out(editor, editor.trace.scale, *RULE)
    typed(editor.trace.apart, "12")
    point_out(editor, editor.trace.level, *RULE)
    point_out(editor, editor.trace.axis, (0, 0))
    for mm in FACE.values():
        QTest.mouseDClick(editor.plot, LEFT, pos=spot(editor, mm))

    draft = editor.drafting.draft
    off = [
        math.dist(mm, (it.terminal.x_mm, it.terminal.y_mm))
        for it, mm in zip(draft.contacts, FACE.values(), strict=True)
    ]
    assert [it.id for it in draft.contacts] == list(FACE)
    assert max(off) <= CLICK_PX / editor.plot.stand.scale
    assert draft.tracing.turn_deg == pytest.approx(-ASKEW_DEG, abs=0.8)
    assert draft.tracing.mm_per_px == pytest.approx(DOT_MM, rel=0.02)

    for _ in range(editor.drafting.undo_stack.count()):
        QTest.keyClick(editor, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert editor.drafting.draft.tracing is None
    assert editor.drafting.draft.contacts == ()


@pytest.mark.parametrize(("text", "mm"), [("2,5", 2.5), ("0.1 in", 2.54), ("-1.25 mm", -1.25)])
def test_a_place_is_typed_in_the_units_of_the_part(window, text, mm):
    window.take_in_connector()
    editor = window.connector
    QTest.mouseClick(editor.rule.button, LEFT)
    editor.choose(("1",))
    typed(editor.contact.places["x"], text)

    assert editor.drafting.draft.contact("1").terminal.x_mm == pytest.approx(mm)
