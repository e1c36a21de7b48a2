"""What the proving panels share: numbered titles, contacts with their end, boxes, pitches."""

from dataclasses import dataclass

from planner.drawing.metrics import text_width
from planner.drawing.primitives import Anchor, DrawList, Point, Poly, Rect, Style
from planner.sheet.badge import badge
from planner.sheet.leaf import Making
from planner.sheet.lettering import (
    BIG,
    BODY,
    HEAD,
    INK,
    PEN,
    TITLE_HEIGHT,
    box,
    cap,
    rule,
    say,
)
from planner.wiring.partners import Contact

# The kind of step that each panel is.
_KINDS = {
    "sweep": "prove_sweep",
    "continuity": "prove_joints",
    "isolation": "prove_bridges",
    "wiggle": "prove_wiggle",
    "listen": "prove_listen",
    "sign": "prove_sign",
}
TICK = 620.0
BADGE = 520.0
TOP = TITLE_HEIGHT + 160
MOST_HIGH = 11000.0  # of one panel in a column


@dataclass(frozen=True, slots=True)
class Pitches:
    """How far apart rows stand: Letter is lower than A4, and rows give way before type does."""

    row: float
    sweep: float


def pitches(making: Making) -> Pitches:
    """Return the pitches for the paper."""
    return Pitches(670.0, 960.0) if making.paper_name == "a4" else Pitches(590.0, 860.0)


def step_number(making: Making, panel: str) -> str:
    """Return the number of the step that a panel is, or nothing where no step says so."""
    for number, step in enumerate(making.steps, start=1):
        if step.kind == _KINDS[panel]:
            return str(number)
    return ""


def title(
    making: Making, panel: str, width: float, note: str = "", *, first: bool = True
) -> DrawList:
    """Draw a panel's title with the number of its step, over its rule; or that it goes on.

    The note at the right is left out where it has no room.
    """
    number, name = step_number(making, panel), making.words(f"proving.{panel}")
    if not first:
        name, note = making.words("page.goes_on", title=name), ""
    base = TITLE_HEIGHT - 160
    x = text_width(number, BIG, bold=True) + 220 if number else 0.0
    items = [say((0, base), number, BIG, bold=True)] if number else []
    items.append(say((x, base), name, HEAD, bold=True))
    if note and x + text_width(name, HEAD, bold=True) + text_width(note, BODY) + 150 < width:
        items.append(say((width, base), note, anchor="end"))
    return (*items, rule(0, width, TITLE_HEIGHT))


def named(
    contact: Contact, at: Point, *, end: bool = True, size: float = HEAD
) -> tuple[DrawList, float]:
    """Draw a contact's badge of its end and its name, `at` the left of the row's middle.

    Returns also how wide it is.
    """
    x, y = at
    mark, width = badge(contact[0], (x, y - BADGE / 2), BADGE) if end else ((), -130.0)
    start = x + width + 130
    name = say((start, y + cap(size) / 2), contact[1], size, bold=True)
    return (*mark, name), start - x + text_width(contact[1], size, bold=True)


def named_width(contact: Contact, *, end: bool = True, size: float = HEAD) -> float:
    """Return how wide a named contact is."""
    return named(contact, (0, 0), end=end, size=size)[1]


def arrow(left: float, middle: float) -> DrawList:
    """Draw a short arrow both ways: the two are joined."""
    y = middle
    pen = Style(stroke=INK, width=PEN)
    heads = tuple(
        Poly(
            ((tip, y), (tip + way * 170, y - 90), (tip + way * 170, y + 90)), Style(fill=INK), True
        )
        for tip, way in ((left, 1), (left + ARROW, -1))
    )
    return (Poly(((left + 100, y), (left + ARROW - 100, y)), pen), *heads)


ARROW = 560.0


def apart(left: float, middle: float) -> DrawList:
    """Draw a broken line: the two are not joined."""
    pen = Style(stroke=INK, width=PEN)
    return tuple(
        Poly(((left + 180 * place, middle), (left + 180 * place + 110, middle)), pen)
        for place in range(3)
    )


APART = 470.0


def tick(right: float, middle: float, side: float = TICK) -> Rect:
    """Draw a box to tick, its right edge at `right`."""
    return box((right - side, middle - side / 2), side, side)


def line(at: Point, text: str, *, bold: bool = False, anchor: Anchor = "start") -> DrawList:
    """Set one line of body text with its middle at `at`."""
    return (say((at[0], at[1] + cap(BODY) / 2), text, bold=bold, anchor=anchor),)
