"""The listening test in the window; no test makes a sound."""

import sys
import wave

import pytest
from PySide6.QtCore import QPoint, Qt

from planner.proving.identifying.telling import CELL_CAUTION, CELL_TEST
from planner.proving.tones import LOUD_CAUTION, SEGMENTS, UNPROVED_CAUTION
from planner.proving.unit_file import load_units
from tests.gui.proving_view.conftest import Meter

WAITS = """#!{python}
import pathlib, sys, time
pathlib.Path(__file__).with_name("got").write_text(sys.argv[1])
time.sleep(60)
"""


@pytest.fixture
def listen(prove, tmp_path):
    """The pane, with a player that makes no sound and goes on until it is stopped."""
    program = tmp_path / "plays"
    program.write_text(WAITS.format(python=sys.executable))
    program.chmod(0o755)
    pane = prove.view.listen
    before, pane.player.commands = pane.player.commands, ((str(program),),)
    pane.renew()
    prove.acts["listen"].trigger()
    yield pane
    pane.player.let_go()
    pane.player.commands = before


def card(pane, tone):
    return next(it for it in pane.cards if it.tone == tone)


def begin(prove):
    prove.acts["next_unit"].trigger()
    prove.type("0.2\n")
    prove.settle()


def texts(pane):
    return [it.text() for it in pane.findChildren(type(pane.begin))]


def test_the_caution_comes_first_and_stays_in_sight(listen):
    words = listen.caution.words
    assert words.text() == LOUD_CAUTION
    assert words.isVisible()
    assert not words.visibleRegion().isEmpty()
    above = words.mapTo(listen, words.rect().bottomLeft()).y()
    assert above < card(listen, "left").mapTo(listen, QPoint(0, 0)).y()


def test_nothing_sounds_by_itself(listen):
    assert listen.player.playing is None
    assert [it.play.text() for it in listen.cards[:5]] == ["Play"] * 5


def test_play_and_stop(qtbot, listen, tmp_path):
    left, right = card(listen, "left"), card(listen, "right")
    left.play.click()
    assert (left.play.text(), right.play.text()) == ("Stop", "Play")
    qtbot.waitUntil((tmp_path / "got").exists)
    right.play.click()
    assert (left.play.text(), right.play.text()) == ("Play", "Stop")
    right.play.click()
    assert listen.player.playing is None
    assert right.play.text() == "Play"


def test_escape_ends_the_tone_and_so_does_another_page(prove, listen):
    card(listen, "sweep").play.click()
    card(listen, "sweep").play.setFocus()
    prove.key(Qt.Key.Key_Escape)
    assert listen.player.playing is None
    card(listen, "left").play.click()
    prove.view.show_page("Verdict")
    assert listen.player.playing is None


def test_the_level_keeps_within_what_is_safe(prove, listen):
    line = listen.level.line
    assert (line.text(), listen.level_dbfs) == ("\u221230", -30)
    for typed, kept, told in (
        ("-42\n", -42, ""),
        ("-19\n", -42, "From \u221260 to \u221220. Turn up the amplifier slowly instead."),
        ("0\n", -42, "From \u221260 to \u221220. Turn up the amplifier slowly instead."),
        ("nan\n", -42, "From \u221260 to \u221220. Turn up the amplifier slowly instead."),
        ("loud\n", -42, "A figure from \u221260 to \u221220."),
        ("-30\n", -30, ""),
    ):
        line.setFocus()
        line.selectAll()
        prove.type(typed)
        assert (listen.level_dbfs, listen.level.error.text()) == (kept, told)


def test_what_is_heard_goes_into_the_record(prove, listen, plan_path):
    begin(prove)
    prove.acts["listen"].trigger()
    card(listen, "left").answers["as-expected"].click()
    card(listen, "right").answers["not-heard"].click()
    card(listen, "right").answers["not-heard"].click()
    prove.view.verdict.finish.reason.setText("right is silent")
    prove.view.verdict.finish.keep_wanted.emit("failed", "right is silent")
    record = load_units(plan_path()).latest[1]
    heard = [(it.tone, it.heard) for it in record.listening]
    assert heard == [("left", "as-expected"), ("right", "not-heard")]


def test_an_answer_is_one_undo_step(prove, listen):
    begin(prove)
    card(listen, "sweep").answers["otherwise"].click()
    assert card(listen, "sweep").answers["otherwise"].isChecked()
    prove.state.undo_stack.undo()
    assert prove.state.unit.listening == ()
    assert not any(it.isChecked() for it in card(listen, "sweep").answers.values())


def test_without_a_unit_nothing_is_noted_and_why_is_said(listen):
    assert not card(listen, "left").answers["otherwise"].isEnabled()
    assert "Begin a unit first" in listen.begin.text()
    assert listen.begin.isVisible()


def test_a_lead_that_is_not_proved_is_not_to_be_plugged_in(prove, listen):
    assert listen.unproved.isVisible()
    assert "prove by meter first" in listen.unproved.words.text()
    assert UNPROVED_CAUTION in listen.unproved.words.text()
    begin(prove)
    prove.read_all(Meter(prove.workbench.plan))
    prove.acts["listen"].trigger()
    assert not listen.unproved.isVisible()


def test_without_a_player_the_file_is_offered(listen):
    listen.player.commands = ()
    listen.renew()
    assert "no program that plays" in listen.trouble.text()
    assert not card(listen, "left").play.isEnabled()
    assert listen.file.isEnabled()


def test_what_the_player_says_is_shown(qtbot, listen, tmp_path):
    listen.player.commands = ((str(tmp_path / "gone"),),)
    with qtbot.waitSignal(listen.player.failed):
        card(listen, "left").play.click()
    assert listen.trouble.isVisible()
    assert "gone can\u2019t play the tone" in listen.trouble.text()


def test_the_tones_are_written_at_the_level(prove, listen, tmp_path):
    prove.answers.target = tmp_path / "tones.wav"
    listen.file.click()
    assert prove.answers.asked == ["test tones.wav"]
    with wave.open(str(prove.answers.target)) as stream:
        seconds = stream.getnframes() / stream.getframerate()
    assert seconds > sum(it.seconds for it in SEGMENTS)
    assert "Written" in prove.shell.window.notice.text


def test_polarity_has_the_words_of_the_samples(listen):
    assert {CELL_TEST, CELL_CAUTION} <= set(texts(listen))


def test_a_microphone_is_asked_for_where_there_is_one(open_prove):
    pane = open_prove("intercom-headset").view.listen
    assert not pane.microphone.isHidden()
    assert open_prove().view.listen.microphone.isHidden()


def test_a_unit_that_last_sounded_otherwise_does_not_pass(prove, listen, plan_path):
    begin(prove)
    prove.read_all(Meter(prove.workbench.plan))
    card(listen, "right").answers["not-heard"].click()
    prove.acts["finish_unit"].trigger()
    assert "did not sound as it should" in prove.view.verdict.finish.wrong.text()
    card(listen, "right").answers["as-expected"].click()
    prove.acts["finish_unit"].trigger()
    assert load_units(plan_path()).latest[1].verdict == "passed"
