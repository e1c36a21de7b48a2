"""The picture of a fit: the bore with the wires as they lie in it, or the bound that fails."""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from planner.drawing.cores import lines_path
from planner.drawing.hues import PATTERNS, Line, hatch_lines
from planner.drawing.looks import Look
from planner.drawing.metrics import text_width
from planner.drawing.primitives import (
    Circle,
    DrawList,
    Point,
    Primitive,
    Rect,
    Style,
    Text,
    centred_baseline,
    owned,
)
from planner.drawing.runs import Run
from planner.dryfit.fit_words import figure_words, verdict_words
from planner.dryfit.wires import FitLine
from planner.geometry.packing import pack
from planner.model.cable import Core, Shield

Parts = Mapping[str, Core | Shield]
# Room round the bore, as a share of the side of the picture.
_MARGIN = 0.06


@dataclass(frozen=True, slots=True)
class _Hand:
    """What everything in a picture is drawn with."""

    parts: Parts
    size: float
    look: Look

    def wire(self, at: Point, radius: float, line: FitLine, index: int) -> DrawList:
        """Draw the section of a wire in its colour and hatch."""
        part, look = self._part(line, index), self.look
        plain = look.jacket if line.what == "jacket" else look.tin
        body = look.core(part.colours[0])[0] if isinstance(part, Core) else plain
        return (
            Circle(at, radius, Style(fill=body)),
            *_hatch(at, radius, part, look),
            *_stripe(at, radius, part, look),
            Circle(at, radius, Style(stroke=look.casing, width=look.line)),
        )

    def code(self, at: Point, radius: float, line: FitLine, index: int) -> DrawList:
        """Draw the letter code of a wire on a plate inside it, if there is room."""
        part = self._part(line, index)
        text = "" if part is None else part.code if isinstance(part, Core) else "SH"
        return _plate(at, radius, text, self.size, self.look)

    def _part(self, line: FitLine, index: int) -> Core | Shield | None:
        """Return what a wire is; a sleeve is shown over the bare joint."""
        known = index < len(line.wires) and line.what != "sleeve"
        return self.parts.get(line.wires[index]) if known else None


def fit_picture(
    line: FitLine,
    parts: Parts,
    *,
    corner: Point,
    width: float,
    height: float,
    size: float,
    look: Look,
) -> DrawList:
    """Draw a fit in a box: the bore at the left, the figures beside it at an em of `size`.

    `parts` gives the core or shield of each of the line's wires. What the bore is short of is drawn
    to the same scale: a broken circle is the bound below which the wires surely do not go.
    """
    texts = [(text, False) for text in figure_words(line)] + [(verdict_words(line), True)]
    words_wide = max(text_width(text, size, bold) for text, bold in texts)
    side = max(min(height, width - words_wide - size), height * 0.4)
    middle = (corner[0] + side / 2, corner[1] + height / 2)
    drawn = _in_bore if line.packed else _on_tab
    words = (corner[0] + side + size, middle[1])
    hand = _Hand(parts, size, look)
    return (*drawn(line, middle, side, hand), *_figures(line, texts, words, hand))


def _figures(line: FitLine, texts: Sequence[tuple[str, bool]], at: Point, hand: _Hand) -> DrawList:
    """Write need, bore and verdict below each other, about the height of `at`."""
    size, look = hand.size, hand.look
    tone = {"fits": look.clear, "tight": look.caution, "fails": look.stop}[line.fit.answer]
    first, pitch = centred_baseline(at[1] - size * 1.5, size), size * 1.5
    return tuple(
        Text((at[0], first + row * pitch), text, size, tone if bold else look.ink, bold=bold)
        for row, (text, bold) in enumerate(texts)
    )


# -- a round bore -----------------------------------------------------------------------------


def _in_bore(line: FitLine, middle: Point, side: float, hand: _Hand) -> DrawList:
    fit = line.fit
    diameters = line.diameters_mm or (fit.needs_mm,)
    packing = fit.packing or pack(diameters, "quick")
    shown_mm = max(fit.has_mm, packing.diameter_mm, fit.least_mm)
    scale = side * (1 - 2 * _MARGIN) / shown_mm
    wires: list[Primitive] = []
    codes: list[Primitive] = []
    for index, (x, y) in enumerate(packing.centres):
        at = (middle[0] + x * scale, middle[1] - y * scale)
        radius = diameters[index] / 2 * scale
        wires += hand.wire(at, radius, line, index)
        codes += hand.code(at, radius, line, index)
    inside, limits = _bore(line, middle, scale, hand.look)
    return owned((*inside, *wires, *limits, *codes), _owner(line))


def _owner(line: FitLine) -> str:
    return f"fit/{line.what}/{line.where.end}/{line.where.contact}"


