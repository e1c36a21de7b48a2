"""The conductors at an end: the way of each, how it is drawn, where they cross."""

from collections.abc import Mapping
from itertools import pairwise

from planner.drawing.bench.facts import CoreFact, EndFacts
from planner.drawing.bench.fan import Approach, Fan, core_width, stub, way_to
from planner.drawing.bench.parts import Strand
from planner.drawing.cores import lead, tail_stroke
from planner.drawing.looks import Look
from planner.drawing.primitives import DrawList, Point, Poly, Style
from planner.drawing.runs import Run
from planner.model.cable import Core, Shield
from planner.units import MINUS

_BARE_MM = 1.0


def strand_of(
    core: CoreFact,
    fan: Fan,
    joints: Mapping[str, Point],
    ways: Mapping[str, Approach],
    *,
    zoom: float,
) -> Strand:
    """Return the way of a conductor: to its contact, or a short stub where it lies loose."""
    slot = fan.slot(core.conductor)
    joint = joints.get(core.contact)
    if joint is not None:
        points = way_to(slot, joint, fan.facing, ways[core.contact])
    else:
        towards = joints.get(core.wanted)
        points = stub(slot, fan, towards=towards, zoom=zoom, capped=core.capped)
    contact = core.contact if joint is not None else ""
    width = core_width(core, fan.scale)
    return Strand(core.conductor, points, width, core.code, core.carried, contact)


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
