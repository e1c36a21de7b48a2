"""A connector being drawn: millimetre paper, shell, terminals with their numbers, what is odd."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field

from planner.drawing.bench.shapes import Box, boxes_meet
from planner.drawing.face import contact_radius_mm, face
from planner.drawing.looks import Look
from planner.drawing.marks import MarkKind, mark
from planner.drawing.metrics import text_width
from planner.drawing.primitives import Circle, DrawList, Point, Poly, Primitive, Rect, Style, Text
from planner.model.connector import Connector, Shell
from planner.units import number

NUMBER_PX = 13.0
_FINE_FROM_PX = 7.0  # from this scale each millimetre has a line
_LEAST_REACH = 13.0
_SIDES = {
    "solder": "Solder side",
    "mating": "Mating side: it is mirrored when it is saved",
    "unstated": "First: from which side is it seen?",
}


@dataclass(frozen=True, slots=True)
class PlotStand:
    """Where the axis lies on the canvas, px, and px a mm."""

    centre: Point
    scale: float

    def to_px(self, mm: Point) -> Point:
        """Return where a place lies on the canvas."""
        return (self.centre[0] + mm[0] * self.scale, self.centre[1] - mm[1] * self.scale)

    def to_mm(self, px: Point) -> Point:
        """Return which place a point of the canvas is, mm."""
        return (
            (px[0] - self.centre[0]) / self.scale,
            (self.centre[1] - px[1]) / self.scale,
        )


@dataclass(frozen=True)
class Plot:
    """What is shown. `odd` are contacts with their weight of remark; `dots` are set by hand."""

    connector: Connector | None
    shell: Shell
    chosen: Collection[str] = ()
    pointed: str = ""
    odd: Mapping[str, str] = field(default_factory=dict)
    dots: tuple[Point, ...] = ()
    side: str = ""


def stand_for(shell: Shell, size: tuple[float, float], zoom: float, shift: Point) -> PlotStand:
    """Fit the shell into a canvas of `size` px, then zoom and shift it."""
    width = shell.bore_mm if shell.shape == "round" else shell.width_mm
    height = shell.bore_mm if shell.shape == "round" else shell.height_mm
    fit = min(size[0] * 0.68 / max(width, 0.1), size[1] * 0.68 / max(height, 0.1))
    return PlotStand((size[0] / 2 + shift[0], size[1] / 2 + shift[1]), fit * zoom)


def contact_under(connector: Connector | None, stand: PlotStand, px: Point) -> str:
    """Return the contact at a point of the canvas, hit areas at least 26 px wide; or empty."""
    best, name = 1.0, ""
    for contact in connector.contacts if connector is not None else ():
        x, y = stand.to_px((contact.terminal.x_mm, contact.terminal.y_mm))
        reach = max(contact_radius_mm(contact) * stand.scale, _LEAST_REACH)
        far = ((px[0] - x) ** 2 + (px[1] - y) ** 2) ** 0.5 / reach
        if far <= best:
            best, name = far, contact.id
    return name


def plot(shown: Plot, stand: PlotStand, size: tuple[float, float], look: Look) -> DrawList:
    """Draw all of it on a canvas of `size` px."""
    items: list[Primitive] = [*_shell_alone(shown, stand, look)]
    if shown.connector is not None:
        items += face(shown.connector, centre=stand.centre, scale=stand.scale, look=look)
        items += _numbers(shown, stand, look)
    items += _dots(shown.dots, stand, look)
    tag = _SIDES.get(shown.side, "")
    ink = look.caution if shown.side == "mating" else look.ink2
    items.append(Text((12, 22), tag, 13, ink, bold=True))
    return (*items, *_scale_bar(stand, size, look))


def millimetres(stand: PlotStand, size: tuple[float, float], look: Look) -> DrawList:
    """Draw the paper's lines: each 5 mm, and each 1 mm where there is room; then the axes."""
    items: list[Primitive] = []
    for step, width in ((1, 0.5), (5, 1.0)):
        if step * stand.scale < _FINE_FROM_PX:
            continue
        pen = Style(stroke=look.rule, width=width)
        items += _lines(stand, size, step, pen)
    return tuple(items)


