"""The solder side of a connector with many contacts: two rows with columns of names and flags.

Where the contacts do not lie in two level rows, the face is drawn large with numbers only, and the
landing table carries the rest.
"""

import math
from dataclasses import dataclass
from itertools import pairwise

from planner.drawing.face import contact_point, contact_radius_mm, shell_reach_mm
from planner.drawing.fitting.discs import order_disc
from planner.drawing.looks import PRINT
from planner.drawing.metrics import text_width
from planner.drawing.primitives import DrawList, Point, Poly, Style
from planner.model.connector import Connector
from planner.sheet.boxes import contact_boxes, free_spot
from planner.sheet.face_drawing import TIE, leads_or_face
from planner.sheet.face_panel import best_scale
from planner.sheet.facts import EndFacts, Joint
from planner.sheet.flags import patch
from planner.sheet.frame import Framing, bar_and_words, mating_strip, scale_text
from planner.sheet.lettering import BODY, HEAD, HEAVY, INK, PAPER, cap, say
from planner.sheet.paper import LIVE_WIDTH

_PATCH = 420.0
_LINE = 400.0
_DISC, _DISC_OUT = 270.0, 330.0
_STEM = 720.0
_FACE_HEIGHT = 3900.0
_SHORT = {"shield": "SH", "chassis": "CH"}  # where a column is too narrow for the word
_FLAGS = 2  # flags that a column shows; the table has them all


@dataclass(frozen=True, slots=True)
class _Rows:
    """The upper and the lower row, left to right, at a scale in 0.01 mm a mm."""

    upper: tuple[Joint, ...]
    lower: tuple[Joint, ...]
    pitch: float


def comb_panel(
    facts: EndFacts, connector: Connector, *, withheld: bool = False
) -> tuple[DrawList, float]:
    """Draw an end with many contacts over the live width; return the items and the height."""
    scale = best_scale(connector, LIVE_WIDTH - 1400, _FACE_HEIGHT)
    rows = _rows(facts, connector, scale * 100)
    if rows is None:
        return _plain_panel(facts, connector)
    half = shell_reach_mm(connector)[1] * scale * 100
    above, below = (_deepest(row, rows.pitch) for row in (rows.upper, rows.lower))
    framing = Framing(LIVE_WIDTH, 900, above + below + 2 * (_STEM + half) + 100)
    centre = (LIVE_WIDTH / 2, framing.area_top + above + _STEM + half + 50)
    comb = _Comb(facts, connector, scale * 100, centre, half, withheld=withheld)
    items = (
        *bar_and_words(framing, facts, connector, scale_text(scale)),
        *comb.draw(rows),
        *mating_strip(framing, facts, connector),
    )
    return items, framing.height


def _spot(facts: EndFacts, connector: Connector, contact: str, scale: float) -> Point:
    return contact_point(connector, contact, centre=(0, 0), scale=scale, turn_deg=facts.turn_deg)


def _rows(facts: EndFacts, connector: Connector, scale: float) -> _Rows | None:
    """Return the two rows, or None if the contacts lie otherwise or too close to label."""
    spots = {j.contact.id: _spot(facts, connector, j.contact.id, scale) for j in facts.joints}
    levels = sorted({round(y / 10) for _, y in spots.values()})
    if len(levels) != 2:
        return None
    by_x = sorted(facts.joints, key=lambda joint: spots[joint.contact.id][0])
    rows = [
        tuple(joint for joint in by_x if round(spots[joint.contact.id][1] / 10) == level)
        for level in levels
    ]
    pitch = math.inf
    for row in rows:
        xs = [spots[joint.contact.id][0] for joint in row]
        pitch = min([pitch, *(b - a for a, b in pairwise(xs))])
    return _Rows(rows[0], rows[1], min(pitch, 2000)) if pitch >= 620 else None


def _pieces(text: str, width: float, *, bold: bool) -> list[str]:
    """Break a code or signals so that each piece fits a column."""
    pieces: list[str] = []
    for word in text.split():
        if text_width(word, BODY, bold) <= width:
            pieces.append(word)
            continue
        short = _SHORT.get(word)
        halves = [word[place : place + 2] for place in range(0, len(word), 2)]
        pieces += [short] if short else halves
    return pieces


def _stack_height(joint: Joint, pitch: float) -> float:
    room = pitch - 60
    lines = len(_pieces(joint.carries, room, bold=False))
    shown = joint.flags[:_FLAGS]
    lines += sum(len(_pieces(flag.code, room, bold=True)) for flag in shown)
    lines += len(joint.flags) > _FLAGS
    return cap(HEAD) + 150 + lines * _LINE + len(shown) * (_PATCH + 120) + 100


