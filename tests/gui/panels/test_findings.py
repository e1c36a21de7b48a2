from PySide6.QtCore import Qt

from planner.app.panels.finding_card import NO_REASON
from planner.app.panels.findings import FindingsPanel
from planner.checks.acceptance import acceptance_of
from planner.drawing.primitives import Text
from planner.sheet.page import sheet_pages

SIZE = (304, 900)


def cards(panel):
    return {card.finding.code: card for card in panel._open_cards()}


def shown_accepted(panel):
    return [card for card in panel._accepted if not card.isHidden()]


def test_stops_come_first(bench, demo, show):
    bench.open_plan(demo("spoiled-cue-desk"))
    panel = show(FindingsPanel, bench, SIZE)
    weights = [found.weight for found in panel.shown]
    assert weights == sorted(weights, key=["stop", "caution", "note"].index)
    assert weights[0] == "stop"


def test_the_mend_button_mends_in_one_step(bench, demo, show):
    bench.open_plan(demo("spoiled-cue-desk"))
    panel = show(FindingsPanel, bench, SIZE)
    before = bench.plan
    cards(panel)["one-channel-reversed"].mend_button.click()
    assert "one-channel-reversed" not in cards(panel)
    assert bench.undo_stack.count() == 1
    bench.undo_stack.undo()
    assert bench.plan == before


def test_a_caution_is_not_accepted_without_a_reason(bench, demo, show):
    bench.open_plan(demo("cue-desk-headphone-lead"))
    panel = show(FindingsPanel, bench, SIZE)
    card = cards(panel)["pinout-unconfirmed"]
    card.accept_button.click()
    card.reason._on_accept()
    assert card.reason.error.text() == NO_REASON
    assert bench.plan.acceptances == ()


def test_a_reason_is_kept_and_can_be_taken_back(bench, demo, show, press):
    bench.open_plan(demo("cue-desk-headphone-lead"))
    panel = show(FindingsPanel, bench, SIZE)
    card = cards(panel)["pinout-unconfirmed"]
    card.accept_button.click()
    card.reason.line.setText("measured on the part")
    card.reason.line.returnPressed.emit()
    assert [it.reason for it in bench.plan.acceptances] == ["measured on the part"]
    assert panel.shown == ()
    accepted = shown_accepted(panel)
    assert "measured on the part" in accepted[0].mend.text()
    accepted[0].withdraw_button.click()
    assert bench.plan.acceptances == ()
    assert not any(acceptance_of(bench.plan, found) for found in bench.findings)


def test_a_stop_offers_no_acceptance(bench, demo, show):
    bench.open_plan(demo("spoiled-cue-desk"))
    panel = show(FindingsPanel, bench, SIZE)
    stops = [card for card in panel._open_cards() if card.finding.weight == "stop"]
    assert [card.accept_button.isVisible() for card in stops] == [False] * len(stops)


def test_n_walks_and_enter_goes(bench, demo, show, send_key, qtbot):
    bench.open_plan(demo("spoiled-cue-desk"))
    panel = show(FindingsPanel, bench, SIZE)
    send_key(panel, Qt.Key.Key_N)
    send_key(panel, Qt.Key.Key_N)
    assert panel.current == panel.shown[1]
    send_key(panel, Qt.Key.Key_N, Qt.KeyboardModifier.ShiftModifier)
    with qtbot.waitSignal(bench.go_to) as went:
        send_key(panel, Qt.Key.Key_Return)
    assert went.args == [panel.shown[0].where[0]]


def test_what_is_left_stands_apart(bench, bare_lead, show):
    bench.open_plan(bare_lead)
    panel = show(FindingsPanel, bench, SIZE)
    assert not any(found.unfinished for found in panel.shown)
    assert panel.to_land.isVisible()
    assert panel.to_land.head.note.text() == "9"


def test_a_finished_lead_is_clear_to_solder(bench, demo, show):
    bench.open_plan(demo("recording-rack-loom"))
    panel = show(FindingsPanel, bench, SIZE)
    assert panel.clear.title.text() == "Clear to solder"
    assert panel.clear.isVisible()


def test_an_empty_plan_explains_the_weights(bench, show):
    panel = show(FindingsPanel, bench, SIZE)
    assert panel.empty.isVisible()
    assert not panel.clear.isVisible()
    assert panel.shown == ()


def test_the_reason_prints_on_the_sheet(bench, demo, show):
    bench.open_plan(demo("cue-desk-headphone-lead"))
    panel = show(FindingsPanel, bench, SIZE)
    card = cards(panel)["pinout-unconfirmed"]
    card.reason.given.emit("rung out twice")
    pages = sheet_pages(bench.plan, bench.findings)
    words = " ".join(item.text for page in pages for item in page.items if isinstance(item, Text))
    assert "rung out twice" in words
