"""The player, by a program on PATH that writes down what it got: no test makes a sound."""

import sys
import wave
from pathlib import Path

import numpy as np
import pytest

from planner.app.proving_view.player import Player, commands
from planner.proving.tones import CEILING_DBFS, SEGMENTS

LEFT, SWEEP = SEGMENTS[0], SEGMENTS[-1]
NOTES = """#!{python}
import pathlib, shutil, sys, time
here = pathlib.Path(__file__).parent
shutil.copy(sys.argv[1], here / "got.part")
(here / "path").write_text(sys.argv[1])
(here / "got.part").rename(here / "got.wav")
{rest}
"""
WAITS, SAYS = "time.sleep(60)", "sys.stderr.write('no sound card\\n'); sys.exit(1)"


@pytest.fixture
def programs(tmp_path, monkeypatch):
    """Return what puts a program on a PATH that has nothing else; it writes down what it got."""
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.setattr(sys, "platform", "linux")

    def put(name, rest=""):
        path = tmp_path / name
        path.write_text(NOTES.format(python=sys.executable, rest=rest))
        path.chmod(0o755)
        return tmp_path

    return put


@pytest.fixture
def player(qapp, programs):
    """Return what makes a player of what is on PATH."""
    made = []

    def make():
        made.append(Player())
        made[-1].commands = commands("linux")
        return made[-1]

    yield make
    for each in made:
        each.let_go()


def test_programs_are_tried_in_their_order(programs):
    for name in ("aplay", "pw-play", "paplay"):
        programs(name)
    names = [Path(path).name for (path,) in commands("linux")]
    assert names == ["pw-play", "paplay", "aplay"]


def test_by_system():
    assert commands("darwin") in {(), (("/usr/bin/afplay",),)}
    assert "winsound" in commands("win32")[0][-1]
    assert commands("an-unknown-one") == ()


def test_the_tone_is_played_at_its_level_and_its_file_goes(qtbot, programs, player):
    folder = programs("paplay")
    made = player()
    with qtbot.waitSignals([made.changed, made.changed]):
        made.play(LEFT, -30.0)
        assert made.playing is LEFT
    assert made.playing is None
    with wave.open(str(folder / "got.wav")) as stream:
        frames = np.frombuffer(stream.readframes(stream.getnframes()), "<i2").reshape(-1, 2)
    assert np.abs(frames[:, 0]).max() == pytest.approx(32767 * 10 ** (-30 / 20), abs=1)
    assert not frames[:, 1].any()
    assert not Path((folder / "path").read_text()).exists()


def test_stop_ends_the_program_and_its_file_goes(qtbot, programs, player):
    folder = programs("aplay", WAITS)
    made = player()
    made.play(LEFT, -30.0)
    qtbot.waitUntil((folder / "got.wav").exists)
    made.stop()
    assert made.playing is None
    made.let_go()
    assert not Path((folder / "path").read_text()).exists()


def test_another_tone_takes_the_place_of_the_one_that_sounds(qtbot, programs, player):
    folder = programs("aplay", WAITS)
    made, failures = player(), []
    made.failed.connect(failures.append)
    made.play(LEFT, -30.0)
    qtbot.waitUntil((folder / "got.wav").exists)
    (folder / "got.wav").unlink()
    made.play(SWEEP, -30.0)
    qtbot.waitUntil((folder / "got.wav").exists)
    assert (made.playing, failures) == (SWEEP, [])


def test_a_program_that_fails_is_said_and_the_next_waits_for_play(qtbot, programs, player):
    folder = programs("pw-play", SAYS)
    programs("aplay")
    made = player()
    with qtbot.waitSignal(made.failed) as said:
        made.play(LEFT, -30.0)
    assert said.args == ["pw-play can\u2019t play the tone: no sound card. Play tries aplay next."]
    assert made.playing is None
    (folder / "got.wav").unlink()
    with qtbot.waitSignals([made.changed, made.changed]):
        made.play(LEFT, -30.0)
    assert (folder / "got.wav").exists()


def test_a_program_that_does_not_start_is_said(qtbot, programs, player, tmp_path):
    made = player()
    made.commands = ((str(tmp_path / "gone"),),)
    with qtbot.waitSignal(made.failed) as said:
        made.play(LEFT, -30.0)
    assert said.args[0].startswith("gone can\u2019t play the tone")
    assert "Write the tones as a file" in said.args[0]
    assert made.playing is None


def test_nothing_is_played_over_the_ceiling(qtbot, programs, player):
    folder = programs("aplay")
    made = player()
    with qtbot.waitSignal(made.failed) as said:
        made.play(LEFT, CEILING_DBFS + 1)
    assert "-19 dBFS" in said.args[0].replace("\u2212", "-")
    assert not (folder / "got.wav").exists()


def test_without_a_program_nothing_is_tried(player):
    made = player()
    made.play(LEFT, -30.0)
    assert (made.commands, made.playing) == ((), None)
