"""The side view of an end, laid flat: terminals at their own heights, leads coming down to them."""

import itertools
import math
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType

from planner.drawing.bench.shapes import spread
from planner.drawing.cores import strands_stroke, strip
from planner.drawing.face import contact_owner, wall_mm
from planner.drawing.fitting.discs import order_disc
from planner.drawing.fitting.leads import faded, sleeve_half_mm, sleeve_owner, tail_sleeve
from planner.drawing.fitting.scene import Letters, letters_of
from planner.drawing.looks import Look
from planner.drawing.metrics import text_width
from planner.drawing.primitives import (
    DrawList,
    Point,
    Poly,
    Rect,
    Style,
    Text,
    owned,
)
from planner.dryfit.bodies import SLEEVE_WALL_MM, Lead
from planner.dryfit.fit import EndFit
from planner.geometry.views import turned_point
from planner.model.cable import Core
from planner.model.connector import Connector, Contact

NO_SLEEVES: Mapping[str, float] = MappingProxyType({})
PLATE_MM = 0.8
FOOT_MM = 0.6
LEAST_SHOWN_MM = 4.0  # of the leads above the highest terminal; more only where a sleeve is
OVERLAP_MM = 5.0  # of a sleeve on the insulation, where its length is not given
_LEVELS = {
    2: ("low", "high"),
    3: ("low", "high", "long"),
    4: ("low", "middle", "high", "long"),
}


def wants_side_view(connector: Connector) -> bool:
    """Tell whether the terminals stand at different heights; if not, a side view says nothing."""
    return len(_levels(connector)) > 1


def _levels(connector: Connector) -> list[float]:
    return sorted({round(contact.terminal.z_mm, 2) for contact in connector.contacts})


def height_word(connector: Connector, contact: Contact) -> str:
    """Return how high a terminal stands beside the others: low, high, long; figures if many."""
    levels = _levels(connector)
    if len(levels) < 2:
        return ""
    place = levels.index(round(contact.terminal.z_mm, 2))
    if len(levels) in _LEVELS:
        return _LEVELS[len(levels)][place]
    return f"+{levels[place] - levels[0]:g} mm"


def laid_flat(connector: Connector, turn_deg: float) -> tuple[Contact, ...]:
    """Return the contacts from left to right, unrolled round the axis and cut at the face's top.

    Left stays left: from the cut, counter-clockwise as seen from the solder side.
    """
    return tuple(
        sorted(connector.contacts, key=lambda one: (round(_from_top_deg(one, turn_deg), 6), one.id))
    )


def _from_top_deg(contact: Contact, turn_deg: float) -> float:
    terminal = contact.terminal
    x, y = turned_point(terminal.x_mm, terminal.y_mm, turn_deg)
    if math.hypot(x, y) < 0.05:
        return (terminal.opening_deg + turn_deg - 90.0) % 360.0
    return (math.degrees(math.atan2(y, x)) - 90.0) % 360.0


@dataclass(frozen=True, slots=True)
class _Flat:
    """The heights of the view: z of the plate's top and of the upper end, target units a mm.

    `broken` where the upper end is below the jacket's cut end.
    """

    floor_mm: float
    cut_mm: float
    scale: float
    top: float
    look: Look
    letters: Letters
    sleeves_mm: Mapping[str, float]
    broken: bool = False

    def y(self, z_mm: float) -> float:
        return self.top + (self.cut_mm - z_mm) * self.scale


def side_height(connector: Connector, fit: EndFit, scale: float, look: Look) -> float:
    """Return how high the side view is at a scale, words and discs included, in target units."""
    flat = _flat(connector, fit, scale, look, 0.0)
    below = 2 * flat.letters.word + flat.letters.name + 8 * look.line
    return _above(flat) + (flat.cut_mm - flat.floor_mm + PLATE_MM) * scale + below


def side_width(connector: Connector, fit: EndFit, scale: float, look: Look) -> float:
    """Return the least width of the side view at a scale, in target units."""
    flat = _flat(connector, fit, scale, look, 0.0)
    landed = _landed(connector.contacts, fit)
    return sum(
        _column(connector, contact, landed[contact.id], flat) for contact in connector.contacts
    )


def _landed(contacts: Sequence[Contact], fit: EndFit) -> dict[str, list[Lead]]:
    return {
        contact.id: [lead for lead in fit.leads if lead.landing.contact == contact.id]
        for contact in contacts
    }


