"""The order of work in the whole window: steps, threading, cuts; by mouse and by keyboard."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication

from planner.app.hints import HINTS
from planner.data import data_dir
from planner.drawing.looks import DARK
from planner.dryfit.work import movable
from planner.model.place import Place
from planner.model.plan import Plan
from planner.wiring.graph import Wiring
from tests.gui.shell.conftest import answers, library, make_shell
from tests.gui.shell.test_accessible import nameless

__all__ = ["answers", "library", "make_shell"]

LEFT, CTRL, ALT = (
    Qt.MouseButton.LeftButton,
    Qt.KeyboardModifier.ControlModifier,
    Qt.KeyboardModifier.AltModifier,
)
NONE = Qt.KeyboardModifier.NoModifier
SIZES = [(1440, 900), (1024, 700), (720, 450)]
CUE = "cue-desk-headphone-lead"


class Bench:
    """The view with the moves of a hand."""

    def __init__(self, qtbot, shell):
        self.bot, self.shell = qtbot, shell
        self.view = shell.bench.work
        self.state, self.list = self.view.state, self.view.steps.list
        self.workbench = shell.bench.workbench

    @property
    def ids(self):
        return [step.id for step in self.state.facts.steps]

    def settle(self):
        self.bot.waitUntil(lambda: not self.state.busy)

    def count(self):
        return self.workbench.undo_stack.count()

    def key(self, key, modifier=NONE):
        self.bot.keyClick(QApplication.focusWidget(), key, modifier)
        self.settle()

    def middle(self, place):
        return self.list.visualItemRect(self.list.item(place)).center()

    def drag(self, place, to_y):
        """Take hold of a row, carry it to a height, and let go."""
        port, start = self.list.viewport(), self.middle(place)
        self.bot.mousePress(port, LEFT, NONE, start)
        for share in (0.3, 0.7, 1.0):
            y = start.y() + (to_y - start.y()) * share
            self.bot.mouseMove(port, QPoint(start.x(), round(y)))
        self.bot.mouseRelease(port, LEFT, NONE, QPoint(start.x(), to_y))
        self.settle()

    def free(self):
        """Return a step with more than one number, and those numbers."""
        plan = self.workbench.plan
        for number, step in enumerate(self.ids, start=1):
            able = movable(plan, Wiring(plan), step)
            if number + 1 in able:
                return step, number
        pytest.fail("no step can go anywhere")


@pytest.fixture
def open_work(qtbot, make_shell):
    def make(name=CUE, size=(1440, 900)):
        shell = make_shell(data_dir("resources") / "demo" / f"{name}.json", size=size)
        shell.window.acts["work"].trigger()
        bench = Bench(qtbot, shell)
        bench.settle()
        return bench

    return make


@pytest.fixture
def work(open_work):
    return open_work()


def test_the_strip_leads_to_the_view_and_back(work):
    shell, head = work.shell, work.shell.window.head
    assert shell.bench.stack.currentWidget() is work.view
    assert head.views["work"].isChecked()
    work.key(Qt.Key.Key_1, ALT)
    assert shell.bench.stack.currentWidget() is shell.bench.canvas
    work.bot.mouseClick(head.views["work"], LEFT)
    assert shell.bench.stack.currentWidget() is work.view


def test_each_step_is_a_row_with_its_number(work):
    assert len(work.list.rows) == len(work.ids) == work.list.count() > 20
    assert [row.number for row in work.list.rows] == list(range(1, len(work.ids) + 1))
    assert work.list.item(0).text().startswith("Cut, thread: 1, ")
    assert not any("*" in work.list.item(at).text() for at in range(work.list.count()))


def test_stages_and_heats_begin_where_they_change(work):
    rows, steps = work.list.rows, work.state.facts.steps
    for before, after, row in zip(steps, steps[1:], rows[1:], strict=False):
        assert bool(row.stage) == (before.stage != after.stage)
        assert row.begins_heat or before.heat == after.heat


def test_a_chosen_step_selects_its_end(work):
    place = next(at for at, it in enumerate(work.state.facts.steps) if it.end == "L")
    work.list.setFocus()
    work.list.scrollToItem(work.list.item(place))
    work.bot.mouseClick(work.list.viewport(), LEFT, NONE, work.middle(place))
    assert work.workbench.selection.end == "L"


def test_up_and_down_walk_the_steps(work):
    work.list.setFocus()
    work.list.setCurrentRow(0)
    work.key(Qt.Key.Key_Down)
    work.key(Qt.Key.Key_Down)
    assert work.state.step == work.ids[2]


def test_alt_down_does_a_step_later_and_undo_brings_it_back(work):
    step, number = work.free()
    work.list.setFocus()
    work.list.setCurrentRow(number - 1)
    work.key(Qt.Key.Key_Down, ALT)
    assert work.state.place_of(step) == number + 1
    assert work.count() == 1
    assert work.list.currentRow() == number
    work.shell.window.acts["undo"].trigger()
    work.settle()
    assert work.state.place_of(step) == number


def test_a_step_is_dragged_as_one_undo_step(work):
    step, number = work.free()
    work.list.scrollToItem(work.list.item(number - 1))
    below = work.list.visualItemRect(work.list.item(number))
    work.drag(number - 1, below.bottom() - 1)
    assert work.state.place_of(step) == number + 1
    assert work.count() == 1
    work.list.setFocus()
    work.key(Qt.Key.Key_Z, CTRL)
    assert work.state.place_of(step) == number
    assert work.workbench.plan.step_order == ()


def test_a_drag_and_the_keys_make_the_same_order(work):
    _, number = work.free()
    work.list.scrollToItem(work.list.item(number - 1))
    work.drag(number - 1, work.list.visualItemRect(work.list.item(number)).bottom() - 1)
    dragged = work.workbench.plan.step_order
    work.shell.window.acts["undo"].trigger()
    work.settle()
    work.list.setFocus()
    work.list.setCurrentRow(number - 1)
    work.key(Qt.Key.Key_Down, ALT)
    assert work.workbench.plan.step_order == dragged != ()


def test_a_drag_past_what_needs_the_step_is_refused_with_the_reason(work):
    steps = work.state.facts.steps
    held = next(at for at, it in enumerate(steps[:-1]) if it.id in steps[at + 1].needs)
    before = list(work.ids)
    work.list.scrollToItem(work.list.item(held))
    work.drag(held, work.list.visualItemRect(work.list.item(held + 1)).bottom() - 1)
    assert (work.ids, work.count()) == (before, 0)
    told = work.shell.window.notice.text
    assert f"Step {held + 1} has to come before step {held + 2}" in told


def test_what_must_come_before_refuses_the_move(work):
    before = list(work.ids)
    work.list.setFocus()
    held = next(at for at, it in enumerate(work.state.facts.steps) if work.ids[at - 1] in it.needs)
    work.list.setCurrentRow(held)
    work.key(Qt.Key.Key_Up, ALT)
    assert work.ids == before
    assert work.count() == 0
    assert f"Step {held + 1} has to come after step {held}" in work.shell.window.notice.text


def test_escape_puts_back_the_step_in_hand(work):
    _, number = work.free()
    port, start = work.list.viewport(), work.middle(number - 1)
    work.list.setFocus()
    work.bot.mousePress(port, LEFT, NONE, start)
    work.bot.mouseMove(port, start + QPoint(0, 80))
    work.bot.keyClick(work.list, Qt.Key.Key_Escape)
    work.bot.mouseRelease(port, LEFT, NONE, start + QPoint(0, 80))
    assert work.count() == 0


def test_the_computed_order_comes_back_by_key(work):
    usual = list(work.ids)
    step, number = work.free()
    work.state.move(step, number + 1)
    work.settle()
    assert "your own order" in work.view.steps.note.text()
    work.list.setFocus()
    work.key(Qt.Key.Key_C)
    assert work.ids == usual
    assert work.workbench.plan.step_order == ()
    assert work.count() == 2


def test_parts_stand_in_threading_order_with_their_tags(work):
    tags = [route.tag for route in work.state.facts.threading.routes]
    assert [row.text.split()[0] for row in work.view.parts.rows] == tags != []


def test_a_part_is_taken_off_and_comes_back_by_undo(work):
    parts = work.workbench.plan.parts
    work.state.choose_part(work.view.parts.rows[0].use)
    work.view.parts.off.click()
    assert len(work.workbench.plan.parts) == len(parts) - 1
    work.shell.window.acts["undo"].trigger()
    assert work.workbench.plan.parts == parts


def test_another_end_to_come_from_is_one_undo_step(work):
    pane = work.view.parts
    use = pane.rows[0].use
    work.state.choose_part(use)
    at = pane.comes_from.box.findData("L")
    pane.comes_from.box.activated.emit(at)
    work.settle()
    assert work.state.use.comes_from == "L"
    assert work.count() == 1


def test_what_stays_on_is_never_in_the_plan(work):
    plan = work.workbench.plan
    work.view.parts.stays["A"].click()
    work.settle()
    assert work.workbench.plan is plan
    assert work.state.facts.stays_on == frozenset({"A"})
    assert work.view.parts.said.text().startswith("With A soldered")
    work.view.parts.stays["A"].click()
    work.settle()
    assert work.view.parts.said.text() == ""


def test_a_rework_says_of_each_part_without_a_way_what_to_take_instead(work):
    """With A and L on, what rests at R alone still goes on over R."""
    for end in ("A", "L"):
        work.view.parts.stays[end].click()
        work.settle()
    rows = {row.use: row for row in work.view.parts.rows}
    at_r = {it.id for it in work.workbench.plan.parts if it.at == "R"}
    assert {use for use, row in rows.items() if not row.stop} == at_r
    stuck = [row for row in rows.values() if row.stop]
    assert all("Take one that opens" in row.small for row in stuck)
    assert f"{len(stuck)} parts have no way left" in work.view.parts.said.text()


def test_with_all_ends_on_no_closed_part_can_be_threaded(work):
    for end in ("A", "L", "R"):
        work.view.parts.stays[end].click()
        work.settle()
    closed = {use.id for use in work.workbench.plan.parts}
    stuck = {row.use for row in work.view.parts.rows if row.stop}
    assert stuck == closed != set()


def test_proposed_parts_are_taken_once(work):
    work.list.setFocus()
    work.key(Qt.Key.Key_P)
    taken = len(work.workbench.plan.parts)
    work.key(Qt.Key.Key_P)
    assert len(work.workbench.plan.parts) == taken
    assert work.count() <= 1


def test_a_run_multiplies_the_pieces(work):
    work.view.show_page("Cut list")
    table = work.view.cuts.table
    assert table.isColumnHidden(3)
    work.view.cuts.leads.setValue(6)
    assert not table.isColumnHidden(3)
    assert table.isColumnHidden(2)
    cells = [[table.item(row, at).text() for at in (2, 3)] for row in range(table.rowCount())]
    assert [int(run) for _, run in cells] == [6 * int(one) for one, _ in cells]
    assert work.view.cuts.order.text().startswith("1. Cut all cables: 6 pieces.")


def test_the_cut_list_is_copied_and_saved(work, tmp_path):
    work.view.cuts.copy.click()
    assert QGuiApplication.clipboard().text().startswith("list,kind")
    work.shell.bench.ask.sheet_at = tmp_path / "cuts.csv"
    work.view.cuts.leads.setValue(3)
    work.view.cuts.save.click()
    assert (tmp_path / "cuts.csv").read_text(encoding="utf-8").startswith("list,kind")
    assert "cuts.csv" in work.shell.window.notice.text


def test_the_sheet_is_for_the_same_run(work):
    seen = []
    work.shell.bench.ask.act_on_sheet = lambda desk: seen.append(desk.options.leads)
    work.state.set_leads(4)
    work.shell.window.acts["sheet"].trigger()
    assert seen == [4]


def test_a_new_plan_shows_the_guide(work):
    work.workbench.open_plan(Plan())
    assert work.shell.bench.stack.currentWidget() is work.shell.bench.guide


def test_without_landings_there_are_no_steps_and_what_to_do_is_said(work):
    work.workbench.open_plan(work.workbench.plan.evolve(landings=()))
    work.settle()
    assert work.list.count() == 0
    assert "land cores first" in work.view.steps.note.text()


def test_nothing_is_computed_while_nobody_looks(work):
    facts = work.state.facts
    work.shell.window.acts["wire"].trigger()
    work.workbench.open_plan(work.workbench.plan.evolve(title="Another"))
    assert work.state.facts is facts
    work.shell.window.acts["work"].trigger()
    work.settle()
    assert work.state.facts is not facts


def test_the_hints_are_those_of_the_view(work):
    work.list.setFocus()
    assert work.shell.window.hints.context == "work"
    assert ("P", "parts as proposed") in HINTS["work"]


def test_an_end_chosen_here_is_the_end_of_the_dry_fit(work):
    work.workbench.select(Place(end="R"))
    work.shell.window.acts["dry_fit"].trigger()
    assert work.shell.bench.fitting.end == "R"


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("name", [CUE, "recording-rack-loom"])
def test_everything_that_takes_the_focus_has_a_name(open_work, name, size):
    work = open_work(name, size)
    for page in ("Threading", "Cut list"):
        work.view.show_page(page)
        QApplication.processEvents()
        assert nameless(work.shell.window) == []


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("name", [CUE, "recording-rack-loom"])
def test_all_pages_are_reached_at_every_size(open_work, name, size):
    work = open_work(name, size)
    for page, pane in (("Threading", work.view.parts), ("Cut list", work.view.cuts)):
        work.view.show_page(page)
        assert pane.isVisible()
        assert pane.minimumSizeHint().width() <= pane.width()
    if work.view.tabs["Steps"].isVisible():
        work.view.show_page("Steps")
    assert work.list.isVisible()


def test_the_look_is_taken_on(work):
    light = work.list.grab().toImage()
    work.shell.settings.choose("theme", "dark")
    assert work.list.look is DARK
    assert work.list.grab().toImage() != light
