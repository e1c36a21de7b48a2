"""The dial of an end: crossings and smallest gap over the full turn, and where the plug stands."""

import math
from collections.abc import Sequence

from planner.drawing.looks import Look
from planner.drawing.metrics import text_width
from planner.drawing.primitives import Circle, DrawList, Point, Poly, Style, Text, centred_baseline
from planner.drawing.runs import arc
from planner.dryfit.dial import Dial, Window

_RIM, _STEP_IN, _GAP_OUT, _GAP_IN = 0.84, 0.62, 0.56, 0.18
GAP_CAP_MM = 1.0
WORD_PX = 12.0


def _place_deg(turn_deg: float) -> float:
    """Return the direction of a turn on the dial: none is up, counter-clockwise as the plug."""
    return 90.0 + turn_deg


def _spot(centre: Point, radius: float, turn_deg: float) -> Point:
    angle = math.radians(_place_deg(turn_deg))
    return (centre[0] + radius * math.cos(angle), centre[1] - radius * math.sin(angle))


def dial_picture(
    dial: Dial, *, centre: Point, radius: float, look: Look, turn_deg: float
) -> DrawList:
    """Draw the dial `radius` out from `centre`; turns count counter-clockwise from the top.

    Outside: crossings as steps, higher and with a figure for more. Inside: the smallest gap, from
    touching at the inner circle to 1 mm and more at the outer. A hand shows `turn_deg`, a solid
    triangle the best turn. Owners: `dial/step/<n>`, `dial/gap`, `dial/hand`, `dial/best`.
    """
    return (
        *_grounds(centre, radius, look),
        *_steps(dial, centre, radius, look),
        *_gap_curve(dial, centre, radius, look),
        *_best(dial, centre, radius, look),
        *_hand(centre, radius, look, turn_deg),
    )


def _grounds(centre: Point, radius: float, look: Look) -> DrawList:
    unit = look.line
    thin, tick = Style(stroke=look.edge, width=unit), Style(stroke=look.ink2, width=unit)
    disc = Style(fill=look.field, stroke=look.edge, width=unit)
    touching = Style(stroke=look.ink2, width=unit, dash=(3 * unit, 3 * unit))
    quarter = tuple(
        Poly((_spot(centre, radius * _GAP_OUT, turn), _spot(centre, radius * _STEP_IN, turn)), tick)
        for turn in range(0, 360, 30)
    )
    return (
        Circle(centre, radius * _RIM, disc, "dial"),
        Circle(centre, radius * _STEP_IN, thin, "dial"),
        Circle(centre, radius * _GAP_OUT, thin, "dial"),
        Circle(centre, radius * _GAP_IN, touching, "dial"),
        *quarter,
    )


def _steps(dial: Dial, centre: Point, radius: float, look: Look) -> DrawList:
    most = max((span.crossings for span in dial.windows), default=0)
    items: DrawList = ()
    for number, span in enumerate(_merged(dial.windows)):
        owner = f"dial/step/{number}"
        start, stop, count = span
        inner, room = radius * _STEP_IN, radius * (_RIM - _STEP_IN)
        outer = inner + room * (count / most if most else 0.0)
        if count:
            edge = arc(centre, outer, _place_deg(start), _place_deg(stop))
            back = arc(centre, inner, _place_deg(stop), _place_deg(start))
            pen = Style(fill=look.edge, stroke=look.ink, width=look.line)
            items += (Poly((*edge, *back), pen, closed=True, owner=owner),)
        else:
            free = arc(centre, inner, _place_deg(start), _place_deg(stop))
            items += (Poly(free, Style(stroke=look.clear, width=4 * look.line), owner=owner),)
        items += _figure(span, centre, radius, look, owner)
    return items


def _merged(windows: Sequence[Window]) -> list[tuple[float, float, int]]:
    """Return (from, to, crossings) with neighbours of one number made one."""
    found: list[tuple[float, float, int]] = []
    for span in windows:
        if found and found[-1][2] == span.crossings and abs(found[-1][1] - span.from_deg) < 1e-6:
            found[-1] = (found[-1][0], span.to_deg, span.crossings)
        else:
            found.append((span.from_deg, span.to_deg, span.crossings))
    return found


def _figure(
    span: tuple[float, float, int], centre: Point, radius: float, look: Look, owner: str
) -> DrawList:
    start, stop, count = span
    size, text = WORD_PX * look.line, str(count)
    at = _spot(centre, radius * _RIM + size * 0.75, (start + stop) / 2)
    room = math.radians(stop - start) * (radius * _RIM + size * 0.75)
    if room < max(text_width(text, size, bold=True), size * 0.8) + 3 * look.line:
        return ()
    return (
        Text(
            (at[0], centred_baseline(at[1], size)), text, size, look.ink, bold=True,
            anchor="middle", owner=owner,
        ),
    )  # fmt: skip


def _gap_curve(dial: Dial, centre: Point, radius: float, look: Look) -> DrawList:
    if not dial.gaps:
        return ()
    inner, room = radius * _GAP_IN, radius * (_GAP_OUT - _GAP_IN)
    points = tuple(
        _spot(centre, inner + room * min(max(gap_mm, 0.0), GAP_CAP_MM) / GAP_CAP_MM, turn)
        for turn, gap_mm in sorted(dial.gaps)
    )
    closed = len(points) > 2
    wash = Style(fill=look.accent, opacity=0.15)
    pen = Style(stroke=look.accent, width=2 * look.line)
    return (
        Poly(points, wash, closed=closed, owner="dial/gap"),
        Poly(points, pen, closed=closed, owner="dial/gap"),
    )


def _best(dial: Dial, centre: Point, radius: float, look: Look) -> DrawList:
    tip = _spot(centre, radius * (_STEP_IN - 0.01), dial.best_deg)
    back = radius * (_STEP_IN - 0.13)
    spread = math.degrees(0.055 * radius / back)
    feet = (
        _spot(centre, back, dial.best_deg - spread),
        _spot(centre, back, dial.best_deg + spread),
    )
    pen = Style(fill=look.clear, stroke=look.field, width=1.5 * look.line)
    return (Poly((tip, *feet), pen, closed=True, owner="dial/best"),)


def _hand(centre: Point, radius: float, look: Look, turn_deg: float) -> DrawList:
    end = _spot(centre, radius * _RIM, turn_deg)
    under = Style(stroke=look.field, width=6 * look.line, cap="round")
    over = Style(stroke=look.ink, width=2.6 * look.line, cap="round")
    owner = "dial/hand"
    return (
        Poly((centre, end), under, owner=owner),
        Poly((centre, end), over, owner=owner),
        Circle(centre, 4.5 * look.line, Style(fill=look.ink), owner),
        Circle(
            end,
            4.5 * look.line,
            Style(fill=look.ink, stroke=look.field, width=1.5 * look.line),
            owner,
        ),
    )
