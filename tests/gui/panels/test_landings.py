from PySide6.QtCore import Qt

from planner.app.panels.landings import LandingsPanel
from planner.edits.ends import choose_connector
from planner.edits.progress import left_to_land
from planner.model.place import Place
from planner.services.checking import check_plan

DOWN, RIGHT, ENTER = Qt.Key.Key_Down, Qt.Key.Key_Right, Qt.Key.Key_Return


def landed(bench):
    return {(it.end, it.conductor): it.contact for it in bench.plan.landings}


def at(panel, end, conductor):
    panel.focus_table()
    panel.table.setCurrentIndex(panel.model.index_of(end, conductor))


def test_a_whole_lead_is_built_by_typing(bench, bare_lead, show, press):
    bench.open_plan(bare_lead)
    panel = show(LandingsPanel, bench)
    panel.focus_table()
    press(panel, "tip", ENTER, "r1", ENTER, "ring 2", ENTER, "r3", ENTER, "S", ENTER)
    press(panel, "tip", ENTER, "s", ENTER, "t", ENTER, "sleeve", ENTER)
    assert left_to_land(bench.plan) == ()
    assert [it.code for it in check_plan(bench.plan) if it.weight == "stop"] == []
    assert bench.undo_stack.count() == 9


def here(bench):
    return bench.selection.end, bench.selection.conductor


def test_enter_goes_to_the_next_core(bench, bare_lead, show, press):
    bench.open_plan(bare_lead)
    panel = show(LandingsPanel, bench)
    panel.focus_table()
    press(panel, "tip", ENTER)
    assert here(bench) == ("A", "BU")


def test_after_the_last_core_of_an_end_comes_the_first_loose_one_of_the_next(
    bench, bare_lead, show, press
):
    bench.open_plan(bare_lead)
    panel = show(LandingsPanel, bench)
    at(panel, "L", "WH")
    press(panel, "tip", ENTER)
    assert here(bench) == ("L", "BU")
    press(panel, "s", ENTER)
    assert here(bench) == ("R", "RD")
    press(panel, "tip", ENTER, "s", ENTER)
    assert here(bench) == ("A", "WH")


def test_after_the_last_loose_core_typing_stays_where_it_is(bench, demo, show, press):
    bench.open_plan(demo("cue-desk-headphone-lead"))
    panel = show(LandingsPanel, bench)
    at(panel, "R", "GN")
    press(panel, ENTER, ENTER)
    assert here(bench) == ("R", "GN")
    assert panel.window().focusWidget() is panel.table


def test_an_unknown_contact_says_which_was_meant(bench, bare_lead, show, press):
    bench.open_plan(bare_lead)
    panel = show(LandingsPanel, bench)
    panel.focus_table()
    press(panel, "rinng 1", ENTER)
    assert "Did you mean 'ring 1'?" in spoken(panel)
    assert landed(bench) == {}


def spoken(panel):
    labels = [child for child in panel._box.children() if hasattr(child, "words")]
    return " ".join(line.words.text() for line in labels if not line.isHidden())


def test_delete_lifts_and_undo_puts_it_back(bench, demo, show, press):
    bench.open_plan(demo("cue-desk-headphone-lead"))
    panel = show(LandingsPanel, bench)
    before = bench.plan
    at(panel, "A", "WH")
    press(panel, Qt.Key.Key_Delete)
    assert ("A", "WH") not in landed(bench)
    bench.undo_stack.undo()
    assert bench.plan == before


def test_c_caps_and_c_takes_it_back(bench, bare_lead, show, press):
    bench.open_plan(bare_lead)
    panel = show(LandingsPanel, bench)
    at(panel, "A", "WH")
    press(panel, "c")
    assert [(cap.end, cap.conductor) for cap in bench.plan.caps] == [("A", "WH")]
    press(panel, "c")
    assert bench.plan.caps == ()


def test_a_letter_that_begins_a_contact_is_typed_and_shift_c_caps(  # noqa: PLR0917 - fixtures
    bench, bare_lead, library, show, press, send_key
):
    phono = library.connector("phono-male")
    bench.open_plan(choose_connector(bare_lead, end="L", connector=phono))
    panel = show(LandingsPanel, bench)
    at(panel, "L", "WH")
    press(panel, "centre", ENTER)
    assert landed(bench)["L", "WH"] == "1"
    assert not bench.plan.caps
    at(panel, "L", "BU")
    send_key(panel.table, Qt.Key.Key_C, Qt.KeyboardModifier.ShiftModifier)
    assert [(it.end, it.conductor) for it in bench.plan.caps] == [("L", "BU")]


