"""A connector's solder side with its leads as they really lie, their order, gaps, sleeves."""

import math
from collections.abc import Collection, Mapping
from types import MappingProxyType

from planner.drawing.bench.shapes import Box, box_of
from planner.drawing.cores import plate_width
from planner.drawing.face import contact_radius_mm, face, shell_reach_mm
from planner.drawing.fitting.crossings import crossings_drawn
from planner.drawing.fitting.halos import gap_words_drawn, halos_drawn, tick_boxes, ticks_drawn
from planner.drawing.fitting.iron import iron_at
from planner.drawing.fitting.labels import labels_drawn
from planner.drawing.fitting.leads import leads_drawn
from planner.drawing.fitting.scene import Scene, letters_of
from planner.drawing.fitting.words import Room
from planner.drawing.looks import Look
from planner.drawing.metrics import text_width
from planner.drawing.primitives import Circle, DrawList, Point, Style
from planner.dryfit.fit import EndFit
from planner.model.connector import Connector

NO_SIGNALS: Mapping[str, str] = MappingProxyType({})


def fitted_face(  # noqa: PLR0913 - what is drawn, where, how, and what of it is shown
    connector: Connector,
    fit: EndFit,
    *,
    centre: Point,
    scale: float,
    look: Look,
    jacket_mm: float = 0.0,
    signals: Mapping[str, str] = NO_SIGNALS,
    dimmed: Collection[str] = frozenset(),
    iron: str = "",
    labels: bool = True,
    halos: bool = True,
    numbered: bool = True,
    withheld: bool = False,
    view_deg: float = 0.0,
    frame: Box | None = None,
) -> DrawList:
    """Draw the solder side of an end as it is going to be soldered, `scale` target units a mm.

    Owners: `shell`, `contact/<id>`, `lead/<conductor>`, `sleeve/<conductor>`, `dab/<conductor>`,
    `crossing/<a>/<b>`, `halo/<a>/<b>`, `order/<contact>`, `iron/<contact>`, `jacket`. Conductors in
    `dimmed` are see-through. `iron` names the contact at which the iron is shown. `withheld` draws
    open octagons in place of the order numbers. `view_deg` turns the whole picture, plug and cable.
    Words of gaps and of the iron keep inside `frame`.
    """
    scene = Scene(connector, fit, centre, scale, look, view_deg)
    items = _plug_and_leads(scene, jacket_mm, dimmed, halos=halos)
    room = Room([], _joint_boxes(scene) + (tick_boxes(scene) if halos else []), frame)
    held = iron_at(scene, iron) if iron else None
    if held is not None:
        items += held.items
        room.taken += held.boxes
    if labels:
        drawn, taken = labels_drawn(scene, signals, numbered=numbered, withheld=withheld)
        items += drawn
        room.taken += taken
    if held is not None:
        items += held.words_drawn(scene, room)
    return items + (gap_words_drawn(scene, room) if halos else ())


def _plug_and_leads(
    scene: Scene, jacket_mm: float, dimmed: Collection[str], *, halos: bool
) -> DrawList:
    """Draw what lies under the labels: face, jacket, halos, leads, crossings, ticks."""
    plug = face(
        scene.connector,
        centre=scene.centre,
        scale=scene.scale,
        look=scene.look,
        turn_deg=scene.face_deg,
        landed={lead.landing.contact for lead in scene.fit.leads},
    )
    under, over = (halos_drawn(scene), ticks_drawn(scene)) if halos else ((), ())
    leads = leads_drawn(scene, dimmed) + crossings_drawn(scene)
    return plug + _jacket(scene, jacket_mm) + under + leads + over


def _jacket(scene: Scene, jacket_mm: float) -> DrawList:
    """Draw the jacket's cut end round the axis: a thin ring, for one looks through it."""
    look = scene.look
    radius = jacket_reach_mm(scene.fit, jacket_mm) * scene.scale
    if radius <= 0:
        return ()
    pen = Style(stroke=look.ink2, width=1.4 * look.line)
    wash = Style(fill=look.ink2, opacity=0.07)
    return (
        Circle(scene.centre, radius, wash, "jacket"),
        Circle(scene.centre, radius, pen, "jacket"),
    )


def jacket_reach_mm(fit: EndFit, jacket_mm: float) -> float:
    """Return how far from the axis the jacket, or where it is not known the leads leave."""
    reaches = [
        math.hypot(lead.exit[0], lead.exit[1]) + (0.0 if lead.is_shield else lead.covered_mm / 2)
        for lead in fit.leads
    ]
    return max(jacket_mm / 2, *reaches, 0.0)


def _joint_boxes(scene: Scene) -> list[Box]:
    found = []
    for contact in scene.connector.contacts:
        radius = contact_radius_mm(contact) * scene.scale
        found.append(box_of((Circle(scene.joint(contact.id), radius, Style()),)))
    return found


def fitting_scale(connector: Connector, width: float, height: float, look: Look) -> float:
    """Return the scale at which a face with its labels fits `width` by `height` target units."""
    half_width, half_height = shell_reach_mm(connector)
    unit = look.line
    if half_width > 1.5 * half_height:
        room = (width - 40 * unit, height - 2 * 96 * unit)
    else:
        room = (width - 2 * _beside(connector, look), height - 40 * unit)
    return max(min(room[0] / (2 * half_width), room[1] / (2 * half_height)), unit)


def _beside(connector: Connector, look: Look) -> float:
    """Return how much room the label of a joint takes beside a face: disc, name, plate."""
    letters, unit = letters_of(look), look.line
    longest = max(text_width(contact.spoken, letters.word) for contact in connector.contacts)
    return 2 * letters.disc + longest + plate_width("WHBK") * unit + 30 * unit
