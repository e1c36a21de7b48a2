"""What comes and goes over the bench: light, rings, marks, the core in hand, its callout."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

from planner.drawing.bench.end import plate_items
from planner.drawing.bench.parts import Bench, PlacedEnd, Strand
from planner.drawing.bench.shapes import Box, moved
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
            Style(stroke=look.accent, width=run.width + 6, opacity=GLOW_OPACITY),
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
    bench: Bench, weights: dict[tuple[str, str], Literal["stop", "caution"]], look: Look
) -> DrawList:
    """Draw a ring and a mark at each contact that a stop or a caution names."""
    items: DrawList = ()
    for (end, contact), weight in sorted(weights.items()):
        centre = bench.contacts.get((end, contact))
        if centre is None:
            continue
        radius = ring_radius(bench, Place(end=end, contact=contact))
        colour = look.stop if weight == "stop" else look.caution
        dash = () if weight == "stop" else (5.0, 3.0)
        size = 9.0 if radius > 14 else 6.5
        reach = radius * 0.7071
        at = (centre[0] + reach + size * 0.35, centre[1] - reach - size * 0.35)
        items += (Circle(centre, radius, Style(stroke=colour, width=2.5, dash=dash)),)
        items += (Circle(at, size + 2, Style(fill=look.paper)), *mark(weight, at, size, look))
    return items


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


def callout(
    target: Point, radius: float, title: str, lines: Sequence[CalloutLine], look: Look, room: Box
) -> DrawList:
    """Draw the card beside a contact that says what a drop would do; kept inside `room`."""
    widest = max((text_width(line.words, 13) + 24 for line in lines), default=0.0)
    width = min(max(widest, text_width(title, 15, bold=True)) + 27, 300.0)
    height = 36.0 + 18.0 * len(lines)
    left, top = _card_place(target, radius, (width, height), room)
    edge = Style(stroke=look.accent, width=1.5)
    card = Rect(
        (left, top), width, height, Style(fill=look.field, stroke=look.accent, width=1.5), 6
    )
    foot = (min(max(target[0], left + 14), left + width - 14), top + height)
    if foot[1] > target[1]:
        foot = (foot[0], top)
    distance = math.dist(foot, target) or 1.0
    share = min((radius + 1) / distance, 1.0)
    near = tuple(target[k] + (foot[k] - target[k]) * share for k in (0, 1))
    items: DrawList = (Poly((foot, (near[0], near[1])), edge), card)
    items += (
        Text(
            (left + 13.5, top + 22.5),
            clipped(title, 15, width - 26, bold=True),
            15,
            look.ink,
            bold=True,
        ),
    )
    for place, line in enumerate(lines):
        y = top + 40.0 + 18.0 * place
        items += mark(line.kind, (left + 20, y), 7.5, look)
        words = clipped(line.words, 13, width - 47)
        items += (Text((left + 33.5, y + 4.7), words, 13, look.ink),)
    return items


def _card_place(target: Point, radius: float, size: tuple[float, float], room: Box) -> Point:
    width, height = size
    left = min(max(target[0] + radius + 30, room[0] + 8), room[2] - width - 8)
    top = target[1] - radius - 40 - height
    if top < room[1] + 8:
        top = target[1] + radius + 40
    return (left, min(max(top, room[1] + 8), room[3] - height - 8))