class _Comb:
    def __init__(
        self,
        facts: EndFacts,
        connector: Connector,
        scale: float,
        centre: Point,
        half: float,
        *,
        withheld: bool,
    ) -> None:
        self.facts, self.connector = facts, connector
        self.scale, self.centre, self.half = scale, centre, half
        self.withheld = withheld

    def draw(self, rows: _Rows) -> DrawList:
        drawn = leads_or_face(self.facts, self.connector, self.centre, self.scale)
        columns = [
            self._column(joint, rows.pitch, _deepest(row, rows.pitch), up=row is rows.upper)
            for row in (rows.upper, rows.lower)
            for joint in row
        ]
        return (*drawn, *(item for column in columns for item in column))

    def _column(self, joint: Joint, pitch: float, depth: float, *, up: bool) -> DrawList:
        x, y = _spot(self.facts, self.connector, joint.contact.id, self.scale)
        here = (self.centre[0] + x, self.centre[1] + y)
        way = -1 if up else 1
        foot = (here[0], self.centre[1] + way * (self.half + _STEM))
        items = [self._tie(joint, here, foot)]
        items.append(_stack(joint, foot, pitch, up=up))
        # Names stand outmost and level, so that they read as one row above and one below.
        base = foot[1] - depth + cap(HEAD) if up else foot[1] + depth
        items.append((say((here[0], base), joint.contact.id, HEAD, bold=True, anchor="middle"),))
        return tuple(item for drawn in items for item in drawn)

    def _tie(self, joint: Joint, here: Point, foot: Point) -> DrawList:
        """Tie a contact to its column, with its order disc at the rim of the shell."""
        if not joint.number:
            return ()
        way = 1 if foot[1] > here[1] else -1
        start = (here[0], here[1] + way * contact_radius_mm(joint.contact) * self.scale * 0.6)
        at = (here[0], self.centre[1] + way * (self.half + _DISC_OUT))
        owner = f"order/{joint.contact.id}"
        return (
            Poly((start, at), Style(stroke=PAPER, width=HEAVY)),
            Poly((start, at), Style(stroke=INK, width=TIE)),
            *order_disc(at, joint.number, _DISC, PRINT, owner, withheld=self.withheld),
        )


def _deepest(row: tuple[Joint, ...], pitch: float) -> float:
    return max((_stack_height(joint, pitch) for joint in row), default=0.0)


def _stack(joint: Joint, foot: Point, pitch: float, *, up: bool) -> DrawList:
    """Set from the face outwards: each flag as patch and code, then what is carried."""
    (x, y), room, way = foot, pitch - 60, -1 if up else 1
    items: list[DrawList] = []

    def lines(y: float, text: str, *, bold: bool) -> float:
        pieces = _pieces(text, room, bold=bold)
        for piece in reversed(pieces) if up else pieces:
            base = y if up else y + cap(BODY)
            items.append((say((x, base), piece, bold=bold, anchor="middle"),))
            y += way * _LINE
        return y

    y += way * 50
    for flag in joint.flags[:_FLAGS]:
        top = y - _PATCH if up else y
        items.append(patch(flag, (x - _PATCH / 2, top), _PATCH))
        y = lines(y + way * (_PATCH + 120), flag.code, bold=True)
    if len(joint.flags) > _FLAGS:
        y = lines(y, f"+{len(joint.flags) - _FLAGS}", bold=True)
    lines(y, joint.carries, bold=False)
    return tuple(item for drawn in items for item in drawn)


def _plain_panel(facts: EndFacts, connector: Connector) -> tuple[DrawList, float]:
    """Draw the face alone with what numbers fit; the table says the rest."""
    scale = best_scale(connector, LIVE_WIDTH - 1400, 7500)
    half = shell_reach_mm(connector)[1] * scale * 100
    framing = Framing(LIVE_WIDTH, 900, 2 * half + 400)
    centre = (LIVE_WIDTH / 2, framing.area_top + framing.area / 2)
    drawn = leads_or_face(facts, connector, centre, scale * 100)
    names = _names(facts, connector, scale * 100, centre)
    items: list[DrawList] = [
        bar_and_words(framing, facts, connector, scale_text(scale)),
        drawn,
        names,
        mating_strip(framing, facts, connector),
    ]
    if len(names) < len(facts.joints):
        at = (LIVE_WIDTH - 250, framing.area_top + 100)
        items.append((say(at, "Numbers without room: see the table.", anchor="end"),))
    return tuple(item for part in items for item in part), framing.height


def _names(facts: EndFacts, connector: Connector, scale: float, centre: Point) -> DrawList:
    taken = contact_boxes(connector, centre, scale, facts.turn_deg)
    items = []
    for joint in facts.joints:
        x, y = _spot(facts, connector, joint.contact.id, scale)
        here = (centre[0] + x, centre[1] + y)
        size = (text_width(joint.contact.id, BODY, bold=True), cap(BODY))
        start = contact_radius_mm(joint.contact) * scale
        found = free_spot(here, start, size, math.pi / 2, taken)
        if found is not None:
            taken.append(found)
            at = (found.middle[0], found.bottom)
            items.append(say(at, joint.contact.id, bold=True, anchor="middle"))
    return tuple(items)
