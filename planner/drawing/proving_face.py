"""Faults of a diagnosis marked on the face of an end, each kind by a shape of its own.

A bridge is a bold dashed link with a stop on it, an exchange an arrow each way, an open joint a
lead that breaks off, a high joint a double ring with its figure. Colour comes second.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from planner.drawing.looks import Look
from planner.drawing.marks import mark
from planner.drawing.metrics import text_width
from planner.drawing.primitives import (
    Circle,
    DrawList,
    Point,
    Poly,
    Rect,
    Style,
    Text,
    centred_baseline,
    owned,
)

if TYPE_CHECKING:
    from planner.proving.diagnosing.records import Fault

# More arrows than this at one end can't be followed: then the contacts are ringed only.
MOST_ARROWS = 6
_LETTER = 12.0


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a contact is drawn, and how far it reaches from there, in target units."""

    at: Point
    reach: float


def fault_owner(fault: "Fault") -> str:
    """Return the owner id of a fault's primitives."""
    return f"fault/{fault.kind}"


def fault_marks(
    faults: "Sequence[Fault]", end: str, spots: Mapping[str, Spot], centre: Point, look: Look
) -> DrawList:
    """Draw what is wrong at one end, over its face round `centre`.

    `spots` has the contacts that are drawn; what is not there gets no mark.
    """
    items: DrawList = ()
    for fault in faults:
        here = [name for at, name in fault.contacts if at == end and name in spots]
        if here:
            pen = _Pen(fault, end, spots, centre, look)
            items += owned(_DRAWN.get(fault.kind, _landed_otherwise)(pen, here), fault_owner(fault))
    return items


@dataclass(frozen=True)
class _Pen:
    """What a fault's marks are drawn with."""

    fault: "Fault"
    end: str
    spots: Mapping[str, Spot]
    centre: Point
    look: Look

    def line(self, *points: Point, width: float = 3.0, dash: tuple[float, ...] = ()) -> DrawList:
        unit = self.look.line
        halo = Style(stroke=self.look.paper, width=(width + 3.5) * unit, cap="round")
        pen = Style(stroke=self.look.stop, width=width * unit, dash=tuple(it * unit for it in dash))
        return (Poly(points, halo), Poly(points, pen))

    def ring(self, name: str, more: float = 4.0, dash: tuple[float, ...] = ()) -> DrawList:
        unit, spot = self.look.line, self.spots[name]
        dashes = tuple(it * unit for it in dash)
        pen = Style(stroke=self.look.stop, width=2.5 * unit, dash=dashes)
        others = [math.dist(spot.at, it.at) for it in self.spots.values() if it is not spot]
        room = max(min(others, default=math.inf) / 2 - unit, 6 * unit)
        return (Circle(spot.at, min(spot.reach + more * unit, max(room, more)), pen),)

    def stop(self, at: Point, radius: float = 8.0) -> DrawList:
        size = radius * self.look.line
        ground = Circle(at, size + 2 * self.look.line, Style(fill=self.look.paper))
        return (ground, *mark("stop", at, size, self.look))

    def outward(self, name: str) -> Point:
        """Return the unit vector from the middle of the face to a contact; up at the middle."""
        x, y = self.spots[name].at
        dx, dy = x - self.centre[0], y - self.centre[1]
        size = math.hypot(dx, dy)
        return (dx / size, dy / size) if size > 1e-6 else (0.0, -1.0)

    def towards(self, one: str, other: str) -> Point:
        """Return the point on the way between two contacts where the first one's metal ends."""
        spot, goal = self.spots[one], self.spots[other]
        (x, y), length = spot.at, math.dist(spot.at, goal.at) or 1.0
        share = min(spot.reach * 0.8, length * 0.35) / length
        return (x + (goal.at[0] - x) * share, y + (goal.at[1] - y) * share)

    def aside(self, one: Point, other: Point, by: float) -> Point:
        """Return the point beside the middle of a link, on the side away from the face's middle."""
        x, y = (one[0] + other[0]) / 2, (one[1] + other[1]) / 2
        length = math.dist(one, other) or 1.0
        nx, ny = -(other[1] - one[1]) / length, (other[0] - one[0]) / length
        out = nx * (x - self.centre[0]) + ny * (y - self.centre[1])
        by = by * self.look.line * (1 if out >= 0 else -1)
        return (x + nx * by, y + ny * by)

    def beyond(self, name: str, along: float, aside: float = 0.0) -> Point:
        """Return the point so far outward from a contact, and so far to the side."""
        (x, y), (dx, dy) = self.spots[name].at, self.outward(name)
        return (x + dx * along - dy * aside, y + dy * along + dx * aside)


