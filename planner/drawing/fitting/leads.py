"""The leads of a fitted face: true width, joints, sleeves, dabs."""

import math
from collections.abc import Collection, Sequence
from dataclasses import replace

from planner.drawing.cores import core_stroke, joint, strands_stroke
from planner.drawing.face import wall_mm
from planner.drawing.fitting.heights import (
    covers,
    crossing_shares,
    from_below,
    overlap_mm,
    to_lay_over,
)
from planner.drawing.fitting.scene import Scene
from planner.drawing.looks import Look
from planner.drawing.primitives import Circle, DrawList, Point, Poly, Primitive, Style, Text
from planner.drawing.runs import Run, arc
from planner.dryfit.bodies import SLEEVE_WALL_MM, Lead
from planner.model.cable import Core

DIM = 0.25
_END_ON = 0.25  # of its width: a lead projected shorter is seen end on
_DAB_MIDDLES = 0.72  # of a dab's reach: where the middles of its bumps lie
_BARE_SHARE = 0.45  # of a lead's projected length: the bare end of a steep lead is seen end on


def leads_drawn(scene: Scene, dimmed: Collection[str] = ()) -> DrawList:
    """Draw all leads, lower ones under higher ones, then their cut ends, sleeves and dabs."""
    found = covers(scene.fit.leads)
    ordered = from_below(scene.fit.leads, found)
    items: DrawList = ()
    for lead in ordered:
        items += _as_lit(lead_drawn(scene, lead), lead, dimmed)
    for cover in to_lay_over(ordered, found):
        items += _as_lit(_laid_over(scene, cover.higher, cover.lower), cover.higher, dimmed)
    for draw in (section_drawn, _cover):
        for lead in ordered:
            items += _as_lit(draw(scene, lead), lead, dimmed)
    return items


def _as_lit(items: DrawList, lead: Lead, dimmed: Collection[str]) -> DrawList:
    return faded(items) if lead.landing.conductor in dimmed else items


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
    """Draw one lead: its covered part, bare strands, the joint."""
    owner, look = f"lead/{lead.landing.conductor}", scene.look
    start, stop = scene.at(lead.exit), scene.at(lead.mouth)
    across = solder_mm(scene, lead)
    solder = joint(stop, across, scale=scene.scale, look=look, owner=owner)
    if math.dist(start, stop) < _END_ON * lead.covered_mm * scene.scale:
        return solder
    run = Run((start, stop))
    cut = run.length - bare_length(scene, lead)
    width = lead.metal_mm * scene.scale
    tip = strands_stroke(run.part(max(cut - 2 * look.line, 0), run.length), width, look, owner)
    return (*tip, *_covered_part(scene, lead, run, cut), *solder)


def _laid_over(scene: Scene, higher: Lead, lower: Lead) -> DrawList:
    """Draw a piece of a lead once more, over one that it crosses above."""
    shares = crossing_shares(higher, lower)
    run = Run((scene.at(higher.exit), scene.at(higher.mouth)))
    if shares is None or run.length == 0:
        return ()
    reach = overlap_mm(higher, lower) * scene.scale + 2.6 * scene.look.line
    cut = run.length - bare_length(scene, higher)
    start, stop = max(shares[0] * run.length - reach, 0.0), min(shares[0] * run.length + reach, cut)
    if stop <= start:
        return ()
    return _clad(scene, higher, run.part(start, stop))


def solder_mm(scene: Scene, lead: Lead) -> float:
    """Return what the solder of a joint spans: a bore, or the lead and the narrow side of a lug."""
    terminal = scene.terminal(lead.landing.contact)
    if terminal.kind != "lug":
        return terminal.across_mm
    return max(min(terminal.width_mm, terminal.depth_mm), 1.3 * lead.metal_mm)


def _covered_part(scene: Scene, lead: Lead, run: Run, cut: float) -> DrawList:
    """Draw what comes out of the jacket to where the bare end starts, with its rim."""
    owner, look = f"lead/{lead.landing.conductor}", scene.look
    body = _clad(scene, lead, run.part(0, cut))
    if lead.is_bare:
        return body
    half = lead.covered_mm * scene.scale / 2 + 1.3 * look.line
    rim = Style(stroke=look.casing, width=1.3 * look.line)
    return (*body, Poly((run.beside(cut, -half), run.beside(cut, half)), rim, owner=owner))


