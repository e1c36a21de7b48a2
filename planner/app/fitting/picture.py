"""The picture of an end: its fitted face, its side view where terminals differ in height."""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from planner.app.fitting.empty import Wanting, wanting
from planner.app.fitting.live import live_drawn
from planner.drawing.bench.shapes import box_of
from planner.drawing.cores import plate_width
from planner.drawing.face import contact_radius_mm, face, shell_reach_mm
from planner.drawing.fitting.face import fitted_face, fitting_scale
from planner.drawing.fitting.iron import iron_at
from planner.drawing.fitting.scene import Scene
from planner.drawing.fitting.side import side_height, side_view, wants_side_view
from planner.drawing.fitting.words import Room
from planner.drawing.metrics import wrapped
from planner.drawing.primitives import Circle, DrawList, Point, Style, Text
from planner.dryfit.sleeves import sleeves_on
from planner.geometry.views import turned_point
from planner.model.codes import told_apart
from planner.model.signals import signals_text

if TYPE_CHECKING:
    from planner.app.fitting.state import Fitting
    from planner.drawing.looks import Look
    from planner.dryfit.fit import EndFit
    from planner.model.connector import Connector

Size = tuple[int, int]
_SIDE_HIGH, _SIDE_WIDE, _GAP = 132.0, 216.0, 12.0
_FACE_LEAST = 250.0
_LABELLED_LEAST = 330.0  # narrower, the face would be too small to read: it is zoomed or moved
_SIDE_PITCH, _SIDE_SCALE_MOST = 76.0, 24.0


Box = tuple[float, float, float, float]


@dataclass(frozen=True)
class Stand:
    """Where the face stands: its middle, px a mm, and the rooms; all that hits and zooms need."""

    centre: Point
    scale: float
    frame: Box  # left, top, right, bottom of the face's room
    side: Box | None = None  # left, top, width, height
    joints: dict[str, Point] = field(default_factory=dict)
    radii: dict[str, float] = field(default_factory=dict)


@dataclass(frozen=True)
class Canvas:
    """What a picture is drawn on: its size in px, look, zoom, and how far it is shifted."""

    size: Size
    look: "Look"
    zoom: float = 1.0
    shift: Point = (0.0, 0.0)


@dataclass(frozen=True, slots=True)
class _Rooms:
    """Where the face goes, and the side view if there is one: left, top, width, height."""

    face: Box
    side: Box | None


def stand_of(state: "Fitting", canvas: Canvas) -> Stand:
    """Return where the end stands on a canvas."""
    connector, (width, height) = state.connector, canvas.size
    if connector is None or state.fit is None:
        return Stand((width / 2, height / 2 - 34), 1.0, (0.0, 0.0, width, height))
    rooms = _rooms(connector, canvas.size)
    scale = _scale(state, connector, rooms, canvas.look) * canvas.zoom
    left, top, wide, high = rooms.face
    centre = (left + wide / 2 + canvas.shift[0], top + high / 2 + canvas.shift[1])
    joints, radii = {}, {}
    for contact in connector.contacts:
        x, y = turned_point(contact.terminal.x_mm, contact.terminal.y_mm, state.fit.turn_deg)
        joints[contact.id] = (centre[0] + x * scale, centre[1] - y * scale)
        radii[contact.id] = contact_radius_mm(contact) * scale
    frame = (left, top, left + wide, top + high)
    return Stand(centre, scale, frame, rooms.side, joints, radii)


def full_picture(state: "Fitting", canvas: Canvas, stand: Stand) -> Callable[[], DrawList]:
    """Return what draws the whole end, or says what it wants first; it may run in a thread."""
    missing, connector, fit = wanting(state.plan, state.end), state.connector, state.fit
    if missing is not None:
        empty = _empty(state, canvas, stand, missing)
        return lambda: empty
    if connector is None or fit is None:
        return lambda: ()
    jacket_mm, signals, look = _jacket_mm(state), _signals(state), canvas.look

    def draw() -> DrawList:
        items = fitted_face(
            connector, fit, centre=stand.centre, scale=stand.scale, look=look,
            jacket_mm=jacket_mm, signals=signals, frame=stand.frame,
        )  # fmt: skip
        return items + _side(connector, fit, stand.side, look)

    return draw


def words_boxes(items: DrawList) -> tuple[Box, ...]:
    """Return where words and order discs stand in a picture, so that nothing is put over them."""
    words = (_text_box(item) for item in items if isinstance(item, Text))
    discs = (item for item in items if item.owner.startswith("order/"))
    return (*words, *(box_of((disc,)) for disc in discs if not isinstance(disc, Text)))


