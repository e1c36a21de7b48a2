"""The smallest bore that round wires go into: bounds that say no, a placement that says yes."""

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

import numpy as np

from planner.geometry.pressing import Effort, laid, searched, spreads
from planner.geometry.segments import Array

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


Search = Literal["laid", "quick", "thorough"]


def pack(
    diameters_mm: Sequence[float], search: Search = "thorough", enough_mm: float = 0.0
) -> Packing:
    """Place round wires in a bore as small as is found; every placement is sound as it stands.

    A bore of `enough_mm` is small enough: a long search ends there.

    `thorough`: equal wires to 20 within 0.1 % of the best known; unequal ones about 1 % to 12 and
    3 % to 24, against a search ten times as long. `quick`: about 6 %, in the few ms that an edit
    may cost. `laid`: rings or a lattice as it is, in less than one. Equal input, equal output.
    """
    order = sorted(range(len(diameters_mm)), key=lambda index: (-diameters_mm[index], index))
    ranked = tuple(float(diameters_mm[index]) for index in order)
    found = _packed(ranked, search, enough_mm if search == "thorough" else 0.0)
    place = {index: found.centres[rank] for rank, index in enumerate(order)}
    return Packing(found.diameter_mm, tuple(place[index] for index in range(len(order))))


def is_sound(packing: Packing, diameters_mm: Sequence[float], slack_mm: float = 1e-9) -> bool:
    """Tell whether no wire overlaps another or the wall by more than `slack_mm`."""
    x, y = np.array(packing.centres, dtype=float).reshape(-1, 2).T
    radii = np.array(diameters_mm, dtype=float) / 2
    if radii.shape != x.shape:
        return False
    one, other = np.triu_indices(radii.size, 1)
    gaps = np.hypot(x[one] - x[other], y[one] - y[other]) - radii[one] - radii[other]
    room = packing.diameter_mm / 2 - np.hypot(x, y) - radii
    return bool((gaps >= -slack_mm).all() and (room >= -slack_mm).all())


def bundle_at_least_mm(diameters_mm: Sequence[float]) -> float:
    """Return a diameter below which round wires surely do not go together.

    The largest of: the two thickest side by side; the three thickest touching each other; the k
    thickest taken as equal to the thinnest among them, for every k; the total area.
    """
    ranked = sorted(diameters_mm, reverse=True)
    if not ranked or ranked[0] <= 0:
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
    """Return the smallest circle round three, the thickest first; Descartes' theorem."""
    one, other, third = (diameter / 2 for diameter in ranked)
    if third <= _gap_radius(one, other):
        return 2 * (one + other)
    bends = 1 / one + 1 / other + 1 / third
    root = math.sqrt(1 / (one * other) + 1 / (other * third) + 1 / (third * one))
    return 2 / (2 * root - bends)


def _gap_radius(one: float, other: float) -> float:
    """Return the radius of the circle that goes beside two circles, in the circle round both."""
    return one * other * (one + other) / (one * one + one * other + other * other)


# -- placing ----------------------------------------------------------------------------------

# Walls for settling, as shares that they are tighter than what is reached: coarse, then fine.
_WALLS = (0.02, 0.007, 0.002, 0.0007, 0.0002)


def certified(places: Array, diameters_mm: Array) -> Packing:
    """Draw places (n, 2) apart, or together, until wires just touch, and measure the bore round."""
    apart = float(spreads(places[None], diameters_mm / 2)[0]) * _SAFE
    places = places * apart
    reach = np.hypot(places[:, 0], places[:, 1]) + diameters_mm / 2
    centres = tuple((float(x), float(y)) for x, y in places)
    return Packing(2 * float(reach.max()) * _SAFE, centres)


@lru_cache(maxsize=1024)
def _packed(ranked: tuple[float, ...], search: Search, enough_mm: float) -> Packing:
    if len(ranked) < 3 or ranked[0] <= 0:
        return _few(ranked)
    whole = np.array(ranked)
    if len(ranked) == 3:
        return certified(_three_places(ranked), whole)
    radii = whole / ranked[0] / 2
    if search == "laid":
        return certified(laid(radii), whole)
    least, enough = (mm / ranked[0] / 2 for mm in (bundle_at_least_mm(ranked), enough_mm))
    return certified(searched(radii, least, _effort(len(ranked), search), enough), whole)


def _effort(count: int, search: Search) -> Effort:
    """Return how much to search for so many wires: fewer arrangements where each is dearer."""
    if search == "quick":
        return Effort(max(1, min(12, 7000 // count**2)), 1, 15, 15, (0.02, 0.005, 0.001))
    starts = max(2, min(48, 480 // count))
    rounds = max(1, min(3, 36 // count))
    return Effort(starts, min(4, starts), 30, 60, _WALLS, rounds, starts, finish_steps=80)


def _few(ranked: tuple[float, ...]) -> Packing:
    """Place none, one, two side by side, or any number that have no thickness."""
    if len(ranked) != 2:
        return Packing(sum(ranked), ((0.0, 0.0),) * len(ranked))
    first, second = ranked
    return Packing(first + second, ((-second / 2, 0.0), (first / 2, 0.0)))


def _three_places(ranked: tuple[float, ...]) -> Array:
    """Place three touching each other, about the middle of the smallest circle round them."""
    one, other, third = (diameter / 2 for diameter in ranked)
    aside = (one * (one + other + third) - other * third) / (one + other)
    up = math.sqrt(max((one + third) ** 2 - aside**2, 0.0))
    corners = 0j, complex(one + other), complex(aside, up)
    if third <= _gap_radius(one, other):
        middle = complex(other)
    else:
        middle = _middle_of_three(corners, (1 / one, 1 / other, 1 / third))
    return np.array([[(at - middle).real, (at - middle).imag] for at in corners])


def _middle_of_three(corners: Sequence[complex], bends: Sequence[float]) -> complex:
    """Return the middle of the circle round three that touch each other.

    Descartes' theorem in complex numbers: Lagarias, Mallows, Wilks, Amer. Math. Monthly 109 (2002)
    338-361. Of its two roots, the one as far from all three as they are thick.
    """
    (a, b, c), (p, q, r) = bends, (k * at for k, at in zip(bends, corners, strict=True))
    around = a + b + c - 2 * math.sqrt(a * b + b * c + c * a)
    root = 2 * cmath.sqrt(p * q + q * r + r * p)
    middles = ((p + q + r + sign * root) / around for sign in (1, -1))

    def reach(middle: complex) -> float:
        return max(abs(at - middle) + 1 / k for k, at in zip(bends, corners, strict=True))

    return min(middles, key=reach)
