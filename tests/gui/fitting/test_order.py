"""Joints and sleeves: walked, chosen, put in another order, sleeved; by mouse and by keys."""

from PySide6.QtCore import QPoint, Qt

from planner.app.fitting.order_paint import ROW_HIGH
from planner.dryfit.fit import fit_end
from planner.edits.landings import sleeve
from planner.edits.sleeving import take_sleeves
from planner.edits.soldering import take_best_order
from planner.edits.working import set_workmanship
from planner.model.place import Place
from tests.gui.fitting.conftest import ALT, LEFT, NONE


def rows(fit):
    return [row.contact for row in fit.column.order.rows]


def carry(fit, start, goal, release=True):
    """Drag a row of the list to a line between rows."""
    listed = fit.column.order.viewport()
    fit.bot.mousePress(listed, LEFT, NONE, QPoint(60, ROW_HIGH * start + 14))
    for y in (ROW_HIGH * start + 20, (ROW_HIGH * (start + goal)) // 2, ROW_HIGH * goal + 2):
        fit.bot.mouseMove(listed, QPoint(60, y))
    if release:
        fit.bot.mouseRelease(listed, LEFT, NONE, QPoint(60, ROW_HIGH * goal + 2))


def test_the_list_is_the_order_of_soldering_with_the_iron_s_room(cue):
    fit = fit_end(cue.plan, cue.workbench.wiring, "A")
    assert rows(cue) == list(fit.order)
    assert [row.margin_mm for row in cue.column.order.rows] == [it.margin_mm for it in fit.access]
    said = cue.column.order.item(0).text()
    assert said.startswith(f"1, {cue.column.order.rows[0].spoken}")
    assert "room for the iron" in said


def test_up_and_down_go_through_the_joints_and_light_their_nets(cue):
    cue.face.setFocus()
    for contact in rows(cue)[:3]:
        cue.key(Qt.Key.Key_Down)
        assert cue.workbench.selection == Place(end="A", contact=contact)
        assert Place(end="A", contact=contact) in cue.workbench.lit
    cue.key(Qt.Key.Key_Up)
    assert cue.state.joint == rows(cue)[1]


def test_pointing_at_a_joint_shows_the_iron_and_a_click_selects_it(cue):
    bare = cue.face.grab().toImage()
    cue.bot.mouseMove(cue.face, cue.joint("R2"))
    assert cue.state.joint == "R2"
    assert cue.face.grab().toImage() != bare
    assert cue.workbench.selection.contact == ""
    cue.bot.mouseClick(cue.face, LEFT, NONE, cue.joint("R2"))
    assert cue.workbench.selection == Place(end="A", contact="R2")
    assert cue.steps() == 0


def test_a_contact_chosen_elsewhere_is_the_joint_here(cue):
    cue.workbench.select(Place(end="A", contact="R3"))
    assert cue.state.joint == "R3"
    assert cue.column.order.currentRow() == rows(cue).index("R3")


def test_alt_and_the_arrows_solder_earlier_and_later(cue):
    first, second, *rest = rows(cue)
    cue.face.setFocus()
    cue.key(Qt.Key.Key_Down)
    cue.key(Qt.Key.Key_Down, ALT)
    assert rows(cue) == [second, first, *rest]
    assert cue.plan.end_by_id["A"].solder_order == (second, first, *rest)
    assert cue.state.joint == first
    cue.key(Qt.Key.Key_Up, ALT)
    assert rows(cue) == [first, second, *rest]
    assert cue.steps() == 2


def test_the_first_joint_goes_no_earlier(cue):
    cue.face.setFocus()
    cue.key(Qt.Key.Key_Down)
    cue.key(Qt.Key.Key_Up, ALT)
    assert cue.steps() == 0


def test_a_joint_is_dragged_to_another_place(cue):
    before = rows(cue)
    carry(cue, 0, 3)
    assert rows(cue) == [*before[1:3], before[0], *before[3:]]
    assert cue.steps() == 1
    cue.shell.window.acts["undo"].trigger()
    assert rows(cue) == before


def test_escape_puts_the_joint_back(cue):
    before = rows(cue)
    cue.column.order.setFocus()
    carry(cue, 0, 3, release=False)
    cue.key(Qt.Key.Key_Escape)
    cue.bot.mouseRelease(cue.column.order.viewport(), LEFT, NONE, QPoint(60, 80))
    assert rows(cue) == before
    assert cue.steps() == 0


def test_best_order_is_one_undo_step(cue):
    cue.face.setFocus()
    cue.key(Qt.Key.Key_Down)
    cue.key(Qt.Key.Key_Down, ALT)
    before = cue.plan
    cue.key(Qt.Key.Key_O)
    cue.found()
    assert cue.plan == take_best_order(before, end="A")
    assert cue.steps() == 2


def test_best_order_twice_says_that_it_is_so_already(cue):
    for _ in range(2):
        cue.shell.window.acts["best_order"].trigger()
        cue.found()
    assert cue.steps() == 1
    assert cue.column.said.text() == "Best order: it is so already."


def test_s_puts_a_sleeve_on_the_joint_and_takes_it_off(cue):
    cue.face.setFocus()
    cue.key(Qt.Key.Key_Down)
    joint = cue.state.joint
    (core,) = cue.workbench.wiring.landed_on("A", joint)
    bare = cue.plan
    cue.key(Qt.Key.Key_S)
    assert cue.plan == sleeve(bare, end="A", conductor=core, sleeved=True)
    assert cue.column.order.rows[0].sleeved
    assert ", sleeved" in cue.column.order.item(0).text()
    cue.key(Qt.Key.Key_S)
    assert cue.plan == bare
    assert cue.steps() == 2


def test_s_without_a_joint_says_what_to_do(cue):
    cue.face.setFocus()
    cue.key(Qt.Key.Key_S)
    assert cue.steps() == 0
    assert "Choose a joint" in cue.column.said.text()


def test_s_is_typed_where_something_is_typed(cue):
    field = cue.column.turn.angle
    field.setFocus()
    field.selectAll()
    cue.bot.keyClicks(field, "s")
    assert field.text() == "s"
    assert cue.steps() == 0


def test_the_advice_on_sleeves_is_told_and_taken(cue):
    box = cue.column.sleeves
    assert "wide enough" in box.advice.text()
    assert not box.take.isEnabled()
    wary = {"sleeve_share": 0.95, "watch_share": 1.9, "tolerance_mm": 0.35}
    cue.workbench.do("Workmanship", lambda plan: set_workmanship(plan, **wary))
    before = cue.plan
    assert any(line.startswith(("Sleeve ", "Dab ")) for line in box.advice.text().splitlines())
    cue.bot.mouseClick(box.take, LEFT)
    cue.found()
    assert cue.plan == take_sleeves(before, end="A") != before
    assert box.head.note.text() != "none on"
    cue.shell.window.acts["undo"].trigger()
    assert cue.plan == before
