"""What comes and goes over the bench: light, rings, marks, the core in hand, its callout."""

from collections.abc import Iterable, Sequence
from typing import Literal

from planner.drawing.bench.parts import Bench, PlacedEnd, Strand
from planner.drawing.bench.plates import plate_items
from planner.drawing.bench.shapes import Box, moved
from planner.drawing.looks import Look
from planner.drawing.marks import MarkKind, mark
from planner.drawing.primitives import Circle, DrawList, Point, Poly, Rect, Style
from planner.model.place import Place

GLOW_PX, GLOW_OPACITY = 11.0, 0.32
RING_DASH = (6.0, 4.0)
# More cautions than this at one end are shown by their rings alone.
MARKED_CAUTIONS = 6


def glow(points: Sequence[Point], width: float, look: Look) -> Poly:
    """Draw the glow under one core."""
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
        items.append(glow(strand_points(placed, strand), strand.width, look))
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
    for place in sorted(set(places)):
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
