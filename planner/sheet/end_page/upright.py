"""A connector with many contacts, turned along the page: names and flags in rows beside it."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from planner.drawing.face import contact_point, contact_radius_mm, shell_reach_mm
from planner.drawing.fitting.discs import order_disc
from planner.drawing.looks import PRINT
from planner.drawing.metrics import wrapped
from planner.drawing.primitives import Anchor, Circle, DrawList, Point, Poly, Style
from planner.model.connector import Connector
from planner.sheet.end_page.panel import Panel
from planner.sheet.face_drawing import TIE, leads_or_face
from planner.sheet.face_panel import SCALES
from planner.sheet.facts import EndFacts, Flag, Joint
from planner.sheet.flags import draw_flag, flag_width
from planner.sheet.frame import Framing, bar_and_words, datum, mating_strip, scale_text
from planner.sheet.lettering import BODY, HEAD, HEAVY, INK, PAPER, THIN, cap, say
from planner.sheet.paper import LIVE_WIDTH
from planner.sheet.stack import joined

_BAR = 900.0
_DISC, _DISC_OUT = 270.0, 420.0
_FLAG, _LINE = 460.0, 540.0
_ROW = 640.0
_LEAST_SHARE = 0.8  # of it, where there is less room
_LOW = 16000.0  # a frame that is lower has its words over the face
_NAME_GAP, _NAME_ROOM, _GAP = 380.0, 760.0, 120.0
_WORDS_WIDTH, _WORDS_LINE = 5200.0, 460.0
_KEY_HEIGHT = 1800.0
_LABEL_WIDTH = 5400.0
_LARGEST = 8.0


@dataclass(frozen=True, slots=True)
class _Plot:
    """Where the face stands: its middle, target units a mm, half its width as drawn."""

    facts: EndFacts
    connector: Connector
    centre: Point
    scale: float
    half: float
    withheld: bool

    def spot(self, joint: Joint) -> Point:
        return contact_point(
            self.connector,
            joint.contact.id,
            centre=self.centre,
            scale=self.scale,
            turn_deg=self.facts.turn_deg,
        )


def upright_face(
    facts: EndFacts, connector: Connector, room: float, *, withheld: bool = False
) -> Panel:
    """Draw the face over the live width in a frame `room` high, as large as it goes.

    The words about the view stand in the upper left corner; over the face where the frame is low.
    """
    words, low = _words(facts, connector, _WORDS_WIDTH if room > _LOW else LIVE_WIDTH - 3000)
    top = _BAR if room > _LOW else low
    scale = upright_scale(facts, connector, room - top)
    _, wide = _reach(facts, connector)
    middle = (LIVE_WIDTH / 2, top + (room - top) / 2)
    plot = _Plot(facts, connector, middle, scale * 100, wide * scale * 100, withheld)
    framing = Framing(LIVE_WIDTH, _BAR, room - _BAR - 250, lines=0, in_corners=True)
    items = (
        *bar_and_words(framing, facts, connector, facts.words.decimal(scale_text(scale))),
        *words,
        *leads_or_face(facts, connector, middle, scale * 100),
        *_labels(plot, (low, room - _KEY_HEIGHT), left=True),
        *_labels(plot, (max(top, _BAR + 1300), room - 250), left=False),
        *mating_strip(framing, facts, connector),
    )
    return Panel(items, room)


def upright_scale(facts: EndFacts, connector: Connector, room: float) -> float:
    """Return the largest stated scale at which the face stands in `room` between its labels."""
    high, wide = _reach(facts, connector)
    for scale in SCALES:
        fits = 200 * scale * high <= room - 200
        beside = 200 * scale * wide + 2 * _LABEL_WIDTH <= LIVE_WIDTH
        if scale <= _LARGEST and fits and beside:
            return scale
    return SCALES[-1]


def _reach(facts: EndFacts, connector: Connector) -> tuple[float, float]:
    """Return half the height and half the width of the shell as it stands on the page, mm."""
    along, across = shell_reach_mm(connector)
    return (along, across) if facts.along else (across, along)


def _words(facts: EndFacts, connector: Connector, width: float) -> tuple[DrawList, float]:
    """Say what is seen and how the contacts lie; return how far down that goes."""
    words = facts.words
    seen = f"{words('end.face_you_cup')} {words('end.cable_comes')}"
    if facts.along:
        seen = f"{seen} {words('end.turned_along')}"
    lines = [(line, False) for line in wrapped(seen, BODY, width)]
    order = datum(facts, connector)
    lines += [(line, True) for line in wrapped(order, BODY, width, bold=True)]
    items = tuple(
        say((250, _BAR + 480 + _WORDS_LINE * place), text, bold=bold)
        for place, (text, bold) in enumerate(lines)
    )
    return items, _BAR + 250 + _WORDS_LINE * len(lines)


def _labels(plot: _Plot, bounds: tuple[float, float], *, left: bool) -> DrawList:
    """Set the joints of one side from the top down, each as level with its contact as it goes."""
    joints = [
        joint for joint in plot.facts.joints if (plot.spot(joint)[0] < plot.centre[0]) == left
    ]
    joints.sort(key=lambda joint: plot.spot(joint)[1])
    heights = [_height(joint) for joint in joints]
    short = (bounds[1] - bounds[0]) / max(sum(heights), 1.0)
    heights = [height * max(min(short, 1.0), _LEAST_SHARE) for height in heights]
    wanted = [plot.spot(joint)[1] for joint in joints]
    levels = apart(wanted, heights, bounds)
    return joined(
        _label(plot, joint, level, left=left) for joint, level in zip(joints, levels, strict=True)
    )


def _height(joint: Joint) -> float:
    return _ROW + _LINE * max(len(joint.flags) - 1, 0)


def apart(
    wanted: Sequence[float], heights: Sequence[float], bounds: tuple[float, float]
) -> list[float]:
    """Return the middles of rows: near those wanted, none over another, within bounds if it can."""
    middles: list[float] = []
    least = bounds[0]
    for want, height in zip(wanted, heights, strict=True):
        middles.append(max(want, least + height / 2))
        least = middles[-1] + height / 2
    most = bounds[1]
    for place in range(len(middles) - 1, -1, -1):
        middles[place] = min(middles[place], most - heights[place] / 2)
        most = middles[place] - heights[place] / 2
    return middles


def _label(plot: _Plot, joint: Joint, level: float, *, left: bool) -> DrawList:
    way, anchor = _outward(left=left)
    disc = (plot.centre[0] + way * (plot.half + _DISC_OUT), level)
    named = disc[0] + way * _NAME_GAP
    name = say((named, level + cap(HEAD) / 2), joint.contact.id, HEAD, bold=True, anchor=anchor)
    tie = _tie(plot, joint, disc) if joint.number else _thin(plot, joint, (named, level), way)
    return (*tie, name, *_beside(plot, joint, named + way * _NAME_ROOM, level, left=left))


def _outward(*, left: bool) -> tuple[int, Anchor]:
    """Return which way outward is on a side, and which end of words lies inward."""
    return (-1, "end") if left else (1, "start")


def _tie(plot: _Plot, joint: Joint, disc: Point) -> DrawList:
    """Tie a joint to its order disc; a ring shows the contact where leads lie over it."""
    here = plot.spot(joint)
    radius = contact_radius_mm(joint.contact) * plot.scale
    reach = math.dist(here, disc)
    share = radius / reach
    start = (here[0] + (disc[0] - here[0]) * share, here[1] + (disc[1] - here[1]) * share)
    owner = f"order/{joint.contact.id}"
    return (
        Circle(here, radius, Style(stroke=PAPER, width=HEAVY)),
        Circle(here, radius, Style(stroke=INK, width=TIE)),
        Poly((start, disc), Style(stroke=PAPER, width=HEAVY)),
        Poly((start, disc), Style(stroke=INK, width=TIE)),
        *order_disc(disc, joint.number, _DISC, PRINT, owner, withheld=plot.withheld),
    )


def _thin(plot: _Plot, joint: Joint, named: Point, way: int) -> DrawList:
    """Lead from an empty contact to its name."""
    here = plot.spot(joint)
    end = (named[0] - way * 100, named[1])
    return (
        Poly((here, end), Style(stroke=INK, width=THIN)),
        Circle(here, 60, Style(fill=INK)),
    )


def _beside(plot: _Plot, joint: Joint, x: float, level: float, *, left: bool) -> DrawList:
    """Set the flags outward of the name, under one another, then what is carried."""
    way, anchor = _outward(left=left)
    if not joint.flags:
        said = plot.facts.words("end.leave_empty")
        return (say((x, level + cap(BODY) / 2), said, anchor=anchor),)
    items: list[DrawList] = []
    top = level - _LINE * (len(joint.flags) - 1) / 2
    for place, flag in enumerate(joint.flags):
        y = top + _LINE * place - _FLAG / 2
        items.append(draw_flag(flag, (x - _width(flag) if left else x, y), _FLAG))
    far = x + way * (max(_width(flag) for flag in joint.flags) + _GAP)
    items.append((say((far, level + cap(BODY) / 2), joint.carries, anchor=anchor),))
    return joined(items)


def _width(flag: Flag) -> float:
    return flag_width(flag, _FLAG)
