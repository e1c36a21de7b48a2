"""A face with what each contact carries beside it, as a pinout record says; differences marked.

What differs is told by shape first: a bold frame and `was` in words, a bent arrow for two contacts
that have exchanged what they carry.
"""

import math
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field

from planner.drawing.bench.shapes import spread
from planner.drawing.face import (
    ViewSide,
    contact_owner,
    contact_point,
    contact_radius_mm,
    face,
    shell_reach_mm,
)
from planner.drawing.looks import Look
from planner.drawing.metrics import text_width
from planner.drawing.primitives import (
    Anchor,
    Circle,
    DrawList,
    Point,
    Poly,
    Rect,
    Style,
    Text,
    owned,
)
from planner.model.connector import Connector
from planner.model.signals import signals_text

NAME_PX, SIGNAL_PX = 12.0, 15.0
_ROW, _STACKED_ROW, _PLATE, _AWAY = 34.0, 46.0, 26.0, 22.0
_ABOVE = 84.0
_WIDE = 1.5  # times as wide as high: labels stand in rows above and below
_LEAST_FACE = 140.0  # below this the words go under their plates, px
_LEAST_REACH = 13.0  # half of the least size that can be hit, px


@dataclass(frozen=True)
class CarriedFace:
    """What is shown. `was` has what a differing contact carries in the other record.

    With `names_only` the plates say which contact it is; `notes` stand beside some of them.
    """

    connector: Connector
    carried: Mapping[str, Collection[str]]
    side: ViewSide = "solder"
    was: Mapping[str, Collection[str]] = field(default_factory=dict)
    pairs: Sequence[tuple[str, str]] = ()
    chosen: str = ""
    pointed: str = ""
    names_only: bool = False
    notes: Mapping[str, str] = field(default_factory=dict)
    other: str = "was"  # the word before what the other record has


@dataclass(frozen=True, slots=True)
class Stand:
    """Where the face stands on a canvas: its middle, px a mm, and each contact's point."""

    centre: Point
    scale: float
    joints: dict[str, Point]

    def at(self, place: Point) -> str:
        """Return the contact at a place, at least 24 px wide to hit; empty where there is none."""
        if not self.joints:
            return ""
        name, joint = min(self.joints.items(), key=lambda it: math.dist(it[1], place))
        return name if math.dist(joint, place) <= self._reach(joint) else ""

    def _reach(self, joint: Point) -> float:
        others = [math.dist(joint, it) for it in self.joints.values() if it != joint]
        return max(_LEAST_REACH, min(others, default=60.0) / 2)


def is_wide(connector: Connector) -> bool:
    """Tell whether a face is a row rather than a round."""
    width, height = shell_reach_mm(connector)
    return width > _WIDE * height


def stand_of(shown: CarriedFace, size: tuple[float, float]) -> Stand:
    """Fit the face into a canvas of `size` px, with room for its labels."""
    reach_x, reach_y = shell_reach_mm(shown.connector)
    wide = is_wide(shown.connector)
    room = (
        max(
            size[0] - (40.0 if wide else 2 * _side_room(shown, stacked=is_tight(shown, size))), 60.0
        ),
        max(size[1] - (2 * _ABOVE if wide else 40.0), 60.0),
    )
    scale = min(room[0] / (2 * reach_x), room[1] / (2 * reach_y))
    centre = (size[0] / 2, size[1] / 2)
    joints = {
        it.id: contact_point(shown.connector, it.id, centre=centre, scale=scale, side=shown.side)
        for it in shown.connector.contacts
    }
    return Stand(centre, scale, joints)


def is_tight(shown: CarriedFace, size: tuple[float, float]) -> bool:
    """Tell whether words beside their plates would leave a round face too little room."""
    return size[0] - 2 * _side_room(shown, stacked=False) < _LEAST_FACE


def _side_room(shown: CarriedFace, *, stacked: bool) -> float:
    """Return how much the widest label takes beside a round face, px."""
    widest = 0.0
    for contact in shown.connector.contacts:
        spoken, carried, was = words_of(shown, contact.id)
        words = text_width(f"{spoken}, {was}" if was else spoken, NAME_PX)
        plate = text_width(carried, SIGNAL_PX, bold=True)
        widest = max(widest, max(words, plate + 12) if stacked else words + plate + 18)
    return widest + _AWAY + 16


