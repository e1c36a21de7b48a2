"""Lines of text with bold pieces and order discs in them, broken where they grow too wide."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from planner.drawing.fitting.discs import order_disc
from planner.drawing.looks import PRINT
from planner.drawing.metrics import text_width
from planner.drawing.primitives import DrawList, Point
from planner.markup import unmarked
from planner.sheet.lettering import BODY, PITCH, cap, say

DISC = 256.0
_DISC_ROOM = 2 * DISC + 60
_ATOMS = re.compile(r"\[\d+\]|\*|(?:\\.|[^*\[\\])+|\[")


@dataclass(frozen=True, slots=True)
class _Atom:
    """A piece of text with its weight; or, with a number, a disc."""

    text: str
    bold: bool
    disc: int = 0

    def width(self, size: float) -> float:
        return _DISC_ROOM if self.disc else text_width(self.text, size, self.bold)


_Word = tuple[_Atom, ...]


def rich_lines(
    at: Point, text: str, width: float, *, size: float = BODY, pitch: float = PITCH
) -> tuple[DrawList, float]:
    """Set text no wider than `width`, its first baseline at `at`; also return the height.

    `*bold*` is bold; `[3]` is the disc of the third joint; see planner/markup.py.
    """
    items: list[DrawList] = []
    lines = list(_lines(tuple(_words(text)), width, size))
    for place, line in enumerate(lines):
        items.append(_set((at[0], at[1] + pitch * place), line, size))
    return tuple(item for drawn in items for item in drawn), pitch * len(lines)


def rich_width(text: str, size: float = BODY) -> float:
    """Return how wide text is on one line."""
    words = tuple(_words(text))
    return sum(_width(word, size) for word in words) + _space(size) * max(len(words) - 1, 0)


def _space(size: float) -> float:
    return text_width(" ", size)


def _width(word: _Word, size: float) -> float:
    return sum(atom.width(size) for atom in word)


def _words(text: str) -> Iterator[_Word]:
    """Yield the words; a bold stretch of several words is bold in each."""
    bold = False
    for word in text.split():
        atoms: list[_Atom] = []
        for found in _ATOMS.findall(word):
            if found == "*":
                bold = not bold
            elif found.endswith("]") and found.startswith("["):
                atoms.append(_Atom("", bold, int(found[1:-1])))
            else:
                atoms.append(_Atom(unmarked(found), bold))
        yield tuple(atoms)


def _lines(words: Sequence[_Word], width: float, size: float) -> Iterator[tuple[_Word, ...]]:
    line: list[_Word] = []
    used = 0.0
    for word in words:
        needed = _width(word, size) + (_space(size) if line else 0.0)
        if line and used + needed > width:
            yield tuple(line)
            line, used, needed = [], 0.0, _width(word, size)
        line.append(word)
        used += needed
    if line:
        yield tuple(line)


def _set(at: Point, line: Sequence[_Word], size: float) -> DrawList:
    """Set one line; neighbours of one weight are one text."""
    items: list[DrawList] = []
    run = _Run(at, size)
    for place, word in enumerate(line):
        gap = _space(size) if place else 0.0
        for atom in word:
            if atom.disc:
                items.append(run.taken())
                middle = (run.x + gap + DISC, at[1] - cap(size) / 2)
                items.append(order_disc(middle, atom.disc, DISC, PRINT))
                run.x += gap + _DISC_ROOM
            else:
                items.append(run.add(atom, gap))
            gap = 0.0
    items.append(run.taken())
    return tuple(item for drawn in items for item in drawn)


class _Run:
    """Text of one weight that is being gathered, and how far the line has come."""

    def __init__(self, at: Point, size: float) -> None:
        self.x, self.base, self.size = at[0], at[1], size
        self._text, self._bold, self._start = "", False, at[0]

    def add(self, atom: _Atom, gap: float) -> DrawList:
        """Go on with an atom; return what was gathered before if its weight is another."""
        done: DrawList = ()
        if self._text and atom.bold == self._bold:
            self._text += (" " if gap else "") + atom.text
        else:
            done = self.taken()
            self._text, self._bold, self._start = atom.text, atom.bold, self.x + gap
        self.x += gap + text_width(atom.text, self.size, atom.bold)
        return done

    def taken(self) -> DrawList:
        """Return what was gathered, and begin anew."""
        text, self._text = self._text, ""
        return (say((self._start, self.base), text, self.size, bold=self._bold),) if text else ()
