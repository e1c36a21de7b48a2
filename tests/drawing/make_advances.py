"""Make resources/fonts/inter-advances.json from the bundled font files."""

import json

from fontTools.ttLib import TTFont

from planner.data import data_dir
from planner.drawing.metrics import CHARACTERS

FILES = {"regular": "Inter-Regular.otf", "bold": "Inter-Bold.otf"}


def advances(weight):
    font = TTFont(data_dir("resources") / "fonts" / FILES[weight])
    em, names, widths = font["head"].unitsPerEm, font.getBestCmap(), font["hmtx"]
    return {
        mark: round(widths[names[ord(mark)]][0] / em, 5)
        for mark in CHARACTERS
        if ord(mark) in names
    }


def main():
    tables = {weight: advances(weight) for weight in FILES}
    path = data_dir("resources") / "fonts" / "inter-advances.json"
    path.write_text(json.dumps(tables, ensure_ascii=True, indent=0) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
