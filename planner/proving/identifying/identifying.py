"""Identify a sample: weigh the layouts, tell the best with its rivals and the next reading."""

import math
from collections.abc import Iterator

from planner.proving.identifying.answer import (
    Contacts,
    Found,
    Identified,
    NextReading,
    Rival,
    Verdict,
)
from planner.proving.identifying.asking import Question, best_question, unread
from planner.proving.identifying.composing import compose
from planner.proving.identifying.layouts import TooManyError
from planner.proving.identifying.mesh import mesh_links
from planner.proving.identifying.sample import Couple, SampleReadings
from planner.proving.identifying.telling import found_words, question_words
from planner.proving.identifying.weighing import Weighed, is_few, weigh

SURE_MARGIN = 9.0  # chi-square: the runner-up is about ninety times less likely
MOST_RIVALS = 8
_MOST_LEFT_OUT = 100
# Typical, from memory: headsets' microphones read some 600 ohm to 2 kohm.
_LEAST_MICROPHONE_OHM, _OUT_OF_LINE = 400.0, 1.5


def identify(sample: SampleReadings) -> Identified:
    """Return what hangs on the contacts of a sample, with margin, rivals and the next reading."""
    try:
        weighed = weigh(sample)
    except TooManyError:
        return _too_little(sample)
    if weighed is None:
        return Identified("contradictory", sample.contacts, suspects=_suspects(sample))
    return _identified(sample, weighed)


def _identified(sample: SampleReadings, weighed: Weighed) -> Identified:
    best = compose(sample, weighed, 0)
    rivals = tuple(_rivals(sample, weighed))
    margin = rivals[0].margin if rivals else math.inf
    misfit, limit = _misfit(weighed), chi_square_limit(len(weighed.figures))
    fits = misfit <= limit
    doubted = _doubted_microphone(best)
    settled = margin >= SURE_MARGIN and not doubted
    verdict: Verdict = "identified" if settled else "ambiguous"
    return Identified(
        verdict if fits else "contradictory",
        sample.contacts,
        best,
        margin=margin,
        share=float(weighed.shares[0]),
        chi_square=misfit,
        chi_square_limit=limit,
        rivals=tuple(rival for rival in rivals if rival.margin < 2 * SURE_MARGIN),
        ways=int((weighed.costs < SURE_MARGIN).sum()),
        doubtful=_doubtful(sample, best, [it.found for it in rivals if it.margin < SURE_MARGIN]),
        next_reading=None if settled and fits else _asked(sample, weighed, best, turn=doubted),
        suspects=() if fits else _suspects(sample),
        mesh=() if fits else mesh_links(sample),
    )


def _doubted_microphone(best: Found) -> bool:
    """Tell whether what seems a microphone may as well be a driver that was read badly.

    It is one where it reads differently each way, or is far from the drivers and from any usual
    driver.
    """
    it = best.microphone
    if it is None or it.shown:
        return False
    drivers = [driver.ohm for driver in best.drivers]
    return it.ohm < max([_LEAST_MICROPHONE_OHM, *(_OUT_OF_LINE * ohm for ohm in drivers)])


def _asked(
    sample: SampleReadings, weighed: Weighed, best: Found, *, turn: bool
) -> NextReading | None:
    """Return the reading to take next; `turn` asks for the microphone the other way round."""
    turned = _turned(sample, best) if turn else None
    asked = Question(turned, 0.0) if turned is not None else best_question(sample, weighed)
    if asked is None:
        return None
    words = question_words(sample, weighed, asked.pair)
    return NextReading(*asked.pair, asked.gain_bits, words)


def _turned(sample: SampleReadings, best: Found) -> Couple | None:
    """Return a pair over the microphone that was read one way round, turned."""
    it = best.microphone
    read = {(each.one, each.other) for each in sample.readings if each.ohm is not None}
    ends = {*it.contacts} if it is not None else set()
    turned = ((other, one) for one, other in read if {one, other} <= ends)
    return min((pair for pair in turned if pair not in read), default=None)


