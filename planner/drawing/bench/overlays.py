"""What comes and goes over the bench: light, rings, marks, the core in hand, its callout."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

from planner.drawing.bench.end import plate_items
from planner.drawing.bench.parts import Bench, Layer, PlacedEnd, Strand
from planner.drawing.bench.shapes import Box, box_of, moved, moved_box
from planner.drawing.cores import lead, tail_stroke
from planner.drawing.looks import Look
from planner.drawing.marks import MarkKind, mark
from planner.drawing.metrics import clipped, text_width
from planner.drawing.primitives import Circle, DrawList, Point, Poly, Rect, Style, Text
from planner.drawing.runs import curve
from planner.model.cable import Shield
from planner.model.place import Place

GLOW_PX, GLOW_OPACITY = 11.0, 0.32
RING_DASH = (6.0, 4.0)
# More cautions than this at one end are shown by their rings alone.
MARKED_CAUTIONS = 6


def _glow(points: Sequence[Point], width: float, look: Look) -> Poly:
    style = Style(stroke=look.accent, width=width + GLOW_PX, opacity=GLOW_OPACITY, cap="round")
    return Poly(tuple(points), style)


def strand_points(placed: PlacedEnd, strand: Strand) -> tuple[Point, ...]:
    """Return a strand's way in bench coordinates."""
    return tuple(placed.at(point) for point in strand.points)


def net_glow(bench: Bench, places: Iterable[Place], look: Look) -> DrawList:
    """Draw the glow that goes under every core of a net, across the lead."""
    items: list[Poly] = []
    conductors = set()
    for place in places:
        placed = bench.ends.get(place.end)
        conductors.add(place.conductor)
        if placed is None or place.conductor not in placed.block.strands:
            continue
        strand = placed.block.strands[place.conductor]
        items.append(_glow(strand_points(placed, strand), strand.width, look))
    return tuple(items)


def section_glow(bench: Bench, places: Iterable[Place], look: Look) -> DrawList:
    """Draw the glow of a net inside the see-through cable."""
    conductors = {place.conductor for place in places if place.conductor}
    return tuple(
        Poly(
            way,
            Style(stroke=look.accent, width=run.width + 8, opacity=0.5),
        )
        for run in bench.sections.values()
        for conductor, way in run.ways.items()
        if conductor in conductors
    )


def net_rings(bench: Bench, places: Iterable[Place], look: Look) -> DrawList:
    """Draw the solid ring round each contact of a net."""
    pen = Style(stroke=look.accent, width=2.5)
    return tuple(
        Circle(bench.contacts[place.end, place.contact], ring_radius(bench, place), pen)
        for place in sorted(set(places))
        if (place.end, place.contact) in bench.contacts and not place.conductor
    )


def ring_radius(bench: Bench, place: Place) -> float:
    """Return how large the ring round a contact is, px."""
    return bench.ends[place.end].block.contact_radius[place.contact] + 8.0


def net_plates(bench: Bench, places: Iterable[Place], look: Look, selected: Place) -> DrawList:
    """Draw the lit plates of a net, with the dot on the one that is selected."""
    items: DrawList = ()
    for place in sorted({*places, selected}):
        placed = bench.ends.get(place.end)
        strand = placed.block.strands.get(place.conductor) if placed else None
        if placed is None or strand is None or strand.plate is None:
            continue
        chosen = place == selected
        drawn = plate_items(strand, strand.plate, look, lit=True, selected=chosen)
        items += moved(drawn, *placed.origin)
    return items


# -- findings ---------------------------------------------------------------------------------


