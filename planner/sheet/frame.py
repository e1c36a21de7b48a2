"""What frames every face: the eye bar, the words about the view, the mating key."""

import math
from collections import Counter
from dataclasses import dataclass

from planner.drawing.face import contact_point, shell_outlines, shell_reach_mm
from planner.drawing.looks import PRINT
from planner.drawing.marks import eye
from planner.drawing.metrics import text_width, wrapped
from planner.drawing.primitives import (
    Circle,
    DrawList,
    Point,
    Poly,
    Rect,
    Style,
    Text,
    centred_baseline,
)
from planner.geometry.views import mirrored_point, turned_point
from planner.model.connector import Connector
from planner.sheet.boxes import Box
from planner.sheet.facts import EndFacts
from planner.sheet.lettering import BIG, BODY, HAIR, HEAD, INK, PAPER, RULE, cap, say
from planner.sheet.view_picture import WIDTH, view_picture
from planner.units import number

STRIP = 1620.0
_LINE = 460.0
_KEY = 780.0  # radius of the mating key
_KEY_NAMES = 9  # contacts that still have a name in the key


@dataclass(frozen=True, slots=True)
class Framing:
    """The frame's width, the bar's height, and the height of the area for the face.

    `in_corners`: key and true size stand in the free lower corners of the area, not under it.
    """

    width: float
    bar: float
    area: float
    lines: int = 2
    in_corners: bool = False

    @property
    def area_top(self) -> float:
        """Where the area for the face starts."""
        return self.bar + self.lines * _LINE + 250

    @property
    def strip_top(self) -> float:
        """Where the strip with the mating key starts."""
        if self.in_corners:
            return self.area_top + self.area - STRIP
        return self.area_top + self.area + 60

    @property
    def height(self) -> float:
        """The height of the whole frame."""
        return self.strip_top + STRIP


def scale_text(scale: float) -> str:
    """Print a scale as `8:1`; reductions as `1:2`."""
    return f"{number(scale)}:1" if scale >= 1 else f"1:{number(1 / scale)}"


def bar_and_words(framing: Framing, facts: EndFacts, connector: Connector, scale: str) -> DrawList:
    """Draw the frame, the bar with eye and scale, and the words about the view."""
    width, bar = framing.width, framing.bar
    size = BIG if width > 10000 else HEAD + 80
    frame = Rect((0, 0), width, framing.height, Style(fill=PAPER, stroke=INK, width=RULE))
    ground = Rect((0, 0), width, bar, Style(fill=INK))
    seen_at = 1350.0
    seen = BODY if width <= 10000 else HEAD
    seen_from, side = facts.words("end.seen_from"), facts.words("page.solder_side")
    side_at = seen_at + text_width(seen_from, seen) + 200
    words = (
        say((seen_at, centred_baseline(bar / 2, seen)), seen_from, seen, colour=PAPER),
        Text((side_at, centred_baseline(bar / 2, size)), side, size, PAPER, bold=True),
        Text(
            (width - 250, centred_baseline(bar / 2, HEAD)),
            scale,
            HEAD,
            PAPER,
            bold=True,
            anchor="end",
        ),
    )
    lines = view_words(facts, connector, width - 500, framing.lines)
    said = tuple(
        say((250, bar + 430 + _LINE * place), text, bold=place > 0)
        for place, text in enumerate(lines)
    )
    used = max((text_width(text.text, BODY, text.bold) for text in said), default=0.0)
    picture = view_picture((width - 250, bar + 530)) if width - 700 - WIDTH > used else ()
    return (frame, ground, *eye((700, bar / 2), 850, PRINT, on_ink=True), *words, *said, *picture)


def view_words(
    facts: EndFacts, connector: Connector, width: float, lines: int = 2
) -> tuple[str, ...]:
    """Say what faces the reader, then how the contacts lie; at most `lines` lines in all."""
    said = facts.words
    seen = said(f"end.face_you_{_commonest_kind(connector)}")
    both = f"{seen} {said('end.cable_comes')}"
    seen = both if text_width(both, BODY) <= width else seen
    order = wrapped(datum(facts, connector), BODY, width, bold=True)
    return (seen, *order[: lines - 1]) if lines else ()


def _commonest_kind(connector: Connector) -> str:
    """Return the kind that most terminals have; `all` if as many are of another."""
    counts = Counter(contact.terminal.kind for contact in connector.contacts).most_common()
    one = len(counts) == 1 or counts[0][1] > counts[1][1]
    return counts[0][0] if one else "all"


def datum(facts: EndFacts, connector: Connector) -> str:
    """Say the order of the contacts from a fixed one, so that the view cannot be mistaken."""
    spots = {
        contact.id: turned_point(contact.terminal.x_mm, contact.terminal.y_mm, facts.turn_deg)
        for contact in connector.contacts
    }
    if connector.shell.shape == "d" or len(spots) > 8:
        corners = (connector.contacts[0].id, connector.contacts[-1].id)
        return " ".join(_stands(name, _quarter(spots[name]), facts) for name in corners)
    start = "S" if "S" in spots else connector.contacts[0].id
    around = {name: at for name, at in spots.items() if math.hypot(*at) > 0.2}
    if len(around) < 3 or start not in around:
        return " ".join(_stands(name, _corner(at), facts) for name, at in spots.items())
    first_deg = _clock_deg(around[start])
    order = sorted(around, key=lambda name: ((first_deg - _clock_deg(around[name])) % 360, name))
    others = ", ".join(name for name in order if name != start)
    clockwise = facts.words("end.clockwise", start=start, others=others)
    return f"{_stands(start, _corner(around[start]), facts)} {clockwise}"


