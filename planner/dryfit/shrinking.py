"""Heat-shrink: which size goes over and grips, how long to cut it, how thick it lies."""

import math
from collections.abc import Iterable, Sequence

from planner.model.part import Part
from planner.units import number, rounded

# What is cut is cut in steps of this.
STEP_MM = 0.5
# How much shorter a tube gets as it shrinks: 5 to 10 % is typical, from memory; the larger is
# allowed for, so that what is cut is long enough.
LENGTHWISE = 0.10
# Printed sizes are rounded, so 2.36 to 1.17 is sold as 2:1: our own choice, no source.
_PRINTED = 0.05


def shrink_for(largest_mm: float, smallest_mm: float, stock: Sequence[Part]) -> Part | None:
    """Return the smallest heat-shrink that passes the largest diameter and grips the smallest.

    Of 2:1 before 3:1: what shrinks less is thinner once it is on. None where none in stock does.
    Raise ValueError unless 0 < smallest <= largest, mm.
    """
    _check(largest_mm, smallest_mm)
    fitting = [part for part in _tubes(stock) if shrink_fits(part, largest_mm, smallest_mm)]
    return min(fitting, key=_preferred, default=None)


def shrink_fits(part: Part, largest_mm: float, smallest_mm: float) -> bool:
    """Tell whether a tube from stock passes the largest diameter and grips the smallest, mm."""
    return tube_fits((part.bore_mm, part.recovered_mm), largest_mm, smallest_mm)


def tube_fits(size_mm: tuple[float, float], largest_mm: float, smallest_mm: float) -> bool:
    """Tell whether a size, its bore as supplied and as recovered, passes the one, grips the other.

    The supplied bore is a minimum and the recovered one a maximum, so largest over smallest stays
    under 2 for 2:1 and under 3 for 3:1 (NASA-STD-8739.4, 9.8.1).
    """
    bore_mm, recovered_mm = size_mm
    grips = 0 < recovered_mm < smallest_mm
    return bore_mm >= largest_mm and grips and largest_mm / smallest_mm < _most(size_mm)


def widest_mm(size_mm: tuple[float, float], smallest_mm: float) -> float:
    """Return the most that a size may have to pass where it must grip the smallest; 0 for none."""
    bore_mm, recovered_mm = size_mm
    return min(bore_mm, _most(size_mm) * smallest_mm) if 0 < recovered_mm < smallest_mm else 0.0


def shrink_why_not(largest_mm: float, smallest_mm: float, stock: Sequence[Part]) -> str:
    """Say with the figures why no heat-shrink in stock does, or nothing if one does.

    Raise ValueError unless 0 < smallest <= largest, mm.
    """
    if shrink_for(largest_mm, smallest_mm, stock) is not None:
        return ""
    wanted = (
        f"no heat-shrink in stock passes {number(largest_mm)} mm and grips {number(smallest_mm)} mm"
    )
    nearest = min(
        (part for part in _tubes(stock) if part.bore_mm >= largest_mm), key=_size, default=None
    )
    if nearest is None:
        bores = [part.bore_mm for part in _tubes(stock)]
        most = f"the widest is {number(max(bores))} mm as supplied" if bores else "there is none"
        return f"{wanted}: {most}"
    sizes = f"{number(nearest.bore_mm)} mm recovers to {number(nearest.recovered_mm)} mm"
    return f"{wanted}: {sizes}"


def shrink_cut_mm(cover_mm: float, part: Part) -> float:
    """Return how long to cut a tube so that it covers `cover_mm` when shrunk, in steps of 0.5 mm.

    `cover_mm` is all that it lies on at last, overlaps included. A part that does not shrink is cut
    as long as that. Raise ValueError below 0.
    """
    if not 0 <= cover_mm < math.inf:
        msg = f"a length to cover of {cover_mm} mm: it must be 0 or more"
        raise ValueError(msg)
    return tube_cut_mm(cover_mm) if part.kind == "heat-shrink" else raised_mm(cover_mm)


def tube_cut_mm(cover_mm: float) -> float:
    """Return how long to cut a tube that covers `cover_mm` when it has got shorter, mm."""
    return raised_mm(cover_mm / (1 - LENGTHWISE))


def raised_mm(length_mm: float, step_mm: float = STEP_MM) -> float:
    """Round a length up to a step, mm: what is cut too short is lost."""
    return rounded(math.ceil(round(length_mm / step_mm, 6)) * step_mm)


def shrunk_outside_mm(part: Part, over_mm: float) -> float:
    """Return the outside diameter, mm, of a tube shrunk on `over_mm`: its volume stays the same.

    A record that says it is thinner outside than inside counts as having no wall.
    """
    ring_mm2 = max(part.outside_mm**2 - part.bore_mm**2, 0.0) / (1 - LENGTHWISE)
    return math.sqrt(over_mm**2 + ring_mm2)


def shrink_too_short(cover_mm: float, part: Part) -> str:
    """Say with both figures that a piece in stock is shorter than the cut, or nothing."""
    cut_mm = shrink_cut_mm(cover_mm, part)
    if cut_mm <= part.length_mm:
        return ""
    return f"{part.title} comes in {number(part.length_mm)} mm, the cut is {number(cut_mm)} mm"


def _most(size_mm: tuple[float, float]) -> float:
    """Return what largest over smallest must stay under: 2 for a tube sold as 2:1."""
    ratio = size_mm[0] / size_mm[1]
    nominal = round(ratio)
    return min(ratio, nominal) if abs(ratio - nominal) <= _PRINTED else ratio


def _tubes(stock: Iterable[Part]) -> list[Part]:
    return [part for part in stock if part.kind == "heat-shrink"]


def _preferred(part: Part) -> tuple[float, ...]:
    return (round(part.ratio, 1), part.bore_mm, part.recovered_mm, part.length_mm)


def _size(part: Part) -> tuple[float, float, float, str]:
    return part.bore_mm, part.recovered_mm, part.length_mm, part.id


def _check(largest_mm: float, smallest_mm: float) -> None:
    if not 0 < smallest_mm <= largest_mm < math.inf:
        msg = f"smallest {smallest_mm} mm and largest {largest_mm} mm: 0 < smallest <= largest"
        raise ValueError(msg)
