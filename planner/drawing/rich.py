"""Text with bold pieces and order discs in it, broken where it grows too wide; see markup.py."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from planner.drawing.fitting.discs import order_disc
from planner.drawing.looks import Look
from planner.drawing.metrics import text_width
from planner.drawing.primitives import CAP_HEIGHT, DrawList, Point, Text
from planner.markup import unmarked

# White beside a disc, in its radii.
_BESIDE = 60 / 256
# A figure and its unit stay on one line, so do the two parts of a shield's code, and what has a
# space between that does not break.
_BREAKS = re.compile(r"(?<!SH)(?<![0-9])[^\S\u00a0]+|(?<=[0-9])[^\S\u00a0]+(?!mm\b)")
_ATOMS = re.compile(r"\[\d+\]|\*|(?:\\.|[^*\[\\])+|\[")


@dataclass(frozen=True, slots=True)
class Type:
    """How text is set: font size, from line to line, and the radius of discs, in one unit."""

    size: float
    pitch: float
    disc: float


@dataclass(frozen=True, slots=True)
class _Atom:
    """A piece of text with its weight; or, with a number, a disc."""

    text: str
    bold: bool
    disc: int = 0

    def width(self, how: Type) -> float:
        if self.disc:
            return _disc_room(how)
        return text_width(self.text, how.size, self.bold)


_Word = tuple[_Atom, ...]


def rich_text(  # noqa: PLR0917 - where, what, how wide, and how it looks
    at: Point, text: str, width: float, how: Type, look: Look, colour: str = ""
) -> tuple[DrawList, float]:
    """Set text no wider than `width`, its first baseline at `at`; also return the height.

    `*bold*` is bold; `[3]` is the disc of the third joint. In the look's ink if no colour is told.
    """
    items: list[DrawList] = []
    lines = lines_of(text, width, how)
    for place, line in enumerate(lines):
        run = _Run((at[0], at[1] + how.pitch * place), how, look, colour or look.ink)
        items.append(run.line(line))
    return tuple(item for drawn in items for item in drawn), how.pitch * len(lines)


def rich_width(text: str, how: Type) -> float:
    """Return how wide text is on one line."""
    words = tuple(_words(text))
    return sum(_width(word, how) for word in words) + _space(how) * max(len(words) - 1, 0)


@lru_cache(maxsize=2048)
def lines_of(text: str, width: float, how: Type) -> tuple[tuple[_Word, ...], ...]:
    """Break text into lines no wider than `width`; a word that is wider has a line of its own."""
    return tuple(_lines(tuple(_words(text)), width, how))


def _disc_room(how: Type) -> float:
    return (2 + _BESIDE) * how.disc


def _space(how: Type) -> float:
    return text_width(" ", how.size)


def _width(word: _Word, how: Type) -> float:
    return sum(atom.width(how) for atom in word)


def _words(text: str) -> Iterator[_Word]:
    """Yield the words; a bold stretch of several words is bold in each."""
    bold = False
    for word in filter(None, _BREAKS.split(text)):
        atoms: list[_Atom] = []
        for found in _ATOMS.findall(word):
            if found == "*":
                bold = not bold
            elif found.endswith("]") and found.startswith("["):
                atoms.append(_Atom("", bold, int(found[1:-1])))
            else:
                atoms.append(_Atom(unmarked(found), bold))
        yield tuple(atoms)


def _lines(words: Sequence[_Word], width: float, how: Type) -> Iterator[tuple[_Word, ...]]:
    line: list[_Word] = []
    used = 0.0
    for word in words:
        needed = _width(word, how) + (_space(how) if line else 0.0)
        if line and used + needed > width:
            yield tuple(line)
            line, used, needed = [], 0.0, _width(word, how)
        line.append(word)
        used += needed
    if line:
        yield tuple(line)


class _Run:
    """One line as it is set: text of one weight that is being gathered, and how far it has come."""

    def __init__(self, at: Point, how: Type, look: Look, colour: str) -> None:
        self._x, self._base = at
        self._how, self._look, self._colour = how, look, colour
        self._text, self._bold, self._start = "", False, at[0]

    def line(self, line: Sequence[_Word]) -> DrawList:
        """Set a whole line; neighbours of one weight are one text."""
        items: list[DrawList] = []
        for place, word in enumerate(line):
            gap = _space(self._how) if place else 0.0
            for atom in word:
                items.append(self._disc(atom, gap) if atom.disc else self._add(atom, gap))
                gap = 0.0
        items.append(self._taken())
        return tuple(item for drawn in items for item in drawn)

    def _disc(self, atom: _Atom, gap: float) -> DrawList:
        before, radius = self._taken(), self._how.disc
        middle = (self._x + gap + radius, self._base - self._how.size * CAP_HEIGHT / 2)
        self._x += gap + _disc_room(self._how)
        return (*before, *order_disc(middle, atom.disc, radius, self._look))

    def _add(self, atom: _Atom, gap: float) -> DrawList:
        """Go on with an atom; return what was gathered before if its weight is another."""
        done: DrawList = ()
        if self._text and atom.bold == self._bold:
            self._text += (" " if gap else "") + atom.text
        else:
            done = self._taken()
            self._text, self._bold, self._start = atom.text, atom.bold, self._x + gap
        self._x += gap + atom.width(self._how)
        return done

    def _taken(self) -> DrawList:
        """Return what was gathered, and begin anew."""
        text, self._text = self._text, ""
        if not text:
            return ()
        at = (self._start, self._base)
        return (Text(at, text, self._how.size, self._colour, bold=self._bold),)
