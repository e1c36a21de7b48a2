"""The face of an end on the bench, with its joints and their sizes, or the place for one."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from planner.drawing.bench.facts import EndFacts
from planner.drawing.bench.labels import Ring
from planner.drawing.bench.parts import Settings
from planner.drawing.face import contact_point, contact_radius_mm, face, shell_outlines
from planner.drawing.primitives import Circle, DrawList, Point, Style, Text

# Below this terminal size (px) an end is shown compact: no source line, scale bar or plates.
COMPACT_TERMINAL_PX = 12.5
UNKNOWN_RADIUS = 76.0


@dataclass(frozen=True, slots=True)
class ShownFace:
    """A drawn face: where each contact is soldered, how far its terminal reaches, its shell."""

    items: DrawList
    joints: dict[str, Point]
    radii: dict[str, float]
    ring: Ring


def _unknown_face(facts: EndFacts, settings: Settings) -> ShownFace:
    """Draw the place of a connector that is not chosen yet."""
    look, radius = settings.look, UNKNOWN_RADIUS * min(max(settings.zoom, 0.4), 1.3)
    ring = Style(stroke=look.edge, width=1.75, dash=(7.0, 5.0))
    words = f"Choose {facts.end}"
    items: DrawList = (
        Circle((0, 0), radius, ring),
        Text((0, 2), words, 15, look.accent, bold=True, anchor="middle"),
    )
    if radius > 60:
        items += (Text((0, 21), "from the shelf", 12, look.ink2, anchor="middle"),)
    box = (-radius, -radius, radius, radius)
    return ShownFace(items, {}, {}, Ring(box, round=True))


def draw_face(
    facts: EndFacts, settings: Settings, kept: Mapping[str, DrawList] = MappingProxyType({})
) -> ShownFace:
    """Draw the face of an end round the origin; `kept` has what is the same as before, by owner."""
    connector = facts.connector
    if connector is None:
        return _unknown_face(facts, settings)
    side, turn, scale = settings.side, facts.shown_turn_deg, facts.scale
    solder = side == "solder"
    landed = frozenset(core.contact for core in facts.cores if core.contact and solder)
    items = face(
        connector,
        centre=(0, 0), scale=scale, look=settings.look, turn_deg=turn, side=side, landed=landed,
        kept=kept,
    )  # fmt: skip
    joints = {
        contact.id: contact_point(
            connector, contact.id, centre=(0, 0), scale=scale, turn_deg=turn, side=side
        )
        for contact in connector.contacts
    }
    radii = {contact.id: contact_radius_mm(contact) * scale for contact in connector.contacts}
    outer, _ = shell_outlines(connector, centre=(0, 0), scale=scale, turn_deg=turn, side=side)
    xs, ys = [point[0] for point in outer], [point[1] for point in outer]
    box = (min(xs), min(ys), max(xs), max(ys))
    return ShownFace(items, joints, radii, Ring(box, round=connector.shell.shape == "round"))


def is_compact(drawn_radii: Mapping[str, float]) -> bool:
    """Tell whether terminals this small are shown without their smaller words."""
    return bool(drawn_radii) and 2 * min(drawn_radii.values()) < COMPACT_TERMINAL_PX
