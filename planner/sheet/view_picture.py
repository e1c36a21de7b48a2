"""A small picture of an eye that looks at the cups of a plug: which side the face shows."""

from planner.drawing.looks import PRINT
from planner.drawing.marks import eye
from planner.drawing.primitives import DrawList, Point, Poly, Rect, Style
from planner.sheet.lettering import INK, PAPER, RULE, THIN

WIDTH = 2250.0


def view_picture(right: Point) -> DrawList:
    """Draw the picture, WIDTH wide, its right end at `right`: eye, arrow, cups, collar, plug."""
    x, y = right[0] - WIDTH, right[1]
    pen = Style(fill=PAPER, stroke=INK, width=THIN)
    arrow = Style(fill=INK)
    cups = tuple(
        Poly(((x + 1290, y + drop), (x + 1530, y + drop)), Style(stroke=INK, width=RULE))
        for drop in (-190, 0, 190)
    )
    return (
        *eye((x + 360, y), 700, PRINT),
        Poly(((x + 790, y), (x + 1010, y)), Style(stroke=INK, width=THIN)),
        Poly(((x + 1190, y), (x + 1000, y - 60), (x + 1000, y + 60)), arrow, closed=True),
        *cups,
        Rect((x + 1510, y - 300), 240, 600, Style(fill=INK)),
        Rect((x + 1750, y - 150), 320, 300, pen),
        Poly(((x + 2070, y - 150), (x + 2250, y), (x + 2070, y + 150)), pen, closed=True),
    )
