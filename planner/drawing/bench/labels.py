"""The spoken name and the signal beside each contact, round the shell, none over another."""

import itertools
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from planner.drawing.bench.facts import EndFacts
from planner.drawing.bench.shapes import Box, boxes_meet, spread
from planner.drawing.looks import Look
from planner.drawing.metrics import text_width
from planner.drawing.primitives import Circle, DrawList, Point, Poly, Style, Text

NAME_PX, SIGNAL_PX = 12.0, 15.0
ONE_LINE_OVER = 8
_TICK, _GAP = 8.0, 4.0

Lane = Literal["side", "top", "bottom"]


@dataclass(frozen=True, slots=True)
class Ring:
    """The outline that labels keep clear of: a circle, or a box."""

    box: Box
    round: bool

    def side_x(self, y: float, facing: int) -> float:
        """Return the x of the outline away from the cable, at a height."""
        if not self.round:
            return self.box[0] if facing > 0 else self.box[2]
        radius = (self.box[3] - self.box[1]) / 2
        level = min(abs(y), radius * 0.8)
        return -facing * math.sqrt(radius * radius - level * level)

    def edge_y(self, x: float, lane: Lane) -> float:
        """Return the y of the outline above or below, at a place across."""
        up = -1.0 if lane == "top" else 1.0
        if not self.round:
            return self.box[1] if lane == "top" else self.box[3]
        radius = (self.box[2] - self.box[0]) / 2
        level = min(abs(x), radius * 0.8)
        return up * math.sqrt(radius * radius - level * level)


@dataclass(frozen=True)
class Busy:
    """What the words of a label should not lie over: cores and their plates."""

    ways: tuple[tuple[tuple[Point, ...], float], ...] = ()
    boxes: tuple[Box, ...] = ()

    def meets(self, box: Box) -> bool:
        """Tell whether a box lies over a core or a plate."""
        if any(boxes_meet(box, other, 2.0) for other in self.boxes):
            return True
        return any(
            box[0] - half < x < box[2] + half and box[1] - half < y < box[3] + half
            for points, half in self.ways
            for x, y in points
        )


@dataclass(frozen=True)
class _Plan:
    """What all labels of an end are placed and drawn with."""

    facing: int
    ring: Ring
    radii: Mapping[str, float]
    look: Look
    busy: Busy
    one_line: bool


@dataclass(frozen=True, slots=True)
class Label:
    """One label before it is drawn."""

    contact: str
    name: str
    signal: str
    joint: Point

    def width(self, *, one_line: bool) -> float:
        """Return its width in px."""
        name = text_width(self.name, NAME_PX)
        signal = text_width(self.signal, SIGNAL_PX, bold=True)
        return name + 5 + signal if one_line else max(name, signal)


def _lane_of(label: Label, facing: int, count: int, ring: Ring) -> Lane:
    angle = math.degrees(math.atan2(abs(label.joint[1]), label.joint[0] * facing))
    width, height = ring.box[2] - ring.box[0], ring.box[3] - ring.box[1]
    tall, wide = height > 1.5 * width, width > 1.5 * height
    if wide:
        return "top" if label.joint[1] < 0 else "bottom"
    if angle >= 125.0 or (count <= 3 and angle >= 60.0) or tall:
        return "side"
    return "top" if label.joint[1] < 1.0 else "bottom"


def _labels_of(facts: EndFacts, joints: Mapping[str, Point], *, one_line: bool) -> list[Label]:
    signals = dict(facts.signals)
    assert facts.connector is not None
    return [
        Label(
            contact.id,
            contact.id if one_line else contact.spoken,
            signals.get(contact.id, ""),
            joints[contact.id],
        )
        for contact in facts.connector.contacts
    ]


def _side_places(labels: Sequence[Label], height: float) -> list[float]:
    wanted = [label.joint[1] * 1.25 for label in labels]
    return spread(wanted, [height] * (len(labels) - 1))


