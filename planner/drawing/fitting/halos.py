"""Small gaps as drawn: a halo under both joints, a measured tick, the class and the figure."""

import math
from dataclasses import dataclass

from planner.drawing.bench.shapes import Box
from planner.drawing.fitting.scene import Scene
from planner.drawing.fitting.words import Room, plated
from planner.drawing.looks import Look
from planner.drawing.primitives import Circle, DrawList, Point, Poly, Style
from planner.dryfit.bodies import Capsule
from planner.dryfit.gaps import Gap
from planner.geometry.curves import Vector

_WORDED = 8  # gaps with words, the smallest first; all have halos


def gap_owner(gap: Gap) -> str:
    """Return the owner id of a gap's halo: both parties, conductors or contacts."""
    return f"halo/{_party(gap.first)}/{_party(gap.second)}"


def _party(body: Capsule) -> str:
    return body.conductor or body.contact or "shell"


def told(scene: Scene) -> tuple[Gap, ...]:
    """Return the gaps that are worth a halo, the smallest first: one for each two joints."""
    gaps = [gap for gap in scene.fit.gaps if gap.grade != "clear"]
    found: dict[frozenset[str], Gap] = {}
    for gap in sorted(gaps, key=lambda gap: (gap.gap_mm, gap_owner(gap))):
        found.setdefault(frozenset((gap.first.contact, gap.second.contact)), gap)
    return tuple(found.values())


def halo_style(grade: str, look: Look) -> Style:
    """Return the pen of a halo: watch dashed, sleeve solid, touch solid in the stop's colour."""
    colour = look.stop if grade == "touch" else look.caution
    dash = (6 * look.line, 4 * look.line) if grade == "watch" else ()
    return Style(stroke=colour, width=(3.2 if grade == "touch" else 2.4) * look.line, dash=dash)


def halos_drawn(scene: Scene) -> DrawList:
    """Draw the halos; they go under leads and joints."""
    return tuple(item for gap in told(scene) for item in _halo(scene, gap))


def _halo(scene: Scene, gap: Gap) -> DrawList:
    look = scene.look
    pen = halo_style(gap.grade, look)
    wash = Style(fill=pen.stroke, opacity=0.22)
    places = nearest_points(gap.first, gap.second)
    items: DrawList = ()
    for body, place in zip((gap.first, gap.second), places, strict=True):
        radius = body.radius_mm * scene.scale + 7 * look.line
        at = scene.at(place)
        items += (
            Circle(at, radius, wash, gap_owner(gap)),
            Circle(at, radius, pen, gap_owner(gap)),
        )
    return items


def ticks_drawn(scene: Scene) -> DrawList:
    """Draw the measured tick of each gap."""
    return tuple(
        item for gap in told(scene) for item in _tick(_tick_ends(scene, gap), scene.look, gap)
    )


def gap_words_drawn(scene: Scene, room: Room) -> DrawList:
    """Say class and figure of the gaps, the smallest first, where there is room."""
    plates = []
    for gap in told(scene)[:_WORDED]:
        ends = _tick_ends(scene, gap)
        middle = ((ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2)
        lines = [(f"{gap.grade} {gap_text(gap.gap_mm)}", True)]
        size = scene.letters.word
        plates.append(plated(lines, middle, room, look=scene.look, size=size, owner=gap_owner(gap)))
    # Leaders first: none runs over a plate.
    leaders = tuple(items[0] for items in plates if items)
    return leaders + tuple(item for items in plates for item in items[1:])


def tick_boxes(scene: Scene) -> list[Box]:
    """Return the boxes round the middles of the ticks, which words had better leave free."""
    half = 8 * scene.look.line
    found = []
    for gap in told(scene):
        (x0, y0), (x1, y1) = _tick_ends(scene, gap)
        x, y = (x0 + x1) / 2, (y0 + y1) / 2
        found.append((x - half, y - half, x + half, y + half))
    return found


def gap_text(gap_mm: float) -> str:
    """Return a gap in words: a figure with a real minus, in mm."""
    return f"{gap_mm:.2f} mm".replace("-", "\u2212")


def _tick_ends(scene: Scene, gap: Gap) -> tuple[Point, Point]:
    """Return the two surface points that the gap is measured between, as projected."""
    one, other = nearest_points(gap.first, gap.second)
    length = math.dist(one, other)
    if length < 1e-9:
        return scene.at(one), scene.at(other)
    start = _between(one, other, min(gap.first.radius_mm / length, 1.0))
    stop = _between(other, one, min(gap.second.radius_mm / length, 1.0))
    return scene.at(start), scene.at(stop)


def _between(one: Vector, other: Vector, share: float) -> Vector:
    x, y, z = (a + (b - a) * share for a, b in zip(one, other, strict=True))
    return (x, y, z)


def _tick(ends: tuple[Point, Point], look: Look, gap: Gap) -> DrawList:
    (x0, y0), (x1, y1) = ends
    length = math.dist(*ends)
    dx, dy = ((x1 - x0) / length, (y1 - y0) / length) if length > 1e-9 else (1.0, 0.0)
    reach = 5 * look.line
    lines = [ends]
    lines += [((x - dy * reach, y + dx * reach), (x + dy * reach, y - dx * reach)) for x, y in ends]
    under = Style(stroke=look.field, width=5 * look.line, cap="round")
    colour = halo_style(gap.grade, look).stroke
    over = Style(stroke=colour, width=2 * look.line)
    owner = gap_owner(gap)
    return (
        *(Poly(line, under, owner=owner) for line in lines),
        *(Poly(line, over, owner=owner) for line in lines),
    )


@dataclass(frozen=True, slots=True)
class _Line:
    start: Vector
    way: Vector

    def at(self, share: float) -> Vector:
        x, y, z = (a + share * b for a, b in zip(self.start, self.way, strict=True))
        return (x, y, z)

    def share(self, point: Vector) -> float:
        size = _dot(self.way, self.way)
        if size < 1e-18:
            return 0.0
        return min(max(_dot(_less(point, self.start), self.way) / size, 0.0), 1.0)


def nearest_points(one: Capsule, other: Capsule) -> tuple[Vector, Vector]:
    """Return the points on two capsules' axes that are nearest to each other, mm."""
    first, second = (_Line(body.start, _less(body.end, body.start)) for body in (one, other))
    a, b, c = (
        _dot(first.way, first.way),
        _dot(first.way, second.way),
        _dot(second.way, second.way),
    )
    found = [(s, second.share(first.at(s))) for s in (0.0, 1.0)]
    found += [(first.share(second.at(t)), t) for t in (0.0, 1.0)]
    area = a * c - b * b
    if area > 1e-12:
        away = _less(first.start, second.start)
        s = (b * _dot(second.way, away) - c * _dot(first.way, away)) / area
        s = min(max(s, 0.0), 1.0)
        found.append((s, second.share(first.at(s))))
    s, t = min(found, key=lambda pair: math.dist(first.at(pair[0]), second.at(pair[1])))
    return first.at(s), second.at(t)


def _dot(one: Vector, other: Vector) -> float:
    return sum(a * b for a, b in zip(one, other, strict=True))


def _less(one: Vector, other: Vector) -> Vector:
    x, y, z = (a - b for a, b in zip(one, other, strict=True))
    return (x, y, z)
