"""The tones, held against numpy's FFT: pitch, level, phase between channels, seams, bytes."""

import io
import wave
from dataclasses import replace

import numpy as np
import pytest

from planner.problem import InputError
from planner.proving.tones import (
    CEILING_DBFS,
    DEFAULT_DBFS,
    FADE_S,
    LOUD_CAUTION,
    PAUSE_S,
    RATE_HZ,
    SEGMENTS,
    cues,
    tone_bytes,
    tone_samples,
    write_tones,
)

FULL = 32_767
STEADY = [cue for cue in cues() if cue.segment.from_hz == cue.segment.to_hz]
SWEEP = cues()[-1]


def read(data):
    """Read the file anew with the standard library; return frames by channel, full scale 1."""
    with wave.open(io.BytesIO(data)) as stream:
        assert stream.getparams()[:3] == (2, 2, RATE_HZ)
        frames = stream.readframes(stream.getnframes())
    return np.frombuffer(frames, dtype="<i2").reshape(-1, 2) / FULL


@pytest.fixture(scope="module")
def sound():
    return read(tone_bytes())


def middle(sound, cue, seconds=1.0):
    """Return a second from the middle of a tone, away from its fades: one bin is 1 Hz."""
    first = round((cue.start_s + cue.end_s - seconds) / 2 * RATE_HZ)
    return sound[first : first + round(seconds * RATE_HZ)]


def line(part, hertz):
    """Return the complex amplitude of a whole-number pitch: 1 is a full-scale sine."""
    return np.fft.rfft(part)[hertz] / (len(part) / 2)


@pytest.mark.parametrize("cue", STEADY, ids=lambda cue: cue.segment.tone)
def test_pitch_and_level(sound, cue):
    part, hertz = middle(sound, cue), round(cue.segment.from_hz)
    for channel, sign in enumerate((cue.segment.left, cue.segment.right)):
        spectrum = np.abs(np.fft.rfft(part[:, channel]))
        if sign == 0:
            assert not part[:, channel].any()
            continue
        assert spectrum.argmax() == hertz
        level = 20 * np.log10(abs(line(part[:, channel], hertz)))
        assert level == pytest.approx(DEFAULT_DBFS, abs=0.01)
        rest = np.delete(spectrum, hertz) / (len(part) / 2)
        assert 20 * np.log10(rest.max()) < -100


@pytest.mark.parametrize(("tone", "degrees"), [("in-phase", 0), ("out-of-phase", 180)])
def test_phase_between_the_channels(sound, tone, degrees):
    cue = next(cue for cue in STEADY if cue.segment.tone == tone)
    part, hertz = middle(sound, cue), round(cue.segment.from_hz)
    turn = np.angle(line(part[:, 0], hertz) / line(part[:, 1], hertz), deg=True)
    assert abs(turn) == pytest.approx(degrees, abs=1e-6)


def test_out_of_phase_is_nothing_when_the_channels_are_joined(sound):
    cue = next(cue for cue in STEADY if cue.segment.tone == "out-of-phase")
    assert not middle(sound, cue).sum(axis=1).any()


def test_the_sweep_passes_each_pitch_when_it_should(sound):
    """Equal ratios in equal times: 200 Hz after a third of the way from 20 Hz to 20 kHz."""
    for share, hertz in ((1 / 3, 200), (1 / 2, 632.46), (2 / 3, 2000), (5 / 6, 6324.6)):
        at = round((SWEEP.start_s + share * SWEEP.segment.seconds) * RATE_HZ)
        part = sound[at - 2048 : at + 2048, 0] * np.hanning(4096)
        found = np.abs(np.fft.rfft(part, 1 << 16)).argmax() * RATE_HZ / (1 << 16)
        assert found == pytest.approx(hertz, rel=0.03)


