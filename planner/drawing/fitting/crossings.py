"""Where leads cross as seen from the solder side: a diamond with a cross, or with how many."""

import math

from planner.drawing.fitting.heights import crossing_point
from planner.drawing.fitting.scene import Scene
from planner.drawing.primitives import DrawList, Point, Poly, Style, Text, centred_baseline

RADIUS = 7.5
_NEAR = 2.0  # radii: marks nearer than this become one with a figure


def crossings_drawn(scene: Scene) -> DrawList:
    """Mark each crossing; those that lie close together share a mark with their number."""
    radius = RADIUS * scene.look.line
    groups: list[tuple[Point, list[str]]] = []
    for pair in scene.fit.crossings:
        at = _place(scene, pair)
        if at is None:
            continue
        near = next((it for it in groups if math.dist(it[0], at) < _NEAR * radius), None)
        if near is None:
            near = (at, [])
            groups.append(near)
        near[1].append(f"crossing/{pair[0]}/{pair[1]}")
    return tuple(
        item for at, owners in groups for item in _mark(at, radius, scene, owners[0], len(owners))
    )


def _place(scene: Scene, pair: tuple[str, str]) -> Point | None:
    one, other = (scene.lead_of.get(name) for name in pair)
    point = crossing_point(one, other) if one is not None and other is not None else None
    return scene.at(point) if point is not None else None


def _mark(at: Point, radius: float, scene: Scene, owner: str, count: int) -> DrawList:
    look, (x, y) = scene.look, at
    size = max(radius * 1.6, scene.letters.word)
    reach = radius if count == 1 else size * 0.8
    corners = ((x, y - reach), (x + reach, y), (x, y + reach), (x - reach, y))
    pen = Style(fill=look.field, stroke=look.ink, width=1.5 * look.line)
    ground = Poly(corners, pen, closed=True, owner=owner)
    if count > 1:
        at = (x, centred_baseline(y, size))
        figure = Text(at, str(count), size, look.ink, bold=True, anchor="middle", owner=owner)
        return (ground, figure)
    arm, cross = radius * 0.36, Style(stroke=look.ink, width=1.6 * look.line, cap="round")
    return (
        ground,
        Poly(((x - arm, y - arm), (x + arm, y + arm)), cross, owner=owner),
        Poly(((x - arm, y + arm), (x + arm, y - arm)), cross, owner=owner),
    )
