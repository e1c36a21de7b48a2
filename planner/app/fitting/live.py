"""The end while it is turned by hand, drawn plainly enough for every frame.

A large plug is not drawn again but turned as a picture; its leads are plain strokes. Gaps, halos
and crossings are all there. Hatch, labels and order come back when the hand lets go.
"""

from typing import TYPE_CHECKING

from planner.drawing.fitting.crossings import crossings_drawn
from planner.drawing.fitting.halos import gap_words_drawn, halos_drawn, ticks_drawn
from planner.drawing.fitting.scene import Scene
from planner.drawing.fitting.words import Room
from planner.drawing.primitives import Circle, DrawList, Poly, Style, Text, centred_baseline
from planner.model.cable import Core

if TYPE_CHECKING:
    from planner.drawing.bench.shapes import Box
    from planner.drawing.looks import Look
    from planner.dryfit.bodies import Lead

_CASING, _LETTER = 2.6, 12.0


def live_drawn(scene: Scene, frame: "Box") -> DrawList:
    """Draw what lies over the plug: leads, crossings, gaps, the name of each contact."""
    return (
        *halos_drawn(scene),
        *leads_plain(scene),
        *_names(scene),
        *crossings_drawn(scene),
        *ticks_drawn(scene),
        *gap_words_drawn(scene, Room(frame=frame)),
    )


def leads_plain(scene: Scene) -> DrawList:
    """Draw each lead as a stroke in its colours, the higher ones over the lower ones."""
    leads = sorted(scene.fit.leads, key=lambda lead: (lead.exit[2] + lead.mouth[2], lead.mouth))
    return tuple(item for lead in leads for item in _lead(scene, lead))


def _lead(scene: Scene, lead: "Lead") -> DrawList:
    look, start, stop = scene.look, scene.at(lead.exit), scene.at(lead.mouth)
    width = max(lead.covered_mm * scene.scale, 2.0)
    if start == stop:
        return (Circle(start, width / 2, Style(fill=look.tin, stroke=look.casing)),)
    run = (start, stop)
    items: DrawList = (Poly(run, Style(stroke=look.casing, width=width + _CASING, cap="round")),)
    for colour, share in _colours(lead, look):
        items += (Poly(run, Style(stroke=colour, width=width * share, cap="round")),)
    return items


def _colours(lead: "Lead", look: "Look") -> list[tuple[str, float]]:
    """Return body and stripe with their shares of the width."""
    if not isinstance(lead.part, Core):
        return [(look.tin, 1.0)]
    codes = lead.part.colours[:2]
    return [(look.core(code)[0], share) for code, share in zip(codes, (1.0, 0.36), strict=False)]


def _names(scene: Scene) -> DrawList:
    """Write each contact's name on its joint: the labels would jump from place to place."""
    items: DrawList = ()
    for contact in scene.connector.contacts:
        x, y = scene.joint(contact.id)
        at = (x, centred_baseline(y, _LETTER))
        disc = Circle((x, y), _LETTER * 0.72, Style(fill=scene.look.tin, opacity=0.85))
        ink = scene.look.caution_ink
        items += (disc, Text(at, contact.id, _LETTER, ink, bold=True, anchor="middle"))
    return items
