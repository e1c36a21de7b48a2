"""Bad records are drawn without a crash and without a figure that is none."""

import math

import pytest

from planner.drawing.fitting.face import fitted_face
from planner.drawing.fitting.side import side_view
from planner.drawing.looks import LIGHT, PRINT
from planner.sheet.page import sheet_pages
from tests.drawing.fitting.samples import fit_of, plan_for
from tests.drawing.fitting.test_fitted_face import figures
from tests.drawing.samples import connector, cup, d_connector, lug, post
from tests.sheet.collisions import outside, overlapping

BAD = {
    "one contact": connector(cup("1", 0, 0)),
    "two in one place": connector(cup("1", 1, 1), cup("2", 1, 1), lug("3", 0, -2)),
    "outside the shell": connector(cup("1", 40, 0), cup("2", -1, 0)),
    "all on the axis": connector(cup("1", 0, 0), post("2", 0, 0)),
    "where the core leaves": connector(cup("1", -0.6, 0), cup("2", 0.6, 0)),
    "a D": d_connector(),
}
EACH = pytest.mark.parametrize("shape", BAD.values(), ids=BAD.keys())


@EACH
@pytest.mark.parametrize("look", [LIGHT, PRINT], ids=lambda look: look.name)
def test_a_bad_record_is_drawn(shape, look):
    fit = fit_of(shape, sleeved={"k0"}, dabbed={"k0", "SH"}, turn_deg=45)
    items = fitted_face(
        shape, fit, centre=(0, 0), scale=30, look=look, iron=fit.order[0], jacket_mm=3
    )
    items += side_view(shape, fit, origin=(0, 0), width=300, scale=12, look=look)
    assert items
    assert all(math.isfinite(figure) for item in items for figure in figures(item))


@EACH
def test_a_bad_record_has_a_sheet(shape):
    for page in sheet_pages(plan_for(shape), ()):
        assert overlapping(page.items) == []
        assert outside(page) == []
