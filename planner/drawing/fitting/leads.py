"""The leads of a fitted face: true width from exit to terminal, joints, sleeves, dabs, crossings."""

import math
from collections.abc import Collection
from dataclasses import replace

from planner.drawing.cores import core_stroke, joint, strands_stroke
from planner.drawing.fitting.heights import crossing_point, from_below
from planner.drawing.fitting.scene import Scene
from planner.drawing.primitives import Circle, DrawList, Point, Poly, Primitive, Style, Text
from planner.drawing.runs import Run, arc
from planner.dryfit.bodies import SLEEVE_WALL_MM, Lead
from planner.model.cable import Core

DIM = 0.25
_BARE_SHARE = 0.45  # of a lead's projected length: the bare end of a steep lead is seen end on


def leads_drawn(scene: Scene, dimmed: Collection[str] = ()) -> DrawList:
    """Draw all leads, lower ones under higher ones, then sleeves, dabs and crossings on top."""
    items: DrawList = ()
    for lead in from_below(scene.fit.leads):
        drawn = lead_drawn(scene, lead)
        items += faded(drawn) if lead.landing.conductor in dimmed else drawn
    for lead in scene.fit.leads:
        drawn = _cover(scene, lead)
        items += faded(drawn) if lead.landing.conductor in dimmed else drawn
    return items + crossings_drawn(scene)


def faded(items: DrawList) -> DrawList:
    """Return the items see-through."""
    return tuple(_faded(item) for item in items)


def _faded(item: Primitive) -> Primitive:
    if isinstance(item, Text):
        return item
    return replace(item, style=replace(item.style, opacity=item.style.opacity * DIM))


def bare_length(scene: Scene, lead: Lead) -> float:
    """Return how long the bare end is drawn, in target units."""
    length = math.dist(scene.at(lead.exit), scene.at(lead.mouth))
    return min(lead.gap_mm * scene.scale, length * _BARE_SHARE)


def lead_drawn(scene: Scene, lead: Lead) -> DrawList:
    """Draw one lead: its cut section at the exit, its covered part, bare strands, the joint."""
    owner = f"lead/{lead.landing.conductor}"
    start, stop = scene.at(lead.exit), scene.at(lead.mouth)
    across = scene.terminal(lead.landing.contact).across_mm
    solder = joint(stop, across, scale=scene.scale, look=scene.look, owner=owner)
    section = _section(scene, lead, owner)
    if math.dist(start, stop) < 0.25 * lead.covered_mm * scene.scale:
        return (*solder, *section)
    run = Run((start, stop))
    cut = run.length - bare_length(scene, lead)
    width = lead.metal_mm * scene.scale
    if not isinstance(lead.part, Core):
        tail = strands_stroke((start, stop), width, scene.look, owner)
        return (*tail, *solder, *section)
    tip = strands_stroke(
        run.part(max(cut - 2 * scene.look.line, 0), run.length), width, scene.look, owner
    )
    body = core_stroke(run.part(0, cut), lead.part, scale=scene.scale, look=scene.look, owner=owner)
    half = lead.covered_mm * scene.scale / 2 + 1.3 * scene.look.line
    rim = Style(stroke=scene.look.casing, width=1.3 * scene.look.line)
    end = Poly((run.beside(cut, -half), run.beside(cut, half)), rim, owner=owner)
    return (*tip, *body, end, *solder, *section)


def _section(scene: Scene, lead: Lead, owner: str) -> DrawList:
    """Draw a lead cut across where it leaves the jacket: it comes towards the reader there."""
    look, at = scene.look, scene.at(lead.exit)
    metal = Style(fill=look.strand, stroke=look.strand_edge, width=look.line)
    inner = Circle(at, lead.metal_mm / 2 * scene.scale, metal, owner)
    if not isinstance(lead.part, Core):
        return (inner,)
    body = look.core(lead.part.colours[0])[0]
    pen = Style(fill=body, stroke=look.casing, width=1.3 * look.line)
    return (Circle(at, lead.covered_mm / 2 * scene.scale, pen, owner), inner)