def _text_box(item: Text) -> Box:
    """Return the box of a text, whichever way it is turned (clockwise on the screen)."""
    flat = box_of((replace(item, turn_deg=0.0),))
    corners = [(x - item.at[0], item.at[1] - y) for x in flat[::2] for y in flat[1::2]]
    spots = [turned_point(*corner, -item.turn_deg) for corner in corners]
    xs, ys = [item.at[0] + x for x, _ in spots], [item.at[1] - y for _, y in spots]
    return (min(xs), min(ys), max(xs), max(ys))


def iron_picture(
    state: "Fitting", canvas: Canvas, stand: Stand, taken: Sequence[Box] = ()
) -> DrawList:
    """Draw the ring and the iron of the joint that is looked at; nothing without one."""
    connector, fit, joint = state.connector, state.fit, state.joint
    if connector is None or fit is None or joint not in stand.joints:
        return ()
    look = canvas.look
    ring = Style(stroke=look.accent, width=2.5)
    items: DrawList = (Circle(stand.joints[joint], stand.radii[joint] + 5.0, ring),)
    scene = Scene(connector, fit, stand.centre, stand.scale, look)
    held = iron_at(scene, joint)
    if held is not None:
        reach = {key: stand.radii[key] + 4.0 for key in stand.joints}
        joints = [
            (x - reach[key], y - reach[key], x + reach[key], y + reach[key])
            for key, (x, y) in stand.joints.items()
        ]
        room = Room(taken=[*held.boxes, *taken, *joints], frame=stand.frame)
        items += held.items + held.words_drawn(scene, room)
    return items


def live_picture(state: "Fitting", canvas: Canvas, stand: Stand) -> DrawList:
    """Draw what lies over a plug that is turned by hand."""
    connector, fit = state.connector, state.fit
    if connector is None or fit is None:
        return ()
    scene = Scene(connector, fit, stand.centre, stand.scale, canvas.look)
    return live_drawn(scene, stand.frame)


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
    beside = max(width - 2 * _more_beside(state), min(width, _LABELLED_LEAST))
    return fitting_scale(connector, beside, height, look)


def _more_beside(state: "Fitting") -> float:
    """Return what the widest label takes beside the face beyond a name and one plate, px."""
    plates = dict[str, float]()
    leads = state.fit.leads if state.fit is not None else ()
    for lead, code in zip(leads, told_apart([lead.part for lead in leads]), strict=True):
        wide = plate_width(code) + 4
        plates[lead.landing.contact] = plates.get(lead.landing.contact, 0.0) + wide
    return max(max(plates.values(), default=0.0) - plate_width("WHBK"), 0.0)


def _jacket_mm(state: "Fitting") -> float:
    section = state.plan.section_at.get(state.end)
    # Cores out of their jacket arrive bare.
    if section is None or section.fan_of:
        return 0.0
    cable = state.plan.cable_of(section.id)
    return cable.jacket_mm if cable is not None else 0.0


def _signals(state: "Fitting") -> dict[str, str]:
    wiring, connector = state.workbench.wiring, state.connector
    contacts = connector.contacts if connector is not None else ()
    return {it.id: signals_text(wiring.signals_at(state.end, it.id)) for it in contacts}


def _side(connector: "Connector", fit: "EndFit", room: Box | None, look: "Look") -> DrawList:
    """Draw the side view as large as it fits its room; heights are to scale."""
    if room is None:
        return ()
    left, top, width, height = room
    one, two = (side_height(connector, fit, scale, look) for scale in (1.0, 2.0))
    scale = min(max((height - (2 * one - two)) / (two - one), 1.0), _SIDE_SCALE_MOST)
    wide = min(width, _SIDE_PITCH * connector.poles)
    origin = (left + (width - wide) / 2, top)
    sleeves_mm = {use.conductor: use.length_mm for use in sleeves_on(fit, fit.site.workmanship)}
    return side_view(
        connector, fit, origin=origin, width=wide, scale=scale, look=look, sleeves_mm=sleeves_mm
    )


def _empty(state: "Fitting", canvas: Canvas, stand: Stand, missing: Wanting) -> DrawList:
    """Draw the face alone, or the place for one, and say what to do next."""
    look, (width, height), connector = canvas.look, canvas.size, state.connector
    if connector is not None:
        scale = fitting_scale(connector, width, max(height - 140, 80), look)
        shown = face(
            connector, centre=stand.centre, scale=scale, look=look, turn_deg=state.turn_deg
        )
    else:
        radius = min(width, height - 140) * 0.3
        pen = Style(stroke=look.edge, width=1.75, dash=(7.0, 5.0))
        shown = (Circle(stand.centre, max(radius, 24.0), pen),)
    lines = wrapped(missing.do, 13, width - 48.0)
    base = height - 26.0 - 18.0 * len(lines)
    what = Text((width / 2, base), missing.what, 18, look.ink, bold=True, anchor="middle")
    rest = tuple(
        Text((width / 2, base + 24 + 18 * place), line, 13, look.ink2, anchor="middle")
        for place, line in enumerate(lines)
    )
    return (*shown, what, *rest)
