"""Pages on a printer, at true size: 1 mm of the sheet is 1 mm of paper."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QMarginsF
from PySide6.QtGui import QPageLayout, QPageSize, QPainter
from PySide6.QtPrintSupport import QPrinter

from planner.app.canvas.paint import paint
from planner.sheet.page import UNIT_MM, Page

if TYPE_CHECKING:
    from planner.sheet.paper import PaperName

_MM_PER_INCH = 25.4
_DPI = 1200
_SIZES = {"a4": QPageSize.PageSizeId.A4, "letter": QPageSize.PageSizeId.Letter}


def printer_for(paper: "PaperName", title: str) -> QPrinter:
    """Return a printer that is set to a paper, upright, with the whole page to draw on."""
    made = QPrinter(QPrinter.PrinterMode.HighResolution)
    made.setResolution(_DPI)
    made.setDocName(title)
    made.setCreator("Cupwright")
    set_page(made, paper)
    return made


def set_page(printer: QPrinter, paper: "PaperName") -> None:
    """Set the paper anew: a printer that was chosen brings its own."""
    printer.setPageSize(QPageSize(_SIZES[paper]))
    printer.setPageOrientation(QPageLayout.Orientation.Portrait)
    printer.setFullPage(True)
    printer.setPageMargins(QMarginsF(0, 0, 0, 0), QPageLayout.Unit.Millimeter)


def chosen_pages(printer: QPrinter, pages: Sequence[Page]) -> tuple[Page, ...]:
    """Return the pages that were asked for in the printer's dialog: a range, else all."""
    if printer.printRange() is not QPrinter.PrintRange.PageRange:
        return tuple(pages)
    first, last = printer.fromPage() or 1, printer.toPage() or len(pages)
    return tuple(pages[first - 1 : last])


def print_pages(printer: QPrinter, pages: Sequence[Page]) -> bool:
    """Paint pages on a printer, never scaled to its paper; False where it takes none."""
    painter = QPainter()
    if not pages or not painter.begin(printer):
        return False
    try:
        for number, page in enumerate(pages):
            if number:
                printer.newPage()
            painter.save()
            painter.scale(
                printer.logicalDpiX() * UNIT_MM / _MM_PER_INCH,
                printer.logicalDpiY() * UNIT_MM / _MM_PER_INCH,
            )
            paint(painter, page.items)
            painter.restore()
    finally:
        ended = painter.end()
    return bool(ended)
