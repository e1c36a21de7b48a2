"""The JSON object of `identify`."""

import math
from collections.abc import Mapping
from dataclasses import asdict

from planner.proving.identifying import (
    Driver,
    Found,
    Identified,
    SampleReadings,
    cautions,
    sentences,
)
from planner.units import rounded


def identify_values(
    name: str, sample: SampleReadings, identified: Identified
) -> Mapping[str, object]:
    """Return what was found as plain values; keys as docs/formats/sample.md says."""
    asked = identified.next_reading
    return {
        "readings": name,
        "verdict": identified.verdict,
        "contacts": list(sample.contacts),
        "pairs_read": len(sample.seen),
        **_found(identified.found),
        "margin": _finite(identified.margin),
        "chi_square": rounded(identified.chi_square),
        "chi_square_limit": rounded(identified.chi_square_limit),
        "ways": identified.ways,
        "doubtful": list(identified.doubtful),
        "rivals": [
            {"words": it.words, "margin": rounded(it.margin), **_found(it.found)}
            for it in identified.rivals
        ],
        "next_reading": None
        if asked is None
        else {"from": asked.one, "to": asked.other, "gain_bits": rounded(asked.gain_bits)},
        "read_again": [{"from": one, "to": other} for one, other in identified.suspects],
        "network": [
            {"from": it.one, "to": it.other, "ohm": rounded(it.ohm)} for it in identified.mesh
        ],
        "words": list(sentences(identified)),
        "cautions": list(cautions(identified)),
    }


def _found(found: Found) -> dict[str, object]:
    microphone = found.microphone
    return {
        "drivers": [_driver(it) for it in found.drivers],
        "returns": [
            {
                "contacts": list(it.contacts),
                "series_ohm": rounded(it.series_ohm),
                "plus_minus_ohm": rounded(it.plus_minus_ohm),
                "below_reach": it.below_reach,
            }
            for it in found.returns
        ],
        "microphone": None
        if microphone is None
        else {**_driver(microphone), "differs_each_way": microphone.shown},
        "shell": [{**asdict(it), "joined_to": list(it.joined_to)} for it in found.shell],
        "unused": list(found.unused),
        "joined": [list(group) for group in found.groups],
    }


def _driver(driver: Driver) -> dict[str, object]:
    return {
        "hot": list(driver.hot),
        "cold": list(driver.cold),
        "ohm": rounded(driver.ohm),
        "plus_minus_ohm": rounded(driver.plus_minus_ohm),
    }


def _finite(value: float) -> float | None:
    return rounded(value) if math.isfinite(value) else None
