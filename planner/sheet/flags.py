"""Flags on paper: a patch that hatches the hue, and the letter code, at each end of each core."""

from functools import lru_cache

from planner.drawing.cores import lines_path
from planner.drawing.hatching import hatch
from planner.drawing.hues import PATTERNS, hatch_lines
from planner.drawing.looks import PRINT
from planner.drawing.metrics import text_width
from planner.drawing.primitives import DrawList, Point, Poly, Rect, Style, centred_baseline
from planner.drawing.runs import Run
from planner.sheet.block import moved
from planner.sheet.facts import Flag
from planner.sheet.lettering import BODY, HAIR, HEAD, INK, PAPER, THIN, say

_SLANTS = {"slanted": (-45,), "slanted-back": (45,)}
_BEND = 0.32  # how much of the patch's edges the diagonal bend of a second colour covers


def flag_size(height: float) -> float:
    """Return the font size of a flag's code."""
    return HEAD if height >= 600 else BODY


def flag_width(flag: Flag, height: float) -> float:
    """Return how wide a flag is."""
    return height + text_width(flag.code, flag_size(height), bold=True) + 0.36 * height


def draw_flag(flag: Flag, corner: Point, height: float) -> DrawList:
    """Draw a flag with its top left `corner`."""
    size = flag_size(height)
    (x, y), width = corner, flag_width(flag, height)
    frame = Rect(corner, width, height, Style(fill=PAPER, stroke=INK, width=THIN))
    base = centred_baseline(y + height / 2, size)
    code = say((x + height * 1.18, base), flag.code, size, bold=True)
    return (frame, *patch(flag, corner, height), code)


def patch(flag: Flag, corner: Point, side: float) -> DrawList:
    """Draw the square of a flag: hue by hatch and tint, a second colour as a diagonal bend."""
    frame = Rect(corner, side, side, Style(stroke=INK, width=THIN))
    if not flag.colours:
        return (*_lattice(corner, side), frame)
    body, ink = PRINT.core(flag.colours[0])
    ground = Rect(corner, side, side, Style(fill=body))
    return (ground, *_hatch(flag.colours[0], ink, corner, side), *_bend(flag, corner, side), frame)


def _hatch(code: str, ink: str, corner: Point, side: float) -> DrawList:
    if code == "BK":  # solid
        return ()
    if PATTERNS[code] in _SLANTS:
        angles = _SLANTS[PATTERNS[code]]
        return _slanted(corner, side, angles, side / 5, Style(stroke=ink, width=18))
    x, y = corner
    run = Run(((x, y + side / 2), (x + side, y + side / 2)))
    lines = hatch_lines(run, side, PATTERNS[code], side / 30)
    return lines_path(lines, Style(stroke=ink, width=18), "")


def _bend(flag: Flag, corner: Point, side: float) -> DrawList:
    if len(flag.colours) < 2:
        return ()
    (x, y), cut = corner, side * _BEND
    right, bottom = x + side, y + side
    points = (
        (x, bottom),
        (x, bottom - cut),
        (right - cut, y),
        (right, y),
        (right, y + cut),
        (x + cut, bottom),
    )
    second = PRINT.core(flag.colours[1])[0]
    return (Poly(points, Style(fill=second, stroke=INK, width=HAIR), closed=True),)


def _lattice(corner: Point, side: float) -> DrawList:
    ground = Rect(corner, side, side, Style(fill=PAPER))
    return (ground, *_slanted(corner, side, (45, -45), side / 4.6, Style(stroke=INK, width=18)))


def _slanted(
    corner: Point, side: float, angles_deg: tuple[int, ...], pitch: float, pen: Style
) -> DrawList:
    """Hatch a square all over; drawn about its own corner, so that each flag looks the same."""
    return moved(_square_hatch(side, angles_deg, pitch, pen), corner)


@lru_cache(maxsize=64)  # a page is laid out many times before it is right
def _square_hatch(side: float, angles_deg: tuple[int, ...], pitch: float, pen: Style) -> DrawList:
    square = ((0.0, 0.0), (side, 0.0), (side, side), (0.0, side))
    ways = (hatch([square], pitch=pitch, angle_deg=angle, style=pen) for angle in angles_deg)
    return tuple(line for way in ways for line in way)
