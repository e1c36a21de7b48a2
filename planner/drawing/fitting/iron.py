"""The iron at one joint: its tip at the joint, from the direction with most room, its margin."""

import math
from dataclasses import dataclass, replace

from planner.drawing.bench.shapes import Box
from planner.drawing.fitting.labels import outline_box
from planner.drawing.fitting.scene import Scene
from planner.drawing.fitting.words import Room, plated
from planner.drawing.primitives import DrawList, Point, Poly, Style
from planner.dryfit.iron import IRON_RADIUS_MM, ROOMY_MM

TIP_MM = 2.0
TIP_END_MM = 0.3
SHAFT_PX, HANDLE_PX = 12.0, 40.0
BEYOND_PX, LEAST_PX = 16.0, 56.0


@dataclass(frozen=True)
class Iron:
    """The iron at a joint as drawn, with what is said of it and where."""

    items: DrawList
    words: tuple[tuple[str, bool], ...]
    end: Point
    boxes: tuple[Box, ...]
    owner: str

    def words_drawn(self, scene: Scene, room: Room) -> DrawList:
        """Set the margin beside the handle."""
        size = scene.letters.word
        return plated(self.words, self.end, room, look=scene.look, size=size, owner=self.owner)


def iron_at(scene: Scene, contact: str) -> Iron | None:
    """Return the iron at a joint with its margin in mm, or None where nothing is soldered."""
    access = next((way for way in scene.fit.access if way.contact == contact), None)
    if access is None or contact not in scene.connector.by_id:
        return None
    owner, look = f"iron/{contact}", scene.look
    angle = math.radians(access.direction_deg + scene.view_deg)
    along, at = (math.cos(angle), -math.sin(angle)), scene.joint(contact)
    reach = _reach(scene, at, along)
    bit, handle = _body(at, along, reach, scene)
    edge = Style(fill=look.tin, stroke=look.ink, width=1.4 * look.line)
    grip = replace(edge, fill=look.stop if access.margin_mm < 0 else look.accent)
    items = (
        Poly(bit, edge, closed=True, owner=owner),
        Poly(handle, grip, closed=True, owner=owner),
    )
    words = [(_room_words(access.margin_mm), True)]
    if access.blocker:
        words.append((f"nearest: {access.blocker}", False))
    steps = [_on(at, along, reach * step / 6) for step in range(1, 7)]
    half = 9 * look.line
    boxes = tuple((x - half, y - half, x + half, y + half) for x, y in steps)
    return Iron(items, tuple(words), _on(at, along, reach), boxes, owner)


def _room_words(margin_mm: float) -> str:
    if margin_mm < 0:
        return f"no way in, {margin_mm:.2f} mm".replace("-", "\u2212")
    more = " or more" if margin_mm >= ROOMY_MM else ""
    return f"iron, {margin_mm:.2f} mm free{more}"


def _reach(scene: Scene, at: Point, along: Point) -> float:
    """Return how long the iron is drawn: whole, or to just beyond the shell if that is nearer."""
    unit = scene.look.line
    whole = TIP_MM * scene.scale + (SHAFT_PX + HANDLE_PX) * unit
    left, top, right, bottom = outline_box(scene)
    beyond = BEYOND_PX * unit
    out = []
    for place, way, low, high in ((at[0], along[0], left, right), (at[1], along[1], top, bottom)):
        if abs(way) > 1e-6:
            edge = high + beyond if way > 0 else low - beyond
            out.append((edge - place) / way)
    return max(min(whole, *out), LEAST_PX * unit)


def _on(at: Point, along: Point, distance: float, aside: float = 0.0) -> Point:
    dx, dy = along
    return (at[0] + dx * distance - dy * aside, at[1] + dy * distance + dx * aside)


def _body(
    at: Point, along: Point, reach: float, scene: Scene
) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """Return the outlines of the bit with its shaft, and of the handle."""
    unit = scene.look.line
    end, wide = TIP_END_MM / 2 * scene.scale, IRON_RADIUS_MM * scene.scale
    shaft = max(reach - HANDLE_PX * unit, 0.5 * reach)
    cone = min(TIP_MM * scene.scale, shaft)
    grip = max(wide * 1.5, 8 * unit)
    bit = ((0.0, -end), (cone, -wide), (shaft, -wide), (shaft, wide), (cone, wide), (0.0, end))
    handle = (
        (shaft, -grip), (reach - grip / 2, -grip), (reach, -grip / 2),
        (reach, grip / 2), (reach - grip / 2, grip), (shaft, grip),
    )  # fmt: skip
    return (
        tuple(_on(at, along, distance, aside) for distance, aside in bit),
        tuple(_on(at, along, distance, aside) for distance, aside in handle),
    )