def words_of(shown: CarriedFace, name: str) -> tuple[str, str, str]:
    """Return a contact's name, what it carries, and what it was."""
    contact = shown.connector.by_id[name]
    many = shown.connector.poles > 8
    spoken = contact.id if many or not contact.name else contact.name
    if shown.names_only:
        note = shown.notes.get(name, "")
        return note or ("" if spoken == contact.id else spoken), contact.id, ""
    was = shown.was.get(name)
    told = "" if was is None else f"{shown.other} {_told(was)}"
    return spoken, _told(shown.carried.get(name, ())), told


def carried_face(shown: CarriedFace, size: tuple[float, float], look: Look) -> DrawList:
    """Draw the face with its labels on a canvas of `size` px."""
    stand = stand_of(shown, size)
    items = face(
        shown.connector,
        centre=stand.centre,
        scale=stand.scale,
        look=look,
        side=shown.side,
        landed=frozenset(name for name, it in shown.carried.items() if it),
    )
    pen = _Pen(shown, stand, size, look)
    return (*items, *pen.rings(), *pen.exchanges(), *pen.labels())


class _Pen:
    """What all labels of a face are placed and drawn with."""

    def __init__(
        self, shown: CarriedFace, stand: Stand, size: tuple[float, float], look: Look
    ) -> None:
        self.shown, self.stand, self.size, self.look = shown, stand, size, look
        reach = shell_reach_mm(shown.connector)
        self.reach = (reach[0] * stand.scale, reach[1] * stand.scale)
        self.stacked = is_tight(shown, size)

    def rings(self) -> DrawList:
        """Draw a ring round the contact that is chosen or pointed at."""
        found: list[Circle] = []
        for name, width in ((self.shown.pointed, 2.0), (self.shown.chosen, 3.0)):
            if name in self.stand.joints:
                radius = contact_radius_mm(self.shown.connector.by_id[name]) * self.stand.scale
                pen = Style(stroke=self.look.accent, width=width)
                found.append(Circle(self.stand.joints[name], max(radius, 9.0) + 4, pen))
        return tuple(found)

    def exchanges(self) -> DrawList:
        """Draw a bent arrow with two heads between contacts that exchanged what they carry."""
        return tuple(
            item
            for one, other in self.shown.pairs
            for item in _bent(self.stand.joints[one], self.stand.joints[other], self.look)
        )

    def labels(self) -> DrawList:
        """Draw every contact's name and signals."""
        if is_wide(self.shown.connector):
            return self._rows()
        middle = self.stand.centre[0]
        left = [name for name, at in self.stand.joints.items() if at[0] < middle - 0.5]
        right = [name for name in self.stand.joints if name not in left]
        if not left:  # one column: share it out, so that neither side is crowded
            ordered = sorted(right, key=lambda name: self.stand.joints[name][1])
            left = ordered[1::2]
            right = [name for name in right if name not in left]
        return (*self._column(left, -1), *self._column(right, 1))

    def _column(self, names: Sequence[str], side: int) -> DrawList:
        ordered = sorted(names, key=lambda name: self.stand.joints[name][1])
        wanted = [self.stand.joints[name][1] for name in ordered]
        row = _STACKED_ROW if self.stacked else _ROW
        pitch = min(row, (self.size[1] - 24) / max(len(ordered), 1))
        x = self.stand.centre[0] + side * (self.reach[0] + _AWAY)
        items: list[DrawList] = []
        for name, y in zip(ordered, spread(wanted, [pitch] * (len(ordered) - 1)), strict=True):
            joint = self.stand.joints[name]
            line = (joint, (x - side * 8, y), (x, y))
            items.append((*self._leader(line), *self._plate(name, (x + side * 4, y), side)))
        return tuple(item for each in items for item in each)

    def _rows(self) -> DrawList:
        items: list[DrawList] = []
        for up in (-1, 1):
            names = [
                name
                for name, at in self.stand.joints.items()
                if (at[1] < self.stand.centre[1]) == (up < 0)
            ]
            items += self._row(sorted(names, key=lambda name: self.stand.joints[name][0]), up)
        return tuple(item for each in items for item in each)

    def _row(self, names: Sequence[str], up: int) -> list[DrawList]:
        pitch = min(52.0, (self.size[0] - 24) / max(len(names), 1))
        wanted = [self.stand.joints[name][0] for name in names]
        y = self.stand.centre[1] + up * (self.reach[1] + _AWAY)
        drawn = []
        for name, x in zip(names, spread(wanted, [pitch] * (len(names) - 1)), strict=True):
            line = (self.stand.joints[name], (x, y - up * 6), (x, y))
            drawn.append((*self._leader(line), *self._over_or_under(name, (x, y), up)))
        return drawn

    def _leader(self, points: tuple[Point, ...]) -> DrawList:
        return (
            Poly(points, Style(stroke=self.look.paper, width=4, opacity=0.75, cap="round")),
            Poly(points, Style(stroke=self.look.ink2, width=1)),
        )

    def _plate(self, name: str, at: Point, side: int) -> DrawList:
        """Draw name and signals beside a round face."""
        spoken, carried, was = words_of(self.shown, name)
        told = f"{spoken}, {was}" if was else spoken
        width = text_width(carried, SIGNAL_PX, bold=True) + 12
        left = at[0] if side > 0 else at[0] - width
        ink = self.look.ink if was else self.look.ink2
        if self.stacked:  # under the plate, flush with its near side
            words = (left if side > 0 else left + width, at[1] + _PLATE / 2 + 12)
        else:
            words = (left + width + 6 if side > 0 else left - 6, at[1] + 4.5)
        anchor: Anchor = "start" if side > 0 else "end"
        items = (
            *self._frame((left, at[1] - _PLATE / 2), width, changed=bool(was), name=name),
            Text((left + 6, at[1] + 5.5), carried, SIGNAL_PX, self.look.ink, bold=True),
            Text(words, told, NAME_PX, ink, anchor=anchor),
        )
        return owned(items, contact_owner(name))

    def _over_or_under(self, name: str, at: Point, up: int) -> DrawList:
        """Draw name and signals above or below a wide face."""
        spoken, carried, was = words_of(self.shown, name)
        width = text_width(carried, SIGNAL_PX, bold=True) + 10
        top = at[1] - _PLATE if up < 0 else at[1]
        beyond = top - 5 if up < 0 else top + _PLATE + 13
        look = self.look
        items = (
            *self._frame((at[0] - width / 2, top), width, changed=bool(was), name=name),
            Text((at[0], top + 18.5), carried, SIGNAL_PX, look.ink, bold=True, anchor="middle"),
            Text((at[0], beyond), spoken, NAME_PX, look.ink2, anchor="middle"),
        )
        if was:
            further = beyond - 14 if up < 0 else beyond + 14
            items += (Text((at[0], further), was, NAME_PX, look.ink, anchor="middle"),)
        return owned(items, contact_owner(name))

    def _frame(self, corner: Point, width: float, *, changed: bool, name: str) -> DrawList:
        chosen = name == self.shown.chosen
        fill = self.look.caution_wash if changed else self.look.accent_wash if chosen else None
        stroke = self.look.caution if changed else self.look.accent if chosen else self.look.edge
        style = Style(fill=fill or self.look.paper, stroke=stroke, width=2.2 if changed else 1.2)
        return (Rect(corner, width, _PLATE, style, radius=3),)


