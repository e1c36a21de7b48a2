"""One end at a time: the steps, the small lead, the keys, and what follows what."""

import pytest
from PySide6.QtCore import QPointF, Qt

from planner.app.arrangement import Form
from planner.data import data_dir
from planner.drawing.looks import DARK
from planner.model.place import Place

COLUMN = (720, 450)
CTRL = Qt.KeyboardModifier.ControlModifier


def demo(name):
    return data_dir("resources") / "demo" / f"{name}.json"


@pytest.fixture
def narrow(make_shell):
    return make_shell(demo("cue-desk-headphone-lead"), size=COLUMN)


@pytest.fixture
def loom(make_shell):
    return make_shell(demo("recording-rack-loom"))


def shown(shell):
    return list(shell.bench.canvas.bench_scene.bench.ends)


def strip(shell):
    return shell.bench.view_acts.end_steps.strip


def step(shell, key, times=1):
    for _ in range(times):
        shell.window.acts["next_end" if key > 0 else "previous_end"].trigger()


def test_in_one_column_one_end_is_shown_with_steps_for_all(narrow):
    assert narrow.window.regions.form is Form.COLUMN
    assert shown(narrow) == ["A"]
    assert list(strip(narrow).steps) == ["A", "L", "R"]
    assert strip(narrow).isVisible()


def test_a_step_shows_its_end_and_says_so(narrow, qtbot):
    qtbot.mouseClick(strip(narrow).steps["L"], Qt.MouseButton.LeftButton)
    assert shown(narrow) == ["L"]
    assert strip(narrow).steps["L"].isChecked()
    assert "left cup" in strip(narrow).steps["L"].accessibleName()
    assert narrow.bench.canvas.accessibleName() == "Bench: end L"


def test_a_click_on_a_step_leaves_the_keys_with_the_drawing(narrow, qtbot):
    narrow.bench.canvas.setFocus()
    qtbot.mouseClick(strip(narrow).steps["L"], Qt.MouseButton.LeftButton)
    assert narrow.bench.canvas.hasFocus()


def test_three_steps_and_the_small_lead_have_room_in_the_smallest_column(narrow):
    row = strip(narrow)
    for part in (row.steps["R"], row.lead):
        right = part.mapTo(row, part.rect().topRight()).x()
        assert right < row.width()
    assert row.row.width() >= row.row.widget().width()


def test_left_and_right_step_round_and_round(narrow, qtbot):
    row = strip(narrow)
    row.steps["A"].setFocus()
    for key, end in ((Qt.Key.Key_Right, "L"), (Qt.Key.Key_Right, "R"), (Qt.Key.Key_Right, "A"),
                     (Qt.Key.Key_Left, "R")):  # fmt: skip
        qtbot.keyClick(row.steps[row.current], key)
        assert shown(narrow) == [end]
        assert row.steps[end].hasFocus()


def test_ctrl_page_keys_step_from_anywhere(narrow, qtbot):
    qtbot.keyClick(narrow.bench.canvas, Qt.Key.Key_PageDown, CTRL)
    assert shown(narrow) == ["L"]
    qtbot.keyClick(narrow.bench.canvas, Qt.Key.Key_PageUp, CTRL)
    assert shown(narrow) == ["A"]


def test_a_click_on_the_small_lead_shows_the_end_there(narrow, qtbot):
    lead = strip(narrow).lead
    at = QPointF(*lead.drawn.ends["R"]).toPoint()
    qtbot.mouseClick(lead, Qt.MouseButton.LeftButton, pos=at)
    assert shown(narrow) == ["R"]
    assert lead.end_at(QPointF(lead.width() / 2, 2)) == ""


def test_badges_carry_the_findings_of_their_ends(make_shell):
    shell = make_shell(demo("spoiled-cue-desk"), size=COLUMN)
    steps = strip(shell).steps
    assert {end: step.weight for end, step in steps.items()}["R"] == "stop"
    assert "stop" in steps["R"].accessibleName()
    assert len(steps["R"].drawn()) > 2


def test_light_and_landing_work_with_one_end_shown(narrow):
    canvas, bench = narrow.bench.canvas, narrow.bench.workbench
    bench.light(Place(end="A", contact="R1"))
    assert len(canvas.bench_scene.overlay_items("light/rings")) == 1
    landing = next(it for it in bench.plan.landings if it.end == "A")
    bench.lift("A", landing.conductor)
    assert shown(narrow) == ["A"]
    canvas.focus_contact(Place(end="A", contact=landing.contact))
    bench.pick_up("A", landing.conductor)
    canvas.aim.look_at(("A", landing.contact), canvas.room())
    assert canvas.aim.drop()


def test_going_to_a_finding_steps_to_its_end(narrow):
    narrow.bench.workbench.go_to.emit(Place(end="R", contact="S"))
    assert shown(narrow) == ["R"]
    assert strip(narrow).current == "R"


def test_choosing_in_another_panel_steps_to_that_end(narrow):
    narrow.bench.workbench.select(Place(end="L", contact="T"))
    assert shown(narrow) == ["L"]


def test_a_wide_window_shows_the_whole_lead_until_one_end_is_asked_for(loom):
    assert len(shown(loom)) == 9
    whole = loom.bench.canvas.zoom
    step(loom, 1)
    assert shown(loom) == ["A"]
    step(loom, 1, times=8)
    assert shown(loom) == ["B8"]
    assert loom.bench.canvas.zoom > 4 * whole
    loom.window.acts["one_end"].trigger()
    assert len(shown(loom)) == 9
    assert not strip(loom).isVisible()


def test_the_key_e_turns_one_end_on_and_off(loom, qtbot):
    loom.bench.workbench.select(Place(end="B3"))
    qtbot.keyClick(loom.bench.canvas, Qt.Key.Key_E)
    assert shown(loom) == ["B3"]
    qtbot.keyClick(loom.bench.canvas, Qt.Key.Key_E)
    assert len(shown(loom)) == 9


def test_nine_steps_scroll_and_the_current_one_is_in_sight(make_shell):
    shell = make_shell(demo("recording-rack-loom"), size=COLUMN)
    row = strip(shell).row
    assert row.horizontalScrollBar().maximum() > 0
    step(shell, -1)
    there = strip(shell).steps["B8"]
    left = there.mapTo(row.viewport(), there.rect().topLeft()).x()
    assert 0 <= left <= row.viewport().width() - there.width()


def test_each_form_keeps_its_own_way(narrow, qtbot):
    narrow.window.resize(1440, 900)
    qtbot.waitUntil(lambda: len(shown(narrow)) == 3)
    narrow.window.resize(*COLUMN)
    qtbot.waitUntil(lambda: len(shown(narrow)) == 1)


def test_a_plan_without_ends_has_no_steps(make_shell):
    shell = make_shell(size=COLUMN)
    assert not strip(shell).isVisible()
    assert not shell.window.acts["next_end"].isEnabled()


def test_another_plan_has_its_own_steps(narrow):
    narrow.bench.session.open(demo("intercom-headset"))
    assert list(strip(narrow).steps) == ["A", "B"]
    assert shown(narrow) == ["A"]


def test_the_strip_is_drawn_in_the_look_that_is_on(narrow):
    strip(narrow).set_look(DARK)
    box, letter = strip(narrow).steps["A"].drawn()[:2]
    assert (box.style.fill, letter.colour) == (DARK.accent, DARK.on_accent)