def _above(flat: _Flat) -> float:
    return 2 * flat.letters.disc + 6 * flat.look.line


def _flat(connector: Connector, fit: EndFit, scale: float, look: Look, top: float) -> _Flat:
    terminals = [contact.terminal for contact in connector.contacts]
    lowest = min(one.z_mm - (0.0 if one.kind == "lug" else one.depth_mm) for one in terminals)
    highest = max(one.z_mm for one in terminals)
    cut = max((lead.exit[2] for lead in fit.leads), default=highest + LEAST_SHOWN_MM)
    shown = max([highest + LEAST_SHOWN_MM, *(_shown_mm(lead) for lead in fit.leads)])
    return _Flat(
        lowest - FOOT_MM,
        min(cut, shown),
        scale,
        top,
        look,
        letters_of(look),
        NO_SLEEVES,
        broken=shown < cut,
    )


def _shown_mm(lead: Lead) -> float:
    """Return up to which height a lead is worth showing: its bare gap, its sleeve, some more."""
    over = OVERLAP_MM if lead.landing.sleeved and not lead.is_shield else 0.0
    return lead.mouth[2] + lead.gap_mm + over + LEAST_SHOWN_MM / 2


def side_view(  # noqa: PLR0913 - what is drawn, where, how, and what of it is shown
    connector: Connector,
    fit: EndFit,
    *,
    origin: Point,
    width: float,
    scale: float,
    look: Look,
    sleeves_mm: Mapping[str, float] = NO_SLEEVES,
    dimmed: Collection[str] = frozenset(),
    withheld: bool = False,
    view_deg: float = 0.0,
) -> DrawList:
    """Draw the side view from its upper left corner, `width` wide, `scale` target units a mm high.

    Seen from outside with the cable up; the leads are broken off where they say no more. Heights,
    widths and sleeves are to scale; places across follow the angle round the axis, moved apart
    where they would touch, the row in the middle. On the screen a bar tells the scale; on paper the
    caller says it. `sleeves_mm` gives the length of the sleeve of a conductor. Owners as in the
    fitted face.
    """
    flat = _flat(connector, fit, scale, look, origin[1])
    flat = replace(flat, top=origin[1] + _above(flat), sleeves_mm=sleeves_mm)
    contacts = laid_flat(connector, fit.turn_deg + view_deg)
    landed = _landed(contacts, fit)
    wide = [_column(connector, contact, landed[contact.id], flat) for contact in contacts]
    angles = [_from_top_deg(contact, fit.turn_deg + view_deg) for contact in contacts]
    places = _places(angles, wide, origin[0], width)
    items = _plate(flat, origin[0], width) + _cut_line(flat, origin[0], width)
    if look.hatched_cores:
        items += _scale_bar(flat, origin[0], places[0] - wide[0] / 2)
    for contact, x in zip(contacts, places, strict=True):
        items += _terminal(contact, x, flat, landed=bool(landed[contact.id]))
        items += _leads(landed[contact.id], contact, x, flat, dimmed)
        items += _words(contact, height_word(connector, contact), x, flat)
    spots = dict(zip((contact.id for contact in contacts), places, strict=True))
    return items + _discs(fit, spots, origin[1], look, withheld=withheld)


def _discs(
    fit: EndFit, spots: Mapping[str, float], top: float, look: Look, *, withheld: bool
) -> DrawList:
    """Set the order discs in a row over the leads."""
    radius = letters_of(look).disc
    discs = (
        order_disc(
            (spots[contact], top + radius),
            number,
            radius,
            look,
            f"order/{contact}",
            withheld=withheld,
        )
        for number, contact in enumerate(fit.order, start=1)
        if contact in spots
    )
    return tuple(item for disc in discs for item in disc)


def _places(
    angles_deg: Sequence[float], wide: Sequence[float], left: float, width: float
) -> list[float]:
    """Return where each contact stands: by its angle, moved apart to its width, in the middle."""
    room = width - (wide[0] + wide[-1]) / 2
    wanted = [left + wide[0] / 2 + room * angle_deg / 360.0 for angle_deg in angles_deg]
    gaps = [(one + other) / 2 for one, other in itertools.pairwise(wide)]
    places = spread(wanted, gaps)
    first, last = places[0] - wide[0] / 2, places[-1] + wide[-1] / 2
    shift = left + (width - (last - first)) / 2 - first
    return [place + shift for place in places]