def _told(signals: Collection[str]) -> str:
    return signals_text(signals) or "none"


def _bent(one: Point, other: Point, look: Look) -> DrawList:
    """Return an arrow with a head at both ends, bent aside so that it can be told from a lead."""
    dx, dy = other[0] - one[0], other[1] - one[1]
    length = math.hypot(dx, dy) or 1.0
    bend = min(0.25 * length, 26.0)
    middle = (
        (one[0] + other[0]) / 2 - dy / length * bend,
        (one[1] + other[1]) / 2 + dx / length * bend,
    )
    points = tuple(_quadratic(one, middle, other, at / 12) for at in range(1, 12))
    pen = Style(stroke=look.caution, width=2.4, cap="round")
    halo = Style(stroke=look.paper, width=6, opacity=0.8, cap="round")
    heads = (_head(points[1], points[0], look), _head(points[-2], points[-1], look))
    return (Poly(points, halo), Poly(points, pen), *heads)


def _quadratic(one: Point, middle: Point, other: Point, share: float) -> Point:
    a, b, c = (1 - share) ** 2, 2 * share * (1 - share), share**2
    return (
        a * one[0] + b * middle[0] + c * other[0],
        a * one[1] + b * middle[1] + c * other[1],
    )


def _head(before: Point, tip: Point, look: Look) -> Poly:
    angle = math.atan2(tip[1] - before[1], tip[0] - before[0])
    sides = tuple(
        (tip[0] - 9 * math.cos(angle + lean), tip[1] - 9 * math.sin(angle + lean))
        for lean in (0.45, -0.45)
    )
    return Poly((tip, *sides), Style(fill=look.caution, stroke=look.caution, width=1), closed=True)
