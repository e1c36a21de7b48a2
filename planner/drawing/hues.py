"""How each colour code is hatched: one pattern per hue, so that no colour stands alone.

After the engravers' old convention where it has the hue (from memory): red across the run (upright
in a flag), blue along it (level), green slanted, violet slanted back, yellow dotted. The others are
ours: green-yellow is green's slant in pairs, and gold and silver are not the engravers' dots and
plain, which yellow and white have here. The slanted lattice on paper is kept for the shield.
"""

from collections.abc import Iterator
from typing import Literal

from planner.drawing.primitives import Point
from planner.drawing.runs import Run

Pattern = Literal[
    "plain",
    "across",
    "along",
    "slanted",
    "slanted-back",
    "crossed",
    "dotted",
    "along-dashed",
    "across-dashed",
    "along-and-across",
    "across-in-pairs",
    "zigzag",
    "in-turns",
    "chevrons",
    "slanted-in-pairs",
]
PATTERNS: dict[str, Pattern] = {
    "WH": "plain",
    "RD": "across",
    "BU": "along",
    "GN": "slanted",
    "VT": "slanted-back",
    "BK": "crossed",
    "YE": "dotted",
    "BN": "along-dashed",
    "OG": "across-dashed",
    "GY": "along-and-across",
    "PK": "across-in-pairs",
    "TQ": "zigzag",
    "GD": "in-turns",
    "SR": "chevrons",
    "GNYE": "slanted-in-pairs",
}

Line = tuple[Point, ...]
# How far a hatch line stays inside the edges, as a share of the width.
_EDGE = 0.46


def hatch_lines(run: Run, width: float, pattern: Pattern, unit: float) -> Iterator[Line]:
    """Yield the hatch of a strip `width` wide round `run`; `unit` is 1 px or its like on paper.

    Narrow strips (under 9 units) get one line where wide ones get two; under 6 units none.
    """
    if width < 6 * unit or pattern == "plain":
        return
    strip = _Strip(run, width, unit)
    if pattern in {"along", "along-dashed", "along-and-across"}:
        yield from strip.along(dashed=pattern == "along-dashed")
    if pattern in {"across", "across-dashed", "across-in-pairs", "along-and-across"}:
        yield from strip.across(pattern)
    if pattern in {"slanted", "crossed"}:
        yield from strip.slanted(-1)
    if pattern in {"slanted-back", "crossed"}:
        yield from strip.slanted(1)
    alone = {
        "dotted": strip.dots,
        "zigzag": strip.zigzag,
        "in-turns": strip.in_turns,
        "chevrons": strip.chevrons,
        "slanted-in-pairs": strip.slanted_in_pairs,
    }
    if pattern in alone:
        yield from alone[pattern]()


class _Strip:
    def __init__(self, run: Run, width: float, unit: float) -> None:
        self.run, self.width, self.unit = run, width, unit
        self.edge = width * _EDGE
        self.narrow = width < 9 * unit

    def _steps(self, pitch: float, margin: float = 0.0) -> Iterator[float]:
        length = self.run.length - 2 * margin
        count = int(length / pitch)
        start = margin + (length - count * pitch) / 2 + pitch / 2
        yield from (start + pitch * index for index in range(count))

    def _rows(self) -> tuple[float, ...]:
        return (0.0,) if self.narrow else (-0.22 * self.width, 0.22 * self.width)

    def along(self, *, dashed: bool) -> Iterator[Line]:
        run, pitch = self.run, 4 * self.unit
        for row in self._rows():
            if not dashed:
                yield run.offset(row, 0, run.length, pitch)
                continue
            for middle in self._steps(9 * self.unit):
                yield run.offset(row, middle - 3 * self.unit, middle + 3 * self.unit, pitch)

    def across(self, pattern: Pattern) -> Iterator[Line]:
        pitch = {"across": 6, "across-dashed": 6, "across-in-pairs": 12}.get(pattern, 9) * self.unit
        shifts = (-1.7 * self.unit, 1.7 * self.unit) if pattern == "across-in-pairs" else (0.0,)
        gaps = ((-self.edge, -self.width * 0.12), (self.width * 0.12, self.edge))
        spans = gaps if pattern == "across-dashed" else ((-self.edge, self.edge),)
        for along in self._steps(pitch):
            for shift in shifts:
                for low, high in spans:
                    place = along + shift
                    yield (self.run.beside(place, low), self.run.beside(place, high))

    def slanted(self, way: int) -> Iterator[Line]:
        lean = self.edge * 0.9 * way
        for along in self._steps(8 * self.unit, margin=min(abs(lean), self.run.length / 3)):
            start = self.run.beside(along + lean, -self.edge)
            yield (start, self.run.beside(along - lean, self.edge))

    def slanted_in_pairs(self) -> Iterator[Line]:
        lean, shift = self.edge * 0.9, 1.7 * self.unit
        margin = min(lean + shift, self.run.length / 3)
        for along in self._steps(13 * self.unit, margin=margin):
            for place in (along - shift, along + shift):
                start = self.run.beside(place - lean, -self.edge)
                yield (start, self.run.beside(place + lean, self.edge))

    def in_turns(self) -> Iterator[Line]:
        """Yield bars from the middle to either edge by turns."""
        for number, along in enumerate(self._steps(5 * self.unit)):
            way = self.edge if number % 2 else -self.edge
            yield (self.run.beside(along, way), self.run.beside(along, way * 0.1))

    def chevrons(self) -> Iterator[Line]:
        """Yield open angles that point along the run."""
        high, deep = self.width * 0.34, self.width * 0.3
        margin = min(deep, self.run.length / 3)
        for along in self._steps(9 * self.unit, margin=margin):
            back, front = along - deep / 2, along + deep / 2
            ends = (self.run.beside(back, -high), self.run.beside(back, high))
            yield (ends[0], self.run.beside(front, 0.0), ends[1])

    def dots(self) -> Iterator[Line]:
        for row, lead in zip((-0.24 * self.width, 0.24 * self.width), (0.0, 0.5), strict=True):
            for middle in self._steps(6 * self.unit):
                place = middle + lead * 6 * self.unit
                if place < self.run.length:
                    yield self.run.offset(row, place - 0.5 * self.unit, place + 0.5 * self.unit, 99)

    def zigzag(self) -> Iterator[Line]:
        pitch, high = 5 * self.unit, self.width * 0.3
        count = max(int(self.run.length / pitch), 1)
        yield tuple(
            self.run.beside(self.run.length * index / count, high if index % 2 else -high)
            for index in range(count + 1)
        )
