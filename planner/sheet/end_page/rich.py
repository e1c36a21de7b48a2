"""Lines of text with bold pieces and order discs in them, broken where they grow too wide."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from planner.drawing.fitting.discs import order_disc
from planner.drawing.looks import PRINT
from planner.drawing.metrics import text_width
from planner.drawing.primitives import DrawList, Point
from planner.sheet.lettering import BODY, PITCH, cap, say

DISC = 230.0
_DISC_ROOM = 2 * DISC + 60
_DISC_MARK = re.compile(r"^\[(\d+)\]([.,;:]?)$")


@dataclass(frozen=True, slots=True)
class _Word:
    """A word that is not broken: pieces of text with their weight; or a disc's number."""

    pieces: tuple[tuple[str, bool], ...] = ()
    disc: int = 0

    def width(self, size: float) -> float:
        letters = sum(text_width(text, size, bold) for text, bold in self.pieces)
        return letters + (_DISC_ROOM if self.disc else 0.0)


def rich_lines(
    at: Point, text: str, width: float, *, size: float = BODY, pitch: float = PITCH
) -> tuple[DrawList, float]:
    """Set text no wider than `width`, its first baseline at `at`; also return the height.

    `*bold*` is bold; `[3]`, a word of its own, is the disc of the third joint.
    """
    items: list[DrawList] = []
    lines = list(_lines(tuple(_words(text)), width, size))
    for place, line in enumerate(lines):
        items.append(_set((at[0], at[1] + pitch * place), line, size))
    return tuple(item for drawn in items for item in drawn), pitch * len(lines)


def rich_width(text: str, size: float = BODY) -> float:
    """Return how wide text is on one line."""
    words = tuple(_words(text))
    return sum(word.width(size) for word in words) + _space(size) * max(len(words) - 1, 0)


def _space(size: float) -> float:
    return text_width(" ", size)


def _words(text: str) -> Iterator[_Word]:
    """Yield the words; a bold stretch of several words is bold in each."""
    bold = False
    for word in text.split():
        mark = _DISC_MARK.match(word)
        if mark:
            after = ((mark[2], bold),) if mark[2] else ()
            yield _Word(after, int(mark[1]))
            continue
        pieces = []
        for place, piece in enumerate(word.split("*")):
            if place:
                bold = not bold
            if piece:
                pieces.append((piece, bold))
        yield _Word(tuple(pieces))


def _lines(words: Sequence[_Word], width: float, size: float) -> Iterator[tuple[_Word, ...]]:
    line: list[_Word] = []
    used = 0.0
    for word in words:
        needed = word.width(size) + (_space(size) if line else 0.0)
        if line and used + needed > width:
            yield tuple(line)
            line, used, needed = [], 0.0, word.width(size)
        line.append(word)
        used += needed
    if line:
        yield tuple(line)


def _set(at: Point, line: Sequence[_Word], size: float) -> DrawList:
    """Set one line; neighbours of one weight are one text."""
    items: list[DrawList] = []
    x = at[0]
    run, run_bold, run_x = "", False, x

    def flush() -> None:
        if run:
            items.append((say((run_x, at[1]), run, size, bold=run_bold),))

    for place, word in enumerate(line):
        gap = _space(size) if place else 0.0
        if word.disc:
            flush()
            run = ""
            x += gap
            middle = (x + DISC, at[1] - cap(size) / 2)
            items.append(order_disc(middle, word.disc, DISC, PRINT))
            x += _DISC_ROOM
            gap = 0.0
        for number, (text, bold) in enumerate(word.pieces):
            lead = gap if number == 0 else 0.0
            if run and bold == run_bold:
                run += (" " if lead else "") + text
            else:
                flush()
                run, run_bold, run_x = text, bold, x + lead
            x += lead + text_width(text, size, bold)
    flush()
    return tuple(item for drawn in items for item in drawn)