def _bore(line: FitLine, middle: Point, scale: float, look: Look) -> tuple[DrawList, DrawList]:
    """Return what lies under the wires and what lies over them: bore, its wall, the bound."""
    fit, unit = line.fit, look.line
    radius = fit.has_mm / 2 * scale
    ground = Circle(middle, radius, Style(fill=look.insulator))
    wall = Circle(middle, radius + unit, Style(stroke=look.casing, width=2 * unit))
    if fit.answer == "fits":
        return (ground,), (wall,)
    tone = look.stop if fit.answer == "fails" else look.caution
    over = Circle(middle, radius, Style(stroke=tone, width=2.5 * unit))
    bound_mm = fit.least_mm if fit.answer == "fails" else fit.needs_mm
    dash = (5 * unit, 4 * unit)
    bound = Circle(middle, bound_mm / 2 * scale, Style(stroke=tone, width=1.5 * unit, dash=dash))
    return (ground,), (over, bound)


def _hatch(at: Point, radius: float, part: Core | Shield | None, look: Look) -> DrawList:
    unit, ink = look.line, look.tin_edge
    lines: Iterable[Line] = ()
    if isinstance(part, Core) and look.hatched_cores:
        ink = look.core(part.colours[0])[1]
        across = Run(((at[0] - radius, at[1]), (at[0] + radius, at[1])))
        lines = hatch_lines(across, 2 * radius, PATTERNS[part.colours[0]], unit)
    elif isinstance(part, Shield):
        lines = _lattice(at, radius, 5 * unit)
    kept = (piece for each in lines for piece in within(each, at, radius - unit))
    return lines_path(kept, Style(stroke=ink, width=1.3 * unit, cap="round"), "")


def _stripe(at: Point, radius: float, part: Core | Shield | None, look: Look) -> DrawList:
    """Draw the second colour as a solid band across the middle, as along the core."""
    if not isinstance(part, Core) or len(part.colours) < 2:
        return ()
    half = radius / 3
    reach = math.sqrt(radius**2 - half**2)
    style = Style(fill=look.core(part.colours[1])[0], stroke=look.casing, width=0.6 * look.line)
    return (Rect((at[0] - reach, at[1] - half), 2 * reach, 2 * half, style),)


def _lattice(at: Point, radius: float, pitch: float) -> Iterator[Line]:
    """Yield the slanted lattice that stands for a shield."""
    count = int(radius * math.sqrt(2) / pitch)
    x, y = at
    for step in range(-count, count + 1):
        shift = step * pitch * math.sqrt(2)
        yield ((x - radius + shift, y - radius), (x + radius + shift, y + radius))
        yield ((x - radius + shift, y + radius), (x + radius + shift, y - radius))


def _plate(at: Point, radius: float, code: str, size: float, look: Look) -> DrawList:
    width, height = text_width(code, size, bold=True) + 0.5 * size, 1.3 * size
    if not code or math.hypot(width, height) / 2 > radius:
        return ()
    corner = (at[0] - width / 2, at[1] - height / 2)
    plate = Style(fill=look.field, stroke=look.casing, width=look.line)
    base = centred_baseline(at[1], size)
    word = Text((at[0], base), code, size, look.ink, bold=True, anchor="middle")
    return (Rect(corner, width, height, plate, radius=0.2 * size), word)


def within(line: Sequence[Point], middle: Point, radius: float) -> Iterator[Line]:
    """Yield the pieces of a polyline that lie in a circle."""
    for (x0, y0), (x1, y1) in pairwise(line):
        dx, dy, fx, fy = x1 - x0, y1 - y0, x0 - middle[0], y0 - middle[1]
        square, half = dx * dx + dy * dy, fx * dx + fy * dy
        root = half * half - square * (fx * fx + fy * fy - radius * radius)
        if square == 0 or root <= 0:
            continue
        low = max((-half - math.sqrt(root)) / square, 0.0)
        high = min((-half + math.sqrt(root)) / square, 1.0)
        if low < high:
            yield tuple((x0 + dx * share, y0 + dy * share) for share in (low, high))


# -- a lug or post ----------------------------------------------------------------------------


def _on_tab(line: FitLine, middle: Point, side: float, hand: _Hand) -> DrawList:
    """Draw the wires side by side on the edge of a lug or post."""
    fit, look = line.fit, hand.look
    scale = side * (1 - 2 * _MARGIN) / max(fit.needs_mm, fit.has_mm)
    thick = max(side * 0.1, 4 * look.line)
    metal = Style(fill=look.brass, stroke=look.brass_edge, width=look.line)
    width = fit.has_mm * scale
    tab = Rect((middle[0] - width / 2, middle[1]), width, thick, metal)
    drawn: list[Primitive] = [tab]
    along = middle[0] - fit.needs_mm / 2 * scale
    for index, diameter_mm in enumerate(line.diameters_mm):
        radius = diameter_mm / 2 * scale
        at = (along + radius, middle[1] - radius)
        drawn += (*hand.wire(at, radius, line, index), *hand.code(at, radius, line, index))
        along += 2 * radius
    return owned(tuple(drawn), _owner(line))
