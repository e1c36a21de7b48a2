"""The picture of an end: its fitted face, its side view where terminals differ in height."""

import math
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from planner.app.fitting.empty import wanting
from planner.drawing.face import contact_radius_mm, face, shell_reach_mm
from planner.drawing.fitting.face import fitted_face, fitting_scale
from planner.drawing.fitting.side import side_height, side_view, wants_side_view
from planner.drawing.primitives import Circle, DrawList, Point, Style, Text
from planner.geometry.views import turned_point
from planner.model.signals import signals_text

if TYPE_CHECKING:
    from planner.app.fitting.state import Fitting
    from planner.drawing.looks import Look
    from planner.model.connector import Connector

Size = tuple[int, int]
_SIDE_HIGH, _SIDE_WIDE, _GAP = 132.0, 216.0, 12.0
_FACE_LEAST = 250.0
_SIDE_PITCH, _SIDE_SCALE_MOST = 76.0, 24.0


@dataclass(frozen=True)
class Picture:
    """What is drawn, the middle of the face, and where its joints lie."""

    items: DrawList
    centre: Point
    scale: float = 1.0
    joints: dict[str, Point] = field(default_factory=dict)
    radii: dict[str, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class _Rooms:
    """Where the face goes, and the side view if there is one: left, top, width, height."""

    face: tuple[float, float, float, float]
    side: tuple[float, float, float, float] | None


def draw_picture(state: "Fitting", size: Size, look: "Look", zoom: float, shift: Point) -> Picture:
    """Draw the end that the state looks at into `size` px."""
    missing = wanting(state.plan, state.end)
    if missing is not None:
        return _empty(state, size, look, missing.what, missing.do)
    connector, fit = state.connector, state.fit
    if connector is None or fit is None:
        return Picture((), (size[0] / 2, size[1] / 2))
    rooms = _rooms(connector, size)
    scale = _scale(state, connector, rooms, look) * zoom
    left, top, width, height = rooms.face
    centre = (left + width / 2 + shift[0], top + height / 2 + shift[1])
    joint = state.joint
    items = fitted_face(
        connector, fit, centre=centre, scale=scale, look=look, jacket_mm=_jacket_mm(state),
        signals=_signals(state), iron=joint,
    )  # fmt: skip
    if rooms.side is not None:
        items += _side(state, rooms.side, look)
    joints, radii = {}, {}
    for contact in connector.contacts:
        x, y = turned_point(contact.terminal.x_mm, contact.terminal.y_mm, fit.turn_deg)
        joints[contact.id] = (centre[0] + x * scale, centre[1] - y * scale)
        radii[contact.id] = contact_radius_mm(contact) * scale
    return Picture(items, centre, scale, joints, radii)


def _rooms(connector: "Connector", size: Size) -> _Rooms:
    """Divide the room: the side view goes below, or beside where the height is short."""
    width, height = float(size[0]), float(size[1])
    whole = (0.0, 0.0, width, height)
    if not wants_side_view(connector):
        return _Rooms(whole, None)
    if height - _SIDE_HIGH - _GAP >= _FACE_LEAST:
        top = height - _SIDE_HIGH
        return _Rooms((0.0, 0.0, width, top - _GAP), (16.0, top, width - 32.0, _SIDE_HIGH))
    if width - _SIDE_WIDE - _GAP >= _FACE_LEAST:
        left = width - _SIDE_WIDE
        return _Rooms((0.0, 0.0, left - _GAP, height), (left, 8.0, _SIDE_WIDE - 8, height - 16))
    return _Rooms(whole, None)


def _scale(state: "Fitting", connector: "Connector", rooms: _Rooms, look: "Look") -> float:
    """Return the scale at which the plug has room at the turn that the plan has.

    Not at the turn under the hand: a face that grows and shrinks while it is turned can't be read.
    """
    turn = math.radians(state.plan.end_by_id[state.end].turn_deg)
    half_width, half_height = shell_reach_mm(connector)
    _, _, width, height = rooms.face
    upright = abs(math.sin(turn)) > abs(math.cos(turn)) and half_width > 1.5 * half_height
    if upright:
        return fitting_scale(connector, height, width, look)
    return fitting_scale(connector, width, height, look)


def _jacket_mm(state: "Fitting") -> float:
    section = state.plan.section_at.get(state.end)
    cable = state.plan.cable_of(section.id) if section is not None else None
    return cable.jacket_mm if cable is not None else 0.0


def _signals(state: "Fitting") -> dict[str, str]:
    wiring, connector = state.workbench.wiring, state.connector
    contacts = connector.contacts if connector is not None else ()
    return {it.id: signals_text(wiring.signals_at(state.end, it.id)) for it in contacts}


def _side(state: "Fitting", room: tuple[float, float, float, float], look: "Look") -> DrawList:
    """Draw the side view as large as it fits its room; heights are to scale."""
    connector, fit = state.connector, state.fit
    assert connector is not None
    assert fit is not None
    left, top, width, height = room
    one, two = (side_height(connector, fit, scale, look) for scale in (1.0, 2.0))
    scale = min(max((height - (2 * one - two)) / (two - one), 1.0), _SIDE_SCALE_MOST)
    wide = min(width, _SIDE_PITCH * connector.poles)
    origin = (left + (width - wide) / 2, top)
    return side_view(connector, fit, origin=origin, width=wide, scale=scale, look=look)


def _empty(state: "Fitting", size: Size, look: "Look", what: str, do: str) -> Picture:
    """Draw the face alone, or the place for one, and say what to do next."""
    centre = (size[0] / 2, size[1] / 2 - 34)
    connector = state.connector
    if connector is not None:
        scale = fitting_scale(connector, size[0], max(size[1] - 140, 80), look)
        shown = face(connector, centre=centre, scale=scale, look=look, turn_deg=state.turn_deg)
    else:
        radius = min(size[0], size[1] - 140) * 0.3
        pen = Style(stroke=look.edge, width=1.75, dash=(7.0, 5.0))
        shown = (Circle(centre, max(radius, 24.0), pen),)
    base = size[1] - 44.0
    words = (
        Text((size[0] / 2, base), what, 18, look.ink, bold=True, anchor="middle"),
        Text((size[0] / 2, base + 24), do, 13, look.ink2, anchor="middle"),
    )
    return Picture(shown + words, centre)