def _lines(stand: PlotStand, size: tuple[float, float], step: int, pen: Style) -> list[Primitive]:
    left, top = stand.to_mm((0, 0))
    right, bottom = stand.to_mm(size)
    upright = range(int(left // step), int(right // step) + 2)
    level = range(int(bottom // step), int(top // step) + 2)
    found: list[Primitive] = []
    for at in upright:
        x, _ = stand.to_px((at * step, 0))
        found.append(Poly(((x, 0), (x, size[1])), pen))
    for at in level:
        _, y = stand.to_px((0, at * step))
        found.append(Poly(((0, y), (size[0], y)), pen))
    return found


def _shell_alone(shown: Plot, stand: PlotStand, look: Look) -> DrawList:
    """Draw the shell's inside before there is a contact."""
    if shown.connector is not None:
        return ()
    pen = Style(fill=look.insulator, stroke=look.casing, width=1.5, dash=(6, 4))
    if shown.shell.shape == "round":
        return (Circle(stand.centre, shown.shell.bore_mm / 2 * stand.scale, pen),)
    width, height = shown.shell.width_mm * stand.scale, shown.shell.height_mm * stand.scale
    corner = (stand.centre[0] - width / 2, stand.centre[1] - height / 2)
    return (Rect(corner, width, height, pen, radius=6),)


def _numbers(shown: Plot, stand: PlotStand, look: Look) -> DrawList:
    items: list[Primitive] = []
    assert shown.connector is not None
    plates = _plates(shown, shown.connector, stand)
    for contact in shown.connector.contacts:
        place = (contact.terminal.x_mm, contact.terminal.y_mm)
        x, y = stand.to_px(place)
        radius = contact_radius_mm(contact) * stand.scale
        chosen, pointed = contact.id in shown.chosen, contact.id == shown.pointed
        if chosen or pointed:
            pen = Style(stroke=look.accent, width=3.0 if chosen else 2.0)
            items.append(Circle((x, y), max(radius, 8.0) + 4, pen))
        if contact.id in plates:
            items += _number(contact.id, plates[contact.id], chosen=chosen, look=look)
        if contact.id in shown.odd:
            kind: MarkKind = "stop" if shown.odd[contact.id] == "stop" else "caution"
            items += mark(kind, (x + radius + 6, y + radius + 2), 9, look)
        if chosen and len(shown.chosen) == 1:
            items += _figures(place, (x, y + radius + 22), look)
    return tuple(items)


def _plates(shown: Plot, connector: Connector, stand: PlotStand) -> dict[str, Box]:
    """Return the plates of numbers that lie over no other: what is chosen or odd comes first."""
    first = (*shown.chosen, *shown.odd, *(it.id for it in connector.contacts))
    boxes: dict[str, Box] = {}
    for name in dict.fromkeys(first):
        contact = connector.by_id.get(name)
        if contact is None:
            continue
        at = stand.to_px((contact.terminal.x_mm, contact.terminal.y_mm))
        box = _plate_box(name, at, contact_radius_mm(contact) * stand.scale)
        if not any(boxes_meet(box, other) for other in boxes.values()):
            boxes[name] = box
    return boxes


def _plate_box(words: str, at: Point, radius: float) -> Box:
    """Return where the plate with a contact's number goes: up and to the right of the terminal."""
    left, top = at[0] + radius * 0.6 + 2, at[1] - radius * 0.6 - 18
    return (left, top, left + text_width(words, NUMBER_PX, bold=True) + 8, top + 18)


def _number(words: str, plate: Box, *, chosen: bool, look: Look) -> DrawList:
    """Draw a contact's number on its plate."""
    left, top, right, low = plate
    fill = look.accent if chosen else look.field
    ink = look.on_accent if chosen else look.ink
    rim = Style(fill=fill, stroke=look.casing, width=1)
    return (
        Rect((left, top), right - left, low - top, rim, radius=3),
        Text((left + 4, top + 13.6), words, NUMBER_PX, ink, bold=True),
    )


def _figures(place: Point, at: Point, look: Look) -> DrawList:
    words = f"{number(place[0], 2)}, {number(place[1], 2)} mm"
    width = text_width(words, 12) + 10
    return (
        Rect((at[0] - width / 2, at[1] - 13), width, 18, Style(fill=look.paper), radius=3),
        Text(at, words, 12, look.ink, anchor="middle"),
    )


def _dots(dots: tuple[Point, ...], stand: PlotStand, look: Look) -> DrawList:
    """Draw crosses where points were clicked for the scale or the level."""
    pen = Style(stroke=look.accent, width=2)
    items: list[Primitive] = []
    for place in dots:
        x, y = stand.to_px(place)
        items.append(Poly(((x - 9, y), (x + 9, y)), pen))
        items.append(Poly(((x, y - 9), (x, y + 9)), pen))
    if len(dots) == 2:
        dash = Style(stroke=look.accent, width=1.5, dash=(5, 4))
        items.append(Poly((stand.to_px(dots[0]), stand.to_px(dots[1])), dash))
    return tuple(items)


def _scale_bar(stand: PlotStand, size: tuple[float, float], look: Look) -> DrawList:
    length = next((mm for mm in (1, 2, 5, 10, 20, 50) if mm * stand.scale > 60), 50)
    left, y = 16.0, size[1] - 18
    right = left + length * stand.scale
    pen = Style(stroke=look.ink, width=1.5)
    ends = tuple(Poly(((x, y - 4), (x, y + 4)), pen) for x in (left, right))
    return (
        Poly(((left, y), (right, y)), pen),
        *ends,
        Text((right + 8, y + 4.5), f"{length} mm", 12, look.ink),
    )
