"""Small pictures of a plug on its cable, by what its definition says of its shape."""

from planner.drawing.primitives import DrawList, Point, Poly, Rect, Style
from planner.model.connector import Connector
from planner.sheet.lettering import INK, PAPER, PEN

LENGTH = 3000.0
HALF_HEIGHT = 330.0
_FLANGE = 620.0
_PEN = Style(fill=PAPER, stroke=INK, width=PEN)
_SOLID = Style(fill=INK)


def plug(connector: Connector | None, cable: Point, way: int, slim: float = 1.0) -> DrawList:
    """Draw a plug, LENGTH long, from where the cable enters it; `way` 1 points right, -1 left.

    `slim` is how much of its height is drawn, where many ends share a page.
    """
    half = HALF_HEIGHT * slim
    drawn = [_piece(cable, way, (0, 350), 200 * slim), _piece(cable, way, (350, 1450), half)]
    if connector is None:
        dashed = Style(stroke=INK, dash=(120, 90))
        return (*drawn, _piece(cable, way, (1450, 2600), 200 * slim, dashed))
    if connector.mating == "concentric":
        return (*drawn, *_pole_rings(connector, cable, way))
    if connector.shell.shape == "d":
        flange = _piece(cable, way, (1450, 1600), _FLANGE * slim)
        hood = _piece(cable, way, (350, 1450), 560 * slim)
        return (drawn[0], hood, flange, _piece(cable, way, (1600, 2200), 460 * slim))
    nose = _piece(cable, way, (1450, 2600), half + 40 * slim)
    groove = _piece(cable, way, (1600, 1680), half + 40 * slim, _SOLID)
    return (*drawn, nose, groove)


def half_height(connector: Connector | None, slim: float = 1.0) -> float:
    """Return how far a plug reaches above its middle."""
    flat = connector is not None and connector.shell.shape == "d"
    return (_FLANGE if flat else HALF_HEIGHT + 40) * slim


def _piece(
    cable: Point, way: int, span: tuple[float, float], half: float, pen: Style = _PEN
) -> Rect:
    """Return a rectangle from and to so far along the plug, `half` high on each side."""
    start, stop = (cable[0] + way * along for along in span)
    return Rect((min(start, stop), cable[1] - half), abs(stop - start), 2 * half, pen)


def _pole_rings(connector: Connector, cable: Point, way: int) -> DrawList:
    """Draw the shaft with a dark ring between two poles, and its tip if it is a plug."""
    half, stop = 130.0, 2600.0
    shaft = _piece(cable, way, (1450, stop), half)
    pitch = (stop - 1450) / len(connector.contacts)
    rings = tuple(
        _piece(cable, way, (1450 + pitch * place - 35, 1450 + pitch * place + 35), half, _SOLID)
        for place in range(1, len(connector.contacts))
    )
    if connector.gender != "male":
        return (shaft, *rings)
    x, y = cable
    outline = [(2600, -90), (2760, -170), (3000, 0), (2760, 170), (2600, 90)]
    tip = Poly(tuple((x + way * along, y + up) for along, up in outline), _PEN, closed=True)
    return (shaft, *rings, tip)