def test_the_sweep_stays_within_its_limits(sound):
    whole = sound[round(SWEEP.start_s * RATE_HZ) : round(SWEEP.end_s * RATE_HZ), 0]
    power = np.abs(np.fft.rfft(whole)) ** 2
    hertz = np.fft.rfftfreq(len(whole), 1 / RATE_HZ)
    # The ends of a sweep spill a little; the fades keep it small.
    inside = power[(hertz >= 18) & (hertz <= 20_200)].sum()
    assert inside / power.sum() > 0.999
    assert np.abs(whole).max() == pytest.approx(10 ** ((DEFAULT_DBFS - 10) / 20), abs=1 / FULL)


def test_the_sweep_is_the_same_in_both_ears(sound):
    part = middle(sound, SWEEP, 10.0)
    assert (part[:, 0] == part[:, 1]).all()


def test_nothing_clips_even_at_the_highest_level():
    loudest = tone_samples(level_dbfs=CEILING_DBFS)
    peak = np.abs(loudest.astype(int)).max()
    assert peak == round(FULL * 10 ** (CEILING_DBFS / 20))
    assert peak < FULL / 2


def test_every_tone_begins_and_ends_in_silence_without_a_click(sound):
    """A step at a seam is no larger than the fade allows: its slope, and the tone's own."""
    for cue in cues():
        first, last = round(cue.start_s * RATE_HZ), round(cue.end_s * RATE_HZ)
        pause = round(PAUSE_S * RATE_HZ)
        assert not sound[first - pause : first].any()
        assert not sound[last : last + pause].any()
        peak = 10 ** (DEFAULT_DBFS / 20)
        for edge, away in ((first, 1), (last - 1, -1)):
            for step in (0, 10, 48, 240):
                into = step / (FADE_S * RATE_HZ)
                highest = peak * (1 - np.cos(np.pi * into)) / 2
                assert np.abs(sound[edge + away * step]).max() <= highest + 1.01 / FULL


def test_a_hard_edge_would_be_found(sound):
    """The seam check fails on a tone that was cut."""
    cue = cues()[0]
    cut = sound.copy()
    first = round(cue.start_s * RATE_HZ)
    cut[first : first + 400] = cut[first + 4800 : first + 5200]
    with pytest.raises(AssertionError):
        test_every_tone_begins_and_ends_in_silence_without_a_click(cut)


def test_the_same_settings_give_the_same_bytes():
    assert tone_bytes() == tone_bytes()
    assert tone_bytes() != tone_bytes(level_dbfs=-31)


def test_the_file_is_written_with_its_cues(tmp_path):
    path = tmp_path / "tones.wav"
    played = write_tones(path, level_dbfs=-40)
    assert [cue.segment.tone for cue in played] == [
        "left", "right", "in-phase", "out-of-phase", "sweep",
    ]  # fmt: skip
    assert path.read_bytes() == tone_bytes(level_dbfs=-40)
    length_s = len(read(path.read_bytes())) / RATE_HZ
    assert length_s == pytest.approx(played[-1].end_s + PAUSE_S)


def test_one_tone_can_be_had_alone():
    assert len(cues(SEGMENTS[:1])) == 1
    assert len(tone_samples(SEGMENTS[:1])) == round((2.0 + 2 * PAUSE_S) * RATE_HZ)


@pytest.mark.parametrize("level", [0.0, -19.9, -60.1, float("nan"), float("inf")])
def test_a_level_out_of_bounds_is_refused(level, tmp_path):
    with pytest.raises(InputError, match="is not between −60 and −20"):
        write_tones(tmp_path / "tones.wav", level_dbfs=level)
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize(
    "change",
    [
        {"from_hz": 5.0},
        {"to_hz": 23_000.0},
        {"seconds": 0.01},
        {"from_hz": float("nan")},
        {"below_db": -1.0},
    ],
)
def test_a_tone_out_of_bounds_is_refused(change):
    with pytest.raises(InputError):
        tone_samples([replace(SEGMENTS[0], **change)])


def test_each_tone_says_what_to_hear_and_the_caution_comes_with_it():
    assert all(segment.hear for segment in SEGMENTS)
    assert "as if from behind" in SEGMENTS[3].hear
    assert "loud sound harms hearing" in LOUD_CAUTION