def _column(connector: Connector, contact: Contact, leads: Sequence[Lead], flat: _Flat) -> float:
    """Return the width that a contact takes in the view."""
    name = text_width(contact.id, flat.letters.name, bold=True)
    word = text_width(height_word(connector, contact), flat.letters.word)
    cores = sum(lead.covered_mm + 2 * SLEEVE_WALL_MM for lead in leads) * flat.scale
    metal = (1.2 * contact.terminal.across_mm + 0.2 + 2 * SLEEVE_WALL_MM) * flat.scale
    return max(name, word, cores, metal, 2 * flat.letters.disc) + 6 * flat.look.line


def _plate(flat: _Flat, left: float, width: float) -> DrawList:
    pen = Style(fill=flat.look.insulator, stroke=flat.look.casing, width=1.4 * flat.look.line)
    return (Rect((left, flat.y(flat.floor_mm)), width, PLATE_MM * flat.scale, pen, owner="shell"),)


def _scale_bar(flat: _Flat, left: float, right: float) -> DrawList:
    """Stand a bar of whole mm on the plate at the left, where there is room beside the row."""
    unit, foot = flat.look.line, flat.y(flat.floor_mm) - 4 * flat.look.line
    long_mm = 5.0 if flat.cut_mm - flat.floor_mm > 8.0 else 2.0
    x, top = left + 4 * unit, foot - long_mm * flat.scale
    words = f"{long_mm:g} mm"
    if left + text_width(words, flat.letters.word) > right:
        return ()
    pen, at = Style(stroke=flat.look.ink2, width=1.4 * unit), (x - 4 * unit, top - 6 * unit)
    return (
        Poly(((x, top), (x, foot)), pen, owner="scale"),
        *(Poly(((x - 4 * unit, y), (x + 4 * unit, y)), pen, owner="scale") for y in (top, foot)),
        Text(at, words, flat.letters.word, flat.look.ink2, owner="scale"),
    )


def _cut_line(flat: _Flat, left: float, width: float) -> DrawList:
    """Draw the level at which the jacket is cut; a wave where the leads are broken off below it."""
    y, unit = flat.y(flat.cut_mm), flat.look.line
    pen = Style(stroke=flat.look.ink2, width=unit)
    if not flat.broken:
        return (Poly(((left, y), (left + width, y)), pen, owner="jacket"),)
    count = max(round(width / (14 * unit)), 2) * 4
    wave = tuple(
        (left + width * step / count, y + 2.5 * unit * math.sin(math.pi * step / 2))
        for step in range(count + 1)
    )
    return (Poly(wave, pen, owner="jacket"),)


# -- terminals --------------------------------------------------------------------------------


def _terminal(contact: Contact, x: float, flat: _Flat, *, landed: bool) -> DrawList:
    draw = {"cup": _cup, "lug": _lug, "post": _post}[contact.terminal.kind]
    return owned(draw(contact, x, flat, landed), contact_owner(contact.id))


def _edge(look: Look) -> Style:
    return Style(fill=look.brass, stroke=look.brass_edge, width=1.4 * look.line)


def _cup(contact: Contact, x: float, flat: _Flat, landed: bool) -> DrawList:  # noqa: FBT001 - a state
    """Draw a cup cut open: walls, floor, what is inside; a stem down to the plate."""
    terminal, look = contact.terminal, flat.look
    half, wall = terminal.bore_mm / 2 * flat.scale, wall_mm(terminal.bore_mm) * flat.scale
    top, floor, plate = (
        flat.y(terminal.z_mm),
        flat.y(terminal.z_mm - terminal.depth_mm),
        flat.y(flat.floor_mm),
    )
    inside = look.tin if landed else look.bore
    hollow = Rect((x - half, top), 2 * half, floor - top, Style(fill=inside))
    outline = (
        (x - half - wall, top), (x - half, top), (x - half, floor), (x + half, floor),
        (x + half, top), (x + half + wall, top), (x + half + wall, floor + wall),
        (x + half * 0.5, floor + wall), (x + half * 0.5, plate), (x - half * 0.5, plate),
        (x - half * 0.5, floor + wall), (x - half - wall, floor + wall),
    )  # fmt: skip
    edge = _edge(look)
    pen = Style(fill=look.wall, stroke=edge.stroke, width=edge.width)
    return (hollow, Poly(outline, pen, closed=True))


