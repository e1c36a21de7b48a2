"""The badge of an end or a split: a solid square with a white letter."""

from planner.drawing.metrics import text_width
from planner.drawing.primitives import DrawList, Point, Rect, Style, centred_baseline
from planner.sheet.lettering import INK, PAPER, say


def badge(text: str, corner: Point, side: float) -> tuple[DrawList, float]:
    """Draw an end's badge, a solid square with a white letter; return it and its width."""
    size = side / 0.727 * 0.7
    width = max(side, text_width(text, size, bold=True) + side * 0.3)
    ground = Rect(corner, width, side, Style(fill=INK))
    middle = (corner[0] + width / 2, centred_baseline(corner[1] + side / 2, size))
    letter = say(middle, text, size, bold=True, anchor="middle", colour=PAPER)
    return (ground, letter), width
