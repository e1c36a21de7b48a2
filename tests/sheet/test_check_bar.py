"""The check bar of each page as another program paints it."""

import numpy as np
import pytest

from planner.data import data_dir
from planner.drawing.pdf import PdfPage, pdf_bytes
from planner.files.plans import read_plan
from planner.sheet.page import UNIT_MM, sheet_pages
from tests.drawing.rendered import by_poppler, needs_poppler
from tests.sheet.samples import findings_of

DEMOS = sorted((data_dir("resources") / "demo").glob("*.json"))
MM = 25.4


def pages_of(path, **options):
    plan = read_plan(path)
    return sheet_pages(plan, findings_of(plan), **options)


def pdf_of(page):
    return pdf_bytes([PdfPage(page.items, page.width, page.height)], unit_mm=UNIT_MM)


@needs_poppler
@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("name", ["stage-left-balanced-line", "cue-desk-headphone-lead"])
def test_each_check_bar_measures_100_mm(name, paper, tmp_path):
    dpi, found = 600, 0
    for page in pages_of(next(path for path in DEMOS if path.stem == name), paper=paper):
        if not any(getattr(item, "owner", "").startswith("check-bar") for item in page.items):
            continue
        dark = by_poppler(pdf_of(page), tmp_path, dpi) < 128
        found += 1
        assert bar_mm(dark, dpi) == pytest.approx(100, abs=0.1)
    assert found > 0


def bar_mm(dark, dpi):
    """Return the length of the bar without its pen: five dark cells 10 mm long, 10 mm apart."""
    for row in dark:
        edges = np.flatnonzero(np.diff(np.pad(row.astype(np.int8), 1)))
        runs = edges.reshape(-1, 2) / dpi * MM
        cells = runs[np.abs(runs[:, 1] - runs[:, 0] - 10) < 0.5]
        if len(cells) == 5:
            # The frame's pen is 0.35 mm wide: half of it lies outside at each end.
            last = runs[runs[:, 0] > cells[-1, 1]][0]
            return last[1] - cells[0, 0] - 0.35
    return 0.0
