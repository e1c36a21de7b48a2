"""Readings typed along the probe plan, by keys alone."""

import random

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from planner.app.hints import HINTS
from planner.model.plan import Plan
from tests.gui.proving_view.conftest import CTRL, SHIFT, Meter

UP, DOWN, TAB, BACK = Qt.Key.Key_Up, Qt.Key.Key_Down, Qt.Key.Key_Tab, Qt.Key.Key_Backtab


def test_enter_begins_a_unit_and_asks_for_the_zero_first(prove):
    assert prove.view.readings.begin.text() == "Begin unit 1 (Enter)"
    prove.type("\n")
    assert prove.state.unit.number == 1
    assert QApplication.focusWidget() is prove.view.readings.zero.line
    prove.type("0.3\n")
    assert prove.state.readings.meter.zero_ohm == 0.3
    assert QApplication.focusWidget() is prove.grid


def test_enter_alone_at_the_zero_says_that_there_is_none(prove):
    prove.type("\n\n")
    assert prove.state.unit.zero_asked
    assert prove.state.readings.meter.zero_ohm == 0.0
    assert QApplication.focusWidget() is prove.grid


def test_a_zero_that_is_no_figure_is_refused_and_stays(prove):
    prove.type("\nopen\n")
    assert "number in ohm" in prove.view.readings.zero.error.text()
    assert prove.view.readings.zero.line.text() == "open"


def test_what_is_typed_stands_in_the_row_with_its_verdict(prove):
    prove.begin()
    at = prove.state.at
    for typed, shown, verdict in (
        ("0.4", "0.4 \u03a9", "good"),
        ("0,4", "0.4 \u03a9", "good"),
        ("b", "beep", "beeps"),
        ("o", "open", "open"),
        ("9", "9 \u03a9", "high"),
        ("1.2k", "1.2 k\u03a9", "high"),
        ("OL", "open", "open"),
    ):
        prove.state.go_to(at)
        prove.type(f"{typed}\n")
        assert prove.words(at)[-2:] == [shown, verdict]
        assert prove.state.at == at + 1


def test_isolation_that_beeps_is_a_bridge(prove):
    prove.begin()
    at = next(at for at, row in enumerate(prove.state.rows) if row in prove.probes[4:])
    prove.state.go_to(at)
    prove.type("b\n")
    assert prove.words(at)[-1] == "bridge"


def test_what_is_no_reading_is_refused_at_the_cell_and_not_lost(prove):
    prove.begin()
    at = prove.state.at
    prove.type("twelve\n")
    assert prove.grid.line.text() == "twelve"
    assert prove.grid.line.property("wrong") == "true"
    assert prove.state.at == at
    assert prove.state.readings.readings == ()
    assert "'twelve' is no reading" in prove.refusal
    for _ in "twelve":
        prove.key(Qt.Key.Key_Backspace)
    assert not prove.refusal
    prove.type("0.4\n")
    assert prove.state.standing(at) == "good"


def test_a_figure_below_zero_is_refused(prove):
    prove.begin()
    prove.type("-1\n")
    assert prove.state.readings.readings == ()
    assert prove.grid.line is not None


def test_the_arrows_walk_and_take_what_is_typed(prove):
    prove.begin()
    first = prove.state.at
    prove.key(DOWN)
    assert prove.state.at == first + 1
    prove.key(UP)
    prove.type("0.4")
    prove.key(DOWN)
    assert prove.state.standing(first) == "good"
    assert prove.state.at == first + 1
    prove.type("0.5")
    prove.key(BACK, SHIFT)
    assert prove.state.standing(first + 1) == "good"
    assert prove.state.at == first


def test_shift_tab_goes_back_by_rows_and_leaves_from_the_first(prove):
    prove.begin()
    first = prove.state.at
    prove.key(DOWN)
    prove.key(BACK, SHIFT)
    assert prove.state.at == first
    assert QApplication.focusWidget() is prove.grid
    prove.key(BACK, SHIFT)
    assert QApplication.focusWidget() is not prove.grid


def test_enter_passes_over_what_is_read_and_goes_round(prove):
    prove.begin()
    first = prove.state.at
    prove.key(DOWN)
    prove.type("0.4\n")
    prove.state.go_to(len(prove.state.rows) - 1)
    prove.type("o\n")
    assert prove.state.at == first
    prove.type("0.4\n")
    assert prove.state.at == first + 2


def test_delete_unreads_and_unread_is_not_open(prove):
    prove.begin()
    at = prove.state.at
    prove.type("o\n")
    prove.key(UP)
    prove.key(Qt.Key.Key_Delete)
    assert prove.state.readings.readings == ()
    assert prove.words(at)[-2:] == ["", "unread"]


def test_escape_leaves_the_cell_without_taking_it(prove):
    prove.begin()
    prove.type("0.4")
    prove.key(Qt.Key.Key_Escape)
    assert prove.grid.line is None
    assert prove.state.readings.readings == ()


def test_undo_takes_back_the_last_reading_and_leaves_the_plan(prove):
    prove.begin()
    first, plan = prove.state.at, prove.workbench.plan
    prove.type("0.4\n0.5\n")
    assert prove.acts["undo"].text() == "&Undo reading A R1 to L S"
    prove.key(Qt.Key.Key_Z, CTRL)
    assert [prove.state.standing(at) for at in (first, first + 1)] == ["good", "unread"]
    assert prove.state.at == first + 1
    prove.key(Qt.Key.Key_Z, CTRL | SHIFT)
    assert prove.state.standing(first + 1) == "good"
    assert prove.workbench.plan is plan
    assert not prove.workbench.undo_stack.count()


