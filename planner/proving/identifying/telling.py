"""What was found, in the builder's words; what the meter can't tell, and the usual caution."""

import math
from collections.abc import Sequence
from itertools import islice

import numpy as np

from planner.proving.identifying.answer import CommonReturn, Driver, Found, Identified
from planner.proving.identifying.fitting import paths_of
from planner.proving.identifying.sample import Couple, SampleReadings
from planner.proving.identifying.weighing import Weighed
from planner.units import number, significant
from planner.wording import listed

NOT_TOLD = (
    "Left or right, and which leg is plus, are not in the resistance: "
    "they need a listening test or a small-cell test."
)
# Common practice, no source.
CELL_TEST = (
    "Small-cell test: touch a 1.5 V cell to the two contacts of one driver for an instant. The ear "
    "that clicks is the channel; if the cone moves outward, the contact at the cell's plus is plus."
)
CELL_CAUTION = (
    "Caution: a brief touch only, with the sample away from the ears and nothing else plugged in. "
    "Not for in-ear balanced armatures, nor where unknown electronics may sit inside."
)
# Each from memory, or derived from what direct current can show.
# Common practice, no source.
METER_CAUTION = (
    "Unplug it from everything before a meter touches it. Take ear pieces off the ears: a meter "
    "makes them click."
)
LIMITS = ("A driver behind a capacitor reads open, and a dynamic microphone reads like a driver.",)


_MOST_EXPECTED = 40  # layouts that are asked what they expect of the next reading
_VAGUE = 0.4  # spread of the logarithm from which on no figure is expected


def joined(names: Sequence[str]) -> str:
    """Name contacts that are joined: `S+G`."""
    return "+".join(names)


def about(ohm: float, plus_minus: float) -> str:
    """Print a resistance with its +-: `32.1 ± 0.5 Ω`, no finer than the error."""
    if not math.isfinite(plus_minus) or plus_minus <= 0:
        return f"{significant(ohm)} Ω"
    digits = _digits(plus_minus)
    return f"{ohm:.{digits}f} ± {plus_minus:.{digits}f} Ω"


def _digits(plus_minus: float) -> int:
    """Return the decimals in which an error has one digit of its own, three at most."""
    return max(0, min(3, -math.floor(math.log10(plus_minus))))


def found_words(found: Found) -> str:
    """Say an understanding in one line."""
    parts = [
        _ends(it) + (f" {significant(it.ohm, 2)} Ω" if _known(it) else "") for it in found.drivers
    ]
    told = [f"{'drivers' if len(parts) > 1 else 'driver'} {listed(parts)}"] if parts else []
    if not parts:
        told.append("no driver")
    if found.microphone is not None:
        told.append(f"microphone {_ends(found.microphone)}")
    told += [f"common return {joined(it.contacts)}" for it in found.returns]
    shared = {it.contacts for it in found.returns}
    told += [f"{joined(group)} joined" for group in found.groups if group not in shared]
    told += [f"{it.contact} floating" for it in found.shell if it.floating]
    if found.unused:
        told.append(f"{listed(found.unused)} unused")
    return "; ".join(told)


def _ends(driver: Driver) -> str:
    return f"{joined(driver.hot)}–{joined(driver.cold) if driver.cold else 'hidden point'}"


def sentences(identified: Identified) -> tuple[str, ...]:
    """Say all that was found, a sentence each, with how sure it is."""
    return (
        *_head(identified),
        *(_part_sentences(identified.found) if identified.share > 0 else ()),
        *_doubts(identified),
    )


def cautions(identified: Identified) -> tuple[str, ...]:
    """Say what the readings can't show and how to find out, with the caution for it."""
    if identified.drivers or identified.microphone is not None:
        return (NOT_TOLD, CELL_TEST, CELL_CAUTION, *LIMITS)
    return (NOT_TOLD, *LIMITS)


def _head(identified: Identified) -> list[str]:
    verdict = identified.verdict
    if verdict == "too-little":
        return ["Too little is read to tell anything yet."]
    if verdict == "contradictory":
        pairs = [f"{one} to {other}" for one, other in identified.suspects]
        again = f" Read {listed(pairs, 'or')} again." if pairs else ""
        if identified.share == 0:
            return [f"The readings contradict each other.{again}"]
        return [
            "No usual wiring fits these readings within the meter's error "
            f"(chi-square {number(identified.chi_square, 1)}, at most "
            f"{number(identified.chi_square_limit, 1)} is to be expected).{again} The nearest:"
        ]
    if verdict == "ambiguous":
        if identified.ways == 1:
            return ["Not settled: what seems a microphone was read one way round only."]
        count = f"{identified.ways} ways to understand the readings are near each other"
        return [f"Not settled: {count}. The likeliest so far:"]
    return ["Settled: one understanding fits, the next best is far behind."]


