"""Tags of threaded parts, such as `A1`: end and place in the queue there; a label with an eye."""

from planner.drawing.metrics import text_width
from planner.drawing.primitives import Circle, DrawList, Point, Poly, Style, centred_baseline
from planner.sheet.lettering import BODY, INK, PAPER, THIN, say

HEIGHT = 430.0
_POINT, _AFTER = 170.0, 110.0
_LETTERS = 330.0  # from the point to the letters, past the eye


def tag_width(text: str) -> float:
    """Return how wide a tag is."""
    return _LETTERS + text_width(text, BODY, bold=True) + _AFTER


def draw_tag(text: str, corner: Point) -> DrawList:
    """Draw a tag with its top left `corner`."""
    (x, y), right = corner, corner[0] + tag_width(text)
    middle, bottom = y + HEIGHT / 2, y + HEIGHT
    outline = ((x, middle), (x + _POINT, y), (right, y), (right, bottom), (x + _POINT, bottom))
    pen = Style(fill=PAPER, stroke=INK, width=THIN)
    return (
        Poly(outline, pen, closed=True),
        Circle((x + 210, middle), 55, Style(stroke=INK, width=THIN)),
        say((x + _LETTERS, centred_baseline(middle, BODY)), text, bold=True),
    )
