"""Test tones to listen to through a lead: a stereo WAV file, and what each tone should sound like.

Levels are those of a sine against a full-scale sine, dBFS. The same settings give the same bytes.
"""

import io
import math
import wave
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

import numpy as np
from numpy.typing import NDArray

from planner.files.atomic import write_atomic
from planner.problem import InputError
from planner.proving.units import Tone
from planner.units import number

Floats = NDArray[np.floating[Any]]
Samples = NDArray[np.int16]
Sign = Literal[-1, 0, 1]

RATE_HZ = 48_000
FULL_SCALE = 32_767
FADE_S = 0.02
PAUSE_S = 0.6
SWEEP_HZ = (20.0, 20_000.0)
# Quiet on headphones turned to where speech is easy; our own choice, no standard.
DEFAULT_DBFS, CEILING_DBFS, FLOOR_DBFS = -30.0, -20.0, -60.0

# Common practice, no source.
UNPROVED_CAUTION = (
    "Do not plug a lead that is not proved by meter into a driven output: a bridge there can harm "
    "the amplifier."
)
LOUD_CAUTION = (
    "Caution: loud sound harms hearing for good. Turn the volume fully down, keep the headphones "
    "off the ears, start the tones, and only then turn up until they are just easy to hear. Never "
    "start a tone with in-ear phones in the ears. Stop at once if it hurts."
)


@dataclass(frozen=True, slots=True)
class Segment:
    """One tone: `left` and `right` are 1, 0, or -1 for the other polarity; equal Hz is no sweep.

    `hear` says what a right lead sounds like, and what it means if it does not. The tone is
    `below_db` under the level of the file: a sweep passes where the ear is much keener than at the
    pitch that the volume was set by (ISO 226, from memory).
    """

    tone: Tone
    title: str
    hear: str
    left: Sign
    right: Sign
    from_hz: float
    to_hz: float
    seconds: float
    below_db: float = 0.0


# What is to be heard: common practice, no source. The pitches are our own choice; left and right
# differ so that they can be told apart without seeing which is played.
SEGMENTS: tuple[Segment, ...] = (
    Segment(
        "left",
        "left only",
        "A low tone in the left ear alone. In the right ear: channels are exchanged. In both: a "
        "bridge, or a return that is open.",
        1,
        0,
        330.0,
        330.0,
        2.0,
    ),
    Segment(
        "right",
        "right only",
        "A higher tone in the right ear alone.",
        0,
        1,
        440.0,
        440.0,
        2.0,
    ),
    Segment(
        "in-phase",
        "both in phase",
        "One tone in the middle of the head. Without a centre, as if from behind: one channel's "
        "legs are reversed.",
        1,
        1,
        220.0,
        220.0,
        3.0,
    ),
    Segment(
        "out-of-phase",
        "both out of phase",
        "The same tone without a centre, as if from behind. In the middle: one channel's legs are "
        "reversed. Nearly gone: the two channels are joined.",
        1,
        -1,
        220.0,
        220.0,
        3.0,
    ),
    Segment(
        "sweep",
        "sweep",
        "A tone that rises evenly from the lowest to the highest, the same in both ears; it may "
        "fade away at both limits of hearing. A rattle, a crackle or a gap: look at the joints and "
        "the driver.",
        1,
        1,
        *SWEEP_HZ,
        12.0,
        10.0,
    ),
)


@dataclass(frozen=True, slots=True)
class Cue:
    """When a tone begins and ends in the file, in seconds."""

    segment: Segment
    start_s: float
    end_s: float


def cues(segments: Sequence[Segment] = SEGMENTS) -> tuple[Cue, ...]:
    """Return when each tone is played: one after the other, a pause before, between and after."""
    found, at_s = [], PAUSE_S
    for segment in segments:
        found.append(Cue(segment, at_s, at_s + segment.seconds))
        at_s += segment.seconds + PAUSE_S
    return tuple(found)


