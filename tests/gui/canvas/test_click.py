"""The same without dragging: click a core, click a contact (WCAG 2.2, 2.5.7)."""

from PySide6.QtCore import Qt

from planner.model.place import Place
from tests.gui.canvas.conftest import SHIFT


def test_a_click_on_a_stroke_picks_the_core_up(cue):
    cue.click(cue.on_stroke("A", "BU"))
    assert cue.workbench.hand == Place(end="A", conductor="BU")


def test_a_click_on_a_contact_then_lands_it(cue):
    cue.workbench.lift("A", "BU")
    cue.click(cue.tip("A", "BU"))
    cue.click(cue.contact("A", "R1"))
    assert cue.landed("A")["BU"] == "R1"
    assert cue.workbench.hand is None


def test_shift_click_exchanges(cue):
    cue.click(cue.on_stroke("A", "BU"))
    cue.click(cue.contact("A", "R2"), SHIFT)
    assert (cue.landed("A")["BU"], cue.landed("A")["RD"]) == ("R2", "R1")


def test_a_click_on_a_full_contact_is_refused_with_the_reason(cue, qtbot):
    before = cue.workbench.plan
    cue.click(cue.on_stroke("A", "BU"))
    with qtbot.waitSignal(cue.workbench.refused) as told:
        cue.click(cue.contact("A", "R2"))
    assert told.args[0] == "ring 2 takes one core"
    assert cue.workbench.plan == before


def test_escape_puts_back_what_is_in_hand(cue):
    cue.click(cue.on_stroke("A", "BU"))
    cue.key(Qt.Key.Key_Escape)
    assert cue.workbench.hand is None


def test_a_click_on_a_contact_with_an_empty_hand_selects_it(cue):
    cue.click(cue.contact("L", "S"))
    assert cue.workbench.selection == Place(end="L", contact="S")


def test_a_click_on_the_cable_selects_its_section(cue):
    left, top, right, bottom = cue.drawn.sections["trunk"].box
    cue.click(((left + right) / 2, (top + bottom) / 2))
    assert cue.workbench.selected_section == "trunk"


def test_the_other_leg_takes_a_core_that_is_led_there(bench_of, cue):
    for end in ("L", "R"):
        for conductor in list(cue.landed(end)):
            cue.workbench.lift(end, conductor)
    cue.click(cue.tip("L", "WH"))
    cue.click(cue.contact("R", "T"))
    assert cue.landed("R") == {"WH": "T"}
