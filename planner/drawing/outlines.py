"""Text as outlines: a sheet that travels looks the same where its face is not installed.

The outlines of `inter-outlines.json` are those that a PDF is set with; see `pdf_letters`.
"""

import math
from collections.abc import Iterator
from functools import lru_cache

from planner.drawing.metrics import text_width
from planner.drawing.pdf_letters import glyph
from planner.drawing.primitives import Command, DrawList, Path, Point, Primitive, Style, Text
from planner.drawing.svg import plain_text

_LETTERS = {"m": "M", "l": "L", "c": "C"}
_SHARE = {"start": 0.0, "middle": 0.5, "end": 1.0}


def outlined(items: DrawList) -> DrawList:
    """Return the items with each line of text as one filled path; blank lines are left out."""
    return tuple(drawn for item in items for drawn in _drawn(item))


def _drawn(item: Primitive) -> Iterator[Primitive]:
    if not isinstance(item, Text):
        yield item
        return
    commands = tuple(_commands(item))
    if commands:
        yield Path(commands, Style(fill=item.colour), item.owner)


def _commands(item: Text) -> Iterator[Command]:
    """Yield the outlines of a line's characters, placed and turned like its text."""
    text = plain_text(item.text)
    along = -_SHARE[item.anchor] * text_width(text, item.size, item.bold)
    angle = math.radians(item.turn_deg)
    cos, sin = math.cos(angle), math.sin(angle)

    def place(x: float, y: float) -> Point:
        flat, down = along + x * item.size, -y * item.size
        return (item.at[0] + flat * cos - down * sin, item.at[1] + flat * sin + down * cos)

    for mark in text:
        for letter, figures in _glyph(mark, item.bold):
            points = zip(figures[::2], figures[1::2], strict=True)
            yield letter, tuple(figure for x, y in points for figure in place(x, y))
        along += text_width(mark, item.size, item.bold)


@lru_cache(maxsize=1024)
def _glyph(mark: str, bold: bool) -> tuple[Command, ...]:  # noqa: FBT001 - a weight
    """Return a character's outline in shares of the em, y up."""
    shape, em = glyph(mark, bold=bold)
    commands: list[Command] = []
    figures: list[float] = []
    for word in shape.split():
        if word == "h":
            commands.append(("Z", ()))
        elif word in _LETTERS:
            commands.append((_LETTERS[word], tuple(figures)))
            figures = []
        else:
            figures.append(float(word) / em)
    return tuple(commands)
