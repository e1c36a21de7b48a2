import pytest
from PySide6.QtCore import Qt

from planner.app.panels.facts.conductor import ConductorPage
from planner.app.panels.facts.contact import ContactPage
from planner.app.panels.facts.end import EndPage
from planner.app.panels.facts.lead import LeadPage
from planner.app.panels.facts.section import SectionPage
from planner.app.panels.in_hand import InHandPanel
from planner.model.place import Place

SIZE = (304, 500)


@pytest.fixture
def panel(bench, demo, show):
    bench.open_plan(demo("cue-desk-headphone-lead"))
    return show(InHandPanel, bench, SIZE)


@pytest.mark.parametrize(
    ("place", "section", "page"),
    [
        (Place(), "", LeadPage),
        (Place(end="A"), "", EndPage),
        (Place(end="A", contact="T"), "", ContactPage),
        (Place(end="A", conductor="BU"), "", ConductorPage),
        (Place(), "trunk", SectionPage),
    ],
)
def test_each_thing_has_its_page(bench, panel, place, section, page):
    bench.select(place, section)
    assert type(panel.page) is page


def test_both_units_are_shown(bench, panel):
    bench.select(Place(end="A", conductor="BU"))
    assert panel.page.fact("Size") == "0.141 mm² (26 AWG)"
    panel.set_units("awg", "inch")
    assert panel.page.fact("Size") == "26 AWG (0.141 mm²)"


def test_a_length_is_typed_in_any_unit_and_is_one_step(bench, panel, press):
    bench.select(Place(), "trunk")
    line = panel.page.length.line
    line.setFocus()
    line.selectAll()
    press(panel, "4 ft", Qt.Key.Key_Return)
    assert bench.plan.section_by_id["trunk"].length_mm == pytest.approx(1219.2)
    assert bench.undo_stack.count() == 1


@pytest.mark.parametrize("text", ["long", "-3 m", "12 miles"])
def test_a_bad_length_says_why_and_changes_nothing(bench, panel, press, text):
    bench.select(Place(), "trunk")
    before = bench.plan
    line = panel.page.length.line
    line.setFocus()
    line.selectAll()
    press(panel, text, Qt.Key.Key_Return)
    assert panel.page.length.error.text() != ""
    assert panel.page.length.error.isVisible()
    assert bench.plan == before


def test_what_is_held_over_a_contact_tells_what_a_drop_does(bench, panel):
    bench.pick_up("R", "RD")
    bench.hover("S")
    page = panel.page
    assert page.drop_title.text() == "If dropped on sleeve of R"
    assert "would put R+ on R\u2212" in page.drop.itemAt(0).widget().words.text()
    bench.hover("T")
    assert "R+ is its signal" in page.drop.itemAt(0).widget().words.text()
    bench.put_back()
    assert not page.drop_title.isVisible()


def test_links_are_made_and_removed(bench, panel):
    bench.select(Place(end="A", contact="R1"))
    box = panel.page.link.box
    box.activated.emit(box.findData("R3"))
    assert [link.contacts for link in bench.plan.links] == [("R1", "R3")]
    assert panel.page.fact("Linked") == "ring 3"
    panel.page.unlink.click()
    assert bench.plan.links == ()


def test_a_core_is_capped_from_its_page(bench, bare_lead, panel):
    bench.open_plan(bare_lead)
    bench.select(Place(end="A", conductor="WH"))
    panel.page.capped.click()
    assert [cap.conductor for cap in bench.plan.caps] == ["WH"]


def test_a_turn_is_an_angle(bench, panel, press):
    bench.select(Place(end="A"))
    line = panel.page.turn.line
    line.setFocus()
    line.selectAll()
    press(panel, "twenty", Qt.Key.Key_Return)
    assert "is not an angle" in panel.page.turn.error.text()
    line.selectAll()
    press(panel, "20", Qt.Key.Key_Return)
    assert bench.plan.end_by_id["A"].turn_deg == 20
    assert panel.page.turn.error.text() == ""


def test_markup_in_a_name_is_shown_as_it_is(bench, panel):
    bench.select(Place())
    panel.page._on_title("<b>bold</b>")
    assert panel.page.title.line.text() == "<b>bold</b>"


def test_a_long_title_shows_its_beginning_until_it_is_typed_in(bench, panel, press, qtbot):
    bench.select(Place())
    line = panel.page.title.line
    line.setFocus()
    line.selectAll()
    qtbot.keyClicks(line, "Cue desk headphone lead for the stage left desk")
    assert line.cursorPosition() == len(line.text())
    press(panel, Qt.Key.Key_Tab)
    assert bench.plan.title == line.text() == "Cue desk headphone lead for the stage left desk"
    assert line.cursorPosition() == 0
    bench.undo_stack.undo()
    bench.undo_stack.redo()
    assert line.cursorPosition() == 0


def test_a_joint_is_sleeved_and_dabbed_from_its_core_by_keyboard(bench, panel, press):
    bench.select(Place(end="A", conductor="BU"))
    covers = panel.page.covers
    assert covers.sleeve.value.text() == ""
    covers.sleeved.setFocus()
    press(panel, Qt.Key.Key_Space)
    covers.dabbed.setFocus()
    press(panel, Qt.Key.Key_Space)
    landing = bench.plan.landing_at["A", "BU"]
    assert (landing.sleeved, landing.dabbed, bench.undo_stack.count()) == (True, True, 2)
    assert "9.5 mm, bore 1.6 mm" in covers.sleeve.value.text()


def test_a_sleeve_goes_on_all_that_is_in_a_contact_in_one_step(bench, panel):
    bench.select(Place(end="A", contact="T"))
    covers = panel.page.covers
    covers.sleeved.click()
    assert all(it.sleeved for it in bench.plan.landings if (it.end, it.contact) == ("A", "T"))
    assert bench.undo_stack.undoText() == "Sleeve WH at A"
    covers.sleeved.click()
    assert not any(it.sleeved for it in bench.plan.landings)


def test_an_empty_contact_has_nothing_to_cover(bench, bare_lead, panel):
    bench.open_plan(bare_lead)
    bench.select(Place(end="A", contact="T"))
    assert not panel.page.covers.isVisible()
