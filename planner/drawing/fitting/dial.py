"""The dial of an end: crossings and smallest gap over the full turn, and where the plug stands."""

import math
from collections.abc import Sequence

from planner.drawing.looks import Look
from planner.drawing.primitives import Circle, DrawList, Point, Poly, Style, Text, centred_baseline
from planner.drawing.runs import arc
from planner.dryfit.dial import Dial, Window

_RIM, _STEP_IN, _GAP_OUT, _GAP_IN = 0.84, 0.62, 0.56, 0.18
GAP_CAP_MM = 1.0
WORD_PX = 12.0

Span = tuple[float, float, int]  # from, to in degrees, crossings


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
    spans = _merged(dial.windows)
    most = max((count for _, _, count in spans), default=0)
    inner, room = radius * _STEP_IN, radius * (_RIM - _STEP_IN)
    items: DrawList = ()
    profile: list[Point] = []
    for number, (start, stop, count) in enumerate(spans):
        owner = f"dial/step/{number}"
        outer = inner + room * (count / most if most else 0.0)
        edge = arc(centre, outer, _place_deg(start), _place_deg(stop))
        profile += edge
        back = arc(centre, inner, _place_deg(stop), _place_deg(start))
        free = Style(stroke=look.clear, width=4 * look.line)
        body = Poly((*edge, *back), Style(fill=look.edge), closed=True, owner=owner)
        items += (body if count else Poly(edge, free, owner=owner),)
    # One line along all steps: many narrow ones with a line each would run into one dark band.
    line = Style(stroke=look.ink, width=look.line)
    outline = Poly(tuple(profile), line, closed=True, owner="dial/steps")
    return (*items, *((outline,) if most else ()), *_figures(dial, spans, centre, radius, look))


def _figures(
    dial: Dial, spans: Sequence[Span], centre: Point, radius: float, look: Look
) -> DrawList:
    """Set the crossings of wide windows; then of the best and the worst, where there is room."""
    size, out = WORD_PX * look.line, radius * _RIM + WORD_PX * look.line * 0.75
    best = [span for span in spans if (dial.best_deg - span[0]) % 360 <= span[1] - span[0]]
    worst = [max(spans, key=lambda span: span[2])] if spans else []
    wide = [span for span in spans if math.radians(span[1] - span[0]) * out > _room(span, look)]
    placed: list[Text] = []
    for span in (*best[:1], *worst, *wide):
        at = _spot(centre, out, (span[0] + span[1]) / 2)
        base = (at[0], centred_baseline(at[1], size))
        if any(math.dist(base, other.at) < 1.5 * size for other in placed):
            continue
        owner = f"dial/step/{spans.index(span)}"
        text, ink = str(span[2]), look.ink
        placed.append(Text(base, text, size, ink, bold=True, anchor="middle", owner=owner))
    return tuple(placed)


def _room(span: Span, look: Look) -> float:
    """Return how much room a figure wants along the ring."""
    return (WORD_PX * 0.8 * len(str(span[2])) + 3) * look.line


def _merged(windows: Sequence[Window]) -> list[Span]:
    """Return (from, to, crossings) with neighbours of one number made one."""
    found: list[Span] = []
    for span in windows:
        if found and found[-1][2] == span.crossings and abs(found[-1][1] - span.from_deg) < 1e-6:
            found[-1] = (found[-1][0], span.to_deg, span.crossings)
        else:
            found.append((span.from_deg, span.to_deg, span.crossings))
    return found


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
    end = _spot(centre, radius * _RIM - 6 * look.line, turn_deg)
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
