"""The cable at a cut end: the braid that shows, the jacket, its torn edge."""

import math

from planner.drawing.bench.facts import EndFacts
from planner.drawing.hatching import hatch
from planner.drawing.looks import Look
from planner.drawing.primitives import DrawList, Point, Poly, Rect, Style

COLLAR_PX, JACKET_PX = 20.0, 38.0


def wave(x: float, half: float, swing: float) -> list[Point]:
    """Return a torn edge from top to bottom round x: one long S, as drawings break a cable."""
    steps = 16
    return [
        (x + swing * math.sin(2 * math.pi * step / steps), -half + 2 * half * step / steps)
        for step in range(steps + 1)
    ]


def _collar(cut: Point, facing: int, half: float, width: float, look: Look) -> DrawList:
    left = min(cut[0], cut[0] + facing * width)
    box = ((left, -half), (left + width, -half), (left + width, half), (left, half))
    pen = Style(stroke=look.tin_edge, width=0.9)
    return (
        Rect(
            (left, -half), width, 2 * half, Style(fill=look.tin, stroke=look.casing, width=1.3), 2
        ),
        *hatch((box,), pitch=6.0, angle_deg=-55, style=pen),
        *hatch((box,), pitch=6.0, angle_deg=55, style=pen),
    )


def cable_stub(
    facts: EndFacts, cut: Point, half: float, look: Look, zoom: float
) -> tuple[DrawList, Point]:
    """Draw the stub beside the fan; return it with the place where the link is tied on."""
    facing, size = facts.facing, min(max(zoom, 0.4), 1.3)
    if not facts.has_cable:
        return (), cut
    items: DrawList = ()
    near = cut[0] - facing * 2
    if facts.braided:
        width = COLLAR_PX * size
        items = _collar((near, cut[1]), facing, half * 0.91, width, look)
        near += facing * width
    far = near + facing * JACKET_PX * size
    edge = wave(far, half, facing * 4.5 * size)
    outline = ((near, -half), *edge, (near, half))
    shine = Style(stroke=look.jacket_shine, width=min(4.0, half * 0.12), cap="round")
    level = -half * 0.64
    body = Poly(outline, Style(fill=look.jacket, stroke=look.casing, width=1.4), closed=True)
    gleam = Poly(((near + facing * 6, level), (far - facing * 7, level)), shine)
    return (*items, *_break(edge, facing * 8 * size, look), body, gleam), (far, cut[1])


def _break(edge: list[Point], width: float, look: Look) -> DrawList:
    """Draw the white gap of a long break, with the other side's torn edge."""
    other = [(x + width, y) for x, y in edge]
    line = look.jacket if look.name == "light" else look.edge
    gap = Style(fill=look.paper, stroke=look.paper, width=1.0)
    return (
        Poly((*edge, *reversed(other)), gap, closed=True),
        Poly(tuple(other), Style(stroke=line, width=1.6)),
    )
