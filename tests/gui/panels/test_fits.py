import pytest
from PySide6.QtCore import Qt

from planner.app.panels.facts.fits import FitRow, grouped, worst
from planner.app.panels.in_hand import InHandPanel
from planner.dryfit.fit import fit_end
from planner.dryfit.wires import end_fits
from planner.model.place import Place
from planner.wiring.graph import Wiring

SIZE = (304, 900)


@pytest.fixture
def fits(bench, demo, show):
    """Return the fits of an end of a demo plan, as shown in hand."""

    def at(name, end):
        bench.open_plan(demo(name))
        panel = show(InHandPanel, bench, SIZE)
        bench.select(Place(end=end))
        return panel.page.fits

    return at


def rows(fits):
    return [row for row in fits.findChildren(FitRow) if row.isVisible()]


def narrowed(plan, end, bore_mm):
    """Return the plan with another barrel at an end."""
    wanted = plan.connector_of(end)
    narrow = wanted.evolve(barrel=wanted.barrel.evolve(bore_mm=bore_mm))
    records = (narrow if it.id == wanted.id else it for it in plan.definitions.connectors)
    return plan.evolve(definitions=plan.definitions.evolve(connectors=tuple(records)))


def test_a_row_says_what_goes_into_what_with_both_figures(fits):
    shown = rows(fits("intercom-headset", "A"))
    said = {row.accessibleName() for row in shown}
    assert "GN, SH in the cup of 1: fits, 0.62 mm to spare (needs 1.28 mm, bore 1.9 mm)" in said


def test_the_picture_is_of_the_one_with_least_room(fits):
    shown = fits("intercom-headset", "A")
    assert shown.picture.accessibleName().startswith("GN, SH in the cup of 1")
    assert [row.property("picked") for row in rows(shown)].count("true") == 1


@pytest.mark.parametrize("way", ["mouse", "keys"])
def test_another_row_shows_its_own_picture(fits, qtbot, way):
    shown = fits("intercom-headset", "A")
    row = next(it for it in rows(shown) if it.words.text() == "Jacket in the clamp")
    if way == "mouse":
        qtbot.mouseClick(row, Qt.MouseButton.LeftButton)
    else:
        row.setFocus()
        qtbot.keyClick(row, Qt.Key.Key_Space)
    assert shown.picture.accessibleName().startswith("Jacket in the clamp")
    assert row.property("picked") == "true"


def test_a_bundle_that_does_not_go_in_is_the_worst_and_says_so(fits, bench):
    shown = fits("cue-desk-headphone-lead", "A")
    bench.open_plan(narrowed(bench.plan, "A", 1.9))
    bench.select(Place(end="A"))
    assert shown.head.note.text() == "1 in doubt"
    assert "too thick" in shown.picture.accessibleName()
    row = next(it for it in rows(shown) if it.property("picked") == "true")
    assert row.mark.accessibleName() == "stop"
    assert row.figures.text().startswith("no, ")


def test_cups_of_a_loom_share_one_row(fits, bench):
    shown = rows(fits("recording-rack-loom", "A"))
    assert len([row for row in shown if row.line.what == "strands"]) == 1
    lines = end_fits(bench.plan, fit_end(bench.plan, Wiring(bench.plan), "A"))
    strands = [line for line in lines if line.what == "strands"]
    assert grouped(strands) == [(worst(strands), len(strands) - 1)]


def test_an_end_with_nothing_landed_has_no_fits(bench, bare_lead, show):
    bench.open_plan(bare_lead)
    panel = show(InHandPanel, bench, SIZE)
    bench.select(Place(end="A"))
    assert not panel.page.fits.isVisible()


def test_the_page_of_an_end_is_no_wider_than_the_narrowest_margin(bench, demo, show):
    bench.open_plan(demo("cue-desk-headphone-lead"))
    panel = show(InHandPanel, bench, (262, 500))
    bench.select(Place(end="A"))
    assert panel.page.fits.isVisibleTo(panel)
    assert panel.page.minimumSizeHint().width() <= 254  # less the bar
