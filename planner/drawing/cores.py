"""Cores, strands, joints and shield tails as drawn: casing, body at true width, hatch, stripe.

A core is told apart three ways at once: by colour, by hatch relative to its own run, and by the
letter code on its plate.
"""

from collections.abc import Iterable, Sequence
from typing import Literal

from planner.drawing.hues import PATTERNS, hatch_lines
from planner.drawing.looks import Look
from planner.drawing.metrics import text_width
from planner.drawing.primitives import (
    Circle,
    Command,
    DrawList,
    Path,
    Point,
    Poly,
    Rect,
    Style,
    Text,
    centred_baseline,
)
from planner.drawing.runs import Run, arc
from planner.model.cable import Core, Shield

PLATE_HEIGHT = 18.0
_CASING = 2.6  # how much wider than the core its casing is, in units of the look's line
_BARE_MM = 1.0


def lines_path(lines: Iterable[Sequence[Point]], style: Style, owner: str) -> DrawList:
    """Return many lines as one path, or nothing."""
    commands: list[Command] = []
    for line in lines:
        commands += [("M", line[0]), *(("L", point) for point in line[1:])]
    return (Path(tuple(commands), style, owner),) if commands else ()


def core_stroke(
    points: Sequence[Point], core: Core, *, scale: float, look: Look, owner: str = ""
) -> DrawList:
    """Draw the insulated part of a core along `points`, at its true width times `scale`."""
    return strip(points, core.colours, core.insulation_mm * scale, look, owner)


def strip(
    points: Sequence[Point], colours: Sequence[str], width: float, look: Look, owner: str = ""
) -> DrawList:
    """Draw a strip in core colours (one or two codes), `width` wide in target units."""
    unit = look.line
    body, ink = look.core(colours[0])
    casing = Poly(
        tuple(points), Style(stroke=look.casing, width=width + _CASING * unit), owner=owner
    )
    fill = Poly(tuple(points), Style(stroke=body, width=width), owner=owner)
    run = Run(points)
    lines: DrawList = ()
    if look.hatched_cores:
        style = Style(stroke=ink, width=1.3 * unit, cap="round")
        hatch = hatch_lines(run, width, PATTERNS[colours[0]], unit)
        lines = lines_path(hatch, style, owner)
    return (casing, fill, *lines, *_stripe(run, colours[1:], width, look, owner))


def _stripe(run: Run, second: Sequence[str], width: float, look: Look, owner: str) -> DrawList:
    if not second:
        return ()
    colour = look.core(second[0])[0]
    if not look.hatched_cores:
        dash = (width * 0.5, width * 0.2)
        return (Poly(run.points, Style(stroke=colour, width=width * 0.36, dash=dash), owner=owner),)
    edge = Style(stroke=look.casing, width=width / 3 + 1.2 * look.line)
    band = Style(stroke=colour, width=width / 3)
    return (Poly(run.points, edge, owner=owner), Poly(run.points, band, owner=owner))


def strands_stroke(
    points: Sequence[Point], width: float, look: Look, owner: str = "", *, round_end: bool = False
) -> DrawList:
    """Draw bare tinned strands, `width` wide in target units, with their lay."""
    unit = look.line
    cap: Literal["butt", "round"] = "round" if round_end else "butt"
    run = Run(points)
    edge = Style(stroke=look.strand_edge, width=width + 2.2 * unit, cap=cap)
    body = Style(stroke=look.strand, width=width, cap=cap)
    pitch = max(width * 0.5, 4 * unit)
    count = int(run.length / pitch)
    lay = (
        (run.beside(pitch * index, -width * 0.48), run.beside(pitch * (index + 1), width * 0.48))
        for index in range(count)
    )
    pen = Style(stroke=look.strand_edge, width=0.9 * unit, opacity=0.55)
    return (
        Poly(run.points, edge, owner=owner),
        Poly(run.points, body, owner=owner),
        *lines_path(lay, pen, owner),
    )


def joint_radius_mm(across_mm: float) -> float:
    """Return how large a joint on a terminal is drawn, mm: 0.42 of the bore, in bounds."""
    return min(max(0.42 * across_mm, 0.3), 1.3)


def joint(at: Point, across_mm: float, *, scale: float, look: Look, owner: str = "") -> DrawList:
    """Draw solder over the strands at `at`."""
    radius = joint_radius_mm(across_mm) * scale
    disc = Style(fill=look.tin, stroke=look.tin_edge, width=look.line)
    shine = Style(stroke=look.tin_shine, width=2 * look.line, cap="round")
    return (
        Circle(at, radius, disc, owner),
        Poly(arc(at, radius * 0.58, 105, 175), shine, owner=owner),
    )


