"""The ends that a reading or a fault is about, as faces with the probes and the faults marked.

Shapes say it first: the probe that is held is a whole ring, the one that touches a dashed ring; a
contact at fault has a square frame and the octagon of a stop.
"""

import math
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import TYPE_CHECKING, Any

from planner.drawing.face import contact_point, contact_radius_mm, face, shell_reach_mm
from planner.drawing.marks import mark
from planner.drawing.metrics import text_width
from planner.drawing.primitives import (
    Circle,
    DrawList,
    Point,
    Rect,
    Style,
    Text,
    centred_baseline,
)

if TYPE_CHECKING:
    from planner.drawing.looks import Look
    from planner.model.connector import Connector
    from planner.model.plan import Plan

Box = tuple[float, float, float, float]
_LETTER, _HEAD, _MARGIN = 12.0, 26.0, 24.0
_MOST_SCALE = 30.0
# Contacts that come nearer than this are named only where they are marked, px.
_NAMES_FROM = 17.0


@dataclass(frozen=True)
class Marks:
    """Which contacts of one end are probed, and which are at fault."""

    held: frozenset[str] = frozenset()
    touched: frozenset[str] = frozenset()
    faulty: frozenset[str] = frozenset()


def ends_shown(
    held: Sequence[tuple[str, str]],
    touched: Sequence[tuple[str, str]],
    faulty: Sequence[tuple[str, str]],
) -> tuple[str, ...]:
    """Return the ends to show: those of the faults, then those of the probes."""
    return tuple(dict.fromkeys(end for end, _ in (*faulty, *held, *touched)))


def end_drawn(plan: "Plan", end: str, marks: Marks, box: Box, look: "Look") -> DrawList:
    """Draw one end in a box: its letter and name, its face, what is marked on it."""
    connector = plan.connector_of(end)
    if connector is None:
        return ()
    x, y, width, height = box
    centre = (x + width / 2, y + _HEAD + (height - _HEAD) / 2)
    stand = _stand(connector, (width, height - _HEAD), centre)
    if stand.scale <= 0:
        return ()
    landed = frozenset(it.contact for it in plan.landings if it.end == end)
    side = "solder side, turned upright" if stand.turn_deg else "solder side"
    return (
        *_title(plan, end, (x, y), width, look),
        *face(connector, landed=landed, look=look, **stand.where),
        *_contacts(marks, stand, look),
        Text((x + 8, y + height - 6), side, _LETTER, look.ink2),
    )


@dataclass(frozen=True)
class _Stand:
    """Where a face stands, how large, and how far turned."""

    connector: "Connector"
    centre: Point
    scale: float
    turn_deg: float

    @property
    def where(self) -> "dict[str, Any]":
        """The same as the drawing functions take it."""
        return {"centre": self.centre, "scale": self.scale, "turn_deg": self.turn_deg}

    def at(self, contact: str) -> Point:
        """Return where a contact is drawn."""
        return contact_point(self.connector, contact, **self.where)

    @property
    def pitch(self) -> float:
        """How near the nearest two contacts come, px."""
        spots = [self.at(it.id) for it in self.connector.contacts]
        return min((math.dist(*two) for two in combinations(spots, 2)), default=math.inf)


def _stand(connector: "Connector", room: Point, centre: Point) -> _Stand:
    """Fit a face into its room; one that is much wider than high is turned where that helps."""
    half_wide, half_high = shell_reach_mm(connector)
    wide, high = (max(it - 2 * _MARGIN, 0) / 2 for it in room)
    flat = min(wide / half_wide, high / half_high, _MOST_SCALE)
    upright = min(wide / half_high, high / half_wide, _MOST_SCALE)
    turned = half_wide > 1.6 * half_high and upright > 1.2 * flat
    return _Stand(connector, centre, upright if turned else flat, 90.0 if turned else 0.0)