def finding_marks(
    bench: Bench,
    weights: dict[tuple[str, str], Literal["stop", "caution"]],
    look: Look,
    exchanged: Iterable[tuple[str, tuple[str, str]]] = (),
) -> DrawList:
    """Draw a ring and a mark at each contact that a stop or a caution names.

    An end that is shown small gets one mark beside its title instead.
    """
    items: DrawList = ()
    quiet = set()
    for end, pair in exchanged:
        arrow = exchange_arrow(bench, end, pair, look) if end in bench.ends else ()
        items += arrow
        quiet |= {(end, contact) for contact in pair if arrow}
    for end, placed in bench.ends.items():
        here = {contact: weight for (at, contact), weight in weights.items() if at == end}
        here = {
            contact: weight for contact, weight in here.items() if contact in placed.block.contacts
        }
        if here and placed.block.compact:
            items += _head_mark(bench, placed, here, look)
            continue
        cautions = sum(weight == "caution" for weight in here.values())
        for contact, weight in sorted(here.items()):
            marked = weight == "stop" or cautions <= MARKED_CAUTIONS
            marked = marked and (end, contact) not in quiet
            items += _contact_mark(
                bench, Place(end=end, contact=contact), weight, look, marked=marked
            )
    return items


def exchange_arrow(bench: Bench, end: str, contacts: tuple[str, str], look: Look) -> DrawList:
    """Draw a stop between the labels of two exchanged contacts, with an arrow to each.

    Nothing where the labels do not stand one above the other with room between.
    """
    placed = bench.ends[end]
    boxes = [placed.block.label_boxes.get(contact) for contact in contacts]
    if None in boxes:
        return ()
    upper, lower = sorted((box for box in boxes if box is not None), key=lambda box: box[1])
    left, right = max(upper[0], lower[0]), min(upper[2], lower[2])
    if right - left < 8 or lower[1] - upper[3] < 46:
        return ()
    x = left + 16 if placed.block.facing < 0 else right - 16
    (x, top), low = placed.at((x, upper[3] + 2)), placed.at((x, lower[1] - 2))[1]
    pen, solid = Style(stroke=look.stop, width=2), Style(fill=look.stop)
    return (
        Poly(((x, top + 4), (x, low - 4)), pen),
        Poly(((x, top), (x - 5, top + 8), (x + 5, top + 8)), solid, closed=True),
        Poly(((x, low), (x - 5, low - 8), (x + 5, low - 8)), solid, closed=True),
        *mark("stop", (x, (top + low) / 2), 12, look),
    )


def _head_mark(
    bench: Bench, placed: PlacedEnd, here: dict[str, Literal["stop", "caution"]], look: Look
) -> DrawList:
    kind: MarkKind = "stop" if "stop" in here.values() else "caution"
    x, y = bench.groups[f"head/{placed.block.end}"].origin
    return mark(kind, (x + placed.block.head_width + 8, y + 11), 8, look)


def _contact_mark(
    bench: Bench, place: Place, weight: Literal["stop", "caution"], look: Look, *, marked: bool
) -> DrawList:
    centre, radius = bench.contacts[place.end, place.contact], ring_radius(bench, place)
    colour = look.stop if weight == "stop" else look.caution
    dash = () if weight == "stop" else (5.0, 3.0)
    ring = Circle(
        centre, radius, Style(stroke=colour, width=2.5 if weight == "stop" else 2, dash=dash)
    )
    if not marked:
        return (ring,)
    size = 9.0 if radius > 14 else 6.5
    reach = radius * 0.7071 + size * 0.35
    at = (centre[0] + reach, centre[1] - reach)
    return (ring, Circle(at, size + 2, Style(fill=look.paper)), *mark(weight, at, size, look))


# -- focus, snap, refusal ---------------------------------------------------------------------


def focus_frame(bench: Bench, end: str, contact: str, look: Look) -> DrawList:
    """Draw the square frame of the keyboard's focus: ink over a gap of paper."""
    x, y = bench.contacts[end, contact]
    half = max(bench.ends[end].block.contact_radius[contact] + 12.0, 16.0)
    corner, size = (x - half, y - half), 2 * half
    return (
        Rect(corner, size, size, Style(stroke=look.paper, width=6)),
        Rect(corner, size, size, Style(stroke=look.ink, width=2)),
    )


