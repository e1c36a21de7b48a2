"""The conductors at an end: the way of each, how it is drawn, where they cross."""

from collections.abc import Mapping
from itertools import pairwise

from planner.drawing.bench.facts import CoreFact, EndFacts
from planner.drawing.bench.fan import (
    STUB_PX,
    Approach,
    Fan,
    core_width,
    drift_to,
    stub,
    stub_length,
    way_to,
)
from planner.drawing.bench.parts import Strand
from planner.drawing.cores import lead, tail_stroke
from planner.drawing.looks import Look
from planner.drawing.primitives import DrawList, Point, Poly, Style
from planner.drawing.runs import Run
from planner.model.cable import Core, Shield
from planner.units import MINUS

_BARE_MM = 1.0


def strands_of(
    fan: Fan, joints: Mapping[str, Point], ways: Mapping[str, Approach], *, zoom: float
) -> dict[str, Strand]:
    """Return the way of every conductor: to its contact, or a short stub where it lies loose.

    A loose one keeps out of the way of the landed ones beside it in the fan.
    """
    found: dict[str, Strand] = {}
    for core in fan.order:
        if core.contact in joints:
            points = way_to(
                fan.slot(core.conductor), joints[core.contact], fan.facing, ways[core.contact]
            )
            found[core.conductor] = _strand(core, fan, points, core.contact)
    for core in fan.order:
        if core.contact not in joints:
            slot, length = fan.slot(core.conductor), stub_length(zoom, capped=core.capped)
            wanted = slot[1] + drift_to(slot, joints.get(core.wanted), zoom)
            level = _free_level(core, fan, found, slot[0] - fan.facing * length, wanted)
            points = stub(slot, fan.facing, length, level - slot[1])
            found[core.conductor] = _strand(core, fan, points, "")
    return {core.conductor: found[core.conductor] for core in fan.order}


def _strand(core: CoreFact, fan: Fan, points: tuple[Point, ...], contact: str) -> Strand:
    width = core_width(core, fan.scale)
    return Strand(core.conductor, points, width, core.code, core.carried, contact)


def _free_level(
    core: CoreFact, fan: Fan, landed: Mapping[str, Strand], x: float, wanted: float
) -> float:
    """Return the y near `wanted` at which a stub's tip lies clear of its landed neighbours."""
    names = [other.conductor for other in fan.order]
    place, half = names.index(core.conductor), core_width(core, fan.scale) / 2
    over = [_reach_down(landed[name], x) for name in names[:place] if name in landed]
    under = [_reach_up(landed[name], x) for name in names[place + 1 :] if name in landed]
    highest, lowest = max(over, default=-1e6) + half + 3, min(under, default=1e6) - half - 3
    if highest > lowest:
        return (highest + lowest) / 2
    level = min(max(wanted, highest), lowest)
    slot = fan.slot(core.conductor)[1]
    return min(max(level, slot - STUB_PX * 0.7), slot + STUB_PX * 0.7)


def _level(strand: Strand, x: float) -> float | None:
    """Return the y at which a way passes an x on its way from the cable."""
    for (x0, y0), (x1, y1) in pairwise(strand.points):
        if min(x0, x1) <= x <= max(x0, x1) and x0 != x1:
            return y0 + (y1 - y0) * (x - x0) / (x1 - x0)
    return None


def _reach_down(strand: Strand, x: float) -> float:
    level = _level(strand, x)
    return -1e6 if level is None else level + strand.width / 2


def _reach_up(strand: Strand, x: float) -> float:
    level = _level(strand, x)
    return 1e6 if level is None else level - strand.width / 2


def strand_items(core: CoreFact, strand: Strand, facts: EndFacts, look: Look) -> DrawList:
    """Draw one conductor along its way, from the cut to its tip."""
    scale = facts.scale
    owner = f"conductor/{facts.end}/{core.conductor}"
    across = None
    if strand.contact and facts.connector is not None:
        across = facts.connector.by_id[strand.contact].terminal.across_mm
    material = core.material
    if isinstance(material, Shield):
        return tail_stroke(
            strand.points, material, scale=scale, look=look, owner=owner,
            sleeved=bool(strand.contact), joint_on_mm=across,
        )  # fmt: skip
    bare = 0.05 if core.capped else _BARE_MM
    drawn = lead(
        strand.points,
        material,
        scale=scale,
        look=look,
        owner=owner,
        bare_mm=bare,
        joint_on_mm=across,
    )
    return drawn + (_cap(strand, material, scale, look) if core.capped else ())


def _cap(strand: Strand, core: Core, scale: float, look: Look) -> DrawList:
    """Draw the cap over a spare core's end."""
    run = Run(strand.points)
    cover = run.part(max(run.length - 14, 0), run.length)
    width = core.insulation_mm * scale + 5
    start, end = cover[0], cover[-1]
    return (
        Poly((start, end), Style(stroke=look.casing, width=width + 2.6, cap="round")),
        Poly((start, end), Style(stroke=look.jacket, width=width, cap="round")),
    )


def turn_words(facts: EndFacts, strands: Mapping[str, Strand]) -> str:
    """Say how the plug is turned and how often its cores cross; nothing where both are nought."""
    landed = [strand for strand in strands.values() if strand.contact]
    turn = f"turn {facts.turn_deg:g}°".replace("-", MINUS) if facts.turn_deg else ""
    if facts.shown_turn_deg != facts.turn_deg:
        turn = "shown turned 90°"
    if not 1 < len(landed) <= 8:
        return turn
    count = sum(
        _cross(one, other) for place, one in enumerate(landed) for other in landed[place + 1 :]
    )
    if not turn and not count:
        return ""
    words = {0: "no crossing", 1: "1 crossing"}.get(count, f"{count} crossings")
    return f"{turn}, {words}" if turn else words


def _cross(one: Strand, other: Strand) -> bool:
    """Tell whether two cores cross each other between the cut and their tips."""
    ys = [point[1] for point in other.points]
    return any(
        _segments_cross(start, end, other.points[place], other.points[place + 1])
        for start, end in pairwise(one.points)
        for place in range(len(ys) - 1)
        if min(ys[place], ys[place + 1]) <= max(start[1], end[1])
        and max(ys[place], ys[place + 1]) >= min(start[1], end[1])
    )


def _segments_cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    def turn(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return turn(a, b, c) * turn(a, b, d) < 0 and turn(c, d, a) * turn(c, d, b) < 0