def _part_sentences(found: Found) -> list[str]:
    said = [_driver_sentence(it) for it in found.drivers]
    if not said:
        said = ["No driver was found: broken, behind a capacitor, or none is there."]
    said += [_return_sentence(it) for it in found.returns]
    said += _microphone_sentence(found)
    said += _join_sentences(found)
    if found.unused:
        verb = "is" if len(found.unused) == 1 else "are"
        said.append(f"{listed(found.unused)} {verb} joined to nothing: unused.")
    if len(found.drivers) == 1 and found.unused and found.microphone is None:
        said.append(
            "Two drivers in series whose common return is broken would read like this one driver."
        )
    return said


def _known(driver: Driver) -> bool:
    """Tell whether the readings say anything of its resistance."""
    return driver.measured or driver.plus_minus_ohm < driver.ohm


def _driver_sentence(driver: Driver) -> str:
    of = f"of {about(driver.ohm, driver.plus_minus_ohm)} " if _known(driver) else ""
    if not driver.cold:
        return (
            f"A driver {of}from {joined(driver.hot)} to a point that no contact reaches: "
            "a return that is broken, or drivers in a triangle, which reads the same."
        )
    return f"A driver {of}between {joined(driver.hot)} and {joined(driver.cold)}."


def _return_sentence(common: CommonReturn) -> str:
    what = f"{joined(common.contacts)} is the common return"
    if not common.measured:
        return f"{what}; its own wire can be told only when the drivers are read to each other too."
    if common.below_reach:
        most = number(common.series_ohm + common.plus_minus_ohm, _digits(common.plus_minus_ohm))
        return (
            f"{what}; its own wire is below this meter's reach "
            f"({about(common.series_ohm, common.plus_minus_ohm)}, so at most {most} Ω)."
        )
    return f"{what}; its own wire has {about(common.series_ohm, common.plus_minus_ohm)}."


def _microphone_sentence(found: Found) -> list[str]:
    it = found.microphone
    if it is None:
        return []
    where = f"between {joined(it.hot)} and {joined(it.cold)}"
    if it.shown:
        return [f"A microphone {where}: it reads differently each way round."]
    why = "out of line with the drivers" if found.drivers else "much for a driver"
    return [
        f"Probably a microphone {where}: {significant(it.ohm, 2)} Ω is {why}. "
        "Read it the other way round as well: a microphone then differs."
    ]


def _join_sentences(found: Found) -> list[str]:
    shells = {it.contact for it in found.shell}
    said = []
    for group in found.groups:
        rest = [name for name in group if name not in shells]
        if len(rest) > 1:
            said.append(f"{listed(rest)} are joined.")
    for it in found.shell:
        name = "The shell" if it.contact.casefold() == "shell" else f"The shell, {it.contact},"
        if it.floating:
            said.append(f"{name} is joined to nothing: it floats.")
        elif it.joined_to:
            said.append(f"{name} is joined to {listed(it.joined_to)}.")
    return said


def _doubts(identified: Identified) -> list[str]:
    said = []
    if identified.verdict == "ambiguous" and identified.doubtful:
        said.append(f"Still in doubt: {listed(identified.doubtful)}.")
    if identified.mesh:
        links = [f"{it.one}–{it.other} {significant(it.ohm, 2)} Ω" for it in identified.mesh]
        said.append(f"As a plain network of resistors they would be: {listed(links)}.")
    if identified.next_reading is not None:
        said.append(identified.next_reading.words)
    return said


def question_words(sample: SampleReadings, weighed: Weighed, pair: Couple) -> str:
    """Say which reading to take and what the two likeliest understandings expect of it."""
    one, other = pair
    if not sample.readings:
        return f"Read {one} to {other} first."
    if {one, other} in ({*read} for read in sample.seen):
        return (
            f"Read {one} to {other} as well, the other way round (plus probe on {one}): "
            "a microphone then reads differently, a driver the same."
        )
    expected = (_expected(sample, weighed, pair, rank) for rank in range(len(weighed.layouts)))
    seen = list(dict.fromkeys(islice(expected, _MOST_EXPECTED)))
    words = f"Read {one} to {other} next (plus probe on {one})"
    return f"{words}: {seen[0]} if the above holds, {seen[1]} if not." if seen[1:] else f"{words}."


def _expected(sample: SampleReadings, weighed: Weighed, pair: Couple, rank: int) -> str:
    place = sample.place_of
    fits, width = weighed.fits, weighed.fits.logs.shape[1] - 1
    numbered = [(place[pair[0]], place[pair[1]])]
    paths, together, _ = paths_of(weighed.layouts[rank : rank + 1], numbered, width)
    if together[0, 0]:
        return "near 0 Ω"
    parts = paths[0, 0] * np.exp(fits.logs[rank])
    ohm = float(parts.sum())
    if ohm == 0:
        return "open"
    spread = math.sqrt(parts @ fits.covariance[rank] @ parts) / ohm
    return f"about {significant(ohm, 2)} Ω" if spread < _VAGUE else "some ohm"
