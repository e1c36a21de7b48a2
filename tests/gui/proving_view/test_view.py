"""The view at every size: pages reached, names, faces, the verdict as it stands beside the rows."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from planner.app.proving_view.view import PAGES
from planner.drawing.looks import DARK
from tests.gui.proving_view.conftest import CUE, LOOM, Meter
from tests.gui.shell.test_accessible import nameless

SIZES = [(1440, 900), (1024, 700), (720, 450), (640, 400)]


@pytest.mark.parametrize("size", SIZES)
def test_all_pages_are_reached_and_fit_at_every_size(open_prove, size):
    prove = open_prove(size=size)
    prove.begin()
    view = prove.view
    assert "Unplug every end" in view.caution.words.text()
    for name in PAGES:
        pane = getattr(view, {"Wiggle": "flex"}.get(name, name.lower()))
        view.show_page(name)
        QApplication.processEvents()
        assert pane.isVisible(), name
        assert view.caution.words.isVisible()
        assert view.rect().contains(pane.rect().translated(pane.mapTo(view, pane.rect().topLeft())))
    assert view.readings.grid.columnWidth(0) >= 62
    view.show_page("Readings")
    assert not view.readings.grid.horizontalScrollBar().isVisible()


@pytest.mark.parametrize("name", [CUE, LOOM])
def test_everything_that_takes_the_focus_has_a_name(open_prove, name):
    prove = open_prove(name)
    prove.begin()
    for page in PAGES:
        prove.view.show_page(page)
        QApplication.processEvents()
        assert nameless(prove.shell.window) == []


def test_the_look_is_taken_on(prove):
    prove.begin()
    light = prove.view.faces.grab().toImage()
    prove.shell.settings.choose("theme", "dark")
    try:
        assert prove.grid.look is DARK
        assert prove.view.faces.grab().toImage() != light
    finally:
        prove.shell.settings.choose("theme", "light")


def test_the_faces_are_those_of_the_row_and_of_the_fault(prove):
    prove.begin()
    assert prove.view.faces.ends() == ("A", "L")
    assert prove.view.faces.accessibleName() == "Hold A T, touch L T"
    plain = prove.view.faces.grab().toImage()
    prove.key(Qt.Key.Key_Down)
    assert prove.view.faces.grab().toImage() != plain


def test_a_card_marks_its_faults_while_it_is_pointed_at(prove):
    prove.begin()
    prove.type("o\n9\n")
    prove.settle()
    cards, judge = prove.view.verdict.cards, prove.state.judge
    assert len(cards) > 1
    first = judge.faults
    cards[1].pointed.emit(1)
    assert judge.faults != first
    cards[1].pointed.emit(-1)
    assert judge.faults == first
    cards[1].setFocus()
    assert judge.explanation == 1
    assert cards[1].property("current") == "true"
    assert cards[0].property("current") == ""


def test_j_goes_to_the_reading_that_tells_most(prove):
    prove.begin()
    prove.type("o\n")
    prove.settle()
    pair = frozenset(prove.diagnosis.next_probe.pair)
    prove.key(Qt.Key.Key_J)
    assert prove.state.row.key == pair
    assert QApplication.focusWidget() is prove.grid


def test_a_later_reading_drops_the_diagnosis_under_way(prove):
    prove.begin()
    prove.type("o\n0.4\n0.4\n")
    prove.settle()
    assert prove.diagnosis.verdict == "faulty"
    assert prove.diagnosis.unread_isolation == 10


def test_nothing_is_computed_while_nobody_looks(prove):
    facts = prove.state.facts
    prove.acts["wire"].trigger()
    prove.workbench.open_plan(prove.workbench.plan.evolve(title="Another"))
    assert prove.state.facts is facts
    prove.acts["prove"].trigger()
    prove.settle()
    assert prove.state.facts is not facts


def test_the_verdict_says_what_is_left(prove):
    prove.begin()
    assert prove.view.verdict.told.text() == (
        "Still to read: 4 pairs of continuity and 10 pairs of isolation."
    )
    prove.read_all(Meter(prove.workbench.plan))
    assert prove.view.verdict.verdict.text() == "Sound"
    assert prove.view.verdict.count.text() == "14 of 14 read"


def test_a_plan_that_loses_a_contact_keeps_the_readings(prove):
    prove.begin()
    prove.type("0.4\n")
    prove.workbench.open_plan(
        prove.workbench.plan.evolve(landings=prove.workbench.plan.landings[2:])
    )
    prove.settle()
    assert len(prove.state.readings.readings) == 1
