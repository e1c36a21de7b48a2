"""What the view shows: light, findings, zoom, fit, drops."""

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QWheelEvent

from planner.app.canvas.tips import tip_words
from planner.app.panels.mime import make_mime
from planner.drawing.looks import DARK
from planner.edits import shapes
from planner.model.place import Place
from tests.gui.canvas.conftest import CTRL, NONE, demo

DEMOS = (
    "cue-desk-headphone-lead",
    "stage-left-balanced-line",
    "recording-rack-loom",
    "intercom-headset",
    "stereo-to-two-mono",
)


def test_a_pointer_over_a_contact_lights_its_net_across_the_lead(cue):
    cue.move(cue.contact("A", "R1"))
    lit = {(place.end, place.contact) for place in cue.workbench.lit if place.contact}
    assert lit == {("A", "R1"), ("L", "S")}
    assert len(cue.view.bench_scene.overlay_items("light/rings")) == 2
    assert len(cue.view.bench_scene.overlay_items("light/cores")) == 2


def test_a_pointer_over_nothing_puts_the_light_out(cue):
    cue.move(cue.contact("A", "R1"))
    cue.move((5, 300))
    assert cue.workbench.lit == frozenset()


@pytest.mark.parametrize("name", DEMOS)
def test_fit_shows_the_whole_lead_without_scroll_bars(bench_of, name):
    bench = bench_of(demo(name))
    assert bench.view.horizontalScrollBar().maximum() == 0
    assert bench.view.verticalScrollBar().maximum() == 0


def test_fit_follows_the_size_of_the_view_until_it_is_zoomed_by_hand(cue, qtbot):
    before = cue.view.zoom
    cue.view.resize(700, 420)
    assert cue.view.zoom < before
    cue.view.zoom_reset()
    cue.view.resize(900, 560)
    assert cue.view.zoom == 1.0


def test_ctrl_and_the_wheel_zoom_at_the_pointer(cue):
    at = cue.spot(cue.contact("A", "R1"))
    before, pos = cue.view.zoom, QPointF(at)
    for _ in range(4):
        event = QWheelEvent(
            pos, pos, QPoint(), QPoint(0, 120), Qt.MouseButton.NoButton, CTRL,
            Qt.ScrollPhase.NoScrollPhase, False,
        )  # fmt: skip
        cue.view.wheelEvent(event)
    assert cue.view.zoom == pytest.approx(before * 1.1**4)
    now = cue.spot(cue.contact("A", "R1"))
    assert (now - at).manhattanLength() <= 8


def test_text_keeps_its_size_when_the_drawing_zooms(cue):
    def sizes():
        items = cue.drawn.groups["end/A/labels"].items
        return sorted({item.size for item in items if hasattr(item, "size")})

    before = sizes()
    cue.view.zoom_to(1.7)
    assert sizes() == before == [12.0, 15.0]


@pytest.mark.parametrize("zoom", [0.15, 0.5, 1.0, 2.0])
def test_a_contacts_target_is_at_least_24_px_at_any_zoom(cue, zoom):
    cue.view.zoom_to(zoom)
    assert min(cue.drawn.radius(*key) for key in cue.drawn.contacts) >= 12


def test_a_connector_dropped_on_an_end_is_chosen_there(bench_of):
    bench = bench_of(shapes.one_to_one())
    x, y = bench.drawn.ends["B"].origin
    assert bench.view.handle_drop(make_mime("connector", "xlr-3-male"), QPointF(x, y))
    assert bench.workbench.plan.end_by_id["B"].connector == "xlr-3-male"
    assert bench.workbench.selection == Place(end="B")


def test_a_cable_dropped_on_the_bench_is_chosen_for_its_section(bench_of):
    bench = bench_of(shapes.one_to_one())
    assert bench.view.handle_drop(make_mime("cable", "star-quad"), QPointF(400, 270))
    assert bench.workbench.plan.section_by_id["trunk"].cable == "star-quad"


def test_a_dropped_file_is_told(cue, qtbot, tmp_path):
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(tmp_path / "other.json"))])
    with qtbot.waitSignal(cue.view.file_dropped) as told:
        assert cue.view.handle_drop(mime, QPointF(10, 10))
    assert told.args == [str(tmp_path / "other.json")]


def test_something_foreign_is_not_taken(cue):
    mime = QMimeData()
    mime.setText("hello")
    assert not cue.view.handle_drop(mime, QPointF(10, 10))


def test_stops_are_marked_at_their_contacts(bench_of):
    bench = bench_of(demo("spoiled-cue-desk"))
    centres = {
        getattr(item, "centre", None) for item in bench.view.bench_scene.overlay_items("findings")
    }
    assert bench.contact("R", "T") in centres
    assert bench.contact("R", "S") in centres
    assert bench.contact("L", "T") not in centres


def test_go_to_scrolls_to_a_place_and_pulses(cue, qtbot):
    cue.view.zoom_to(3.0)
    cue.workbench.go_to.emit(Place(end="R", contact="S"))
    assert cue.view.viewport().rect().contains(cue.spot(cue.contact("R", "S")))
    qtbot.waitUntil(lambda: cue.view.bench_scene.overlay_items("pulse") != ())
    qtbot.waitUntil(lambda: cue.view.bench_scene.overlay_items("pulse") == (), timeout=5000)


def test_an_edit_keeps_the_items_that_did_not_change(cue):
    scene = cue.view.bench_scene
    before = {key: scene.item_of(key).items for key in cue.drawn.groups}
    cue.workbench.lift("L", "WH")
    same = {key for key, items in before.items() if scene.item_of(key).items is items}
    assert "end/R/face" in same
    assert "conductor/A/WH" in same
    assert "end/L/contact/S" in same
    assert "end/L/contact/T" not in same


def test_one_scale_draws_every_end_at_the_same(cue):
    cue.view.set_one_scale(True)
    assert len({placed.block.scale for placed in cue.drawn.ends.values()}) == 1


def test_another_look_repaints_the_bench(cue):
    cue.view.set_look(DARK)
    shown = cue.view.grab().toImage().pixelColor(4, 300).name()
    assert shown == DARK.paper


def test_tips_tell_the_facts_of_what_is_pointed_at(cue):
    contact = tip_words(cue.workbench, Place(end="A", contact="R1")).splitlines()
    core = tip_words(cue.workbench, Place(end="A", conductor="BU")).splitlines()
    assert contact[:2] == ["A, ring 1: L−", "Landed: BU"]
    assert core[:3] == ["BU, blue", "Carries L−", "On ring 1 of A"]
    assert tip_words(cue.workbench, None, "trunk").splitlines()[1] == "A to split, 1.20 m"


def test_middle_drag_pans(cue, qtbot):
    cue.view.zoom_to(3.0)
    view, port = cue.view, cue.view.viewport()
    across = view.horizontalScrollBar()
    across.setValue(100)
    qtbot.mousePress(port, Qt.MouseButton.MiddleButton, NONE, QPoint(300, 200))
    qtbot.mouseMove(port, QPoint(260, 200))
    qtbot.mouseRelease(port, Qt.MouseButton.MiddleButton, NONE, QPoint(260, 200))
    assert across.value() == 140
