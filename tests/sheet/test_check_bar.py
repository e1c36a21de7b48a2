"""The check bar of each page as another program paints it."""

import numpy as np
import pytest

from planner.drawing.pdf import PdfPage, pdf_bytes
from planner.drawing.primitives import Rect, Style
from planner.sheet.lettering import INK, THIN
from planner.sheet.page import UNIT_MM, Page
from tests.drawing.rendered import by_poppler, needs_poppler
from tests.sheet.samples import demo_pages

MM = 25.4


def pdf_of(page):
    return pdf_bytes([PdfPage(page.items, page.width, page.height)], unit_mm=UNIT_MM)


@needs_poppler
@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("name", ["stage-left-balanced-line", "cue-desk-headphone-lead"])
def test_each_check_bar_measures_100_mm(name, paper, tmp_path):
    dpi, found = 600, 0
    for page in demo_pages(name, paper=paper, language="en", date="25 Nov 2026"):
        if not any(getattr(item, "owner", "").startswith("check-bar") for item in page.items):
            continue
        dark = by_poppler(pdf_of(page), tmp_path, dpi) < 128
        found += 1
        assert bar_mm(dark, dpi) == pytest.approx(100, abs=0.1)
    assert found > 0


def bar_mm(dark, dpi):
    """Return the length of the bar from edge to edge: five dark cells 10 mm long, and its frame."""
    for row in dark[::20]:  # the bar is higher than that
        edges = np.flatnonzero(np.diff(np.pad(row.astype(np.int8), 1)))
        runs = edges.reshape(-1, 2) / dpi * MM
        cells = runs[np.abs(runs[:, 1] - runs[:, 0] - 10) < 0.5]
        if len(cells) == 5:
            last = runs[runs[:, 0] > cells[-1, 1]][0]
            return last[1] - cells[0, 0]
    return 0.0


@needs_poppler
def test_a_bar_with_half_its_pen_outside_is_found_too_long(tmp_path):
    dpi, pen = 600, Style(stroke=INK, width=THIN)
    cells = [Rect((1000 + 2000 * place, 1000), 1000, 400, Style(fill=INK)) for place in range(5)]
    page = Page((Rect((1000, 1000), 10000, 400, pen), *cells), 13000, 3000)
    assert bar_mm(by_poppler(pdf_of(page), tmp_path, dpi) < 128, dpi) == pytest.approx(
        100.35, abs=0.1
    )
