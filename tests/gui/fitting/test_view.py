"""The view itself: how it is reached, what it shows where something is missing, at every size."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from planner.app.hints import HINTS
from planner.drawing.looks import DARK
from planner.edits.ends import choose_connector
from planner.files.plans import write_plan
from planner.model.place import Place
from planner.model.plan import Plan
from tests.gui.fitting.conftest import ALT, Fit, demo
from tests.gui.shell.test_accessible import nameless

SIZES = [(1440, 900), (1024, 700), (720, 450)]


def page(shell):
    return shell.bench.stack.currentWidget()


def test_the_strip_shows_which_view_is_on(make_shell, qtbot):
    shell = make_shell(demo("cue-desk-headphone-lead"))
    wire, dry_fit, *_ = shell.window.head.views.values()
    assert (wire.isChecked(), dry_fit.isChecked()) == (True, False)
    qtbot.mouseClick(dry_fit, Qt.MouseButton.LeftButton)
    assert page(shell) is shell.bench.fitting
    assert (wire.isChecked(), dry_fit.isChecked()) == (False, True)
    qtbot.mouseClick(wire, Qt.MouseButton.LeftButton)
    assert page(shell) is shell.bench.canvas


def test_the_view_stays_for_the_next_plan(cue):
    cue.open("stage-left-balanced-line")
    assert page(cue.shell) is cue.view
    assert cue.state.fit is not None


def test_a_new_plan_shows_the_guide_and_comes_back(cue):
    cue.workbench.open_plan(Plan())
    assert page(cue.shell) is cue.shell.bench.guide
    assert not cue.shell.window.acts["wire"].isEnabled()
    cue.open("cue-desk-headphone-lead")
    assert page(cue.shell) is cue.view


def test_the_steps_choose_the_end_and_the_bench_keeps_the_whole_lead(cue):
    steps = cue.shell.bench.view_acts.end_steps
    assert steps.strip.isVisible()
    cue.bot.mouseClick(steps.strip.steps["L"], Qt.MouseButton.LeftButton)
    assert cue.view.end == "L"
    assert cue.workbench.selection == Place(end="L")
    cue.key(Qt.Key.Key_1, ALT)
    assert len(cue.shell.bench.canvas.bench_scene.bench.ends) == 3
    assert not steps.strip.isVisible()


def test_an_end_chosen_in_another_panel_is_shown(cue):
    cue.workbench.select(Place(end="R", contact="T"))
    assert cue.view.end == "R"
    assert cue.state.joint == "T"


def test_go_there_shows_the_place_of_a_finding(cue):
    cue.workbench.go_to.emit(Place(end="L", conductor="WH"))
    assert (cue.view.end, cue.state.joint) == ("L", "T")


def test_the_bench_catches_up_when_it_is_shown_again(cue):
    drawn = cue.shell.bench.canvas.bench_scene.bench
    cue.acts.set_turn(90)
    assert cue.shell.bench.canvas.bench_scene.bench is drawn
    cue.shell.window.acts["wire"].trigger()
    assert cue.shell.bench.canvas.bench_scene.bench is not drawn


def test_the_hints_are_those_of_the_view(cue):
    cue.face.setFocus()
    assert cue.shell.window.hints.context == "fitting"
    assert ("B", "best turn") in HINTS["fitting"]


def test_one_side_and_one_scale_are_of_the_wire_view_only(cue):
    acts = cue.shell.window.acts
    assert [acts[name].isEnabled() for name in ("mating", "one_scale", "one_end")] == [False] * 3
    cue.shell.window.acts["wire"].trigger()
    assert [acts[name].isEnabled() for name in ("mating", "one_scale", "one_end")] == [True] * 3


def test_best_turn_from_the_menu_shows_the_view_first(make_shell, qtbot):
    shell = make_shell(demo("cue-desk-headphone-lead"))
    fit = Fit(qtbot, shell)
    fit.workbench.select(Place(end="L"))
    shell.window.acts["best_turn"].trigger()
    assert page(shell) is fit.view
    fit.found()
    assert fit.view.end == "L"
    assert "Proved" in fit.column.said.text()


def without(plan, what):
    """Take away what makes a dry fit of end A."""
    if what == "connector":
        return plan.evolve(ends=tuple(it.evolve(connector="", pinout="") for it in plan.ends))
    if what == "cable":
        cut = tuple(it.evolve(cable="", fan_of="") for it in plan.sections)
        return plan.evolve(sections=cut, conductors=(), landings=(), caps=())
    return plan.evolve(landings=())


@pytest.mark.parametrize(
    ("what", "said"),
    [
        ("connector", "No connector at A yet"),
        ("cable", "No cable at A yet"),
        ("landings", "Nothing is landed at A yet"),
    ],
)
def test_what_is_missing_is_said_with_what_to_do_next(cue, what, said):
    cue.workbench.open_plan(without(cue.plan, what))
    assert cue.state.fit is None
    assert cue.face.accessibleDescription().startswith(said)
    assert not cue.column.isVisible()
    assert not cue.face.grab().toImage().isNull()
    cue.round_the_plug(50)
    cue.face.setFocus()
    cue.key(Qt.Key.Key_B)
    cue.key(Qt.Key.Key_Left)
    assert cue.steps() == 0


def test_a_connector_alone_is_drawn(cue, library):
    plan = without(cue.plan, "connector")
    plug = library.connector("jack-4.4-five-pole")
    cue.workbench.open_plan(choose_connector(without(plan, "cable"), end="A", connector=plug))
    assert cue.state.connector == plug
    assert cue.face.accessibleDescription().startswith("No cable at A yet")


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("name", ["cue-desk-headphone-lead", "recording-rack-loom"])
def test_everything_that_takes_the_focus_has_a_name(fit_of, name, size):
    fit = fit_of(name, size=size)
    QApplication.processEvents()
    assert nameless(fit.shell.window) == []


@pytest.mark.parametrize("size", SIZES)
def test_nothing_in_the_column_is_cut(fit_of, size):
    fit = fit_of(size=size)
    QApplication.processEvents()
    area = fit.column.area
    assert area.widget().minimumSizeHint().width() <= area.viewport().width()
    assert fit.face.width() >= 240


@pytest.mark.parametrize(
    "name",
    ["cue-desk-headphone-lead", "intercom-headset", "stage-left-balanced-line",
     "stereo-to-two-mono", "recording-rack-loom", "spoiled-cue-desk"],
)  # fmt: skip
def test_every_end_of_every_demo_is_shown(fit_of, name):
    fit = fit_of(name)
    for end in fit.shell.bench.view_acts.end_steps.strip.steps:
        fit.shell.bench.view_acts.end_steps.show_end(end)
        assert fit.view.end == end
        assert not fit.face.grab().toImage().isNull()


def test_the_look_is_taken_on(cue):
    light = cue.face.grab().toImage()
    cue.shell.settings.choose("theme", "dark")
    assert cue.face.look is DARK
    assert cue.face.grab().toImage() != light


def test_a_plan_without_a_dry_fit_can_be_opened_from_a_file(make_shell, tmp_path, cue):
    write_plan(tmp_path / "bare.json", without(cue.plan, "landings"))
    shell = make_shell(tmp_path / "bare.json")
    shell.window.acts["dry_fit"].trigger()
    assert shell.bench.fitting.state.fit is None
