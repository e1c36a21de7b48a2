"""The printer's own dialog, driven as a builder does: all pages, a range, none; into a PDF file."""

import re

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QRadioButton, QSpinBox

from planner.app.dialogs.ask import Ask
from planner.app.printing import dialog as dialog_module
from planner.app.printing.desk import SheetDesk
from planner.app.printing.dialog import SheetDialog
from planner.app.printing.press import printer_for
from planner.app.settings import Settings
from planner.data import data_dir
from planner.files.plans import read_plan

PLAN = read_plan(data_dir("resources") / "demo" / "stage-left-balanced-line.json")


@pytest.fixture
def path(tmp_path):
    return tmp_path / "print.pdf"


@pytest.fixture
def sheet(qtbot, tmp_path, path, monkeypatch):
    """Return the sheet's dialog with real questions, on a printer that writes a PDF file."""

    def to_file(paper, title):
        printer = printer_for(paper, title)
        printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
        printer.setOutputFileName(str(path))
        return printer

    monkeypatch.setattr(dialog_module, "printer_for", to_file)
    settings = Settings(tmp_path / "settings.ini")
    desk = SheetDesk(PLAN, (), settings, date="2026-11-25")
    made = SheetDialog(None, desk, Ask(None, settings))
    qtbot.addWidget(made)
    made.show()
    qtbot.waitUntil(lambda: not desk.busy)
    return made


def when_asked(act):
    """Do something with the printer's dialog as soon as it is up."""
    asked = []

    def look():
        found = QApplication.activeModalWidget()
        if isinstance(found, QPrintDialog):
            asked.append((found.minPage(), found.maxPage()))
            act(found)
        else:
            QTimer.singleShot(10, look)

    QTimer.singleShot(0, look)
    return asked


def press(key):
    return lambda dialog: QTest.keyClick(dialog, key)


def pages_in(path):
    return len(re.findall(rb"/Type\s*/Page\b", path.read_bytes()))


def test_enter_prints_every_page(sheet, path):
    asked = when_asked(press(Qt.Key.Key_Return))
    sheet.print.click()
    assert asked == [(1, sheet.view.count)]
    assert sheet.said.text().startswith("Printed")
    assert pages_in(path) == sheet.view.count


def test_a_range_of_pages_prints_those_alone(sheet, path):
    def choose(dialog):
        radio = next(it for it in dialog.findChildren(QRadioButton) if "ages f" in it.text())
        radio.click()
        for box, page in zip(_range(dialog), (2, 3), strict=True):
            box.setValue(page)
        QTest.keyClick(dialog, Qt.Key.Key_Return)

    when_asked(choose)
    sheet.print.click()
    assert pages_in(path) == 2


def _range(dialog):
    boxes = {it.objectName(): it for it in dialog.findChildren(QSpinBox)}
    return boxes["from"], boxes["to"]


def test_escape_prints_nothing(sheet, path):
    before = sheet.said.text()
    when_asked(press(Qt.Key.Key_Escape))
    sheet.print.click()
    assert not path.exists()
    assert sheet.said.text() == before
