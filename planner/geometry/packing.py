"""The smallest bore that round wires go into: bounds that say no, a placement that says yes."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from planner.geometry.pressing import Array, searched, spreads

# Enclosing over wire diameter for n equal circles, where it is proved: Kravitz, Math. Mag. 40
# (1967) 65-71; Pirl 1969; Graham, Lubachevsky, Nurmela, Ostergard, Discrete Math. 181 (1998)
# 139-154. Rounded there to four decimals, so half a last digit is taken off.
_PROVED = {
    3: 2.1547, 4: 2.4142, 5: 2.7013, 6: 3.0, 7: 3.0, 8: 3.3048, 9: 3.6131, 10: 3.8130,
    11: 3.9238, 12: 4.0296, 13: 4.2361, 14: 4.3284, 19: 4.8637,
}  # fmt: skip
_ROUNDING = 5e-5
# A certificate is drawn apart by this share, so that the last bits never make an overlap.
_SAFE = 1 + 1e-12

Centres = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Packing:
    """Wires in a round bore of `diameter_mm`: their centres in mm from its middle, as given."""

    diameter_mm: float
    centres: Centres


def pack(diameters_mm: Sequence[float], *, thorough: bool = True) -> Packing:
    """Place round wires in a bore as small as is found; every placement is sound as it stands.

    For equal wires to 20 within 0.1 % of the best known, for unequal ones about 1 %. Not `thorough`
    it takes a few ms: what an edit may cost. Equal input gives equal output.
    """
    order = sorted(range(len(diameters_mm)), key=lambda index: (-diameters_mm[index], index))
    ranked = tuple(float(diameters_mm[index]) for index in order)
    found = _packed(ranked, thorough)
    place = {index: found.centres[rank] for rank, index in enumerate(order)}
    return Packing(found.diameter_mm, tuple(place[index] for index in range(len(order))))


def is_sound(packing: Packing, diameters_mm: Sequence[float], slack_mm: float = 1e-9) -> bool:
    """Tell whether no wire overlaps another or the wall by more than `slack_mm`."""
    wires = list(zip(packing.centres, (d / 2 for d in diameters_mm), strict=True))
    inside = all(
        math.hypot(x, y) + radius <= packing.diameter_mm / 2 + slack_mm for (x, y), radius in wires
    )
    return inside and all(
        math.dist(at, there) >= radius + other - slack_mm
        for number, (at, radius) in enumerate(wires)
        for there, other in wires[:number]
    )


def bundle_at_least_mm(diameters_mm: Sequence[float]) -> float:
    """Return a diameter below which round wires surely do not go together.

    The largest of: the two thickest side by side; the three thickest touching each other; the k
    thickest taken as equal to the thinnest among them, for every k; the total area.
    """
    ranked = sorted(diameters_mm, reverse=True)
    if not ranked:
        return 0.0
    equal = max(ratio_at_least(count) * d for count, d in enumerate(ranked, 1))
    area = math.sqrt(sum(d * d for d in ranked))
    return max(equal, area, sum(ranked[:2]), _three_mm(ranked[:3]) if len(ranked) > 2 else 0.0)


@lru_cache(maxsize=512)
def ratio_at_least(count: int) -> float:
    """Return a ratio of bore to wire below which so many equal wires surely do not go.

    Where nothing is proved, from Oler, Acta Math. 105 (1961) 19-48: points at least 1 apart in a
    disc of radius rho are at most 2 / sqrt(3) * pi * rho^2 + pi * rho + 1.
    """
    if count < 3:
        return float(count)
    known = max((_PROVED[n] - _ROUNDING for n in _PROVED if n <= count), default=2.0)
    square = 2 / math.sqrt(3) * math.pi
    rho = (-math.pi + math.sqrt(math.pi**2 + 4 * square * (count - 1))) / (2 * square)
    return max(known, 2 * rho + 1)


def _three_mm(ranked: Sequence[float]) -> float:
    """Return the smallest circle round three: Descartes, unless the third lies beside two."""
    first, second, third = (2 / d for d in ranked)
    root = math.sqrt(first * second + second * third + third * first)
    around = 2 * root - first - second - third
    beside = ranked[0] + ranked[1]
    # Where the third is small the circle round all three touches it from the wrong side.
    return max(2 / around, beside) if around > 0 and third < _gap_curvature(ranked) else beside


def _gap_curvature(ranked: Sequence[float]) -> float:
    """Return the curvature of the circle beside two circles that span their enclosing circle."""
    one, other = ranked[0] / 2, ranked[1] / 2
    return (one * one + one * other + other * other) / (one * other * (one + other))


# -- placing ----------------------------------------------------------------------------------


def certified(places: Array, diameters_mm: Array) -> Packing:
    """Draw places (n, 2) apart, or together, until wires just touch, and measure the bore round."""
    apart = float(spreads(places[None], diameters_mm / 2)[0]) * _SAFE
    places = places * apart
    reach = np.hypot(places[:, 0], places[:, 1]) + diameters_mm / 2
    centres = tuple((float(x), float(y)) for x, y in places)
    return Packing(2 * float(reach.max()) * _SAFE, centres)


@lru_cache(maxsize=1024)
def _packed(ranked: tuple[float, ...], thorough: bool) -> Packing:  # noqa: FBT001 - a cache key
    if len(ranked) < 3:
        return _few(ranked)
    whole = np.array(ranked)
    radii = whole / ranked[0] / 2
    least = bundle_at_least_mm(ranked) / ranked[0] / 2
    count = len(ranked)
    starts = max(4, min(40, 1600 // count)) if thorough else 1
    kept, steps = (6, 60) if thorough else (1, 10)
    return certified(searched(radii, least, starts=starts, kept=kept, steps=steps), whole)


def _few(ranked: tuple[float, ...]) -> Packing:
    """Place none, one, or two side by side."""
    if len(ranked) < 2:
        return Packing(sum(ranked), ((0.0, 0.0),) * len(ranked))
    first, second = ranked
    return Packing(first + second, ((-second / 2, 0.0), (first / 2, 0.0)))
