"""The pages through three renderers that know nothing of each other: Qt, librsvg, poppler."""

import shutil
import subprocess
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QByteArray, QRectF
from PySide6.QtGui import QImage, QPainter
from PySide6.QtSvg import QSvgRenderer

from planner.data import data_dir
from planner.drawing.pdf import PdfPage, pdf_bytes
from planner.files.plans import read_plan
from planner.services.sheets import sheet_files
from planner.sheet.page import UNIT_MM, Page, sheet_pages
from tests.drawing.rendered import by_poppler, needs_poppler, strange
from tests.sheet.samples import findings_of

DEMOS = sorted((data_dir("resources") / "demo").glob("*.json"))
DPI = 100
# Renderers round edges apart by a pixel; what only one of them draws shows as far more.
MOST_STRANGE = 0.005
needs_rsvg = pytest.mark.skipif(
    not shutil.which("rsvg-convert"), reason="rsvg-convert (librsvg2-bin) is not installed"
)
each = pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)


def pages_of(path):
    plan = read_plan(path)
    return sheet_pages(plan, findings_of(plan))


def svg_of(page, *, outlines=True):
    ((_, data),) = sheet_files([page], Path("a.svg"), title="a", outlines=outlines)
    return data


def pdf_of(page):
    return pdf_bytes([PdfPage(page.items, page.width, page.height)], unit_mm=UNIT_MM)


def grey_of(image):
    """Return an image as an array of its own."""
    image = image.convertToFormat(QImage.Format.Format_Grayscale8)
    rows = np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), -1)
    return rows[:, : image.width()].copy()


def by_qt(svg, page):
    width, height = (round(size / 2540 * DPI) for size in (page.width, page.height))
    image = QImage(width, height, QImage.Format.Format_RGB32)
    image.fill(0xFFFFFFFF)
    renderer = QSvgRenderer(QByteArray(svg))
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    renderer.render(painter, QRectF(0, 0, width, height))
    painter.end()
    return grey_of(image)


def by_rsvg(svg, folder):
    (folder / "in.svg").write_bytes(svg)
    size = ["-d", str(DPI), "-p", str(DPI), "-b", "white", "-o", folder / "out.png"]
    subprocess.run(["rsvg-convert", *size, folder / "in.svg"], check=True)
    return grey_of(QImage(str(folder / "out.png")))


@needs_rsvg
@needs_poppler
@each
def test_three_renderers_show_the_same(path, tmp_path):
    for page in pages_of(path):
        svg = svg_of(page)
        seen = by_rsvg(svg, tmp_path)
        assert (seen < 128).sum() > 2000
        assert strange(by_qt(svg, page), seen) < MOST_STRANGE
        assert strange(by_poppler(pdf_of(page), tmp_path, DPI), seen) < MOST_STRANGE


@needs_rsvg
def test_what_only_one_renderer_draws_is_seen(tmp_path):
    page = pages_of(DEMOS[0])[-2]
    less = Page(page.items[: -len(page.items) // 8], page.width, page.height)
    one, other = by_qt(svg_of(page), page), by_rsvg(svg_of(less), tmp_path)
    assert strange(one, other) > 4 * MOST_STRANGE


def test_letters_and_outlines_look_alike():
    for page in pages_of(DEMOS[0]):
        letters, shapes = (by_qt(svg_of(page, outlines=on), page) for on in (False, True))
        assert strange(letters, shapes, reach=2) < 2 * MOST_STRANGE
