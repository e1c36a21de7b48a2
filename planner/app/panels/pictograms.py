"""The small pictures of the shelf, drawn by the code that draws the bench."""

import math

from planner.app.panels.words import trust_mark
from planner.drawing.face import face, shell_reach_mm
from planner.drawing.looks import Look
from planner.drawing.marks import mark
from planner.drawing.primitives import Circle, DrawList, Poly, Style
from planner.model.cable import Cable, Core
from planner.model.connector import Connector
from planner.model.definition import Definition
from planner.model.pinout import PinoutRecord

SIDE = 32


def pictogram(record: Definition, look: Look) -> DrawList:
    """Draw a definition in a square of `SIDE` px with its corner at the origin."""
    if isinstance(record, Connector):
        return connector_picture(record, look)
    if isinstance(record, Cable):
        return cable_picture(record, look)
    if isinstance(record, PinoutRecord):
        return mark(trust_mark(record), (SIDE / 2, SIDE / 2), 11.0, look)
    return ()


def connector_picture(connector: Connector, look: Look, side: float = SIDE) -> DrawList:
    """Draw a face in a square; its centre lines are left out, they would only be dots here."""
    scale = (side / 2 - 1.2) / max(shell_reach_mm(connector))
    middle = (side / 2, side / 2)
    drawn = face(connector, centre=middle, scale=scale, look=look)
    return tuple(item for item in drawn if not _is_centre_line(item))


def _is_centre_line(item: object) -> bool:
    return isinstance(item, Poly) and len(item.points) == 2 and bool(item.style.dash)


def cable_picture(cable: Cable, look: Look, side: float = SIDE) -> DrawList:
    """Draw a cable's cut end: jacket, shield, cores at their places."""
    middle, jacket = side / 2, cable.jacket_mm
    scale = (side / 2 - 1.2) / (jacket / 2)
    skin = Style(fill=look.jacket, stroke=look.casing, width=1.2)
    room = Style(fill=look.insulator, stroke=look.casing, width=0.8)
    inner = _inside_mm(cable) * scale
    items: list[Circle] = [
        Circle((middle, middle), side / 2 - 1.2, skin),
        Circle((middle, middle), inner, room),
    ]
    if cable.shields:
        braid = Style(stroke=look.metal_hatch, width=1.6, dash=(1.6, 1.2))
        items.append(Circle((middle, middle), max(inner - 1.2, 2.0), braid))
    items += [_core(core, middle, scale, look) for core in cable.cores]
    return tuple(items)


def _inside_mm(cable: Cable) -> float:
    reach = max(math.hypot(c.x_mm, c.y_mm) + c.insulation_mm / 2 for c in cable.cores)
    return min(max(reach * 1.08, cable.jacket_mm * 0.3), cable.jacket_mm * 0.46)


def _core(core: Core, middle: float, scale: float, look: Look) -> Circle:
    at = (middle + core.x_mm * scale, middle - core.y_mm * scale)
    pen = Style(fill=look.core(core.colours[0])[0], stroke=look.casing, width=0.8)
    return Circle(at, max(core.insulation_mm / 2 * scale, 1.4), pen)