def _stands(name: str, where: str, facts: EndFacts) -> str:
    return facts.words("end.stands", contact=name, where=facts.words(f"end.{where}"))


def _clock_deg(at: Point) -> float:
    return math.degrees(math.atan2(at[1], at[0]))


def _quarter(at: Point) -> str:
    return f"{'upper' if at[1] > 0 else 'lower'}_{'right' if at[0] > 0 else 'left'}"


def _corner(at: Point) -> str:
    """Return the key of the words for a direction, such as `up`, `upper_left`, `middle`."""
    x, y = at
    size = max(math.hypot(x, y), 1e-9)
    level = "upper" if y > 0.2 * size else "lower" if y < -0.2 * size else ""
    side = "right" if x > 0.2 * size else "left" if x < -0.2 * size else ""
    if not side:
        return {"upper": "up", "lower": "down", "": "middle"}[level]
    return f"{level}_{side}" if level else side


def _key_lines(facts: EndFacts) -> tuple[tuple[str, bool], ...]:
    """Return the words beside the mating key: text, bold."""
    words = facts.words
    return (
        (words("end.mating_side"), False),
        (words("end.mirrored"), False),
        (words("end.not_this_one"), True),
    )


def key_words_box(framing: Framing, facts: EndFacts) -> Box:
    """Return where the words beside the mating key stand."""
    x, top = 250 + 2 * _KEY + 130, framing.strip_top
    width = max(text_width(text, BODY, bold) for text, bold in _key_lines(facts))
    return Box(x, top + 420 - cap(BODY), x + width, top + 440 + 2 * _LINE)


def key_boxes(framing: Framing, facts: EndFacts) -> tuple[Box, Box]:
    """Return where the mating key stands, and its words."""
    top = framing.strip_top + 20
    return Box(250, top, 250 + 2 * _KEY, top + 2 * _KEY), key_words_box(framing, facts)


def mating_strip(framing: Framing, facts: EndFacts, connector: Connector) -> DrawList:
    """Draw the mirrored key of the mating side at the left of its strip, marked as not this one."""
    top = framing.strip_top
    key = _key(facts, connector, (250 + _KEY, top + _KEY + 20))
    x = 250 + 2 * _KEY + 130
    words = tuple(
        say((x, top + 420 + _LINE * place), text, bold=bold)
        for place, (text, bold) in enumerate(_key_lines(facts))
    )
    return (*key, *words)


def _key(facts: EndFacts, connector: Connector, centre: Point) -> DrawList:
    """Draw the mating side small, dotted and thin; names where they do not crowd."""
    pen = Style(stroke=INK, width=HAIR, dash=(90, 70))
    if connector.shell.shape == "d":
        return _d_key(facts, connector, centre, pen)
    items: list[Circle | Text] = [Circle(centre, _KEY, pen)]
    if connector.mating == "concentric":
        items += [Circle(centre, radius, Style(stroke=INK, width=HAIR)) for radius in (190, 110)]
    contacts = connector.contacts[:_KEY_NAMES]
    for contact in contacts:
        x, y = turned_point(contact.terminal.x_mm, contact.terminal.y_mm, facts.turn_deg)
        x, y = mirrored_point(x, y)
        size = math.hypot(x, y)
        reach = _KEY - 280 if size > 0.2 else 0.0
        at = (centre[0] + x / max(size, 1e-9) * reach, centre[1] - y / max(size, 1e-9) * reach)
        items.append(say((at[0], at[1] + cap(BODY) / 2), contact.id, anchor="middle"))
    return _uncrowded(items)


def _uncrowded(items: list[Circle | Text]) -> DrawList:
    """Leave out names that would lie on one another."""
    kept: list[Circle | Text] = []
    for item in items:
        if isinstance(item, Text) and any(
            isinstance(other, Text) and _close(item, other) for other in kept
        ):
            continue
        kept.append(item)
    return tuple(kept)


def _close(one: Text, other: Text) -> bool:
    width = (text_width(one.text, one.size) + text_width(other.text, other.size)) / 2
    return (
        abs(one.at[0] - other.at[0]) < width + 30
        and abs(one.at[1] - other.at[1]) < cap(one.size) + 30
    )


def _d_key(facts: EndFacts, connector: Connector, centre: Point, pen: Style) -> DrawList:
    half_width, _ = shell_reach_mm(connector)
    scale = (_KEY - 40) / half_width
    outline, _ = shell_outlines(
        connector, centre=centre, scale=scale, turn_deg=facts.turn_deg, side="mating"
    )
    first = connector.contacts[0]
    at = contact_point(
        connector, first.id, centre=centre, scale=scale, turn_deg=facts.turn_deg, side="mating"
    )
    above = at[1] < centre[1]
    level = (
        min(y for _, y in outline) - 80 if above else max(y for _, y in outline) + 80 + cap(BODY)
    )
    return (
        Poly(outline, pen, closed=True),
        Circle(at, 45, Style(fill=INK)),
        say((at[0], level), first.id, anchor="middle"),
    )
