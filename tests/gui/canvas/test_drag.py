"""Drag a core: it lands, lifts, is exchanged, goes home; one gesture is one undo step."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from planner.drawing.bench import overlays
from tests.gui.canvas.conftest import NONE, SHIFT


def _free(bench):
    """Return a place on the bench with nothing under it, near A."""
    x, y = bench.drawn.ends["A"].origin
    return (x - 20, y - 150)


def test_a_drag_from_a_joint_to_empty_space_lifts(cue):
    cue.drag(cue.contact("A", "R1"), _free(cue))
    assert "BU" not in cue.landed("A")
    assert cue.steps() == 1


def test_a_drag_of_a_loose_tip_lands_it(cue):
    cue.workbench.lift("A", "BU")
    cue.drag(cue.tip("A", "BU"), cue.contact("A", "R1"))
    assert cue.landed("A")["BU"] == "R1"
    assert cue.steps() == 2


def test_a_drag_snaps_within_24_px(cue):
    cue.workbench.lift("A", "BU")
    x, y = cue.contact("A", "R1")
    cue.drag(cue.tip("A", "BU"), (x - 21, y - 3))
    assert cue.landed("A")["BU"] == "R1"


def test_undo_takes_back_a_drag_as_one_step(cue):
    before = cue.workbench.plan
    cue.drag(cue.contact("A", "R1"), _free(cue))
    cue.workbench.undo_stack.undo()
    assert cue.workbench.plan == before
    assert cue.tip("A", "BU") == cue.contact("A", "R1")


def test_a_refused_drop_leaves_the_plan_and_the_core_goes_home(cue, qtbot):
    before = cue.workbench.plan
    cue.drag(cue.contact("A", "R1"), cue.contact("A", "R2"))
    item = cue.view.bench_scene.item_of("conductor/A/BU")
    qtbot.waitUntil(item.isVisible)
    assert cue.workbench.plan == before
    assert cue.workbench.hand is None
    assert cue.view.bench_scene.overlay_items("hand/core") == ()


def test_shift_exchanges_with_what_is_there(cue):
    cue.drag(cue.contact("A", "R1"), cue.contact("A", "R2"), SHIFT)
    landed = cue.landed("A")
    assert (landed["BU"], landed["RD"]) == ("R2", "R1")
    assert cue.steps() == 1


def test_a_drop_that_makes_a_finding_is_allowed(cue):
    cue.workbench.lift("A", "BU")
    cue.workbench.lift("A", "RD")
    cue.drag(cue.tip("A", "BU"), cue.contact("A", "R2"))
    assert cue.landed("A")["BU"] == "R2"


def test_escape_calls_a_drag_off(cue, qtbot):
    before = cue.workbench.plan
    cue.carry(cue.contact("A", "R1"), _free(cue))
    assert cue.workbench.hand is not None
    cue.key(Qt.Key.Key_Escape)
    assert (cue.workbench.hand, cue.view.gesture) == (None, None)
    cue.release(_free(cue))
    qtbot.waitUntil(cue.view.bench_scene.item_of("conductor/A/BU").isVisible)
    assert cue.workbench.plan == before


def test_a_move_below_the_drag_distance_is_a_click(cue):
    start = cue.contact("A", "R1")
    cue.press(start)
    cue.move((start[0] + QApplication.startDragDistance() - 2, start[1]))
    assert cue.workbench.hand is None
    cue.release(start)
    assert cue.workbench.selection.contact == "R1"


def test_while_dragged_the_core_is_hidden_and_drawn_at_the_pointer(cue):
    cue.carry(cue.contact("A", "R1"), _free(cue))
    scene = cue.view.bench_scene
    assert not scene.item_of("conductor/A/BU").isVisible()
    assert not scene.item_of("plate/A/BU").isVisible()
    assert scene.overlay_items("hand/core") != ()


def test_over_a_contact_the_callout_says_what_a_drop_would_do(cue):
    cue.workbench.lift("A", "BU")
    cue.carry(cue.tip("A", "BU"), cue.contact("A", "R1"))
    card = [
        item.text
        for item in cue.view.bench_scene.overlay_items("hand/card")
        if hasattr(item, "text")
    ]
    assert card[0] == "BU on ring 1"
    assert "no new finding" in card
    assert cue.workbench.over == "R1"


def test_over_a_full_contact_the_ring_is_struck(cue):
    cue.carry(cue.contact("A", "R1"), cue.contact("A", "R2"))
    shown = cue.view.bench_scene.overlay_items("hand/ring")
    assert shown == overlays.refused_ring(cue.drawn, "A", "R2", cue.view.look)


def test_nothing_is_dragged_from_the_mating_side(cue):
    before = cue.workbench.plan
    cue.view.set_side("mating")
    cue.drag(cue.contact("A", "R1"), cue.contact("A", "R2"), NONE)
    assert cue.workbench.plan == before
    assert cue.drawn.tips == {}


def test_a_plan_changed_under_a_drag_calls_it_off(cue):
    cue.carry(cue.contact("A", "R1"), _free(cue))
    cue.workbench.lift("L", "WH")
    assert cue.view.gesture is None
    assert cue.landed("A")["BU"] == "R1"