def _row_places(labels: Sequence[Label]) -> list[float]:
    """Return where the leaders of a row end, so that the texts beside them stay apart."""
    wanted = [
        label.joint[0] * 1.12 + math.copysign(10.0, label.joint[0] or 1.0) for label in labels
    ]
    gaps = []
    for left, right in itertools.pairwise(labels):
        gap = 5.0
        if left.joint[0] >= 0:
            gap += left.width(one_line=False) + _TICK + _GAP
        if right.joint[0] < 0:
            gap += right.width(one_line=False) + _TICK + _GAP
        gaps.append(gap)
    return spread(wanted, gaps)


def _texts(label: Label, at: Point, look: Look, *, start: bool, one_line: bool) -> DrawList:
    """Return the words of a label; `at` is where its leader ends."""
    anchor: Literal["start", "end"] = "start" if start else "end"
    x = at[0] + (_GAP if start else -_GAP)
    if not one_line:
        name = Text((x, at[1] - 5), label.name, NAME_PX, look.ink2, anchor=anchor)
        signal = Text((x, at[1] + 13), label.signal, SIGNAL_PX, look.ink, bold=True, anchor=anchor)
        return (name, signal) if label.signal else (name,)
    gap = (
        text_width(label.name, NAME_PX) if start else text_width(label.signal, SIGNAL_PX, bold=True)
    ) + 5
    over = x + (gap if start else -gap)
    name_x, signal_x = (x, over) if start else (over, x)
    return (
        Text((name_x, at[1] + 4.5), label.name, NAME_PX, look.ink2, anchor=anchor),
        Text((signal_x, at[1] + 5.2), label.signal, SIGNAL_PX, look.ink, bold=True, anchor=anchor),
    )


def _leader(label: Label, radius: float, elbow: Point, end: Point, look: Look) -> DrawList:
    distance = math.dist(label.joint, elbow) or 1.0
    share = min(radius * 0.6 / distance, 1.0)
    start = (
        label.joint[0] + (elbow[0] - label.joint[0]) * share,
        label.joint[1] + (elbow[1] - label.joint[1]) * share,
    )
    points = (start, elbow, end)
    return (
        Poly(points, Style(stroke=look.paper, width=4, opacity=0.75, cap="round")),
        Poly(points, Style(stroke=look.ink, width=1)),
        Circle(start, 2.4, Style(fill=look.ink, stroke=look.paper, width=0.8)),
    )


def _draw_side(labels: Sequence[Label], plan: _Plan) -> tuple[DrawList, dict[str, Box]]:
    items: DrawList = ()
    boxes = {}
    ordered = sorted(labels, key=lambda label: label.joint[1])
    pitch, start = 21.0 if plan.one_line else 40.0, plan.facing < 0
    for label, y in zip(ordered, _side_places(ordered, pitch), strict=True):
        edge = plan.ring.side_x(y, plan.facing) - plan.facing * 9
        end = (edge - plan.facing * _TICK, y)
        items += _leader(label, plan.radii[label.contact], (edge, y), end, plan.look)
        items += _texts(label, end, plan.look, start=start, one_line=plan.one_line)
        boxes[label.contact] = _text_box(label, end, start=start, one_line=plan.one_line)
    return items, boxes


def _text_box(label: Label, end: Point, *, start: bool, one_line: bool) -> Box:
    """Return the box of a label's words beside the end of its leader."""
    width = label.width(one_line=one_line) + _GAP
    left = end[0] if start else end[0] - width
    top, low = (end[1] - 8, end[1] + 7) if one_line else (end[1] - 15, end[1] + 15)
    return (left, top, left + width, low)


def _free_level(label: Label, lane: Lane, x: float, y: float, busy: Busy) -> float:
    """Move a label of a row away from the shell until its words lie over no core."""
    up = -7.0 if lane == "top" else 7.0
    start = label.joint[0] >= 0
    for step in range(9):
        end = (x + (_TICK if start else -_TICK), y + up * step)
        if not busy.meets(_text_box(label, end, start=start, one_line=False)):
            return y + up * step
    return y


