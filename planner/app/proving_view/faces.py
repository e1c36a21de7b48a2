"""The ends that a reading or a fault is about, as faces with the probes and the faults marked.

Shapes say it first: the probe that is held is a whole ring, the one that touches a dashed ring;
faults are drawn by `planner.drawing.proving_face`.
"""

import math
from dataclasses import dataclass
from itertools import combinations
from typing import TYPE_CHECKING, Any

from planner.drawing.face import contact_point, contact_radius_mm, face, shell_reach_mm
from planner.drawing.marks import mark
from planner.drawing.metrics import clipped, text_width
from planner.drawing.primitives import (
    Circle,
    DrawList,
    Point,
    Rect,
    Style,
    Text,
    centred_baseline,
)
from planner.drawing.proving_face import Spot, fault_marks

if TYPE_CHECKING:
    from collections.abc import Collection

    from planner.drawing.looks import Look
    from planner.model.connector import Connector
    from planner.model.plan import Plan
    from planner.proving.diagnosing import Fault
    from planner.proving.reading import Contact

_LETTER, _HEAD, _MARGIN = 12.0, 26.0, 24.0
_MOST_SCALE = 30.0
# Contacts that come nearer than this are named only where they are marked, px.
_NAMES_FROM = 17.0


@dataclass(frozen=True)
class Marks:
    """Which contacts of one end are probed, and which faults are looked at."""

    end: str
    held: frozenset[str] = frozenset()
    touched: frozenset[str] = frozenset()
    faults: "tuple[Fault, ...]" = ()


def ends_shown(
    held: "Collection[Contact]", touched: "Collection[Contact]", faults: "Collection[Fault]"
) -> tuple[str, ...]:
    """Return the ends to show: where to look first, those of the probes, where it may be too."""
    faulty = (end for fault in faults for end, _ in fault.contacts)
    probed = (end for end, _ in (*held, *touched))
    maybe = (end for fault in faults for end in fault.ends)
    return tuple(dict.fromkeys((*faulty, *probed, *maybe)))


def end_ground(plan: "Plan", end: str, size: Point, look: "Look") -> DrawList:
    """Draw one end on a ground of `size` px: its letter and name, its face, which side it is."""
    stand = _stand_of(plan, end, size)
    if stand is None:
        return ()
    landed = frozenset(it.contact for it in plan.landings if it.end == end)
    side = "solder side, turned upright" if stand.turn_deg else "solder side"
    return (
        *_title(plan, end, size[0], look),
        *face(stand.connector, landed=landed, look=look, **stand.where),
        Text((8, size[1] - 6), side, _LETTER, look.ink2),
    )


def end_marks(plan: "Plan", marks: Marks, size: Point, look: "Look") -> DrawList:
    """Draw what lies over that ground: the names of the contacts, probes, faults."""
    stand = _stand_of(plan, marks.end, size)
    return _contacts(marks, stand, look) if stand is not None else ()


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


def _stand_of(plan: "Plan", end: str, size: Point) -> _Stand | None:
    """Fit a face into its room; one that is much wider than high is turned where that helps."""
    connector = plan.connector_of(end)
    if connector is None:
        return None
    half_wide, half_high = shell_reach_mm(connector)
    wide, high = (max(it - 2 * _MARGIN, 1) / 2 for it in (size[0], size[1] - _HEAD))
    flat = min(wide / half_wide, high / half_high, _MOST_SCALE)
    upright = min(wide / half_high, high / half_wide, _MOST_SCALE)
    turned = half_wide > 1.6 * half_high and upright > 1.2 * flat
    centre = (size[0] / 2, _HEAD + (size[1] - _HEAD) / 2)
    return _Stand(connector, centre, upright if turned else flat, 90.0 if turned else 0.0)


def _title(plan: "Plan", end: str, width: float, look: "Look") -> DrawList:
    wide = max(20.0, 10.0 + 8.5 * len(end))
    plate = Rect((8, 4), wide, 20.0, Style(fill=look.ink), radius=3.0)
    letter = Text(
        (8 + wide / 2, centred_baseline(14, 13.0)), end, 13.0, look.paper,
        bold=True, anchor="middle",
    )  # fmt: skip
    record, connector = plan.end_by_id[end], plan.connector_of(end)
    name = clipped(record.name or (connector.title if connector else ""), 13.0, width - wide - 24)
    return (
        plate,
        letter,
        Text((16 + wide, centred_baseline(14, 13.0)), name, 13.0, look.ink),
    )


def _contacts(marks: Marks, stand: _Stand, look: "Look") -> DrawList:
    """Draw the faults, the probes over them, and the names of what is marked over all."""
    contacts = stand.connector.contacts
    reach = {it.id: max(contact_radius_mm(it) * stand.scale, 9.0) for it in contacts}
    spots = {it.id: Spot(stand.at(it.id), reach[it.id]) for it in contacts}
    wrong = (it for fault in marks.faults for it in fault.contacts)
    faulty = {contact for end, contact in wrong if end == marks.end}
    marked = marks.held | marks.touched | faulty
    items = _names([it for it in spots if it not in marked], stand, look.ink2, look)
    items += fault_marks(marks.faults, marks.end, spots, stand.centre, look)
    for names, dash in ((marks.held, ()), (marks.touched, (5.0, 3.5))):
        for name in sorted(names & spots.keys()):
            far = reach[name] + (10 if name in faulty else 4)
            items += _ring(spots[name].at, far, look, dash)
    return (*items, *_names([it for it in spots if it in marked], stand, look.ink, look))


def _ring(at: Point, reach: float, look: "Look", dash: tuple[float, ...] = ()) -> DrawList:
    ground = Circle(at, reach, Style(stroke=look.paper, width=6))
    return (ground, Circle(at, reach, Style(stroke=look.accent, width=3, dash=dash)))


def _names(names: list[str], stand: _Stand, colour: str, look: "Look") -> DrawList:
    """Name contacts; those that stand too near each other are named only where they are marked."""
    if stand.pitch < _NAMES_FROM and colour != look.ink:
        return ()
    items: DrawList = ()
    for name in names:
        at = stand.at(name)
        wide = max(text_width(name, _LETTER, bold=True) / 2 + 3, 8.0)
        disc = Style(fill=look.paper, opacity=0.9)
        base = (at[0], centred_baseline(at[1], _LETTER))
        items += (
            Circle(at, min(wide, max(stand.pitch / 2, 7.0)), disc),
            Text(base, name, _LETTER, colour, bold=True, anchor="middle"),
        )
    return items


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
        items += (
            *mark("stop", (x + 150, y), 7.0, look),
            Text((x + 162, base), "look here", _LETTER, look.ink),
        )
    return items


def marks_at(
    end: str,
    held: "Collection[Contact]",
    touched: "Collection[Contact]",
    faults: "tuple[Fault, ...]",
) -> Marks:
    """Return what is marked at one end."""
    one, other = (frozenset(it[1] for it in group if it[0] == end) for group in (held, touched))
    return Marks(end, one, other, faults)