def test_x_exchanges_with_what_is_on_the_contact(bench, demo, show, press):
    bench.open_plan(demo("cue-desk-headphone-lead"))
    panel = show(LandingsPanel, bench)
    at(panel, "R", "RD")
    press(panel, "x", "sleeve", ENTER)
    assert (landed(bench)["R", "RD"], landed(bench)["R", "GN"]) == ("S", "T")


def test_a_full_contact_is_refused_in_words(bench, demo, show, press):
    bench.open_plan(demo("cue-desk-headphone-lead"))
    panel = show(LandingsPanel, bench)
    before = bench.plan
    at(panel, "A", "RD")
    press(panel, "tip", ENTER)
    assert "takes one" in spoken(panel)
    assert bench.plan == before


def test_space_picks_up_and_escape_puts_back(bench, bare_lead, show, press):
    bench.open_plan(bare_lead)
    panel = show(LandingsPanel, bench)
    at(panel, "A", "BU")
    press(panel, Qt.Key.Key_Space)
    assert bench.hand == Place(end="A", conductor="BU")
    assert panel.model.cell(1, 0).state == "hand"
    press(panel, Qt.Key.Key_Escape)
    assert bench.hand is None


def test_g_asks_for_landing_by_signal(bench, bare_lead, show, press, qtbot):
    bench.open_plan(bare_lead)
    panel = show(LandingsPanel, bench)
    panel.focus_table()
    with qtbot.waitSignal(panel.land_by_signal_requested, timeout=500):
        press(panel, "g")


def test_typing_on_another_leg_leads_the_core_there(bench, bare_lead, show, press):
    bench.open_plan(bare_lead)
    panel = show(LandingsPanel, bench)
    first = bench.wiring.ends_of("WH")
    other = "R" if "L" in first else "L"
    at(panel, other, "WH")
    assert panel.model.cell(0, panel.table.currentIndex().column()).state == "away"
    press(panel, "t", ENTER)
    assert landed(bench) == {(other, "WH"): "T"}
    assert other in bench.wiring.ends_of("WH")


def test_every_cell_is_spoken(bench, demo, show):
    bench.open_plan(demo("spoiled-cue-desk"))
    panel = show(LandingsPanel, bench)
    index = panel.model.index_of("R", "GN")
    said = panel.model.data(index, Qt.ItemDataRole.AccessibleTextRole)
    assert said.startswith("GN green, end R right cup: tip, wants R+, stop")


def test_walking_lights_the_net(bench, demo, show, press):
    bench.open_plan(demo("cue-desk-headphone-lead"))
    panel = show(LandingsPanel, bench)
    at(panel, "A", "WH")
    assert Place(end="L", contact="T") in bench.lit


def test_a_loom_scrolls_and_keeps_its_cores_in_sight(bench, demo, show):
    bench.open_plan(demo("recording-rack-loom"))
    panel = show(LandingsPanel, bench, (920, 184))
    bar = panel.table.horizontalScrollBar()
    bar.setValue(bar.maximum())
    assert bar.maximum() > 0
    assert panel.table.verticalHeader().isVisible()
    assert panel.model.columnCount() == 9


def test_nothing_is_heard_after_detach(bench, bare_lead, show):
    panel = show(LandingsPanel, bench)
    panel.detach()
    bench.open_plan(bare_lead)
    assert panel.model.rowCount() == 0


def test_shift_enter_exchanges_as_the_refusal_says(bench, demo, show, press, send_key):
    bench.open_plan(demo("cue-desk-headphone-lead"))
    panel = show(LandingsPanel, bench)
    at(panel, "A", "RD")
    press(panel, "tip", ENTER)
    send_key(panel.table.line, ENTER, Qt.KeyboardModifier.ShiftModifier)
    assert (landed(bench)["A", "RD"], landed(bench)["A", "WH"]) == ("T", "R2")
    assert bench.undo_stack.count() == 1
