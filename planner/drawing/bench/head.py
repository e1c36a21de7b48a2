"""An end's head (badge, title, side tag, where the pinout came from) and its scale bar."""

from planner.drawing.bench.facts import EndFacts
from planner.drawing.bench.parts import Side
from planner.drawing.bench.shapes import box_of
from planner.drawing.looks import Look
from planner.drawing.marks import mark
from planner.drawing.metrics import clipped, text_width
from planner.drawing.primitives import Circle, DrawList, Path, Point, Poly, Rect, Style, Text

HEAD_HEIGHT, LOW_HEAD_HEIGHT, BADGE = 44.0, 24.0, 22.0
# How far before its jacket the head of a right end begins, and the least width of a head, px.
HEAD_LEAD, HEAD_LEAST = 22.0, 170.0
_SOLDER, _MATING, _MATING_SHORT = "Solder side", "Mating side, mirrored", "Mirrored"
_STEPS_MM = (0.5, 1.0, 2.0, 3.0, 5.0, 10.0, 20.0, 30.0, 50.0)


def badge(letter: str, x: float, y: float, look: Look) -> DrawList:
    """Draw an end's letter in its square; a longer name widens it. (x, y): top left."""
    width = max(BADGE, text_width(letter, 15, bold=True) + 10)
    return (
        Rect((x, y), width, BADGE, Style(fill=look.ink), radius=3),
        Text((x + width / 2, y + 16.45), letter, 15, look.paper, bold=True, anchor="middle"),
    )


def _solder_tag(x: float, y: float, look: Look, *, worded: bool = True) -> DrawList:
    """Draw the solid tag with the iron; its point is at (x, y)."""
    words = _SOLDER if worded else ""
    right = x + 38 + (text_width(words, 12, bold=True) + 8 if words else 0)
    outline = (
        ("M", (x + 9, y - 12)), ("L", (right - 4, y - 12)),
        ("C", (right - 1.8, y - 12, right, y - 10.2, right, y - 8)), ("L", (right, y + 8)),
        ("C", (right, y + 10.2, right - 1.8, y + 12, right - 4, y + 12)),
        ("L", (x + 9, y + 12)), ("L", (x, y)), ("Z", ()),
    )  # fmt: skip
    tip = ((x + 17, y + 6), (x + 20.5, y + 0.5), (x + 22.5, y + 2.5))
    rod, grip = ((x + 22.4, y + 0.6), (x + 25.5, y - 2.5)), ((x + 26.2, y - 3.2), (x + 30, y - 7))
    return (
        Path(outline, Style(fill=look.ink)),
        Circle((x + 9, y), 2.2, Style(fill=look.paper)),
        Poly(tip, Style(fill=look.paper), closed=True),
        Poly(rod, Style(stroke=look.paper, width=2.4)),
        Poly(grip, Style(stroke=look.paper, width=4.2, cap="round")),
        *((Text((x + 38, y + 4.36), words, 12, look.paper, bold=True),) if words else ()),
    )


def _mating_tag(x: float, y: float, look: Look, *, worded: bool = True) -> DrawList:
    """Draw the ochre outlined tag, notched at its other end."""
    words = _MATING if worded else _MATING_SHORT
    right = x + text_width(words, 12, bold=True) + 26
    points = ((x, y - 12), (right - 9, y - 12), (right, y), (right - 9, y + 12), (x, y + 12))
    pen = Style(fill=look.caution_wash, stroke=look.caution, width=2)
    return (
        Poly(points, pen, closed=True),
        Circle((right - 11, y), 2.4, Style(fill=look.caution)),
        Text((x + 7, y + 4.36), words, 12, look.ink, bold=True),
    )


def tag_width(side: Side, *, worded: bool = True) -> float:
    """Return the width of the side tag in px; without its words it is the shape and an icon."""
    if side == "solder":
        return 46 + text_width(_SOLDER, 12, bold=True) if worded else 38
    return 26 + text_width(_MATING if worded else _MATING_SHORT, 12, bold=True)


