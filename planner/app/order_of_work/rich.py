"""Text with bold pieces, broken into lines: `*bold*` is what is acted on."""

import re
from collections.abc import Iterator
from functools import lru_cache

from planner.drawing.metrics import text_width
from planner.drawing.primitives import Circle, DrawList, Point, Primitive, Style, Text
from planner.markup import unmarked

Word = tuple[str, bool]
Line = tuple[Word, ...]
_DISC = re.compile(r"^\[(\d+)\]([.,;:]?)$")
_STAR = re.compile(r"(?<!\\)\*")
_RADIUS, _CAP = 0.68, 0.727


def words_of(text: str) -> Iterator[Word]:
    """Yield words with their weight; a word that is bold in part only is bold."""
    bold = False
    for word in text.split():
        marks = len(_STAR.findall(word))
        yield _STAR.sub("", word), bold or marks > 0
        bold ^= marks % 2 == 1


def plain(text: str) -> str:
    """Return the text as it is read aloud."""
    return unmarked(text)


@lru_cache(maxsize=2048)
def lines_of(text: str, width: float, size: float) -> tuple[Line, ...]:
    """Break text into lines no wider than `width`; a word that is wider has a line of its own."""
    lines: list[Line] = []
    line: list[Word] = []
    used, space = 0.0, text_width(" ", size)
    for word, bold in words_of(text):
        wide = _wide(word, size, bold=bold)
        if line and used + space + wide > width:
            lines.append(tuple(line))
            line, used = [], 0.0
        used += wide + (space if line else 0.0)
        line.append((word, bold))
    return (*lines, tuple(line)) if line else tuple(lines)


def rich_items(
    at: Point, text: str, width: float, *, size: float, pitch: float, colour: str, ground: str
) -> DrawList:
    """Draw text from a first baseline at `at`."""
    items: list[Primitive] = []
    space = text_width(" ", size)
    for row, line in enumerate(lines_of(text, width, size)):
        x = at[0]
        for word, bold in line:
            items += _word((x, at[1] + row * pitch), word, size, bold, colour, ground)
            x += _wide(word, size, bold=bold) + space
    return tuple(items)


def _wide(word: str, size: float, *, bold: bool) -> float:
    disc = _DISC.match(word)
    if disc:
        return 2 * _RADIUS * size + text_width(disc[2], size)
    return text_width(unmarked(word), size, bold=bold)


def _word(  # noqa: PLR0917 - where, what, and how it looks
    at: Point,
    word: str,
    size: float,
    bold: bool,  # noqa: FBT001 - the weight that goes with the word
    colour: str,
    ground: str,
) -> DrawList:
    """Draw a word; the number of a joint stands on its disc, as on the sheet."""
    disc = _DISC.match(word)
    if not disc:
        return (Text(at, unmarked(word), size, colour, bold=bold),)
    radius = _RADIUS * size
    middle = (at[0] + radius, at[1] - _CAP * size / 2)
    figure = Text((middle[0], at[1] - 0.5), disc[1], size - 2, ground, bold=True, anchor="middle")
    after = Text((at[0] + 2 * radius, at[1]), disc[2], size, colour)
    return (Circle(middle, radius, Style(fill=colour)), figure, *((after,) if disc[2] else ()))