def _lug(contact: Contact, x: float, flat: _Flat, landed: bool) -> DrawList:  # noqa: FBT001, ARG001 - as the others
    terminal = contact.terminal
    half = terminal.width_mm / 2 * flat.scale
    top = flat.y(terminal.z_mm) - min(terminal.depth_mm / 2, 0.6) * flat.scale
    corner = (x - half, top)
    return (Rect(corner, 2 * half, flat.y(flat.floor_mm) - top, _edge(flat.look)),)


def _post(contact: Contact, x: float, flat: _Flat, landed: bool) -> DrawList:  # noqa: FBT001, ARG001 - as the others
    terminal = contact.terminal
    half, top = terminal.width_mm / 2 * flat.scale, flat.y(terminal.z_mm)
    corner = (x - half, top)
    return (Rect(corner, 2 * half, flat.y(flat.floor_mm) - top, _edge(flat.look)),)


# -- leads ------------------------------------------------------------------------------------


def _leads(
    leads: Sequence[Lead],
    contact: Contact,
    x: float,
    flat: _Flat,
    dimmed: Collection[str],
) -> DrawList:
    widths = [(lead.covered_mm + 2 * SLEEVE_WALL_MM) * flat.scale for lead in leads]
    place = x - sum(widths) / 2
    items: DrawList = ()
    for lead, width in zip(leads, widths, strict=True):
        drawn = _lead(lead, contact, place + width / 2, flat)
        items += faded(drawn) if lead.landing.conductor in dimmed else drawn
        place += width
    return items


def _lead(lead: Lead, contact: Contact, x: float, flat: _Flat) -> DrawList:
    """Draw a lead from the cut end: covered, the bare gap, strands down into the terminal."""
    owner, look = f"lead/{lead.landing.conductor}", flat.look
    terminal = contact.terminal
    sunk = 0.85 * terminal.depth_mm if terminal.kind != "lug" else min(terminal.depth_mm, 0.6)
    top, cut = flat.y(flat.cut_mm), flat.y(lead.mouth[2] + lead.gap_mm)
    low = flat.y(terminal.z_mm - sunk)
    metal = strands_stroke(((x, cut), (x, low)), lead.metal_mm * flat.scale, look, owner)
    width = lead.covered_mm * flat.scale
    if isinstance(lead.part, Core):
        body = strip(((x, top), (x, cut)), lead.part.colours, width, look, owner)
    elif lead.landing.sleeved:
        body = tail_sleeve(((x, top), (x, cut)), width, look, sleeve_owner(lead))
    else:
        body = strands_stroke(((x, top), (x, cut)), lead.metal_mm * flat.scale, look, owner)
    if isinstance(lead.part, Core) or lead.landing.sleeved:
        half = width / 2 + 1.3 * look.line
        rim = Style(stroke=look.casing, width=1.3 * look.line)
        body += (Poly(((x - half, cut), (x + half, cut)), rim, owner=owner),)
    if not lead.landing.sleeved or lead.is_shield:
        return (*metal, *body)
    length = flat.sleeves_mm.get(lead.landing.conductor, sunk + lead.gap_mm + OVERLAP_MM)
    foot = low if terminal.kind == "lug" else flat.y(terminal.z_mm - terminal.depth_mm)
    return (*metal, *body, *_sleeve(lead, x, foot, length, flat))


def _sleeve(lead: Lead, x: float, low: float, length_mm: float, flat: _Flat) -> DrawList:
    unit = flat.look.line
    half = sleeve_half_mm(lead) * flat.scale + 2 * unit
    top = max(low - length_mm * flat.scale, flat.top)
    pen = Style(stroke=flat.look.ink, width=2 * unit, dash=(7 * unit, 4 * unit))
    owner = sleeve_owner(lead)
    points = ((x - half, low), (x - half, top), (x + half, top), (x + half, low))
    return (Poly(points, pen, closed=True, owner=owner),)


def _words(contact: Contact, word: str, x: float, flat: _Flat) -> DrawList:
    letters, unit = flat.letters, flat.look.line
    y = flat.y(flat.floor_mm - PLATE_MM) + letters.name + 2 * unit
    items = [Text((x, y), contact.id, letters.name, flat.look.ink, bold=True, anchor="middle")]
    if word:
        low = (x, y + letters.word * 1.25)
        items.append(Text(low, word, letters.word, flat.look.ink2, anchor="middle"))
    return owned(tuple(items), contact_owner(contact.id))