def head(
    facts: EndFacts, look: Look, side: Side, room: float, *, low: bool = False
) -> tuple[DrawList, float]:
    """Draw the head from its top left corner; return it with its width, at most about `room`.

    A `low` one has a single line: of where the pinout came from, only a doubt is marked.
    """
    letter = badge(facts.end, 0, 0, look)
    left = max(BADGE, text_width(facts.end, 15, bold=True) + 10) + 8
    least = text_width(facts.name or facts.title, 15, bold=True)
    # The side is said on the canvas's own head too: its words go before the end's name is cut.
    worded = least <= room - left - 14 - tag_width(side)
    free = room - left - 14 - tag_width(side, worded=worded)
    # Where both do not fit, the end's own name stands above and the part goes to the line below.
    split = bool(facts.name) and text_width(facts.title, 15, bold=True) > free
    title = clipped(facts.name if split else facts.title, 15, free, bold=True)
    items = (*letter, Text((left, 16.45), title, 15, look.ink, bold=True))
    tag_x = left + text_width(title, 15, bold=True) + 14
    if facts.connector is not None:
        draw = _solder_tag if side == "solder" else _mating_tag
        items += draw(tag_x, 11, look, worded=worded)
    if low:
        items += _doubt(facts, (box_of(items)[2] + 14, 11), look)
        return items, box_of(items)[2]
    words = f"{facts.part}: {facts.source_words}" if split and facts.part else facts.source_words
    items += _source_line(facts, words, look, left, room)
    return items, box_of(items)[2]


def _source_line(facts: EndFacts, words: str, look: Look, left: float, room: float) -> DrawList:
    marked = _doubt(facts, (left + 6, 32), look)
    x = left + (18 if marked else 0)
    words = clipped(words, 12, room - x)
    return (*marked, Text((x, 36.4), words, 12, look.ink2))


def _doubt(facts: EndFacts, at: Point, look: Look) -> DrawList:
    """Draw the caution of a pinout that is not confirmed, or nothing."""
    doubtful = facts.pinout is not None and not facts.pinout.confirmed
    return mark("caution", at, 7, look) if doubtful else ()


def compact_head(facts: EndFacts, look: Look, room: float) -> tuple[DrawList, float]:
    """Draw badge and title alone, for ends that are shown small; 22 px high."""
    left = max(BADGE, text_width(facts.end, 15, bold=True) + 10) + 8
    title = clipped(facts.name or facts.title, 13, room - left, bold=True)
    items = (*badge(facts.end, 0, 0, look), Text((left, 15.7), title, 13, look.ink, bold=True))
    width = left + text_width(title, 13, bold=True)
    return items + _doubt(facts, (width + 12, 11), look), width + 20


def scale_bar(scale: float, look: Look, words: str = "", room: float = 90.0) -> DrawList:
    """Draw a scale bar from its top left corner, with a line of words under it."""
    fitting = [step for step in _STEPS_MM if step * scale <= room]
    length_mm = fitting[-1] if fitting else _STEPS_MM[0]
    pieces = {"2": 2, "3": 3, "5": 5, "1": 2}[f"{length_mm:g}".replace("0.", "").strip("0")[0]]
    step = length_mm * scale / pieces
    pen = Style(stroke=look.ink, width=1)
    items: DrawList = tuple(
        Rect(
            (step * place, 3), step, 6,
            Style(fill=look.ink if place % 2 == 0 else look.paper, stroke=look.ink, width=1),
        )
        for place in range(pieces)
    )  # fmt: skip
    for x in (0.0, step * pieces):
        items += (Poly(((x, 0), (x, 12)), pen),)
    items += (Text((step * pieces + 7, 10.4), f"{length_mm:g} mm", 12, look.ink2),)
    return items + ((Text((0, 32), words, 12, look.ink2),) if words else ())