def test_undo_elsewhere_is_the_plans(prove):
    prove.begin()
    prove.type("0.4\n")
    prove.acts["wire"].trigger()
    assert not prove.acts["undo"].isEnabled()
    prove.acts["prove"].trigger()
    assert prove.acts["undo"].isEnabled()


def test_u_goes_to_the_next_unread_from_anywhere_in_the_view(prove):
    prove.begin()
    prove.type("0.4\n")
    prove.view.units.list.setFocus()
    prove.view.show_page("Units")
    prove.view.units.list.setFocus()
    prove.key(Qt.Key.Key_U)
    assert QApplication.focusWidget() is prove.grid


def test_the_zero_comes_off_what_is_compared_with_the_limit(prove):
    prove.begin(zero="1")
    limit = prove.state.row.path.limit_ohm
    at = prove.state.at
    prove.type(f"{limit + 0.9:.2f}\n")
    assert prove.state.standing(at) == "good"


@pytest.mark.parametrize("method", ["against-the-rest", "gangs"])
def test_a_group_that_beeps_is_split_into_its_pairs(prove, method):
    prove.begin()
    prove.state.set_method(method)
    group = next(at for at, row in enumerate(prove.state.rows) if row in prove.probes[4:])
    prove.state.go_to(group)
    row = prove.state.row
    prove.type("b\n")
    assert prove.words(group)[-2:] == ["beep", "split it"]
    inner = prove.state.rows[group + 1 : group + 1 + len(list(row.pairs()))]
    assert [(it.ones[0], it.others[0]) for it in inner] == list(row.pairs())
    prove.type("b\n")
    assert prove.state.standing(group) == "bridge"


def test_a_group_that_beeps_but_is_open_pair_by_pair_does_not_pass(prove):
    prove.begin()
    prove.state.set_method("against-the-rest")
    meter = Meter(prove.workbench.plan)
    for _ in range(4):
        prove.type(f"{meter.shows(prove.state.row)}\n")
    group = prove.state.at
    prove.type("b\n")
    prove.read_all(meter)
    assert prove.words(group)[-1] == "in doubt"
    assert prove.diagnosis.verdict == "sound"
    prove.acts["finish_unit"].trigger()
    assert "read the group again" in prove.view.verdict.finish.wrong.text()
    assert prove.state.unit is not None
    prove.state.set_method("pairs")  # another way to read does not make the beep unheard
    assert prove.state.doubtful
    prove.state.set_method("against-the-rest")
    prove.state.go_to(group)
    prove.grid.setFocus()
    prove.type("o\n")
    assert not prove.state.doubtful


def test_a_group_that_is_open_stands_for_all_its_pairs(prove):
    prove.state.set_method("gangs")
    prove.begin()
    prove.read_all(Meter(prove.workbench.plan))
    assert prove.diagnosis.verdict == "sound"
    assert len(prove.probes) == 4 + 3  # four paths, five nets: ceil(log2 5) gangs


def test_without_landings_it_says_what_to_do(prove):
    prove.workbench.open_plan(prove.workbench.plan.evolve(landings=()))
    prove.settle()
    assert prove.view.readings.empty.text().startswith("Nothing is joined yet")
    assert "Press G" in prove.view.readings.mend.text()
    assert not prove.acts["next_unit"].isEnabled()


def test_a_new_plan_shows_the_guide(prove):
    prove.workbench.open_plan(Plan())
    assert prove.shell.bench.stack.currentWidget() is prove.shell.bench.guide


def test_the_hints_are_those_of_the_view(prove):
    prove.begin()
    assert prove.shell.window.hints.context == "proving"
    assert ("o", "open") in HINTS["proving"]


def test_shelf_and_landings_are_put_aside_and_come_back(prove):
    boxes = prove.shell.window.regions.arrangement.boxes
    assert "rail" in boxes
    assert "landings_bar" in boxes
    prove.acts["wire"].trigger()
    assert {"shelf", "landings"} <= prove.shell.window.regions.arrangement.boxes.keys()


def test_what_every_row_says_aloud_holds_all_of_it(prove):
    prove.begin()
    at = prove.state.at
    prove.type("0.4\n")
    said = prove.grid.model().spoken(at)
    assert said.startswith("A T to L T, expected ")
    assert said.endswith("reading 0.4 \u03a9, good")


def test_any_order_of_keys_leaves_the_rows_as_a_plain_list_would(prove):
    """Random keys against a dictionary kept beside: nothing but what was typed moves."""
    prove.begin()
    seeded, said = random.Random(7), {}
    meaning = {"0.4": 0.4, "1,5": 1.5, "o": "open", "b": "beep", "2R2": 2.2}
    for _ in range(80):
        act = seeded.choice((*meaning, "", "nonsense", "delete", "up", "down", "undo"))
        row = prove.state.row.key
        if act in meaning:
            prove.type(f"{act}\n")
            said[row] = meaning[act]
        elif act == "nonsense":
            prove.type("zz\n")
            prove.key(Qt.Key.Key_Escape)
        elif act == "delete":
            prove.key(Qt.Key.Key_Delete)
            said.pop(row, None)
        elif act in {"up", "down"}:
            prove.key(UP if act == "up" else DOWN)
        elif act == "undo":
            before = prove.state.readings
            prove.key(Qt.Key.Key_Z, CTRL)
            prove.key(Qt.Key.Key_Z, CTRL | SHIFT)
            assert prove.state.readings == before
    assert _read(prove) == said


def _read(prove):
    return {
        pair: "open" if not it.joined else "beep" if it.ohm is None else it.ohm
        for pair, it in prove.state.readings.by_pair.items()
    }