def _draw_row(labels: Sequence[Label], lane: Lane, plan: _Plan) -> tuple[DrawList, dict[str, Box]]:
    items: DrawList = ()
    boxes = {}
    ordered = sorted(labels, key=lambda label: label.joint[0])
    for label, x in zip(ordered, _row_places(ordered), strict=True):
        away = {"top": -16.0, "bottom": 26.0}[lane]
        y = plan.ring.edge_y(x, lane) + away
        y = _free_level(label, lane, x, y, plan.busy)
        start = label.joint[0] >= 0
        end = (x + (_TICK if start else -_TICK), y)
        items += _leader(label, plan.radii[label.contact], (x, y), end, plan.look)
        items += _texts(label, end, plan.look, start=start, one_line=False)
        boxes[label.contact] = _text_box(label, end, start=start, one_line=False)
    return items, boxes


def _room(
    labels: Sequence[Label], ring: Ring, lanes: Mapping[str, Lane], *, one_line: bool
) -> bool:
    """Tell whether the lanes have room for their labels at this zoom."""
    side = [label for label in labels if lanes[label.contact] == "side"]
    height = (21.0 if one_line else 40.0) * len(side)
    if height > (ring.box[3] - ring.box[1]) * 1.1 + 60.0:
        return False
    for lane in ("top", "bottom"):
        row = [label for label in labels if lanes[label.contact] == lane]
        width = sum(label.width(one_line=False) + _TICK + _GAP + 5.0 for label in row)
        if width > (ring.box[2] - ring.box[0]) * 1.3 + 120.0:
            return False
    return True


def _upper_or_lower(label: Label, ring: Ring, busy: Busy) -> Lane:
    """Choose the row of a contact near the cable's axis: where the cores leave more room."""
    moves = {}
    for lane in ("top", "bottom"):
        x = label.joint[0] * 1.12 + math.copysign(10.0, label.joint[0] or 1.0)
        y = ring.edge_y(x, lane) + {"top": -16.0, "bottom": 26.0}[lane]
        moves[lane] = abs(_free_level(label, lane, x, y, busy) - y)
    # The other row costs a leader across the face: it must save two steps at least.
    natural: Lane = "top" if label.joint[1] < 1.0 else "bottom"
    other: Lane = "bottom" if natural == "top" else "top"
    return other if moves[other] + 14.0 < moves[natural] else natural


def _lanes(labels: Sequence[Label], plan: _Plan) -> dict[str, Lane]:
    level = 0.3 * (plan.ring.box[3] - plan.ring.box[1]) / 2
    found = {}
    for label in labels:
        lane = _lane_of(label, plan.facing, len(labels), plan.ring)
        if lane != "side" and abs(label.joint[1]) < level and plan.ring.round:
            lane = _upper_or_lower(label, plan.ring, plan.busy)
        found[label.contact] = lane
    return found


def contact_labels(
    facts: EndFacts,
    joints: Mapping[str, Point],
    ring: Ring,
    radii: Mapping[str, float],
    *,
    look: Look,
    busy: Busy,
) -> tuple[DrawList, dict[str, Box]]:
    """Draw the labels of an end, with the box of each; none where the zoom leaves no room."""
    if facts.connector is None:
        return (), {}
    one_line = len(joints) > ONE_LINE_OVER
    plan = _Plan(facts.facing, ring, radii, look, busy, one_line)
    labels = _labels_of(facts, joints, one_line=one_line)
    lanes = _lanes(labels, plan)
    if min(radii.values()) < 5.0 or not _room(labels, ring, lanes, one_line=one_line):
        return (), {}
    by_lane: dict[Lane, list[Label]] = {"side": [], "top": [], "bottom": []}
    for label in labels:
        by_lane[lanes[label.contact]].append(label)
    side, boxes = _draw_side(by_lane["side"], plan)
    top, above = _draw_row(by_lane["top"], "top", plan)
    low, below = _draw_row(by_lane["bottom"], "bottom", plan)
    return side + top + low, boxes | above | below
