"""Make inter-advances.json and inter-outlines.json from the bundled font files beside them."""

import json

from fontTools.pens.basePen import BasePen
from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont

from planner.data import data_dir
from planner.drawing.metrics import CHARACTERS

FILES = {"regular": "Inter-Regular.otf", "bold": "Inter-Bold.otf"}


class OperatorPen(BasePen):
    """Write an outline as PDF path operators."""

    def __init__(self, glyphs):
        super().__init__(glyphs)
        self.parts = []

    def _write(self, operator, *points):
        figures = [f"{round(value)}" for point in points for value in point]
        self.parts.append(" ".join((*figures, operator)))

    def _moveTo(self, pt):  # noqa: N802 - fontTools' name
        self._write("m", pt)

    def _lineTo(self, pt):  # noqa: N802 - fontTools' name
        self._write("l", pt)

    def _curveToOne(self, pt1, pt2, pt3):  # noqa: N802 - fontTools' name
        self._write("c", pt1, pt2, pt3)

    def _closePath(self):  # noqa: N802 - fontTools' name
        self.parts.append("h")


def open_font(weight):
    return TTFont(data_dir("resources") / "fonts" / FILES[weight])


def advances(font):
    em, names, widths = font["head"].unitsPerEm, font.getBestCmap(), font["hmtx"]
    return {mark: round(widths[names[ord(mark)]][0] / em, 5) for mark in CHARACTERS}


def outlines(font):
    glyphs, names = font.getGlyphSet(), font.getBestCmap()
    return {mark: outline(glyphs, names[ord(mark)]) for mark in CHARACTERS}


def outline(glyphs, name):
    pen = OperatorPen(glyphs)
    glyphs[name].draw(pen)
    return " ".join(pen.parts)


def box(font):
    glyphs, names = font.getGlyphSet(), font.getBestCmap()
    corners = []
    for mark in CHARACTERS:
        pen = BoundsPen(glyphs)
        glyphs[names[ord(mark)]].draw(pen)
        corners += [pen.bounds] if pen.bounds else []
    low = [round(min(corner[place] for corner in corners)) for place in (0, 1)]
    return low + [round(max(corner[place] for corner in corners)) for place in (2, 3)]


def tables():
    fonts = {weight: open_font(weight) for weight in FILES}
    widths = {weight: advances(font) for weight, font in fonts.items()}
    shapes = {
        weight: {"em": font["head"].unitsPerEm, "box": box(font), "glyphs": outlines(font)}
        for weight, font in fonts.items()
    }
    return {"inter-advances.json": widths, "inter-outlines.json": shapes}


def main():
    for name, table in tables().items():
        path = data_dir("resources") / "fonts" / name
        path.write_text(json.dumps(table, ensure_ascii=True, indent=0) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