def _clad(scene: Scene, lead: Lead, way: Sequence[Point]) -> DrawList:
    """Draw part of a lead as it comes out of the jacket: insulated, sleeved, or bare tail."""
    owner, look = f"lead/{lead.landing.conductor}", scene.look
    if isinstance(lead.part, Core):
        return core_stroke(way, lead.part, scale=scene.scale, look=look, owner=owner)
    if lead.landing.sleeved:
        return tail_sleeve(way, lead.covered_mm * scene.scale, look, sleeve_owner(lead))
    return strands_stroke(way, lead.metal_mm * scene.scale, look, owner)


def tail_sleeve(points: Sequence[Point], width: float, look: Look, owner: str) -> DrawList:
    """Draw the sleeve of a tail: solid, for it goes on before the joint."""
    casing = Style(stroke=look.casing, width=width + 2.6 * look.line)
    return (
        Poly(tuple(points), casing, owner=owner),
        Poly(tuple(points), Style(stroke=look.insulator, width=width), owner=owner),
    )


def sleeve_owner(lead: Lead) -> str:
    """Return the owner id of a lead's sleeve."""
    return f"sleeve/{lead.landing.conductor}"


def section_drawn(scene: Scene, lead: Lead) -> DrawList:
    """Draw a lead cut across where it leaves the jacket: a dot, for it comes at the reader."""
    look, at, owner = scene.look, scene.at(lead.exit), f"lead/{lead.landing.conductor}"
    metal = Style(fill=look.strand, stroke=look.strand_edge, width=look.line)
    radius = lead.metal_mm / 2 * scene.scale
    inner = (
        Circle(at, radius, metal, owner),
        Circle(at, max(radius * 0.22, look.line), Style(fill=look.strand_edge), owner),
    )
    outer = lead.covered_mm / 2 * scene.scale
    pen = Style(fill=look.insulator, stroke=look.casing, width=1.3 * look.line)
    if isinstance(lead.part, Core):
        body = replace(pen, fill=look.core(lead.part.colours[0])[0])
        return (Circle(at, outer, body, owner), *inner)
    return (Circle(at, outer, pen, sleeve_owner(lead)), *inner) if lead.landing.sleeved else inner


# -- sleeves and dabs -------------------------------------------------------------------------


def _cover(scene: Scene, lead: Lead) -> DrawList:
    items: DrawList = ()
    if lead.landing.sleeved and not lead.is_shield:
        items += sleeve_drawn(scene, lead)
    if lead.landing.dabbed:
        items += dab_drawn(scene, lead)
    return items


def sleeve_drawn(scene: Scene, lead: Lead) -> DrawList:
    """Outline the sleeve of a joint: dashed, for it goes on after the joint."""
    look, owner = scene.look, sleeve_owner(lead)
    start, stop = scene.at(lead.exit), scene.at(lead.mouth)
    half = sleeve_half_mm(lead) * scene.scale + 2 * look.line
    pen = Style(stroke=look.ink, width=2 * look.line, dash=(7 * look.line, 4 * look.line))
    dx, dy = _unit(start, stop)
    past = half
    length = math.dist(start, stop)
    back = min(length, bare_length(scene, lead) + 0.6 * lead.covered_mm * scene.scale)
    corners = ((past, -half), (past, half), (-back, half), (-back, -half))
    points = tuple(
        (stop[0] + dx * along - dy * aside, stop[1] + dy * along + dx * aside)
        for along, aside in corners
    )
    return (Poly(points, pen, closed=True, owner=owner),)


def sleeve_half_mm(lead: Lead) -> float:
    """Return half the width of a sleeve over a joint: it passes the outside of a cup."""
    terminal = lead.terminal
    outside = terminal.bore_mm / 2 + wall_mm(terminal.bore_mm) if terminal.kind == "cup" else 0.0
    return max(outside, lead.covered_mm / 2) + SLEEVE_WALL_MM


def _unit(start: Point, stop: Point) -> Point:
    length = math.dist(start, stop)
    if length < 1e-9:
        return (1.0, 0.0)
    return ((stop[0] - start[0]) / length, (stop[1] - start[1]) / length)


def dab_radius_mm(lead: Lead) -> float:
    """Return how far a dab is drawn to reach from its joint, bumps included."""
    return 1.03 * max(lead.terminal.across_mm, 1.2 * lead.metal_mm)


def dab_drawn(scene: Scene, lead: Lead) -> DrawList:
    """Outline a dab of insulating compound over a joint, scalloped."""
    look, owner = scene.look, f"dab/{lead.landing.conductor}"
    at = scene.at(lead.mouth)
    radius = dab_radius_mm(lead) * _DAB_MIDDLES * scene.scale
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
