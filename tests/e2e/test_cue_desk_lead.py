"""The job from an empty window to the bench sheet: once by mouse, once by keyboard alone.

The lead is an invented cue-desk headphone lead: 4.4 five-pole to two slim 3.5 cups. Its order at
the 4.4 plug (tip L+, ring 1 L-, ring 2 R+, ring 3 R-, sleeve ground) is the one of JEITA RC-8141,
as quoted in secondary pages. Tip plus at the cups is what the invented maker's letter says.
"""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from planner.app.panels.guide_sketch import CABLE
from planner.app.panels.shelf_rows import ROW
from planner.cli.check import run as check
from planner.files.plans import read_plan
from planner.model.plan import Plan
from planner.services.checking import check_plan, verdict
from tests.e2e.hands import CTRL, ENTER

ENDS = {
    "A": ("jack-4.4-five-pole", "jack-4.4-balanced-headphone"),
    "L": ("jack-3.5-two-pole-slim", "odalisk-cup"),
    "R": ("jack-3.5-two-pole-slim", "odalisk-cup"),
}
LANDINGS = {
    ("A", "WH"): "T",
    ("A", "BU"): "R1",
    ("A", "RD"): "R2",
    ("A", "GN"): "R3",
    ("A", "SH"): "S",
    ("L", "WH"): "T",
    ("L", "BU"): "S",
    ("R", "RD"): "T",
    ("R", "GN"): "S",
}
PLAN, SHEET = "cue desk.json", "cue desk sheet.svg"


def landed(plan):
    return {(it.end, it.conductor): it.contact for it in plan.landings}


def chosen(plan):
    return {end.id: (end.connector, end.pinout) for end in plan.ends}


def assert_is_the_lead(plan):
    assert chosen(plan) == ENDS
    assert plan.cable_of("trunk").id == "hp4-braid"
    assert plan.order == "SP-0417"
    assert landed(plan) == LANDINGS
    assert verdict(check_plan(plan)) == "caution"  # nothing has confirmed the cup's pinout


def assert_files_are_whole(folder, plan, capsys):
    assert read_plan(folder / PLAN) == plan
    assert check([str(folder / PLAN)]) == 0
    assert "pinout-unconfirmed" in capsys.readouterr().out
    pages = sorted(folder.glob("cue desk sheet*.svg"))
    text = "".join(page.read_text(encoding="utf-8") for page in pages)
    assert pages
    assert "SP-0417" in text
    assert "SOLDER SIDE" in text
    assert "NOT CLEAR" not in text


# -- by mouse -----------------------------------------------------------------------------------


def pick(hands, guide, record_id):
    """Click the row of a record in the list that is open."""
    rows = guide.pick.model
    index = next(
        rows.index(at)
        for at in range(rows.rowCount())
        if rows.index(at).data(ROW).record.id == record_id
    )
    hands.click_row(guide.pick.list, index)


def fill_guide_by_mouse(hands):
    guide = hands.shell.bench.guide
    for end, (connector, pinout) in ENDS.items():
        hands.click(guide.sketch.buttons[end])
        pick(hands, guide, connector)
        pick(hands, guide, pinout)
    hands.click(guide.sketch.buttons[CABLE])
    pick(hands, guide, "hp4-braid")
    hands.click(guide.order)
    hands.write("SP-0417")
    hands.click(guide.start)


def test_the_lead_is_made_by_mouse(hands, tmp_path, capsys):
    bench = hands.shell.bench
    fill_guide_by_mouse(hands)
    assert bench.stack.currentWidget() is bench.canvas
    for (end, conductor), contact in LANDINGS.items():
        hands.drag_core(end, conductor, contact)
        assert landed(hands.plan())[end, conductor] == contact
    assert bench.workbench.undo_stack.count() == 1 + len(LANDINGS)
    hands.name_file(PLAN, lambda: hands.click_menu("Plan", "save"), button="Save")
    assert not bench.session.dirty
    hands.save_sheet(SHEET, lambda: hands.click(hands.shell.window.band.sheet), button="Save")
    made = hands.plan()
    hands.click_menu("Plan", "new")
    assert hands.plan() == Plan()
    hands.click_file(PLAN, lambda: hands.click_menu("Plan", "open"))
    assert hands.plan() == made
    assert_is_the_lead(made)
    assert_files_are_whole(tmp_path, made, capsys)


# -- by keyboard alone --------------------------------------------------------------------------


def fill_guide_by_keyboard(hands):
    for plug, pinout in (("4.4 five", "4.4 balanced"), ("slim", "odalisk"), ("slim", "odalisk")):
        hands.key("2", ENTER)  # the first open end, and its list
        hands.write(plug, ENTER)
        hands.write(pinout, ENTER)
    hands.key("3", ENTER)
    hands.write("spool 4", ENTER)
    hands.key("4")
    hands.key(*[Qt.Key.Key_Tab] * 3)
    hands.write("SP-0417", ENTER)


TYPED = ("tip", "r1", "ring 2", "r3", "s", "tip", "s", "tip", "sleeve")


@pytest.mark.usefixtures("no_pointer")
def test_the_lead_is_made_by_keyboard_alone(hands, tmp_path, capsys):
    bench = hands.shell.bench
    fill_guide_by_keyboard(hands)
    assert chosen(hands.plan()) == ENDS
    hands.key(Qt.Key.Key_L, modifiers=CTRL)
    for contact in TYPED:
        hands.write(contact, ENTER)
    assert bench.workbench.undo_stack.count() == 1 + len(TYPED)
    press = hands.key
    hands.name_file(PLAN, lambda: press(Qt.Key.Key_S, modifiers=CTRL))
    assert not bench.session.dirty
    hands.save_sheet(SHEET, lambda: press(Qt.Key.Key_P, modifiers=CTRL))
    made = hands.plan()
    press(Qt.Key.Key_N, modifiers=CTRL)
    assert hands.plan() == Plan()
    assert QApplication.focusWidget() is bench.guide.shapes["two"]
    hands.name_file(PLAN, lambda: press(Qt.Key.Key_O, modifiers=CTRL))
    assert hands.plan() == made
    assert_is_the_lead(made)
    assert_files_are_whole(tmp_path, made, capsys)
