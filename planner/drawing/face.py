"""The face of a connector, drawn from its definition: shell, terminals, centre lines.

A contact's x and y are the place where it is soldered: the axis of a cup, the middle of a lug.
"""

import math
from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType
from typing import Literal

from planner.drawing.hatching import hatch
from planner.drawing.looks import Look
from planner.drawing.primitives import Circle, DrawList, Point, Poly, Style, owned
from planner.drawing.runs import arc, ring
from planner.geometry.views import mirrored_point, turned_point
from planner.model.connector import Connector, Contact, Terminal

ViewSide = Literal["solder", "mating"]
_CENTRE_DASH = (14.0, 4.0, 3.0, 4.0)
_D_LEAN = 0.18  # how far a D's short side is drawn in on each side, as a share of its height


def contact_owner(contact: str) -> str:
    """Return the owner id of a contact's primitives."""
    return f"contact/{contact}"


def contact_point(
    connector: Connector,
    contact_id: str,
    *,
    centre: Point,
    scale: float,
    turn_deg: float = 0.0,
    side: ViewSide = "solder",
) -> Point:
    """Return where a contact is soldered (or, on the mating side, met), in target units.

    KeyError if the connector has no such contact.
    """
    contact = connector.by_id[contact_id]
    if side == "mating" and connector.mating == "concentric":
        return _ring_point(connector, contact, centre, scale)
    x, y = turned_point(contact.terminal.x_mm, contact.terminal.y_mm, turn_deg)
    if side == "mating":
        x, y = mirrored_point(x, y)
    return (centre[0] + x * scale, centre[1] - y * scale)


def contact_radius_mm(contact: Contact) -> float:
    """Return how far a terminal reaches from its point as drawn, mm."""
    terminal = contact.terminal
    if terminal.kind == "cup":
        return terminal.bore_mm / 2 + wall_mm(terminal.bore_mm)
    if terminal.kind == "lug":
        return math.hypot(terminal.width_mm, terminal.depth_mm) / 2
    return terminal.width_mm / 2


def wall_mm(bore_mm: float) -> float:
    """Return how thick a cup's wall is drawn, mm."""
    return 0.1 + 0.1 * bore_mm


def shell_reach_mm(connector: Connector) -> tuple[float, float]:
    """Return half the width and half the height of the drawn shell, mm, not turned."""
    if connector.shell.shape == "d":
        wall = _d_wall_mm(connector)
        return (connector.shell.width_mm / 2 + wall, connector.shell.height_mm / 2 + wall)
    radius = _outer_radius_mm(connector)
    return (radius, radius)


def face(  # noqa: PLR0913 - what is drawn, where, how, and what is known already
    connector: Connector,
    *,
    centre: Point,
    scale: float,
    look: Look,
    turn_deg: float = 0.0,
    side: ViewSide = "solder",
    landed: Collection[str] = frozenset(),
    kept: Mapping[str, DrawList] = MappingProxyType({}),
) -> DrawList:
    """Draw a connector's face round `centre`, `scale` target units a mm.

    Owners are `shell` and `contact/<id>`. Contacts in `landed` are filled with tin. The mating side
    is drawn mirrored, its shell dashed: nothing is soldered there. `kept` has, by owner, what was
    drawn before and is known to be the same; it is taken as it is, on the solder side.
    """
    if side == "mating":
        return _mating_face(connector, centre, scale, look, turn_deg)
    items = list(
        kept.get("shell") or owned(_shell(connector, centre, scale, look, turn_deg), "shell")
    )
    for contact in connector.contacts:
        before = kept.get(contact_owner(contact.id))
        if before is not None:
            items += before
            continue
        at = contact_point(connector, contact.id, centre=centre, scale=scale, turn_deg=turn_deg)
        pen = _Pen(at, scale, look, contact.terminal.opening_deg + turn_deg, contact.id in landed)
        drawn = _TERMINALS[contact.terminal.kind](contact.terminal, pen)
        items += owned(drawn, contact_owner(contact.id))
    return tuple(items)


# -- shell ------------------------------------------------------------------------------------


def _outer_radius_mm(connector: Connector) -> float:
    return max(connector.barrel.outside_mm, connector.shell.bore_mm * 1.08) / 2


def _d_wall_mm(connector: Connector) -> float:
    return max(0.08 * connector.shell.height_mm, 0.5)


def _d_outline(width: float, height: float) -> list[Point]:
    """Return a D in mm, y up, long side up, its corners rounded."""
    lean, radius = height * _D_LEAN, height * 0.22
    corners = [
        (-width / 2, height / 2),
        (width / 2, height / 2),
        (width / 2 - lean, -height / 2),
        (-width / 2 + lean, -height / 2),
    ]
    points: list[Point] = []
    for place, corner in enumerate(corners):
        before, after = corners[place - 1], corners[(place + 1) % 4]
        points += _rounded_corner(before, corner, after, radius)
    return points


