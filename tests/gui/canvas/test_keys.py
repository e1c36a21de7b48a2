"""The canvas by keyboard alone."""

from PySide6.QtCore import Qt

from planner.drawing.bench.overlays import focus_frame
from planner.model.place import Place

KEY = Qt.Key


def test_tab_goes_through_the_contacts_of_an_end_with_the_frame(cue):
    cue.view.setFocus()
    cue.key(KEY.Key_Tab)
    assert cue.view.focused == Place(end="A", contact="T")
    cue.key(KEY.Key_Tab)
    assert cue.view.focused == Place(end="A", contact="R1")
    frame = focus_frame(cue.drawn, "A", "R1", cue.view.look)
    assert cue.view.bench_scene.overlay_items("focus") == frame


def test_tab_leaves_the_canvas_beyond_the_last_contact(cue):
    last = list(cue.drawn.contacts)[-1]
    cue.view.focus_contact(Place(end=last[0], contact=last[1]))
    assert not cue.view._keys.step(forward=True)


def test_an_arrow_goes_to_the_contact_that_lies_that_way(cue):
    cue.view.focus_contact(Place(end="L", contact="T"))
    cue.key(KEY.Key_Down)
    assert cue.view.focused == Place(end="L", contact="S")


def test_space_picks_up_and_lands(cue):
    cue.workbench.lift("A", "BU")
    cue.view.focus_contact(Place(end="A", contact="R1"))
    cue.key(KEY.Key_Space)
    assert cue.workbench.hand == Place(end="A", conductor="BU")
    cue.key(KEY.Key_Space)
    assert cue.landed("A")["BU"] == "R1"


def test_delete_lifts_what_is_on_the_contact(cue):
    cue.view.focus_contact(Place(end="A", contact="R1"))
    cue.key(KEY.Key_Delete)
    assert "BU" not in cue.landed("A")


def test_holding_m_peeks_at_the_mating_side(cue, qtbot):
    qtbot.keyPress(cue.view, KEY.Key_M)
    assert cue.view.side == "mating"
    qtbot.keyRelease(cue.view, KEY.Key_M)
    assert cue.view.side == "solder"
