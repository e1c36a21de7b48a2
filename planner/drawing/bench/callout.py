"""The card beside a contact that says what a drop would do."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from planner.drawing.bench.parts import Bench, Layer
from planner.drawing.bench.shapes import Box, box_of, moved_box
from planner.drawing.looks import Look
from planner.drawing.marks import MarkKind, mark
from planner.drawing.metrics import clipped, text_width
from planner.drawing.primitives import DrawList, Point, Poly, Rect, Style, Text


@dataclass(frozen=True, slots=True)
class CalloutLine:
    """One line of a callout with the mark before it."""

    kind: MarkKind
    words: str


@dataclass(frozen=True, slots=True)
class CardPlace:
    """Where a callout stands."""

    box: Box


def callout(
    target: Point,
    radius: float,
    title: str,
    lines: Sequence[CalloutLine],
    *,
    look: Look,
    place: CardPlace,
) -> DrawList:
    """Draw the card beside a contact that says what a drop would do."""
    left, top, right, bottom = place.box
    width = right - left
    edge = Style(stroke=look.accent, width=1.5)
    card = Rect(
        (left, top), width, bottom - top, Style(fill=look.field, stroke=look.accent, width=1.5), 6
    )
    foot = (min(max(target[0], left + 14), right - 14), min(max(target[1], top), bottom))
    distance = math.dist(foot, target) or 1.0
    share = min((radius + 1) / distance, 1.0)
    near = (target[0] + (foot[0] - target[0]) * share, target[1] + (foot[1] - target[1]) * share)
    shown = clipped(title, 15, width - 26, bold=True)
    items: DrawList = (
        Poly((foot, near), edge),
        card,
        Text((left + 13.5, top + 22.5), shown, 15, look.ink, bold=True),
    )
    for number, line in enumerate(lines):
        y = top + 40.0 + 18.0 * number
        items += mark(line.kind, (left + 20, y), 7.5, look)
        words = clipped(line.words, 13, width - 47)
        items += (Text((left + 33.5, y + 4.7), words, 13, look.ink),)
    return items


def card_place(
    target: Point,
    radius: float,
    title: str,
    lines: Sequence[CalloutLine],
    *,
    room: Box,
    busy: Sequence[Box],
) -> CardPlace:
    """Find the place for a card inside `room` that covers least of what is `busy`."""
    widest = max((text_width(line.words, 13) + 24 for line in lines), default=0.0)
    width = min(max(widest, text_width(title, 15, bold=True)) + 27, 320.0)
    height = 36.0 + 18.0 * len(lines)
    own = (target[0] - radius, target[1] - radius, target[0] + radius, target[1] + radius)
    best: tuple[float, Box] | None = None
    for reach in (24.0, 56.0, 96.0, 150.0):
        for left, top in _card_corners(target, radius + reach, width, height):
            x = min(max(left, room[0] + 8), room[2] - width - 8)
            y = min(max(top, room[1] + 8), room[3] - height - 8)
            box = (x, y, x + width, y + height)
            cost = 40.0 * _shared(box, own) + 5.0 * sum(_shared(box, other) for other in busy)
            cost += 6.0 * reach
            if best is None or cost < best[0]:
                best = (cost, box)
    assert best is not None
    return CardPlace(best[1])


def _card_corners(target: Point, reach: float, width: float, height: float) -> list[Point]:
    """Return top left corners of cards all round a point, the right and upper ones first."""
    x, y = target
    return [
        (x + reach * 0.6, y - reach - height),
        (x + reach * 1.4, y - reach * 0.7 - height),
        (x - width - reach * 1.4, y - reach * 0.7 - height),
        (x - width - reach * 0.6, y - reach - height),
        (x - width / 2, y - reach - height),
        (x + reach * 0.6, y + reach),
        (x - width - reach * 0.6, y + reach),
        (x - width / 2, y + reach),
        (x + reach, y - height / 2),
        (x - width - reach, y - height / 2),
    ]


def _shared(one: Box, other: Box) -> float:
    """Return the area that two boxes share, px2."""
    across = min(one[2], other[2]) - max(one[0], other[0])
    down = min(one[3], other[3]) - max(one[1], other[1])
    return across * down if across > 0 and down > 0 else 0.0


def busy_boxes(bench: Bench, end: str) -> list[Box]:
    """Return what a card at an end should leave free: words, plates, contacts, heads."""
    placed = bench.ends[end]
    found = [
        moved_box(box_of((item,)), placed.origin)
        for group in placed.block.groups
        if group.layer in {Layer.LABEL, Layer.PLATE}
        for item in group.items
        if isinstance(item, Text | Rect)
    ]
    for contact, (x, y) in bench.contacts.items():
        if contact[0] == end:
            radius = placed.block.contact_radius[contact[1]]
            found.append((x - radius, y - radius, x + radius, y + radius))
    for name, group in bench.groups.items():
        if name.startswith(("head/", "foot/")) and group.items:
            found.append(moved_box(box_of(group.items), group.origin))
    return found