def _rounded_corner(before: Point, corner: Point, after: Point, radius: float) -> list[Point]:
    start, stop = _towards(corner, before, radius), _towards(corner, after, radius)
    found = []
    for index in range(7):
        t, u = index / 6, 1 - index / 6
        weights = (u * u, 2 * u * t, t * t)
        spots = (start, corner, stop)
        found.append(
            (
                sum(w * spot[0] for w, spot in zip(weights, spots, strict=True)),
                sum(w * spot[1] for w, spot in zip(weights, spots, strict=True)),
            )
        )
    return found


def _towards(start: Point, goal: Point, distance: float) -> Point:
    share = distance / math.dist(start, goal)
    return (start[0] + (goal[0] - start[0]) * share, start[1] + (goal[1] - start[1]) * share)


def _placed(
    points: Sequence[Point], centre: Point, scale: float, turn_deg: float, *, mirrored: bool
) -> tuple[Point, ...]:
    placed = []
    for point in points:
        x, y = turned_point(*point, turn_deg)
        if mirrored:
            x, y = mirrored_point(x, y)
        placed.append((centre[0] + x * scale, centre[1] - y * scale))
    return tuple(placed)


def shell_outlines(
    connector: Connector,
    *,
    centre: Point,
    scale: float,
    turn_deg: float = 0.0,
    side: ViewSide = "solder",
) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """Return the outside and the inside outline of the shell as polygons."""
    if connector.shell.shape == "round":
        outer, inner = _outer_radius_mm(connector), connector.shell.bore_mm / 2
        return (ring(centre, outer * scale), ring(centre, inner * scale))
    width, height = connector.shell.width_mm, connector.shell.height_mm
    wall, mirrored = 2 * _d_wall_mm(connector), side == "mating"
    outside, inside = _d_outline(width + wall, height + wall), _d_outline(width, height)
    return (
        _placed(outside, centre, scale, turn_deg, mirrored=mirrored),
        _placed(inside, centre, scale, turn_deg, mirrored=mirrored),
    )


def _shell(
    connector: Connector, centre: Point, scale: float, look: Look, turn_deg: float
) -> DrawList:
    unit = look.line
    outer, inner = shell_outlines(connector, centre=centre, scale=scale, turn_deg=turn_deg)
    lines = Style(stroke=look.metal_hatch, width=unit)
    return (
        Poly(outer, Style(fill=look.metal), closed=True),
        *hatch((outer, inner), pitch=7 * unit, angle_deg=-45, style=lines),
        Poly(outer, Style(stroke=look.casing, width=1.75 * unit), closed=True),
        Poly(inner, Style(fill=look.insulator, stroke=look.casing, width=1.25 * unit), closed=True),
        *_centre_lines(outer, centre, look),
    )


def _centre_lines(outline: Sequence[Point], centre: Point, look: Look) -> DrawList:
    reach = 7 * look.line
    left, right = min(x for x, _ in outline) - reach, max(x for x, _ in outline) + reach
    top, bottom = min(y for _, y in outline) - reach, max(y for _, y in outline) + reach
    dash = tuple(part * look.line for part in _CENTRE_DASH)
    pen = Style(stroke=look.centre, width=look.line, dash=dash)
    return (
        Poly(((left, centre[1]), (right, centre[1])), pen),
        Poly(((centre[0], top), (centre[0], bottom)), pen),
    )


# -- terminals --------------------------------------------------------------------------------


class _Pen:
    """What a terminal is drawn with: place, scale, look, direction, and whether it is landed."""

    def __init__(
        self,
        at: Point,
        scale: float,
        look: Look,
        opening_deg: float,
        landed: bool,  # noqa: FBT001 - a state
    ) -> None:
        self.at, self.scale, self.look = at, scale, look
        self.opening_deg, self.landed = opening_deg, landed

    def edge(self) -> Style:
        width = 1.4 * self.look.line
        return Style(fill=self.look.brass, stroke=self.look.brass_edge, width=width)

    def rim(self) -> Style:
        return Style(stroke=self.look.tin_edge, width=self.look.line)


def _cup(terminal: Terminal, pen: _Pen) -> DrawList:
    inside = terminal.bore_mm / 2 * pen.scale
    outside = inside + wall_mm(terminal.bore_mm) * pen.scale
    start, stop = pen.opening_deg + 34, pen.opening_deg + 326
    wall = (*arc(pen.at, outside, start, stop), *arc(pen.at, inside, stop, start))
    body = Poly(wall, replace(pen.edge(), fill=pen.look.wall), closed=True)
    full = inside + 0.4 * pen.look.line
    if pen.landed:
        solder = Circle(pen.at, full, Style(fill=pen.look.tin))
        return (solder, body, Circle(pen.at, full, pen.rim()))
    depth = Style(stroke=pen.look.brass, width=pen.look.line, opacity=0.55)
    hollow = Circle(pen.at, full, Style(fill=pen.look.bore))
    return (hollow, Circle(pen.at, inside * 0.78, depth), body)