def lead(
    points: Sequence[Point],
    core: Core,
    *,
    scale: float,
    look: Look,
    owner: str = "",
    bare_mm: float = _BARE_MM,
    joint_on_mm: float | None = None,
) -> DrawList:
    """Draw a core from the cut end (first point) to its tip: insulation, then bare strands.

    `joint_on_mm` is the bore or width of the terminal it is soldered to; None leaves it loose, with
    a rounded tip.
    """
    run = Run(points)
    bare = min(bare_mm * scale, run.length * 0.6)
    cut = run.length - bare
    overlap = min(2 * look.line, cut)
    loose = joint_on_mm is None
    tip = strands_stroke(
        run.part(cut - overlap, run.length),
        core.conductor_mm * scale,
        look,
        owner,
        round_end=loose,
    )
    body = core_stroke(run.part(0, cut), core, scale=scale, look=look, owner=owner)
    half = core.insulation_mm * scale / 2 + _CASING * look.line / 2
    rim = Style(stroke=look.casing, width=1.3 * look.line)
    end = Poly((run.beside(cut, -half), run.beside(cut, half)), rim, owner=owner)
    solder: DrawList = ()
    if joint_on_mm is not None:
        solder = joint(run.points[-1], joint_on_mm, scale=scale, look=look, owner=owner)
    return (*tip, *body, end, *solder)


def tail_stroke(
    points: Sequence[Point],
    shield: Shield,
    *,
    scale: float,
    look: Look,
    owner: str = "",
    sleeved: bool = True,
    joint_on_mm: float | None = None,
) -> DrawList:
    """Draw a shield's pigtail: twisted tin, in an outlined sleeve but for its tip if `sleeved`."""
    run = Run(points)
    width = shield.tail_mm * scale
    tail = strands_stroke(run.points, width, look, owner, round_end=joint_on_mm is None)
    solder: DrawList = ()
    if joint_on_mm is not None:
        solder = joint(run.points[-1], joint_on_mm, scale=scale, look=look, owner=owner)
    if not sleeved:
        return (*tail, *solder)
    stop = run.length - min(_BARE_MM * 1.6 * scale, run.length * 0.4)
    cover = run.part(min(_BARE_MM * scale, run.length * 0.15), stop)
    return (*tail, *_sleeve(cover, width * 1.35, look, owner), *solder)


def _sleeve(points: Sequence[Point], width: float, look: Look, owner: str) -> DrawList:
    outline = Style(stroke=look.casing, width=width + _CASING * look.line)
    return (
        Poly(tuple(points), outline, owner=owner),
        Poly(tuple(points), Style(stroke=look.insulator, width=width), owner=owner),
        Poly(tuple(points), Style(stroke=look.tin, width=width * 0.45, opacity=0.55), owner=owner),
    )


def plate(
    at: Point,
    code: str,
    carried: str = "",
    *,
    look: Look,
    owner: str = "",
    lit: bool = False,
    selected: bool = False,
) -> DrawList:
    """Draw the plate that names a core: bold letter code, then what it carries; centred on `at`.

    Its size is in px and does not follow the drawing's scale; see `plate_width`.
    """
    width = plate_width(code, carried)
    left, top = at[0] - width / 2, at[1] - PLATE_HEIGHT / 2
    edge = Style(fill=look.field, stroke=look.accent if lit else look.casing, width=2 if lit else 1)
    base = centred_baseline(at[1], 12)
    box = Rect((left, top), width, PLATE_HEIGHT, edge, radius=3, owner=owner)
    words = [Text((left + 4.5, base), code, 12, look.ink, bold=True, owner=owner)]
    if carried:
        start = left + 4.5 + text_width(code, 12, bold=True) + 5
        words.append(Text((start, base), carried, 12, look.ink, owner=owner))
    dot: DrawList = ()
    if selected:
        style = Style(fill=look.accent, stroke=look.field, width=1.5)
        dot = (Circle((left + width, top), 5, style, owner),)
    return (box, *words, *dot)


def plate_width(code: str, carried: str = "") -> float:
    """Return the width of a plate in px."""
    width = 9 + text_width(code, 12, bold=True)
    return width + (5 + text_width(carried, 12) if carried else 0)
