"""The patch that stands for a conductor in lists: its colour and hatch, or a shield's weave."""

from planner.drawing.cores import core_stroke
from planner.drawing.looks import Look
from planner.drawing.primitives import DrawList, Poly, Rect, Style
from planner.model.cable import Core, Shield


def patch(
    corner: tuple[float, float], size: tuple[float, float], wire: Core | Shield | None, look: Look
) -> DrawList:
    """Draw a patch of `size` px with its top left at `corner`."""
    x, y = corner
    width, height = size
    frame = Rect(corner, width, height, Style(stroke=look.casing, width=1.3))
    if isinstance(wire, Core):
        middle = y + height / 2
        scale = (height - 1.0) / wire.insulation_mm
        run = ((x + 0.5, middle), (x + width - 0.5, middle))
        return (*core_stroke(run, wire, scale=scale, look=look, owner=""), frame)
    ground = Rect(corner, width, height, Style(fill=look.metal))
    return (ground, *(_weave(corner, size, look) if wire is not None else ()), frame)


def _weave(corner: tuple[float, float], size: tuple[float, float], look: Look) -> DrawList:
    x, y = corner
    width, height = size
    pen = Style(stroke=look.metal_hatch, width=1.2)
    starts = [x + 2.0 + 6.0 * step for step in range(int((width - 2) // 6))]
    rise = min(height, 12.0)
    return tuple(
        Poly(line, pen)
        for start in starts
        for line in (
            ((start, y + height), (min(start + rise, x + width), y)),
            ((start, y), (min(start + rise, x + width), y + height)),
        )
    )