def _rivals(sample: SampleReadings, weighed: Weighed) -> Iterator[Rival]:
    for rank in range(1, min(MOST_RIVALS + 1, len(weighed.layouts))):
        found = compose(sample, weighed, rank)
        yield Rival(
            found,
            found_words(found),
            float(weighed.costs[rank]),
            float(weighed.shares[rank]),
        )


def _doubtful(sample: SampleReadings, best: Found, others: list[Found]) -> Contacts:
    """Return the contacts that have another part in a rival."""
    return tuple(
        name
        for name in sample.contacts
        if any(part_of(name, found) != part_of(name, best) for found in others)
    )


def part_of(contact: str, found: Found) -> tuple[object, ...]:
    """Return what a contact is in an understanding, without figures, fit to be compared."""
    group = next((group for group in found.groups if contact in group), (contact,))
    hangs = sorted(
        (tuple(sorted((it.hot, it.cold))), it == found.microphone)
        for it in found.elements
        if contact in it.contacts
    )
    shared = any(contact in each.contacts for each in found.returns)
    return (group, tuple(hangs), shared)


def chi_square_limit(count: int) -> float:
    """Return the chi-square of `count` readings that is passed once in a thousand.

    Wilson and Hilferty's approximation, Proc. Nat. Acad. Sci. 17 (1931) 684-688.
    """
    if count == 0:
        return 0.0
    share = 2 / (9 * count)
    return float(count * (1 - share + 3.0902 * math.sqrt(share)) ** 3)


def _suspects(sample: SampleReadings) -> tuple[Couple, ...]:
    """Return the readings without any one of which the rest fits, the best mend first."""
    if len(sample.seen) > _MOST_LEFT_OUT:
        return ()
    left = {pair: _excess(sample.without(*pair)) for pair in sample.seen}
    return tuple(pair for pair in sorted(left, key=left.__getitem__) if left[pair] <= 0)


def _excess(sample: SampleReadings) -> float:
    """Return by how much the chi-square of the best layout is above its limit."""
    try:
        weighed = weigh(sample)
    except TooManyError:
        return 0.0
    if weighed is None:
        return math.inf
    return round(_misfit(weighed) - chi_square_limit(len(weighed.figures)), 6)


def _misfit(weighed: Weighed) -> float:
    return float(weighed.fits.chi_square[0])


def _too_little(sample: SampleReadings) -> Identified:
    """Tell nothing yet, but ask on: among the contacts most read, as many as can be weighed."""
    counts = dict.fromkeys(sample.contacts, 0)
    for pair in sample.seen:
        for name in pair:
            counts[name] += 1
    ordered = sorted(sample.contacts, key=lambda name: -counts[name])
    part = _narrowed(sample, ordered[:2])
    for size in range(2, len(ordered)):
        wider = _narrowed(sample, ordered[:size])
        if not is_few(wider):
            break
        part = wider
    weighed = weigh(part)
    asked = best_question(part, weighed) if weighed is not None else None
    pair = asked.pair if asked is not None else _outward(sample, ordered, len(part.contacts))
    words = f"Read {pair[0]} to {pair[1]} next."
    gain = asked.gain_bits if asked is not None else 0.0
    following = NextReading(*pair, gain, words)
    return Identified(
        "too-little", sample.contacts, doubtful=sample.contacts, next_reading=following
    )


def _narrowed(sample: SampleReadings, names: list[str]) -> SampleReadings:
    kept = set(names)
    return SampleReadings(
        contacts=tuple(name for name in sample.contacts if name in kept),
        readings=tuple(it for it in sample.readings if {it.one, it.other} <= kept),
        meter=sample.meter,
        shells=tuple(name for name in sample.shells if name in kept),
    )


def _outward(sample: SampleReadings, ordered: list[str], size: int) -> Couple:
    """Return an unread pair from the contacts already settled to the next one."""
    following = ordered[size]
    pairs = [(a, b) for a, b in unread(sample) if following in {a, b}]
    return pairs[0]
