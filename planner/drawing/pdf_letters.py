"""Text in a PDF: the bundled face as Type 3 fonts, from its outlines; ISO 32000-1, 9.6.5.

`inter-outlines.json` is made from the font files beside it, like the advances; see `metrics`.
"""

import json
import math
from collections.abc import Iterable, Iterator
from functools import cache
from itertools import groupby
from typing import Any

from planner.data import data_dir
from planner.drawing.metrics import text_width
from planner.drawing.pdf_paths import colour, number
from planner.drawing.primitives import Text
from planner.drawing.svg import plain_text

_CODES = 256  # characters that one such font can hold
_UNKNOWN = "300 0 m 300 2048 l 1700 2048 l 1700 0 l h 500 200 m 1500 200 l 1500 1848 l 500 1848 l h"


@cache
def _outlines() -> dict[str, Any]:
    path = data_dir("resources") / "fonts" / "inter-outlines.json"
    table: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    return table


def glyph(mark: str, *, bold: bool) -> tuple[str, int]:
    """Return the outline of a character as PDF operators, y up, and the em it is drawn in."""
    table = _outlines()["bold" if bold else "regular"]
    shape: str = table["glyphs"].get(mark, _UNKNOWN)
    return shape, table["em"]


class Letters:
    """Which characters a file needs, in which of its fonts, under which code."""

    def __init__(self, texts: Iterable[Text]) -> None:
        used = {(text.bold, mark) for text in texts for mark in plain_text(text.text)}
        self.fonts: list[tuple[bool, list[str]]] = []
        self._places: dict[tuple[bool, str], tuple[int, int]] = {}
        for bold in (False, True):
            marks = sorted(mark for weight, mark in used if weight == bold)
            for start in range(0, len(marks), _CODES):
                chunk = marks[start : start + _CODES]
                for code, mark in enumerate(chunk):
                    self._places[(bold, mark)] = (len(self.fonts), code)
                self.fonts.append((bold, chunk))

    def line(self, item: Text) -> list[str]:
        """Return the operators that set one line of text."""
        text = plain_text(item.text)
        share = {"start": 0.0, "middle": 0.5, "end": 1.0}[item.anchor]
        along = -share * text_width(text, item.size, item.bold)
        lines = ["q", f"{colour(item.colour)} rg", _placed(item)]
        for font, run in groupby(text, lambda mark: self._places[(item.bold, mark)][0]):
            marks = list(run)
            codes = "".join(f"{self._places[(item.bold, mark)][1]:02X}" for mark in marks)
            size, start = number(item.size), number(along)
            lines.append(f"BT /F{font} {size} Tf 1 0 0 -1 {start} 0 Tm <{codes}> Tj ET")
            along += text_width("".join(marks), item.size, item.bold)
        return [*lines, "Q"]


def _placed(item: Text) -> str:
    angle = math.radians(item.turn_deg)
    cos, sin = math.cos(angle), math.sin(angle)
    x, y = item.at
    return f"{cos:.8f} {sin:.8f} {-sin:.8f} {cos:.8f} {number(x)} {number(y)} cm"


def fonts_for(letters: Letters) -> Iterator[tuple[str, list[str]]]:
    """Yield each font's dictionary, with places to fill, and its glyphs and its naming table."""
    for bold, marks in letters.fonts:
        table = _outlines()["bold" if bold else "regular"]
        widths = [round(text_width(mark, table["em"], bold)) for mark in marks]
        box = table["box"]
        shapes = [
            f"{width} 0 {' '.join(map(str, box))} d1\n{glyph(mark, bold=bold)[0]} f"
            for mark, width in zip(marks, widths, strict=True)
        ]
        yield _dictionary(widths, table["em"], box), [*shapes, _names(marks)]


def _dictionary(widths: list[int], em: int, box: list[int]) -> str:
    codes = " ".join(f"/g{code}" for code in range(len(widths)))
    return (
        f"<< /Type /Font /Subtype /Type3 /FontBBox [{' '.join(map(str, box))}]"
        f" /FontMatrix [{1 / em:.10f} 0 0 {1 / em:.10f} 0 0]"
        f" /FirstChar 0 /LastChar {len(widths) - 1} /Widths [{' '.join(map(str, widths))}]"
        f" /Encoding << /Type /Encoding /Differences [0 {codes}] >>"
        " /CharProcs << {procedures} >> /Resources << >> /ToUnicode {names} >>"
    )


def _names(marks: list[str]) -> str:
    """Return the table that names each code's character, so that text can be copied."""
    lines = [
        "/CIDInit /ProcSet findresource begin 12 dict begin begincmap",
        "/CMapName /Cupwright def /CMapType 2 def",
        "1 begincodespacerange <00> <FF> endcodespacerange",
    ]
    for start in range(0, len(marks), 100):
        chunk = marks[start : start + 100]
        lines.append(f"{len(chunk)} beginbfchar")
        for code, mark in enumerate(chunk, start=start):
            lines.append(f"<{code:02X}> <{mark.encode('utf-16-be').hex().upper()}>")
        lines.append("endbfchar")
    lines.append("endcmap CMapName currentdict /CMap defineresource pop end end")
    return "\n".join(lines)