# -- sleeves and dabs -------------------------------------------------------------------------


def _cover(scene: Scene, lead: Lead) -> DrawList:
    items: DrawList = ()
    if lead.landing.sleeved:
        items += sleeve_drawn(scene, lead)
    if lead.landing.dabbed:
        items += dab_drawn(scene, lead)
    return items


def sleeve_drawn(scene: Scene, lead: Lead) -> DrawList:
    """Outline the sleeve of a joint: dashed, for it goes on after the joint."""
    look, owner = scene.look, f"sleeve/{lead.landing.conductor}"
    start, stop = scene.at(lead.exit), scene.at(lead.mouth)
    half = (lead.covered_mm / 2 + SLEEVE_WALL_MM) * scene.scale + 2 * look.line
    pen = Style(stroke=look.ink, width=2 * look.line, dash=(7 * look.line, 4 * look.line))
    dx, dy = _unit(start, stop)
    past = scene.terminal(lead.landing.contact).across_mm / 2 * scene.scale + 2 * look.line
    length = math.dist(start, stop)
    back = min(length, bare_length(scene, lead) + 0.6 * lead.covered_mm * scene.scale)
    corners = ((past, -half), (past, half), (-back, half), (-back, -half))
    points = tuple(
        (stop[0] + dx * along - dy * aside, stop[1] + dy * along + dx * aside)
        for along, aside in corners
    )
    return (Poly(points, pen, closed=True, owner=owner),)


def _unit(start: Point, stop: Point) -> Point:
    length = math.dist(start, stop)
    if length < 1e-9:
        return (1.0, 0.0)
    return ((stop[0] - start[0]) / length, (stop[1] - start[1]) / length)


def dab_drawn(scene: Scene, lead: Lead) -> DrawList:
    """Outline a dab of insulating compound over a joint, scalloped."""
    look, owner = scene.look, f"dab/{lead.landing.conductor}"
    at = scene.at(lead.mouth)
    radius = scene.terminal(lead.landing.contact).across_mm * 0.75 * scene.scale
    bump = radius * math.sin(math.pi / 8)
    points: list[Point] = []
    for turn in range(0, 360, 45):
        angle = math.radians(turn)
        spot = (at[0] + radius * math.cos(angle), at[1] - radius * math.sin(angle))
        points += arc(spot, bump, turn - 90, turn + 90, 8)
    wash = Style(fill=look.paper, opacity=0.45)
    pen = Style(stroke=look.ink, width=1.6 * look.line)
    return (
        Poly(tuple(points), wash, closed=True, owner=owner),
        Poly(tuple(points), pen, closed=True, owner=owner),
    )


# -- crossings --------------------------------------------------------------------------------


def crossings_drawn(scene: Scene) -> DrawList:
    """Mark each crossing: a diamond with a cross in it."""
    items: DrawList = ()
    for one, other in scene.fit.crossings:
        leads = scene.lead_of.get(one), scene.lead_of.get(other)
        if leads[0] is None or leads[1] is None:
            continue
        point = crossing_point(leads[0], leads[1])
        if point is not None:
            items += crossing_mark(scene.at(point), 7.5 * scene.look.line, scene, (one, other))
    return items


def crossing_mark(at: Point, radius: float, scene: Scene, pair: tuple[str, str]) -> DrawList:
    """Draw the mark of a crossing."""
    look, owner, (x, y) = scene.look, f"crossing/{pair[0]}/{pair[1]}", at
    corners = ((x, y - radius), (x + radius, y), (x, y + radius), (x - radius, y))
    arm = radius * 0.36
    pen = Style(fill=look.field, stroke=look.ink, width=1.5 * look.line)
    cross = Style(stroke=look.ink, width=1.6 * look.line, cap="round")
    return (
        Poly(corners, pen, closed=True, owner=owner),
        Poly(((x - arm, y - arm), (x + arm, y + arm)), cross, owner=owner),
        Poly(((x - arm, y + arm), (x + arm, y - arm)), cross, owner=owner),
    )
