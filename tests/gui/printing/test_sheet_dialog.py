"""The sheet as it prints: preview, options, files, and true size on a printer."""

import shutil
import subprocess

import pytest
from PySide6.QtCore import Qt
from PySide6.QtPrintSupport import QPrinter

from planner.app.printing.desk import SheetDesk
from planner.app.printing.dialog import SheetDialog
from planner.app.printing.press import print_pages, printer_for
from planner.app.settings import Settings
from planner.checks.finding import Finding
from planner.data import data_dir
from planner.drawing.primitives import Rect, Style
from planner.files.plans import read_plan
from planner.sheet.page import Page
from tests.gui.shell.conftest import Answers
from tests.gui.shell.test_accessible import nameless

needs_poppler = pytest.mark.skipif(not shutil.which("pdftoppm"), reason="needs poppler-utils")
DPI = 300
MM = DPI / 25.4
STOP = Finding(code="open", weight="stop", what="a core is loose", why="", mend="", where=())


class Printing(Answers):
    """Answers for the printer too: into a PDF file, or not at all."""

    pdf = None

    def printer(self, parent, printer, pages):
        if self.pdf is None:
            return False
        printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
        printer.setOutputFileName(str(self.pdf))
        return True


@pytest.fixture(scope="module")
def plan():
    return read_plan(data_dir("resources") / "demo" / "stage-left-balanced-line.json")


@pytest.fixture
def answers():
    return Printing()


@pytest.fixture
def open_dialog(qtbot, plan, answers, tmp_path):
    def make(findings=()):
        settings = Settings(tmp_path / "settings.ini")
        desk = SheetDesk(plan, findings, settings, date="2026-11-25")
        dialog = SheetDialog(None, desk, answers)
        qtbot.addWidget(dialog)
        dialog.show()
        qtbot.waitUntil(lambda: not desk.busy)
        return dialog

    return make


def grey_rows(path, tmp_path, page=1):
    """Paint a page of a PDF with poppler: rows of grey values."""
    name = tmp_path / "out"
    at = ["-f", str(page), "-l", str(page), "-singlefile"]
    subprocess.run(["pdftoppm", "-gray", "-r", str(DPI), *at, path, name], check=True)
    magic, size, _, pixels = name.with_suffix(".pgm").read_bytes().split(b"\n", 3)
    assert magic == b"P5"
    wide, high = map(int, size.split())
    return [pixels[y * wide : (y + 1) * wide] for y in range(high)]


def test_the_pages_are_those_of_the_sheet(open_dialog, qtbot):
    dialog = open_dialog()
    assert dialog.view.count == len(dialog.desk.pages) > 1
    assert dialog.page.text() == f"1 of {dialog.view.count}"
    qtbot.mouseClick(dialog.after, Qt.MouseButton.LeftButton)
    assert dialog.page.text() == f"2 of {dialog.view.count}"
    qtbot.keyClick(dialog.view, Qt.Key.Key_End)
    assert not dialog.after.isEnabled()
    qtbot.keyClick(dialog.view, Qt.Key.Key_Home)
    assert not dialog.before.isEnabled()


def test_the_preview_shows_what_is_on_the_page(open_dialog):
    dialog = open_dialog()
    seen = dialog.view._leaf.grab().toImage()
    colours = {seen.pixel(x, y) for x in range(0, seen.width(), 3) for y in range(0, 200, 3)}
    assert {0xFFFFFFFF, 0xFF000000} <= colours


def test_paper_and_language_make_other_pages_and_are_kept(open_dialog, qtbot):
    dialog = open_dialog()
    english = dialog.desk.pages
    dialog.paper.setCurrentIndex(1)
    dialog.paper.activated.emit(1)
    dialog.language.setCurrentIndex(1)
    dialog.language.activated.emit(1)
    qtbot.waitUntil(lambda: not dialog.desk.busy)
    assert (dialog.desk.pages[0].width, english[0].width) == (21590, 21000)
    words = {item.text for item in dialog.desk.pages[0].items if hasattr(item, "text")}
    assert "Fertige Leitung" in words or "The finished lead" not in words
    again = open_dialog()
    assert (again.desk.options.paper, again.desk.options.language) == ("letter", "de")


