"""Which layout the readings speak for: how usual it is, and how well it fits."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from planner.proving.identifying.fitting import Figure, Fits, Floats, figures_of, fit, spread_ohm
from planner.proving.identifying.layouts import Joins, Kind, Layout, Piece, TooManyError, layouts
from planner.proving.identifying.sample import SampleReadings, Seen

# How usual things are before anything is read: common practice, no source. Only large factors
# matter: readings outweigh the rest.
_BY_DRIVERS = {0: 0.02, 1: 0.2, 2: 1.0, 3: 0.05, 4: 0.05}
_MORE_DRIVERS = 0.01
_BY_KIND = {"loose": 0.5, "pair": 1.0, "common": 1.0, "hub": 0.02, "chain": 0.01}
_MICROPHONE = 0.15
_SHELL_IS_HOT = 0.03
# For each further contact of a net.
_WIDE_RETURN, _WIDE_PAIR, _WIDE_HOT, _WIDE_LOOSE = 0.1, 0.2, 0.03, 0.05
_SHELL_ON_RETURN = 6.0  # times as usual as another contact there
# As chi-square: a pair that conducts one way only without a microphone, and one that reads the
# same both ways with one.
_ONE_WAY, _SAME = 60.0, 6.0


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
    place = sample.place_of
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
    shells = frozenset(at for at, name in enumerate(sample.contacts) if sample.is_shell(name))
    cost = fits.cost + np.array([-2 * math.log(usual(it, shells)) for it in told])
    cost += _each_way(told, sample)
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


def usual(layout: Layout, shells: frozenset[int]) -> float:
    """Return how usual a layout is before anything is read; `shells` are contacts, by number."""
    elements = sum(piece.elements for piece in layout)
    microphones = sum(piece.microphone is not None for piece in layout)
    share = _BY_DRIVERS.get(elements - microphones, _MORE_DRIVERS) * _MICROPHONE**microphones
    return share * math.prod(_usual_piece(piece, shells) for piece in layout)


def _usual_piece(piece: Piece, shells: frozenset[int]) -> float:
    hot = piece.nets[1:] if piece.kind == "common" else piece.nets
    if piece.kind in {"loose", "pair"}:
        hot = ()  # a shell may well be one leg of a single driver
    share = _BY_KIND[piece.kind]
    share *= _SHELL_IS_HOT ** sum(contact in shells for net in hot for contact in net)
    for at, net in enumerate(piece.nets):
        if len(net) > 1:
            cold = piece.kind == "common" and at == 0
            share *= _wide(piece.kind, cold=cold) ** (len(net) - 1)
            share *= _SHELL_ON_RETURN if cold and shells & set(net) else 1.0
    return share


def _wide(kind: Kind, *, cold: bool) -> float:
    """Return how usual a further contact of a net is."""
    if cold:
        return _WIDE_RETURN
    return {"loose": _WIDE_LOOSE, "pair": _WIDE_PAIR}.get(kind, _WIDE_HOT)


def _each_way(told: Sequence[Layout], sample: SampleReadings) -> Floats:
    """Return what it costs each layout how pairs read the two ways round.

    A pair that conducts one way only has a microphone between; one that reads the same both ways
    hardly has.
    """
    place = sample.place_of
    cost = np.zeros(len(told))
    for (one, other), seen in sample.seen.items():
        if seen.one_way or same_each_way(sample, seen):
            through = [_through(layout, place[one], place[other]) for layout in told]
            unlikely = np.array(through) != seen.one_way
            cost += np.where(unlikely, _ONE_WAY if seen.one_way else _SAME, 0.0)
    return cost


def same_each_way(sample: SampleReadings, seen: Seen) -> bool:
    """Tell whether a pair was read both ways round, to the same within the meter's error."""
    if len(seen.figures) < 2:
        return False
    spread = float(spread_ohm(sample.meter, np.array([max(seen.figures)]))[0])
    return max(seen.figures) - min(seen.figures) <= 3 * spread


def _through(layout: Layout, one: int, other: int) -> bool:
    """Tell whether the microphone is on the path between two contacts."""
    for piece in layout:
        if piece.microphone is None:
            continue
        nets = [at for at, net in enumerate(piece.nets) if one in net or other in net]
        return len(nets) == 2 and piece.microphone in piece.path(nets[0], nets[1])
    return False
