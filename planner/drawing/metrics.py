"""How wide text is, from the advances of the bundled face; no font library at run time.

`inter-advances.json` is made from the two font files beside it, and a test holds it against them.
To make it anew after changing a font file (fonttools is among the test dependencies):

    python -m tests.drawing.make_font_tables
"""

import json
from functools import cache, lru_cache

from planner.data import data_dir

CHARACTERS = (
    "".join(chr(code) for code in range(0x20, 0x7F))
    + "".join(chr(code) for code in range(0xA0, 0x180) if code != 0x149)
    + "\u2013\u2014\u2018\u2019\u201a\u201c\u201d\u201e"
    + "\u2022\u2026\u20ac\u2122\u2126\u2190\u2191\u2192\u2193\u2194\u2212\u2248\u2260\u2264\u2265"
    + "\u03a9\u03bc\u2713\u2717"
)


@cache
def _advances() -> dict[str, dict[str, float]]:
    path = data_dir("resources") / "fonts" / "inter-advances.json"
    tables: dict[str, dict[str, float]] = json.loads(path.read_text(encoding="utf-8"))
    return tables


@cache
def _widest(weight: str) -> float:
    return max(_advances()[weight].values())


@lru_cache(maxsize=4096)  # the same names and codes are measured at every layout
def text_width(text: str, size: float, bold: bool = False) -> float:  # noqa: FBT001, FBT002 - a weight
    """Return the advance of one line of `text` at an em of `size`, in the units of `size`.

    Kerning is left out (it only narrows); a character that the table lacks counts as the widest.
    """
    weight = "bold" if bold else "regular"
    table = _advances()[weight]
    unknown = _widest(weight)
    return size * sum(table.get(mark, unknown) for mark in text)


def clipped(text: str, size: float, width: float, *, bold: bool = False) -> str:
    """Return `text`, cut with an ellipsis where it is wider than `width`."""
    if text_width(text, size, bold) <= width:
        return text
    kept = text
    while kept and text_width(kept.rstrip() + "\u2026", size, bold) > width:
        kept = kept[:-1]
    return kept.rstrip() + "\u2026"


def wrapped(text: str, size: float, width: float, *, bold: bool = False) -> tuple[str, ...]:
    """Break `text` into lines no wider than `width`; a word that is too long is broken itself."""
    lines: list[str] = []
    line = ""
    for word in text.split():
        trial = f"{line} {word}" if line else word
        if text_width(trial, size, bold) <= width:
            line = trial
            continue
        if line:
            lines.append(line)
        *whole, line = _pieces(word, size, width, bold=bold)
        lines += whole
    return (*lines, line) if line else tuple(lines)


def _pieces(word: str, size: float, width: float, *, bold: bool) -> list[str]:
    pieces, piece = [], ""
    for mark in word:
        if piece and text_width(piece + mark, size, bold) > width:
            pieces.append(piece)
            piece = ""
        piece += mark
    return [*pieces, piece]