def tone_samples(
    segments: Sequence[Segment] = SEGMENTS, level_dbfs: float = DEFAULT_DBFS
) -> Samples:
    """Return the samples, frames by (left, right); InputError for a level or tone out of bounds."""
    _check(segments, level_dbfs)
    played = cues(segments)
    end_s = (played[-1].end_s if played else 0.0) + PAUSE_S
    samples = np.zeros((_frames(end_s), 2))
    for cue in played:
        peak = FULL_SCALE * 10 ** ((level_dbfs - cue.segment.below_db) / 20)
        tone = peak * _faded(_sine(cue.segment))
        first = _frames(cue.start_s)
        both = np.outer(tone, (cue.segment.left, cue.segment.right))
        samples[first : first + len(tone)] = both
    rounded: Samples = np.rint(samples).astype(np.int16)
    return rounded


def tone_bytes(segments: Sequence[Segment] = SEGMENTS, level_dbfs: float = DEFAULT_DBFS) -> bytes:
    """Return the WAV file: 16 bit, 48 kHz, stereo. InputError as `tone_samples`."""
    samples = tone_samples(segments, level_dbfs)
    file = io.BytesIO()
    with wave.open(file, "wb") as stream:
        stream.setnchannels(2)
        stream.setsampwidth(2)
        stream.setframerate(RATE_HZ)
        stream.writeframes(samples.astype("<i2").tobytes())
    return file.getvalue()


def write_tones(
    path: Path,
    *,
    segments: Sequence[Segment] = SEGMENTS,
    level_dbfs: float = DEFAULT_DBFS,
) -> tuple[Cue, ...]:
    """Write the WAV file and return when each tone is played; InputError if it can't be done."""
    write_atomic(path, tone_bytes(segments, level_dbfs))
    return cues(segments)


def _check(segments: Sequence[Segment], level_dbfs: float) -> None:
    if not FLOOR_DBFS <= level_dbfs <= CEILING_DBFS:
        lowest, highest = number(FLOOR_DBFS), number(CEILING_DBFS)
        raise InputError.single(
            f"a level of {number(level_dbfs)} dBFS is not between {lowest} and {highest}",
            "tones",
            "Leave the level and turn up the amplifier slowly: that is safe for ears and drivers.",
        )
    for segment in segments:
        bounds = (segment.from_hz, segment.to_hz)
        if not all(SWEEP_HZ[0] <= hertz <= SWEEP_HZ[1] for hertz in bounds):
            raise InputError.single(
                f"the tone {segment.title!r} leaves 20 Hz to 20 kHz", "tones", "Stay within it."
            )
        if segment.below_db < 0:
            what = f"the tone {segment.title!r} is louder than the file's level"
            raise InputError.single(what, "tones", "Raise the level instead.")
        if segment.seconds < 4 * FADE_S:
            raise InputError.single(
                f"the tone {segment.title!r} is shorter than its fades",
                "tones",
                f"Give it {number(4 * FADE_S)} s at least.",
            )


def _frames(seconds: float) -> int:
    return round(seconds * RATE_HZ)


def _sine(segment: Segment) -> Floats:
    """Return a sine of one pitch, or one that rises by equal ratios in equal times, peak 1.

    Logarithmic sine sweep: phase 2 pi f T / ln(g / f) * (exp(t / T ln(g / f)) - 1); A. Farina,
    AES preprint 5093 (2000) (from memory).
    """
    count = _frames(segment.seconds)
    seconds = np.arange(count) / RATE_HZ
    ratio = math.log(segment.to_hz / segment.from_hz)
    if ratio == 0:
        turns: Floats = segment.from_hz * seconds
    else:
        scale = segment.seconds / ratio
        turns = segment.from_hz * scale * np.expm1(seconds / scale)
    sine: Floats = np.sin(2 * math.pi * turns)
    return sine


def _faded(tone: Floats) -> Floats:
    """Return the tone raised and lowered by half a cosine at its ends, so that nothing clicks."""
    count = _frames(FADE_S)
    rise = (1 - np.cos(math.pi * np.arange(count) / count)) / 2
    faded = tone.copy()
    faded[:count] *= rise
    faded[-count:] *= rise[::-1]
    return faded