def _lug(terminal: Terminal, pen: _Pen) -> DrawList:
    length, width = terminal.depth_mm * pen.scale, terminal.width_mm * pen.scale
    tab = Poly(_tab(pen.at, length, width, pen.opening_deg), pen.edge(), closed=True)
    radius = min(length, width) / 2
    if pen.landed:
        rim = pen.rim()
        solder = Style(fill=pen.look.tin, stroke=rim.stroke, width=rim.width)
        return (tab, Circle(pen.at, radius * 0.8, solder))
    hole = Style(fill=pen.look.bore, stroke=pen.look.brass_edge, width=1.2 * pen.look.line)
    return (tab, Circle(pen.at, radius * 0.5, hole))


def _tab(at: Point, length: float, width: float, opening_deg: float) -> tuple[Point, ...]:
    radius = min(length, width) * 0.35
    far, wide = length / 2 - radius, width / 2 - radius
    points: list[Point] = []
    for place, (x, y) in enumerate(((far, wide), (-far, wide), (-far, -wide), (far, -wide))):
        points += arc((x, -y), radius, 90 * place, 90 * place + 90, 6)
    return _placed([(x, -y) for x, y in points], at, 1.0, opening_deg, mirrored=False)


def _post(terminal: Terminal, pen: _Pen) -> DrawList:
    radius = terminal.width_mm / 2 * pen.scale
    body = Circle(pen.at, radius, pen.edge())
    if pen.landed:
        return (body, Circle(pen.at, radius * 0.8, Style(fill=pen.look.tin)))
    return (body, Circle(pen.at, radius * 0.35, Style(fill=pen.look.brass_edge)))


_TERMINALS: dict[str, Callable[[Terminal, _Pen], DrawList]] = {
    "cup": _cup,
    "lug": _lug,
    "post": _post,
}


# -- mating side ------------------------------------------------------------------------------


def _mating_face(
    connector: Connector, centre: Point, scale: float, look: Look, turn_deg: float
) -> DrawList:
    _, inner = shell_outlines(
        connector, centre=centre, scale=scale, turn_deg=turn_deg, side="mating"
    )
    dash = (6 * look.line, 4 * look.line)
    pen = Style(fill=look.insulator, stroke=look.casing, width=1.75 * look.line, dash=dash)
    items: list[DrawList] = [owned((Poly(inner, pen, closed=True),), "shell")]
    draw = _mating_ring if connector.mating == "concentric" else _mating_contact
    # Rings from the outside in, so that the inner ones stay on top.
    for contact in reversed(connector.contacts):
        at = contact_point(
            connector, contact.id, centre=centre, scale=scale, turn_deg=turn_deg, side="mating"
        )
        drawn = draw(connector, contact, centre if draw is _mating_ring else at, scale, look)
        items.append(owned(drawn, contact_owner(contact.id)))
    return tuple(item for drawn in items for item in drawn)


def _ring_radius(connector: Connector, contact: Contact) -> float:
    """Return the outside radius of a contact's ring, mm: the tip inmost, the sleeve outmost."""
    place = connector.contacts.index(contact) + 1
    return connector.shell.narrowest_mm / 2 * 0.78 * place / connector.poles


def _ring_point(connector: Connector, contact: Contact, centre: Point, scale: float) -> Point:
    place = connector.contacts.index(contact)
    if place == 0:
        return centre
    step = connector.shell.narrowest_mm / 2 * 0.78 / connector.poles
    radius = (_ring_radius(connector, contact) - step / 2) * scale
    angle = math.radians(60 - 72 * place)
    return (centre[0] + radius * math.cos(angle), centre[1] - radius * math.sin(angle))


def _mating_ring(
    connector: Connector, contact: Contact, centre: Point, scale: float, look: Look
) -> DrawList:
    pen = Style(fill=look.insulator, stroke=look.casing, width=1.2 * look.line)
    return (Circle(centre, _ring_radius(connector, contact) * scale, pen),)


def _mating_contact(
    connector: Connector, contact: Contact, at: Point, scale: float, look: Look
) -> DrawList:
    radius = max(contact_radius_mm(contact) * 0.6, 0.2) * scale
    if connector.gender == "male":
        pin = Style(fill=look.brass, stroke=look.casing, width=1.2 * look.line)
        return (Circle(at, radius, pin),)
    socket = Style(fill=look.paper, stroke=look.casing, width=1.2 * look.line)
    return (Circle(at, radius, socket), Circle(at, radius * 0.5, Style(fill=look.bore)))