def snap_ring(bench: Bench, end: str, contact: str, look: Look, weight: str = "") -> DrawList:
    """Draw the dashed ring of a contact that would take the core, with the mark of a finding."""
    centre = bench.contacts[end, contact]
    radius = ring_radius(bench, Place(end=end, contact=contact))
    colour = {"stop": look.stop, "caution": look.caution}.get(weight, look.accent)
    items: DrawList = (Circle(centre, radius, Style(stroke=colour, width=2.5, dash=RING_DASH)),)
    if weight in {"stop", "caution"}:
        kind: MarkKind = "stop" if weight == "stop" else "caution"
        reach = radius * 0.75
        items += mark(kind, (centre[0] - reach - 3, centre[1] - reach - 3), 10, look)
    return items


def refused_ring(bench: Bench, end: str, contact: str, look: Look) -> DrawList:
    """Draw the struck grey ring of a contact that takes no more."""
    x, y = bench.contacts[end, contact]
    radius = ring_radius(bench, Place(end=end, contact=contact))
    reach = radius * 0.7071
    line = ((x - reach, y + reach), (x + reach, y - reach))
    return (
        Circle((x, y), radius, Style(stroke=look.ink2, width=2.5)),
        Poly(line, Style(stroke=look.paper, width=6)),
        Poly(line, Style(stroke=look.ink2, width=2.5)),
    )


def pulse_ring(centre: Point, radius: float, share: float, look: Look) -> DrawList:
    """Draw the ring that shows a place, `share` of its way out."""
    pen = Style(stroke=look.accent, width=3.0, opacity=max(0.0, 1.0 - share))
    return (Circle(centre, radius + 26.0 * share, pen),)


def target_frame(box: Box, look: Look) -> DrawList:
    """Draw the frame round what a record dropped from the shelf would go to."""
    left, top, right, bottom = box
    pen = Style(stroke=look.accent, width=2, dash=RING_DASH)
    wash = Style(fill=look.accent_wash, opacity=0.35)
    size = (right - left + 12, bottom - top + 12)
    return (
        Rect((left - 6, top - 6), *size, wash, radius=6),
        Rect((left - 6, top - 6), *size, pen, radius=6),
    )


# -- the core in hand -------------------------------------------------------------------------


def _hand_way(start: Point, end: Point, facing: int) -> tuple[Point, ...]:
    distance = math.dist(start, end)
    leaving = (start[0] - facing * distance * 0.4, start[1])
    arriving = (end[0] + facing * distance * 0.25, end[1] + (start[1] - end[1]) * 0.12)
    return curve(start, leaving, arriving, end, 20)


def hand_core(placed: PlacedEnd, conductor: str, tip: Point, look: Look) -> DrawList:
    """Draw the core in hand from its cut to the pointer, glowing."""
    block = placed.block
    strand, fact = block.strands[conductor], block.materials[conductor]
    start = placed.at(strand.points[0])
    way = _hand_way(start, tip, block.facing)
    glow = _glow(way, strand.width, look)
    if isinstance(fact.material, Shield):
        drawn = tail_stroke(way, fact.material, scale=block.scale, look=look, sleeved=False)
    else:
        drawn = lead(way, fact.material, scale=block.scale, look=look)
    plate: DrawList = ()
    if strand.plate is not None:
        plate = moved(
            plate_items(strand, strand.plate, look, lit=True, selected=True), *placed.origin
        )
    return (glow, *drawn, *plate)


def ghost_core(
    placed: PlacedEnd, conductor: str, contact: str, look: Look, weight: str = ""
) -> DrawList:
    """Draw the pale core where it would lie if it were dropped, its edges dashed."""
    block = placed.block
    strand = block.strands[conductor]
    start, end = placed.at(strand.points[0]), placed.at(block.contacts[contact])
    way = _hand_way(start, end, block.facing)
    colour = {"stop": look.stop, "caution": look.caution}.get(weight, look.accent)
    edge = Style(stroke=colour, width=1.6, dash=RING_DASH)
    half = strand.width / 2
    return (
        Poly(way, Style(stroke=colour, width=strand.width, opacity=0.28)),
        Poly(tuple((x, y - half) for x, y in way), edge),
        Poly(tuple((x, y + half) for x, y in way), edge),
    )


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
