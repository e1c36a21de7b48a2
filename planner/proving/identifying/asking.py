"""Which pair to read next: the one expected to tell most between the layouts left."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from planner.proving.identifying.fitting import WAYWARD, Floats, Prior, paths_of, spread_ohm
from planner.proving.identifying.sample import SHORT_BELOW_OHM, Couple, SampleReadings
from planner.proving.identifying.weighing import Weighed
from planner.proving.reading import OPEN_FROM_OHM

_MOST_LAYOUTS = 400
_ENOUGH_SHARE = 0.9999
# Outcomes that are told apart: joined, open, and figures in steps of about a seventh.
_EDGES = np.arange(math.log(SHORT_BELOW_OHM), math.log(OPEN_FROM_OHM), 0.15)


@dataclass(frozen=True, slots=True)
class Question:
    """A pair to read, plus probe on the first, and the bits it is expected to tell."""

    pair: Couple
    gain_bits: float


def best_question(sample: SampleReadings, weighed: Weighed) -> Question | None:
    """Return the reading with the largest expected gain; None where none would tell anything."""
    pairs = unread(sample)
    if not pairs:
        return None
    gains = np.round(_gains(sample, weighed, pairs), 4)
    at = int(np.argmax(gains))
    return Question(pairs[at], float(gains[at])) if gains[at] > 0 else None


def unread(sample: SampleReadings) -> list[Couple]:
    """Return the pairs not read, then those that could be read the other way round as well."""
    place = sample.place_of
    read = {(it.one, it.other) for it in sample.readings if it.ohm is not None}
    fresh = [pair for pair in combinations(sample.contacts, 2) if pair not in sample.seen]
    turned = [(b, a) for a, b in read if (b, a) not in read]
    return fresh + sorted(turned, key=lambda pair: (place[pair[0]], place[pair[1]]))


def _gains(sample: SampleReadings, weighed: Weighed, pairs: Sequence[Couple]) -> Floats:
    """Return the mutual information in bits of each pair's outcome and the layout."""
    count = int(np.searchsorted(np.cumsum(weighed.shares), _ENOUGH_SHARE)) + 1
    count = min(count, _MOST_LAYOUTS, len(weighed.layouts))
    shares = weighed.shares[:count] / weighed.shares[:count].sum()
    chances = _chances(sample, weighed, pairs, count)
    mixed = np.einsum("h,hpo->po", shares, chances)
    gains: Floats = _bits(mixed) - np.einsum("h,hp->p", shares, _bits(chances))
    return gains


def _bits(chances: Floats) -> Floats:
    safe = np.where(chances > 1e-12, chances, 1.0)
    bits: Floats = -(chances * np.log2(safe)).sum(axis=-1)
    return bits


def _chances(
    sample: SampleReadings, weighed: Weighed, pairs: Sequence[Couple], count: int
) -> Floats:
    """Return for each layout and pair the chance of each outcome: joined, by figure, open."""
    place = sample.place_of
    numbered = [(place[one], place[other]) for one, other in pairs]
    told = weighed.layouts[:count]
    width = weighed.fits.logs.shape[1] - 1
    paths, joined, _ = paths_of(told, numbered, width)
    wayward = Prior(told, width).wayward
    logs, covariance = weighed.fits.logs[:count], weighed.fits.covariance[:count]
    parts = paths * np.exp(logs)[:, None, :]
    total = parts.sum(axis=2)
    safe = np.where(total > 0, total, 1.0)
    slope = parts / safe[..., None]
    spread = np.einsum("hop,hpq,hoq->ho", slope, covariance, slope)
    spread += (spread_ohm(sample.meter, safe) / safe) ** 2
    spread += np.where(np.einsum("hop,hp->ho", paths, wayward) > 0, WAYWARD**2, 0.0)
    below = _normal((_EDGES - np.log(safe)[..., None]) / np.sqrt(spread)[..., None])
    ones = np.ones((*below.shape[:2], 1))
    chances: Floats = np.diff(np.concatenate([0 * ones, below, ones], axis=2), axis=2)
    chances[joined] = np.eye(chances.shape[2])[0]
    chances[(total == 0) & ~joined] = np.eye(chances.shape[2])[-1]
    return chances


def _normal(x: Floats) -> Floats:
    """Return the normal distribution function, to 1e-3: a logistic that runs beside it."""
    value: Floats = 1 / (1 + np.exp(-np.clip(1.5976 * x + 0.07056 * x**3, -500, 500)))
    return value