def _title(plan: "Plan", end: str, corner: Point, width: float, look: "Look") -> DrawList:
    x, y = corner
    wide = max(20.0, 10.0 + 8.5 * len(end))
    plate = Rect((x + 8, y + 4), wide, 20.0, Style(fill=look.ink), radius=3.0)
    letter = Text(
        (x + 8 + wide / 2, centred_baseline(y + 14, 13.0)), end, 13.0, look.paper,
        bold=True, anchor="middle",
    )  # fmt: skip
    record, connector = plan.end_by_id[end], plan.connector_of(end)
    name = record.name or (connector.title if connector else "")
    while name and text_width(name, 13.0) > width - wide - 24:
        name = name[:-2].rstrip() + "\u2026" if len(name) > 2 else ""
    return (
        plate,
        letter,
        Text((x + 16 + wide, centred_baseline(y + 14, 13.0)), name, 13.0, look.ink),
    )


def _contacts(marks: Marks, stand: _Stand, look: "Look") -> DrawList:
    items: DrawList = ()
    marked = marks.held | marks.touched | marks.faulty
    roomy = stand.pitch >= _NAMES_FROM
    for contact in stand.connector.contacts:
        at = stand.at(contact.id)
        reach = max(contact_radius_mm(contact) * stand.scale, 9.0) + 4
        if contact.id in marks.faulty:
            items += _faulty(at, reach, look)
        if contact.id in marks.held:
            items += _ring(at, reach, look)
        if contact.id in marks.touched:
            items += _ring(at, reach, look, dash=(5.0, 3.5))
        if roomy or contact.id in marked:
            items += _name(contact.id, at, look, marked=contact.id in marked)
    return items


def _ring(at: Point, reach: float, look: "Look", dash: tuple[float, ...] = ()) -> DrawList:
    ground = Circle(at, reach, Style(stroke=look.paper, width=6))
    return (ground, Circle(at, reach, Style(stroke=look.accent, width=3, dash=dash)))


def _faulty(at: Point, reach: float, look: "Look") -> DrawList:
    side = reach + 5
    corner = (at[0] - side, at[1] - side)
    pen = Style(stroke=look.stop, width=2.5)
    frame = Rect(corner, 2 * side, 2 * side, pen, radius=2)
    return (frame, *mark("stop", (at[0] + side, at[1] - side), 7.0, look))


def _name(contact: str, at: Point, look: "Look", *, marked: bool) -> DrawList:
    wide = max(text_width(contact, _LETTER, bold=True) / 2 + 3, 8.0)
    disc = Circle(at, wide, Style(fill=look.paper, opacity=0.9))
    words = Text(
        (at[0], centred_baseline(at[1], _LETTER)), contact, _LETTER,
        look.ink if marked else look.ink2, bold=True, anchor="middle",
    )  # fmt: skip
    return (disc, words)


def legend(corner: Point, look: "Look", *, faulty: bool) -> DrawList:
    """Say what the rings and frames mean."""
    x, y = corner
    base = centred_baseline(y, _LETTER)
    items: DrawList = (
        *_ring((x + 8, y), 6.0, look),
        Text((x + 20, base), "held", _LETTER, look.ink),
        *_ring((x + 68, y), 6.0, look, dash=(4.0, 2.5)),
        Text((x + 80, base), "touched", _LETTER, look.ink),
    )
    if faulty:
        frame = Style(stroke=look.stop, width=2)
        items += (
            Rect((x + 144, y - 6), 12, 12, frame, radius=1),
            Text((x + 162, base), "look here", _LETTER, look.ink),
        )
    return items


def marks_at(
    end: str,
    held: Collection[tuple[str, str]],
    touched: Collection[tuple[str, str]],
    faulty: Collection[tuple[str, str]],
) -> Marks:
    """Return what is marked at one end."""
    return Marks(
        *(frozenset(it[1] for it in group if it[0] == end) for group in (held, touched, faulty))
    )
