"""Lines of text with bold pieces and order discs in them, as the sheet prints them."""

from planner.drawing import rich
from planner.drawing.looks import PRINT
from planner.drawing.primitives import DrawList, Point
from planner.sheet.lettering import BODY, PITCH

DISC = 256.0


def rich_lines(
    at: Point, text: str, width: float, *, size: float = BODY, pitch: float = PITCH
) -> tuple[DrawList, float]:
    """Set text no wider than `width`, its first baseline at `at`; also return the height.

    `*bold*` is bold; `[3]` is the disc of the third joint; see planner/markup.py.
    """
    return rich.rich_text(at, text, width, rich.Type(size, pitch, DISC), PRINT)


def rich_width(text: str, size: float = BODY) -> float:
    """Return how wide text is on one line."""
    return rich.rich_width(text, rich.Type(size, PITCH, DISC))
