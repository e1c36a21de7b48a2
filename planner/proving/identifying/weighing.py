"""Which layout the readings speak for: how usual it is, and how well it fits."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from planner.proving.identifying.fitting import Figure, Fits, Floats, figures_of, fit
from planner.proving.identifying.layouts import Joins, Layout, Piece, TooManyError, layouts
from planner.proving.identifying.sample import SampleReadings

# How usual things are before anything is read: common practice, no source. Only large factors
# matter: readings outweigh the rest.
_BY_DRIVERS = {0: 0.02, 1: 0.2, 2: 1.0, 3: 0.05, 4: 0.05}
_MORE_DRIVERS = 0.01
_BY_KIND = {"loose": 0.5, "pair": 1.0, "common": 1.0, "hub": 0.02, "chain": 0.01}
_MICROPHONE = 0.15
_SHELL_IS_HOT = 0.03
# For each further contact of a net.
_WIDE_RETURN, _WIDE_PAIR, _WIDE_HOT, _WIDE_LOOSE = 0.25, 0.25, 0.03, 0.05
_SHELL_ON_RETURN = 2.5  # times as usual as another contact there
_ONE_WAY_UNEXPLAINED = 60.0


@dataclass(frozen=True, slots=True)
class Weighed:
    """The layouts from likely to unlikely, the fit of each in the same order, and their shares.

    `costs` are differences from the first, in units of chi-square.
    """

    layouts: tuple[Layout, ...]
    figures: tuple[Figure, ...]
    fits: Fits
    costs: Floats
    shares: Floats


def joins_of(sample: SampleReadings) -> Joins:
    """Return how each pair that was read may hang together, by contact numbers."""
    place = {name: at for at, name in enumerate(sample.contacts)}
    return {(place[a], place[b]): seen.join for (a, b), seen in sample.seen.items()}


def weigh(sample: SampleReadings) -> Weighed | None:
    """Weigh all layouts; None if no layout agrees with what is open and what is joined.

    Raises TooManyError where so little was read that they are too many.
    """
    told = layouts(len(sample.contacts), joins_of(sample))
    if not told:
        return None
    figures = figures_of(sample)
    fits = fit(told, figures, sample.meter)
    cost = fits.cost + np.array([-2 * math.log(usual(it, sample)) for it in told])
    cost += _ONE_WAY_UNEXPLAINED * _unexplained(told, sample)
    order = np.argsort(np.round(cost, 6), kind="stable")
    costs = cost[order] - cost[order[0]]
    shares = np.exp(-costs / 2)
    return Weighed(
        tuple(told[at] for at in order),
        tuple(figures),
        fits.of(order),
        costs,
        shares / shares.sum(),
    )


def is_few(sample: SampleReadings) -> bool:
    """Tell whether the layouts left are few enough to be weighed."""
    try:
        layouts(len(sample.contacts), joins_of(sample))
    except TooManyError:
        return False
    return True


def usual(layout: Layout, sample: SampleReadings) -> float:
    """Return how usual a layout is, before anything is read."""
    shells = {at for at, name in enumerate(sample.contacts) if sample.is_shell(name)}
    elements = sum(piece.elements for piece in layout)
    microphones = sum(piece.microphone is not None for piece in layout)
    share = _BY_DRIVERS.get(elements - microphones, _MORE_DRIVERS)
    if microphones:
        share *= _MICROPHONE
    for piece in layout:
        share *= _BY_KIND[piece.kind] * _wide(piece)
        cold = piece.nets[0] if piece.kind == "common" else ()
        if len(cold) > 1 and shells & set(cold):
            share *= _SHELL_ON_RETURN
        hot = {contact for net in _hot(piece) for contact in net}
        share *= _SHELL_IS_HOT ** len(hot & shells)
    return share


def _hot(piece: Piece) -> Sequence[tuple[int, ...]]:
    if piece.kind in {"loose", "pair"}:
        return ()  # a shell may well be one leg of a single driver
    return piece.nets[1:] if piece.kind == "common" else piece.nets


def _wide(piece: Piece) -> float:
    share = 1.0
    for at, net in enumerate(piece.nets):
        factor = _WIDE_HOT
        if piece.kind == "loose":
            factor = _WIDE_LOOSE
        elif piece.kind == "pair":
            factor = _WIDE_PAIR
        elif piece.kind == "common" and at == 0:
            factor = _WIDE_RETURN
        share *= factor ** (len(net) - 1)
    return share


def _unexplained(told: Sequence[Layout], sample: SampleReadings) -> Floats:
    """Count for each layout the pairs that conduct one way only with no microphone between."""
    place = {name: at for at, name in enumerate(sample.contacts)}
    pairs = [(place[a], place[b]) for (a, b), seen in sample.seen.items() if seen.one_way]
    return np.array([sum(not _through(layout, *pair) for pair in pairs) for layout in told], float)


def _through(layout: Layout, one: int, other: int) -> bool:
    """Tell whether the microphone is on the path between two contacts."""
    for piece in layout:
        if piece.microphone is None:
            continue
        nets = [at for at, net in enumerate(piece.nets) if one in net or other in net]
        return len(nets) == 2 and piece.microphone in piece.path(nets[0], nets[1])
    return False
