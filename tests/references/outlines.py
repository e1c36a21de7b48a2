"""Outlines of terminals and shells as points in mm, for tests of the shipped definitions."""

import math
from collections.abc import Callable
from dataclasses import dataclass

from planner.model.connector import Connector, Terminal

CUP_WALL_MM = 0.2  # from memory; turned cups of this size have 0.15 to 0.25 mm
D_LEAN = math.tan(math.radians(10))  # the short side of a D is drawn in by 10 degrees, from memory

Point = tuple[float, float]


@dataclass(frozen=True)
class Body:
    """A closed shape: points on its outline, and a test for what lies inside."""

    outline: tuple[Point, ...]
    holds: Callable[[Point], bool]


def disc(x: float, y: float, radius: float) -> Body:
    angles = [math.tau * step / 72 for step in range(72)]
    outline = tuple((x + radius * math.cos(a), y + radius * math.sin(a)) for a in angles)
    return Body(outline, lambda p: math.dist(p, (x, y)) < radius)


def tab(terminal: Terminal) -> Body:
    """Return a lug: a rectangle round its joint, its length along the opening direction."""
    turn = math.radians(terminal.opening_deg)
    along, across = (math.cos(turn), math.sin(turn)), (-math.sin(turn), math.cos(turn))
    half_length, half_width = terminal.depth_mm / 2, terminal.width_mm / 2

    def placed(u: float, v: float) -> Point:
        return (
            terminal.x_mm + u * along[0] + v * across[0],
            terminal.y_mm + u * along[1] + v * across[1],
        )

    def holds(p: Point) -> bool:
        dx, dy = p[0] - terminal.x_mm, p[1] - terminal.y_mm
        u, v = dx * along[0] + dy * along[1], dx * across[0] + dy * across[1]
        return abs(u) < half_length and abs(v) < half_width

    steps = [-1 + step / 10 for step in range(21)]
    outline = [placed(half_length * s, half_width * side) for s in steps for side in (-1, 1)]
    outline += [placed(half_length * side, half_width * s) for s in steps for side in (-1, 1)]
    return Body(tuple(outline), holds)


def body(terminal: Terminal) -> Body:
    if terminal.kind == "lug":
        return tab(terminal)
    wall = CUP_WALL_MM if terminal.kind == "cup" else 0.0
    return disc(terminal.x_mm, terminal.y_mm, terminal.across_mm / 2 + wall)


def overlap(one: Body, other: Body) -> bool:
    return any(map(one.holds, other.outline)) or any(map(other.holds, one.outline))


def clear_mm(one: Body, other: Body) -> float:
    return min(math.dist(p, q) for p in one.outline for q in other.outline)


def inside_shell(connector: Connector, point: Point) -> bool:
    shell, (x, y) = connector.shell, point
    if shell.shape == "round":
        return math.hypot(x, y) <= shell.bore_mm / 2
    lean = (shell.height_mm / 2 - y) * D_LEAN
    return abs(y) <= shell.height_mm / 2 and abs(x) <= shell.width_mm / 2 - lean
