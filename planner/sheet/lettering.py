"""Type and line weights on paper, in 0.01 mm.

Cap heights are the root-2 row of ISO 3098 (from memory). A font size is the cap height over 0.727,
the bundled face's cap height. BODY is the floor at the bench.
"""

from collections.abc import Sequence

from planner.drawing.looks import PRINT
from planner.drawing.metrics import clipped, text_width, wrapped
from planner.drawing.primitives import CAP_HEIGHT, Anchor, DrawList, Point, Poly, Rect, Style, Text

SMALL = 248.0  # cap 1.8: head labels and foot, never the bench
BODY = 344.0  # cap 2.5
HEAD = 481.0  # cap 3.5
BIG = 688.0  # cap 5
TAB = 963.0  # cap 7
SHOUT = 1376.0  # cap 10

HAIR = 25.0
THIN = 35.0
PEN = 50.0
RULE = 70.0
HEAVY = 100.0

INK = PRINT.ink
PAPER = PRINT.paper
PITCH = 460.0  # from one body line to the next

Run = tuple[str, bool]


def cap(size: float) -> float:
    """Return the height of capitals at a font size."""
    return size * CAP_HEIGHT


def say(
    at: Point,
    text: str,
    size: float = BODY,
    *,
    bold: bool = False,
    anchor: Anchor = "start",
    colour: str = INK,
) -> Text:
    """Set one line of text with its baseline at `at`."""
    return Text(at, text, size, colour, bold=bold, anchor=anchor)


def say_within(
    at: Point, text: str, width: float, size: float = BODY, *, bold: bool = False
) -> Text:
    """Set one line, cut with an ellipsis where it would be wider than `width`."""
    return say(at, clipped(text, size, width, bold=bold), size, bold=bold)


def say_runs(at: Point, runs: Sequence[Run], size: float = BODY) -> DrawList:
    """Set runs of regular and bold side by side; each at its own place, as edge spaces are lost."""
    items, x = [], at[0]
    for text, bold in runs:
        lead = text_width(" ", size, bold) * (len(text) - len(text.lstrip()))
        if text.strip():
            items.append(say((x + lead, at[1]), text.strip(), size, bold=bold))
        x += text_width(text, size, bold)
    return tuple(items)


def paragraph(
    at: Point,
    text: str,
    width: float,
    *,
    bold: bool = False,
    size: float = BODY,
    pitch: float = PITCH,
) -> tuple[DrawList, float]:
    """Set lines no wider than `width`, the first on the baseline `at`; also return the height."""
    lines = wrapped(text, size, width, bold=bold)
    items = tuple(
        say((at[0], at[1] + pitch * place), line, size, bold=bold)
        for place, line in enumerate(lines)
    )
    return items, pitch * len(lines)


def rule(left: float, right: float, y: float, width: float = RULE) -> Poly:
    """Draw a level rule."""
    return Poly(((left, y), (right, y)), Style(stroke=INK, width=width))


def box(corner: Point, width: float, height: float, pen: float = PEN) -> Rect:
    """Draw an open box."""
    return Rect(corner, width, height, Style(fill=PAPER, stroke=INK, width=pen))


def tick_box(corner: Point, side: float = 470.0) -> Rect:
    """Draw an empty square to tick in pencil."""
    return box(corner, side, side)


def panel_title(left: float, right: float, top: float, title: str, note: str = "") -> DrawList:
    """Draw a panel's title over its rule, a note at its right; TITLE_HEIGHT high."""
    base = top + TITLE_HEIGHT - 160
    items: list[Text | Poly] = [say((left, base), title, HEAD, bold=True)]
    if note:
        items.append(say((right, base), note, BODY, anchor="end"))
    return (*items, rule(left, right, top + TITLE_HEIGHT))


TITLE_HEIGHT = 600.0
