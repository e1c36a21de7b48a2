"""The iron at one joint: its tip at the joint, from the direction with most room, its margin."""

import math

from planner.drawing.fitting.scene import Scene
from planner.drawing.fitting.words import Room, plated
from planner.drawing.primitives import DrawList, Point, Poly, Style

TIP_MM = 3.0
TIP_WIDE_MM, TIP_END_MM = 0.8, 0.3
SHAFT_PX, HANDLE_PX = 26.0, 54.0


def iron_drawn(scene: Scene, contact: str, room: Room) -> DrawList:
    """Draw the iron at a joint with its margin in mm; nothing where the joint has no way in."""
    access = next((way for way in scene.fit.access if way.contact == contact), None)
    if access is None or contact not in scene.connector.by_id:
        return ()
    owner, look = f"iron/{contact}", scene.look
    angle = math.radians(access.direction_deg + scene.view_deg)
    along = (math.cos(angle), -math.sin(angle))
    at = scene.joint(contact)
    hidden = access.margin_mm < 0
    colour = look.stop if hidden else look.accent
    body = _body(at, along, scene)
    items: DrawList = tuple(
        Poly(points, style, closed=True, owner=owner)
        for points, style in zip(
            body,
            (
                Style(fill=look.tin, stroke=look.ink, width=1.4 * look.line),
                Style(fill=colour, stroke=look.ink, width=1.4 * look.line),
            ),
            strict=True,
        )
    )
    words = [(f"{'no way in' if hidden else 'iron'} {_signed(access.margin_mm)}", True)]
    if access.blocker:
        words.append((f"nearest: {access.blocker}", False))
    end = _on(at, along, _reach(scene) * 0.85)
    return (*items, *plated(words, end, room, look=look, size=scene.letters.word, owner=owner))


def _signed(margin_mm: float) -> str:
    return f"{margin_mm:+.2f} mm".replace("-", "\u2212")


def _reach(scene: Scene) -> float:
    return TIP_MM * scene.scale + (SHAFT_PX + HANDLE_PX) * scene.look.line


def _on(at: Point, along: Point, distance: float, aside: float = 0.0) -> Point:
    dx, dy = along
    return (at[0] + dx * distance - dy * aside, at[1] + dy * distance + dx * aside)


def _body(at: Point, along: Point, scene: Scene) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """Return the outlines of the bit with its shaft, and of the handle."""
    unit = scene.look.line
    end, wide = TIP_END_MM / 2 * scene.scale, TIP_WIDE_MM / 2 * scene.scale
    cone, shaft = TIP_MM * scene.scale, TIP_MM * scene.scale + SHAFT_PX * unit
    grip = max(wide * 1.5, 8 * unit)
    bit = ((0.0, -end), (cone, -wide), (shaft, -wide), (shaft, wide), (cone, wide), (0.0, end))
    far = shaft + HANDLE_PX * unit
    handle = (
        (shaft, -grip), (far - grip / 2, -grip), (far, -grip / 2),
        (far, grip / 2), (far - grip / 2, grip), (shaft, grip),
    )  # fmt: skip
    return (
        tuple(_on(at, along, distance, aside) for distance, aside in bit),
        tuple(_on(at, along, distance, aside) for distance, aside in handle),
    )
