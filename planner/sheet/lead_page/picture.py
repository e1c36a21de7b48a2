"""The whole lead in one picture: ends, splits, lengths, and which cores come out where."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

from planner.drawing.hatching import hatch
from planner.drawing.metrics import clipped, text_width, wrapped
from planner.drawing.primitives import Command, DrawList, Path, Point, Poly, Rect, Style
from planner.model.plan import Section
from planner.sheet.badge import badge
from planner.sheet.block import Block, moved
from planner.sheet.facts import Flag
from planner.sheet.flags import draw_flag, flag_width
from planner.sheet.lead_page.dimensions import lengths
from planner.sheet.lead_page.plugs import HALF_HEIGHT, LENGTH, half_height, plug
from planner.sheet.lead_page.shields import shield_lines
from planner.sheet.lead_page.tree import Tip, Tree, named_span
from planner.sheet.leaf import Making
from planner.sheet.lettering import (
    BODY,
    HAIR,
    HEAD,
    INK,
    PAPER,
    PEN,
    TITLE_HEIGHT,
    cap,
    panel_title,
    say,
    say_runs,
)
from planner.sheet.paper import LIVE_WIDTH

_BADGE = 760.0
_PLUGS = 1000.0  # from the edge to the tip of a plug
_LEFT, _RIGHT = _PLUGS + LENGTH, LIVE_WIDTH - _PLUGS - LENGTH
_TOP = TITLE_HEIGHT + 1250
_FLAG = 460.0
_ROW, _PLAIN_ROW = 2150.0, 1500.0
_WHITE, _TIGHT = 175.0, 75.0  # over and under a name between two plugs
_LOW, _SLIM = HALF_HEIGHT + 40, 0.6  # the lowest plug, as high as a badge; a higher one made slim
_UNDER = 1800.0  # lengths under the last end
_UNDER_BAND = 350.0  # the band of a stop runs lower there than at the right edge


def lead_picture(making: Making, flags: Mapping[str, Sequence[Flag]], most: float) -> Block:
    """Draw the lead over the live width, at most `most` high where that can be.

    `flags` are the cores and shields that come out at each end.
    """
    tree, top = Tree(making.plan), _top(making)
    rows = _rows(making, tree, most - top - (_UNDER_BAND if making.stopped else _UNDER))
    spots = tree.spots(_LEFT, _RIGHT, tuple(accumulate(rows.gaps, initial=top)))
    words = making.words
    head = panel_title(0, LIVE_WIDTH, 0, words("lead.finished"), words("lead.not_to_scale"))
    items: list[DrawList] = [head]
    items += [
        _cable(making, spots[near], spots[far], section) for near, far, section in tree.joints
    ]
    items += [_split(spots[split.id]) for split in making.plan.splits if split.id in spots]
    if tree.root:
        items.append(_root(making, tree.root, spots[tree.root]))
    for tip in tree.tips:
        shown = flags.get(tip.first, ()) if len(tip.ends) == 1 and rows.flagged else ()
        items.append(_tip(making, tip, spots[tip.first], shown, rows))
    lowest = max((y for _, y in spots.values()), default=_TOP) + 850
    drawn, bottom = lengths(making, tree, spots, lowest)
    if tree.tips and rows.flagged:
        bottom = max(bottom, spots[tree.tips[-1].first][1] + 1000)
    items += [drawn, _shields(making, tree, spots)]
    return Block(tuple(item for part in items for item in part), bottom, full=True)


def _top(making: Making) -> float:
    """Return the level of the first end: the name over a plug is clear of the title."""
    plugs = [half_height(making.plan.connector_of(end.id)) for end in making.plan.ends]
    return max(_TOP, TITLE_HEIGHT + 420 + cap(BODY) + max(plugs, default=0.0))


@dataclass(frozen=True, slots=True)
class _Rows:
    """How far each end stands from the one over it, and what it looks like there.

    `slim` is how much of a plug's height is drawn, `over` how far over it the name stands.
    """

    gaps: tuple[float, ...]
    slim: float
    over: float
    flagged: bool


def _rows(making: Making, tree: Tree, room: float) -> _Rows:
    """Share `room` among the ends: flags give way first, then white, then the height of plugs."""
    halves = [half_height(making.plan.connector_of(tip.first)) for tip in tree.tips]
    split = bool(making.plan.splits)
    flagged = max(_ROW, 2 * max(halves, default=0.0) + 2 * _WHITE + cap(BODY) + _FLAG + 110)
    even = min(flagged if split else _PLAIN_ROW, room / max(len(halves), 1))
    for slim, white in ((1.0, _WHITE), (1.0, _TIGHT), (_SLIM, _TIGHT)):
        plugs = [max(half * slim, _LOW) for half in halves]
        gaps = tuple(max(even, sum(two) + 2 * white + cap(BODY)) for two in pairwise(plugs))
        if sum(gaps) <= room:
            break
    return _Rows(gaps, slim, white, split and even >= flagged)


def _cable(making: Making, near: Point, far: Point, section: Section) -> DrawList:
    """Draw a section; a shield is a lattice, cores out of their jacket run thinner."""
    cable = making.plan.cable_of(section.id)
    width = 220.0 if section.fan_of else 420.0
    path = _curve(near, far)
    ink = Style(stroke=INK, width=width + 2 * PEN)
    body = (Path(path, ink), Path(path, Style(stroke=PAPER, width=width)))
    if near[1] != far[1] or section.fan_of:
        return body
    half = width / 2
    top, bottom = near[1] - half, near[1] + half
    box = ((near[0], top), (far[0], top), (far[0], bottom), (near[0], bottom))
    pen = Style(stroke=INK, width=HAIR)
    shielded = cable is not None and any(not shield.around for shield in cable.shields)
    ways = (hatch([box], pitch=130, angle_deg=angle, style=pen) for angle in (45, -45))
    lattice = tuple(line for way in ways for line in way) if shielded else ()
    return (*body, *lattice, *_break(((near[0] + far[0]) / 2, near[1]), half))


def _break(middle: Point, half: float) -> DrawList:
    """Draw the long-break sign: the cable is longer than its picture."""
    x, y = middle
    high = half + PEN + 90
    shift = ((-high, 60), (-high / 3, -60), (high / 3, 60), (high, -60))
    left = tuple((x - 130 + lean, y + rise) for rise, lean in shift)
    right = tuple((x + 130 + lean, y + rise) for rise, lean in shift)
    ground = Poly((*left, *reversed(right)), Style(fill=PAPER), closed=True)
    pen = Style(stroke=INK, width=PEN)
    return (ground, Poly(left, pen), Poly(right, pen))


def _curve(near: Point, far: Point) -> tuple[Command, ...]:
    if near[1] == far[1]:
        return (("M", near), ("L", far))
    third = (far[0] - near[0]) * 0.45
    return (
        ("M", near),
        ("C", (near[0] + third, near[1], far[0] - third, far[1], far[0], far[1])),
    )


def _split(at: Point) -> DrawList:
    x, y = at
    points = ((x - 650, y - 330), (x - 250, y - 330), (x + 250, y - 470))
    mirrored = tuple((a, 2 * y - b) for a, b in reversed(points))
    return (Poly((*points, *mirrored), Style(fill=PAPER, stroke=INK, width=PEN), closed=True),)


def _root(making: Making, end: str, at: Point) -> DrawList:
    connector = making.plan.connector_of(end)
    mark, _ = badge(clipped(end, HEAD, 2600, bold=True), (0, at[1] - _BADGE / 2), _BADGE)
    base = at[1] - half_height(connector) - 220
    return (*mark, *plug(connector, at, -1), *_names(making, (end,), (0, base), 7000))


def _tip(making: Making, tip: Tip, at: Point, flags: Sequence[Flag], rows: _Rows) -> DrawList:
    connector = making.plan.connector_of(tip.first)
    half = max(half_height(connector, rows.slim), _LOW)
    label = clipped(named_span(tip.ends), HEAD, 2600, bold=True)
    mark, width = badge(label, (0, at[1] - _BADGE / 2), _BADGE)
    start = min(at[0], LIVE_WIDTH - width - LENGTH - 120)
    stub = Rect((start, at[1] - 110), at[0] - start, 220, Style(fill=PAPER, stroke=INK, width=PEN))
    base = at[1] - half - rows.over
    return (
        *((stub,) if start < at[0] else ()),
        *moved(mark, (LIVE_WIDTH - width, 0)),
        *plug(connector, (start, at[1]), 1, rows.slim),
        *_names(making, tip.ends, (LIVE_WIDTH, base), 7000, at_right=True),
        *_flags(flags, (at[0] + 120, at[1] + half + 110)),
    )


def _names(
    making: Making, ends: tuple[str, ...], at: Point, room: float, *, at_right: bool = False
) -> DrawList:
    """Say how many, what an end is called, and what its connector is."""
    end = making.plan.end_by_id[ends[0]]
    connector = making.plan.connector_of(end.id)
    title = connector.title if connector else making.words("lead.no_connector")
    bold = f"{end.name[0].upper()}{end.name[1:]}: " if end.name else ""
    if len(ends) > 1:
        bold = making.words("lead.times", count=len(ends)) + " "
    bold = clipped(bold, BODY, room * 0.6, bold=True) if bold else ""
    title = clipped(title, BODY, room - text_width(bold, BODY, bold=True))
    used = text_width(bold, BODY, bold=True) + text_width(title, BODY)
    return say_runs((at[0] - (used if at_right else 0), at[1]), ((bold, True), (title, False)))


def _flags(flags: Sequence[Flag], at: Point) -> DrawList:
    items: list[DrawList] = []
    x = at[0]
    for place, flag in enumerate(flags):
        width = flag_width(flag, _FLAG)
        last = place + 1 == len(flags)
        if x + width > LIVE_WIDTH - (0 if last else 700):
            more = say((x, at[1] + _FLAG / 2 + cap(BODY) / 2), f"+ {len(flags) - place}", bold=True)
            return (*(item for part in items for item in part), more)
        items.append(draw_flag(flag, (x, at[1]), _FLAG))
        x += width + 100
    return tuple(item for part in items for item in part)


def _shields(making: Making, tree: Tree, spots: dict[str, Point]) -> DrawList:
    """Say above the first section on which contacts the shields are, and where they stop."""
    if not tree.joints:
        return ()
    near, far, _ = tree.joints[0]
    (left, y), (right, _) = spots[near], spots[far]
    room = right - left - 1100
    lines = [line for text in shield_lines(making) for line in wrapped(text, BODY, room)]
    start = y - 420 - 450 * (min(len(lines), 2) - 1)
    return tuple(
        say((left + 300, start + 450 * place), line) for place, line in enumerate(lines[:2])
    )
