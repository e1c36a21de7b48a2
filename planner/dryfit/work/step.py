"""One step of the order of work, and the short texts that its values are made of."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

from planner.units import number

Heat = Literal["", "cold", "hot", "close"]
DASH = "\u2013"
CUT, PROVE = "cut", "prove"
# Up to so many joints are named one by one.
_FEW_JOINTS = 6


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to do. `kind` is the key of its words, `values` are what they ask for.

    `stage` is `cut`, the first of the `ends` that it is done at, a split, or `prove`; `end` is that
    end or split, or empty. `needs` are the ids of steps that must be done before. `contacts` are
    soldered in it in that order, `parts` (ids of their uses) threaded or put in their place.
    """

    id: str
    kind: str
    stage: str
    end: str = ""
    heat: Heat = ""
    values: tuple[tuple[str, str], ...] = ()
    needs: tuple[str, ...] = ()
    ends: tuple[str, ...] = ()
    contacts: tuple[str, ...] = ()
    parts: tuple[str, ...] = ()


def bold_list(items: Iterable[str]) -> str:
    """Join what is acted on, each bold: `*A1*, *A2*`."""
    return ", ".join(f"*{item}*" for item in items)


def span(names: Iterable[str]) -> str:
    """Name one, or many by the first and the last: `B1`, `B1` to `B8` with a dash."""
    first, *others = names
    return f"{first}{DASH}{others[-1]}" if others else first


def discs(numbers: Iterable[int]) -> str:
    """Return the marks for the discs of joints; many that follow one another by first and last."""
    placed = sorted(numbers)
    if len(placed) > _FEW_JOINTS and placed[-1] - placed[0] == len(placed) - 1:
        return f"[{placed[0]}]{DASH}[{placed[-1]}]"
    return " ".join(f"[{place}]" for place in placed)


def by_figure(figures: Mapping[str, float], unit: str = "") -> str:
    """Say which have which figure: `*8 mm*: BU, GN; *7 mm*: RD`; `*7*` where all have one."""
    groups: dict[float, list[str]] = {}
    for name, figure in figures.items():
        groups.setdefault(figure, []).append(name)
    told = {figure: f"*{number(figure)}{unit}*" for figure in groups}
    if len(groups) == 1 and not unit:
        return next(iter(told.values()))
    return "; ".join(f"{told[figure]}: {', '.join(names)}" for figure, names in groups.items())