def test_a_run_of_leads_is_on_the_pages(open_dialog, qtbot):
    dialog = open_dialog()
    one = dialog.desk.pages
    dialog.leads.setValue(6)
    qtbot.waitUntil(lambda: not dialog.desk.busy)
    assert dialog.desk.pages != one


def test_zoom_goes_from_whole_to_true_size(open_dialog):
    dialog = open_dialog()
    whole = dialog.view.zoom
    dialog.view.fit_width()
    assert dialog.view.zoom > whole
    dialog.view.true_size()
    assert dialog.zoom.text() == "100 %"
    true = dialog.desk.pages[0].width * 0.01 * dialog.view.logicalDpiX() / 25.4
    assert dialog.view._leaf.width() == round(true)
    dialog.view.fit_whole()
    assert dialog.view.zoom == pytest.approx(whole)


@pytest.mark.parametrize("ending", [".pdf", ".svg"])
def test_the_sheet_is_saved(open_dialog, answers, tmp_path, ending):
    dialog = open_dialog()
    answers.sheet_at = tmp_path / f"lead{ending}"
    dialog.save.click()
    assert dialog.said.text().startswith("Written: lead")
    assert list(tmp_path.glob(f"lead*{ending}"))


def test_the_cut_list_is_saved(open_dialog, answers, tmp_path):
    dialog = open_dialog()
    answers.sheet_at = tmp_path / "cuts.csv"
    dialog.save_cuts.click()
    assert answers.sheet_at.read_text(encoding="utf-8").startswith("list,kind")


def test_a_sheet_that_cannot_be_written_is_said(open_dialog, answers, tmp_path):
    dialog = open_dialog()
    answers.sheet_at = tmp_path / "sheet.docx"
    dialog.save.click()
    assert answers.troubles[0][0] == "The bench sheet can\u2019t be written"


def test_a_stop_is_said_beside_the_pages(open_dialog):
    said = [it.text() for it in open_dialog([STOP]).findChildren(type(open_dialog().said))]
    assert any("has a stop" in text for text in said)


def test_all_that_takes_the_focus_has_a_name(open_dialog):
    assert nameless(open_dialog()) == []


@needs_poppler
def test_what_is_printed_measures_what_it_says(qapp, tmp_path):
    """A bar of 100 mm measures 100 mm on the print, to the aim of the check bar, 0.1 mm."""
    bar = Rect((1000, 2000), 10000, 500, Style(fill="#000000"))
    printer = printer_for("a4", "bar")
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "bar.pdf"))
    assert print_pages(printer, [Page((bar,), 21000, 29700)])
    row = grey_rows(tmp_path / "bar.pdf", tmp_path)[round(22.5 * MM)]
    assert sum(value < 128 for value in row) / MM == pytest.approx(100, abs=0.1)


@needs_poppler
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_check_bar_of_the_sheet_prints_at_100_mm(open_dialog, answers, tmp_path, qtbot, paper):
    dialog = open_dialog()
    dialog.desk.choose(paper=paper)
    qtbot.waitUntil(lambda: not dialog.desk.busy)
    answers.pdf = tmp_path / "print.pdf"
    dialog.print.click()
    assert dialog.said.text().startswith("Printed")
    number, bar = check_bar(dialog.desk.pages)
    outside = dark_span(grey_rows(answers.pdf, tmp_path, number), bar) / MM
    assert outside == pytest.approx(100, abs=0.1)


def check_bar(pages):
    """Find the frame of the check bar, the only low box that is 100 mm wide, and its page.

    It is that wide from edge to edge, with the line round it.
    """
    for number, page in enumerate(pages, start=1):
        for item in page.items:
            if not isinstance(item, Rect) or item.height >= 1000:
                continue
            if item.width + item.style.width == 10000:
                return number, item
    pytest.fail("no page has a check bar")


def dark_span(rows, bar):
    """Return how many dots lie from the first dark one of the bar to the last."""
    left, top = (at / 100 for at in bar.corner)
    dark = [
        x
        for row in rows[round(top * MM) : round((top + bar.height / 100) * MM)]
        for x, value in enumerate(row)
        if value < 128 and (left - 1) * MM < x < (left + 101) * MM
    ]
    return max(dark) - min(dark) + 1


def test_nothing_is_printed_where_no_printer_was_chosen(open_dialog):
    dialog = open_dialog()
    dialog.print.click()
    assert not dialog.desk.printed