def _bridge(pen: _Pen, here: Sequence[str]) -> DrawList:
    """Draw a bold dashed link between two contacts with a stop on its middle."""
    items: DrawList = tuple(item for name in here for item in pen.ring(name))
    if len(here) < 2:
        return items
    one, other = here[:2]
    start, stop = pen.towards(one, other), pen.towards(other, one)
    link = pen.line(start, stop, width=6.0, dash=(5.0, 3.0))
    return (*items, *link, *pen.stop(pen.aside(start, stop, 18.0)))


def _open(pen: _Pen, here: Sequence[str]) -> DrawList:
    """Draw a lead that breaks off before it reaches the contact, with two strokes at the break."""
    items: DrawList = ()
    unit = pen.look.line
    for name in here:
        start = pen.spots[name].reach + 2 * unit
        near, gap, far = start + 7 * unit, start + 13 * unit, start + 24 * unit
        for one, other in ((start, near), (gap, far)):
            items += pen.line(pen.beyond(name, one), pen.beyond(name, other))
        for along in (near, gap):
            stroke = pen.beyond(name, along - 2, -6 * unit), pen.beyond(name, along + 2, 6 * unit)
            items += pen.line(*stroke, width=2.0)
        items += pen.ring(name, 1.0, (4.0, 3.0))
    return items


def _link_open(pen: _Pen, here: Sequence[str]) -> DrawList:
    """Draw a thin link that is broken in the middle."""
    if len(here) < 2:
        return pen.ring(here[0])
    one, other = (pen.spots[name].at for name in here[:2])

    def along(share: float) -> Point:
        return (one[0] + (other[0] - one[0]) * share, one[1] + (other[1] - one[1]) * share)

    halves = (*pen.line(one, along(0.4), width=2.0), *pen.line(along(0.6), other, width=2.0))
    return (*halves, *pen.stop(along(0.5)))


def _high_joint(pen: _Pen, here: Sequence[str]) -> DrawList:
    """Draw a double ring round the joint and its figure on a plate."""
    items: DrawList = ()
    unit, text = pen.look.line, pen.fault.figure
    size = _LETTER * unit
    for name in here:
        dx, dy = pen.outward(name)
        items += (*pen.ring(name, 3.0), *pen.ring(name, 8.0))
        wide = text_width(text, size, bold=True) + 8 * unit
        away = 12 * unit + wide / 2 * abs(dx) + 9 * unit * abs(dy)
        at = pen.beyond(name, pen.spots[name].reach + away)
        plate = Style(fill=pen.look.paper, stroke=pen.look.stop, width=1.5 * unit)
        corner = (at[0] - wide / 2, at[1] - 9 * unit)
        base = (at[0], centred_baseline(at[1], size))
        items += (
            Rect(corner, wide, 18 * unit, plate, radius=3 * unit),
            Text(base, text, size, pen.look.ink, bold=True, anchor="middle"),
        )
    return items


def _landed_otherwise(pen: _Pen, here: Sequence[str]) -> DrawList:
    """Ring the contacts, and draw an arrow from where each thing belongs to where it stands."""
    items: DrawList = tuple(item for name in here for item in pen.ring(name))
    steps = [
        (one[1], other[1])
        for one, other in pen.fault.moves
        if one[0] == pen.end and {one[1], other[1]} <= pen.spots.keys()
    ]
    if len(steps) > MOST_ARROWS:
        return items
    return (*items, *(item for step in steps for item in _arrow(pen, *step)))


def _arrow(pen: _Pen, one: str, other: str) -> DrawList:
    """Draw an arrow from contact to contact, to the right of its way: two never lie together."""
    unit = pen.look.line
    start, stop = pen.spots[one], pen.spots[other]
    dx, dy = stop.at[0] - start.at[0], stop.at[1] - start.at[1]
    length = math.hypot(dx, dy) or 1.0
    dx, dy = dx / length, dy / length
    aside = min(7 * unit, length / 6)

    def at(along: float, more: float = 0.0) -> Point:
        side = aside + more
        return (start.at[0] + dx * along - dy * side, start.at[1] + dy * along + dx * side)

    first = min(start.reach + 6 * unit, length * 0.3)
    last = length - min(stop.reach + 6 * unit, length * 0.3)
    barb = min(9 * unit, (last - first) * 0.6)
    solid = Style(fill=pen.look.stop, stroke=pen.look.paper, width=1.5 * unit)
    head = (at(last), at(last - barb, barb * 0.5), at(last - barb, -barb * 0.5))
    return (*pen.line(at(first), at(last - barb * 0.8)), Poly(head, solid, closed=True))


_DRAWN: dict[str, Callable[[_Pen, Sequence[str]], DrawList]] = {
    "bridge": _bridge,
    "open": _open,
    "shield-open": _open,
    "link-open": _link_open,
    "high-joint": _high_joint,
}
