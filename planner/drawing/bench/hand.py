"""The core in hand: drawn from its cut to the pointer, and pale where it would lie."""

import math

from planner.drawing.bench.overlays import RING_DASH, glow
from planner.drawing.bench.parts import PlacedEnd
from planner.drawing.bench.plates import plate_items
from planner.drawing.bench.shapes import moved
from planner.drawing.cores import lead, tail_stroke
from planner.drawing.looks import Look
from planner.drawing.primitives import DrawList, Point, Poly, Style
from planner.drawing.runs import curve
from planner.model.cable import Shield


def _hand_way(start: Point, end: Point, facing: int) -> tuple[Point, ...]:
    distance = math.dist(start, end)
    leaving = (start[0] - facing * distance * 0.4, start[1])
    arriving = (end[0] + facing * distance * 0.25, end[1] + (start[1] - end[1]) * 0.12)
    return curve(start, leaving, arriving, end, 20)


def hand_core(placed: PlacedEnd, conductor: str, tip: Point, look: Look) -> DrawList:
    """Draw the core in hand from its cut to the pointer, glowing."""
    block = placed.block
    strand, fact = block.strands[conductor], block.materials[conductor]
    start = placed.at(strand.points[0])
    way = _hand_way(start, tip, block.facing)
    light = glow(way, strand.width, look)
    if isinstance(fact.material, Shield):
        drawn = tail_stroke(way, fact.material, scale=block.scale, look=look, sleeved=False)
    else:
        drawn = lead(way, fact.material, scale=block.scale, look=look)
    plate: DrawList = ()
    if strand.plate is not None:
        plate = moved(
            plate_items(strand, strand.plate, look, lit=True, selected=True), *placed.origin
        )
    return (light, *drawn, *plate)


def ghost_core(
    placed: PlacedEnd, conductor: str, contact: str, look: Look, weight: str = ""
) -> DrawList:
    """Draw the pale core where it would lie if it were dropped, its edges dashed."""
    block = placed.block
    strand = block.strands[conductor]
    start, end = placed.at(strand.points[0]), placed.at(block.contacts[contact])
    way = _hand_way(start, end, block.facing)
    colour = {"stop": look.stop, "caution": look.caution}.get(weight, look.accent)
    edge = Style(stroke=colour, width=1.6, dash=RING_DASH)
    half = strand.width / 2
    return (
        Poly(way, Style(stroke=colour, width=strand.width, opacity=0.28)),
        Poly(tuple((x, y - half) for x, y in way), edge),
        Poly(tuple((x, y + half) for x, y in way), edge),
    )
