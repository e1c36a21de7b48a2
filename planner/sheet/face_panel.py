"""The solder side of an end in its frame: eye bar, face, names and flags round it, mating key."""

import math
from dataclasses import dataclass

from planner.drawing.cores import strands_stroke, strip
from planner.drawing.face import contact_point, contact_radius_mm, face, shell_reach_mm
from planner.drawing.looks import PRINT
from planner.drawing.metrics import text_width
from planner.drawing.primitives import Anchor, Circle, DrawList, Point, Poly, Style
from planner.model.connector import Connector
from planner.sheet.boxes import Box, contact_boxes, free_spot
from planner.sheet.facts import EndFacts, Flag, Joint
from planner.sheet.flags import draw_flag, flag_width
from planner.sheet.frame import (
    STRIP,
    Framing,
    bar_and_words,
    key_words_box,
    mating_strip,
    scale_text,
)
from planner.sheet.lettering import BIG, BODY, HEAD, INK, THIN, cap, say

SCALES = (
    12.0,
    10.0,
    8.0,
    7.0,
    6.0,
    5.0,
    4.5,
    4.0,
    3.5,
    3.0,
    2.5,
    2.2,
    2.0,
    1.8,
    1.5,
    1.0,
    0.75,
    0.5,
)
MOST_ROUND = 8  # contacts that still have room for names and flags round the face
_GAP = 260.0
_FLAGS = 3  # flags that stand beside the face; the table has them all
_BETWEEN = 90.0  # between cores on one contact
_OUTSIDE = 320.0  # how far a core is drawn beyond the shell


@dataclass(frozen=True, slots=True)
class Sizes:
    """How large a face panel's parts are, in 0.01 mm."""

    width: float
    face: float
    name: float
    flag: float
    bar: float


WIDE = Sizes(width=11800, face=6350, name=BIG, flag=700, bar=900)
LARGE = Sizes(width=9200, face=4400, name=HEAD, flag=560, bar=800)
SMALL = Sizes(width=9200, face=3500, name=HEAD, flag=560, bar=800)


@dataclass(frozen=True, slots=True)
class _Side:
    """The names and flags that stand left or right of the face, from the top down."""

    joints: tuple[Joint, ...]
    height: float


def best_scale(connector: Connector, width: float, height: float) -> float:
    """Return the largest stated scale at which the shell fits `width` by `height` (0.01 mm)."""
    half_width, half_height = shell_reach_mm(connector)
    for scale in SCALES:
        if half_width * 200 * scale <= width and half_height * 200 * scale <= height:
            return scale
    return SCALES[-1]


def face_panel(facts: EndFacts, connector: Connector, sizes: Sizes) -> tuple[DrawList, float]:
    """Draw an end of at most MOST_ROUND contacts from 0, 0; return the items and the height.

    In a wide frame the mating key stands in the lower left corner beside the face, if no leader
    runs through its words there.
    """
    if sizes is WIDE:
        items, framing = _framed(facts, connector, sizes, in_corners=True)
        if not _struck(items, framing):
            return items, framing.height
    items, framing = _framed(facts, connector, sizes, in_corners=False)
    return items, framing.height


def _framed(
    facts: EndFacts, connector: Connector, sizes: Sizes, *, in_corners: bool
) -> tuple[DrawList, Framing]:
    left, right = _sides(facts, connector, sizes)
    corner = STRIP if in_corners else 0.0
    area = max(sizes.face, left.height + corner, right.height + corner)
    column = max(_column(facts, sizes), 1900.0)
    around = sizes.width - 2 * column - 2 * _OUTSIDE
    scale = best_scale(connector, around, area - 2 * _OUTSIDE)
    framing = Framing(sizes.width, sizes.bar, area, in_corners=in_corners)
    top = framing.area_top
    drawing = _Drawing(facts, connector, sizes, scale * 100, (sizes.width / 2, top + area / 2))
    items = (
        *bar_and_words(framing, facts, connector, scale_text(scale)),
        *drawing.face(),
        *drawing.side(left, top, top + area - corner, on_left=True),
        *drawing.side(right, top, top + area - corner, on_left=False),
        *mating_strip(framing, facts, connector, true_size_here=sizes is not WIDE),
    )
    return items, framing


def _column(facts: EndFacts, sizes: Sizes) -> float:
    """Return how wide the names and flags beside the face are, with their margins."""
    flags = [flag_width(flag, sizes.flag) for joint in facts.joints for flag in joint.flags]
    names = [
        text_width(joint.contact.id, sizes.name, bold=True) + 0.3 * sizes.name + _carried(joint)
        for joint in facts.joints
    ]
    return min(max([*flags, *names, 0.0]) + 400, 0.36 * sizes.width)


def _carried(joint: Joint) -> float:
    return text_width(joint.carries, BODY)


def _struck(items: DrawList, framing: Framing) -> bool:
    """Tell whether a leader runs through the words of the key."""
    words = key_words_box(framing)
    return any(
        isinstance(item, Poly)
        and len(item.points) == 2
        and item.style.width == THIN
        and words.meets(Box.round_line(item.points[0], item.points[1], 60))
        for item in items
    )


def _sides(facts: EndFacts, connector: Connector, sizes: Sizes) -> tuple[_Side, _Side]:
    """Share the joints between left and right by their place, middle ones to the emptier."""
    spots = {
        joint.contact.id: contact_point(
            connector, joint.contact.id, centre=(0, 0), scale=1, turn_deg=facts.turn_deg
        )
        for joint in facts.joints
    }
    lean = 0.12 * connector.shell.bore_mm / 2
    sides: tuple[list[Joint], list[Joint]] = ([], [])
    middle = []
    for joint in facts.joints:
        x = spots[joint.contact.id][0]
        if abs(x) <= lean:
            middle.append(joint)
        else:
            sides[int(x > 0)].append(joint)
    for joint in middle:
        sides[int(len(sides[1]) <= len(sides[0]))].append(joint)
    ordered = [tuple(sorted(side, key=lambda joint: spots[joint.contact.id][1])) for side in sides]
    heights = [sum(_block_height(joint, sizes) + _GAP for joint in side) for side in ordered]
    return _Side(ordered[0], heights[0]), _Side(ordered[1], heights[1])


def _block_height(joint: Joint, sizes: Sizes) -> float:
    flags = min(max(len(joint.flags), 1), _FLAGS)
    more = cap(BODY) + 60 if len(joint.flags) > _FLAGS else 0
    return cap(sizes.name) + 200 + flags * (sizes.flag + 80) + more


class _Drawing:
    """One face with its leaders."""

    def __init__(
        self, facts: EndFacts, connector: Connector, sizes: Sizes, scale: float, centre: Point
    ) -> None:
        self.facts, self.connector, self.sizes = facts, connector, sizes
        self.scale, self.centre = scale, centre
        self.turn_deg = facts.turn_deg

    def spot(self, contact: str) -> Point:
        return contact_point(
            self.connector,
            contact,
            centre=self.centre,
            scale=self.scale,
            turn_deg=self.turn_deg,
        )

    def face(self) -> DrawList:
        landed = {joint.contact.id for joint in self.facts.joints if joint.flags}
        drawn = face(
            self.connector,
            centre=self.centre,
            scale=self.scale,
            look=PRINT,
            turn_deg=self.turn_deg,
            landed=landed,
        )
        stubs = [self._stub(joint) for joint in self.facts.joints]
        return (*drawn, *(item for stub in stubs for item in stub), *self._names())

    def _outward(self, joint: Joint) -> Point:
        """Return the unit vector, y down, along which the core of a joint is drawn."""
        x, y = self.spot(joint.contact.id)
        away = (x - self.centre[0], y - self.centre[1])
        size = math.hypot(*away)
        if size > 0.12 * self.connector.shell.bore_mm / 2 * self.scale:
            return (away[0] / size, away[1] / size)
        angle = math.radians(joint.contact.terminal.opening_deg + self.turn_deg)
        return (math.cos(angle), -math.sin(angle))

    def _tail(self, joint: Joint) -> Point:
        """Return where a joint's core ends and its leader starts: just outside the shell."""
        x, y = self.spot(joint.contact.id)
        dx, dy = self._outward(joint)
        reach_x, reach_y = (half * self.scale for half in shell_reach_mm(self.connector))
        length = 0.0
        while (
            math.hypot(
                (x + dx * length - self.centre[0]) / reach_x,
                (y + dy * length - self.centre[1]) / reach_y,
            )
            < 1
            and length < 30000
        ):
            length += 20
        return (x + dx * (length + _OUTSIDE), y + dy * (length + _OUTSIDE))

    def _ends(self, joint: Joint) -> list[Point]:
        """Return where each core of a joint ends, side by side outside the shell."""
        (x, y), (dx, dy) = self._tail(joint), self._outward(joint)
        widths = [flag.width_mm * self.scale + _BETWEEN for flag in joint.flags]
        places, aside = [], -sum(widths) / 2
        for width in widths:
            places.append((x - dy * (aside + width / 2), y + dx * (aside + width / 2)))
            aside += width
        # In the order of the flags, from the top down, so that leaders do not cross.
        return sorted(places, key=lambda place: place[1])

    def _stub(self, joint: Joint) -> DrawList:
        here, bare = self.spot(joint.contact.id), self._bare(joint)
        drawn = (
            _core(flag, here, end, flag.width_mm * self.scale, bare)
            for flag, end in zip(joint.flags, self._ends(joint), strict=True)
        )
        return tuple(item for core in drawn for item in core)

    def _bare(self, joint: Joint) -> float:
        return (min(contact_radius_mm(joint.contact), 1.5) + 0.25) * self.scale

    def _names(self) -> DrawList:
        """Set each contact's name in the face beside it, where there is room."""
        size = HEAD if self.sizes is WIDE else BODY
        taken = contact_boxes(self.connector, self.centre, self.scale, self.turn_deg)
        spots = [self.spot(joint.contact.id) for joint in self.facts.joints]
        for joint, spot in zip(self.facts.joints, spots, strict=True):
            if joint.flags:
                taken.append(Box.round_line(spot, self._tail(joint), self._widest(joint) / 2))
        items = []
        for joint, spot in zip(self.facts.joints, spots, strict=True):
            extent = (text_width(joint.contact.id, size, bold=True), cap(size))
            start = contact_radius_mm(joint.contact) * self.scale
            dx, dy = self._outward(joint)
            inward = math.atan2(-dy, -dx)
            found = free_spot(spot, start, extent, inward, taken, rivals=spots, fits=self._inside)
            if found is not None:
                taken.append(found)
                at = (found.middle[0], found.bottom)
                items.append(say(at, joint.contact.id, size, bold=True, anchor="middle"))
        return tuple(items)

    def _widest(self, joint: Joint) -> float:
        return sum(flag.width_mm for flag in joint.flags) * self.scale + 80

    def _inside(self, found: Box) -> bool:
        reach = self.connector.shell.bore_mm / 2 * self.scale * 0.97
        return all(math.dist(corner, self.centre) < reach for corner in found.corners)

    def side(self, side: _Side, top: float, bottom: float, *, on_left: bool) -> DrawList:
        """Set the names and flags of one side, each near its core, with their leaders."""
        tops = self._tops(side, top, bottom)
        blocks = [
            self._block(joint, y, on_left=on_left)
            for joint, y in zip(side.joints, tops, strict=True)
        ]
        return tuple(item for block in blocks for item in block)

    def _tops(self, side: _Side, top: float, bottom: float) -> list[float]:
        """Return where each block starts: as near its core as the others and the area let it."""
        heights = [_block_height(joint, self.sizes) for joint in side.joints]
        tops: list[float] = []
        for joint, height in zip(side.joints, heights, strict=True):
            least = tops[-1] + heights[len(tops) - 1] + _GAP if tops else top
            tops.append(max(self._tail(joint)[1] - height * 0.7, least))
        most = bottom
        for place in range(len(tops) - 1, -1, -1):
            tops[place] = min(tops[place], most - heights[place])
            most = tops[place] - _GAP
        return tops

    def _block(self, joint: Joint, y: float, *, on_left: bool) -> DrawList:
        sizes = self.sizes
        edge = 250.0 if on_left else sizes.width - 250
        base = y + cap(sizes.name)
        items: list[DrawList] = [self._title(joint, edge, base, on_left=on_left)]
        top = base + 200
        for flag, end in list(zip(joint.flags, self._ends(joint), strict=True))[:_FLAGS]:
            width = flag_width(flag, sizes.flag)
            x = edge if on_left else edge - width
            start = (x + width if on_left else x, top + sizes.flag / 2)
            items.append((Poly((start, end), Style(stroke=INK, width=THIN)),))
            items.append(draw_flag(flag, (x, top), sizes.flag))
            top += sizes.flag + 80
        if len(joint.flags) > _FLAGS:
            more = f"and {len(joint.flags) - _FLAGS} more, see table"
            anchor: Anchor = "start" if on_left else "end"
            items.append((say((edge, top + cap(BODY)), more, anchor=anchor),))
        if not joint.flags:
            words = say(
                (edge, top + cap(BODY)), "leave empty", anchor="start" if on_left else "end"
            )
            items.append((words, *self._empty_leader(joint, words.at, on_left=on_left)))
        return tuple(item for drawn in items for item in drawn)

    def _empty_leader(self, joint: Joint, at: Point, *, on_left: bool) -> DrawList:
        width = text_width("leave empty", BODY) + 60
        start = (at[0] + (width if on_left else -width), at[1] - cap(BODY) / 2)
        here = self.spot(joint.contact.id)
        line = Poly((start, here), Style(stroke=INK, width=THIN))
        return (line, Circle(here, 60, Style(fill=INK)))

    def _title(self, joint: Joint, edge: float, base: float, *, on_left: bool) -> DrawList:
        size = self.sizes.name
        first = text_width(joint.contact.id, size, bold=True)
        gap = 0.3 * size
        carries = joint.carries
        room = _column(self.facts, self.sizes) - 400 - first - gap
        second_size = size if text_width(carries, size) <= room else BODY
        second = text_width(carries, second_size)
        start = edge if on_left else edge - first - (gap + second if carries else 0)
        named = say((start, base), joint.contact.id, size, bold=True)
        if not carries:
            return (named,)
        return (named, say((start + first + gap, base), carries, second_size))


def _core(flag: Flag, here: Point, end: Point, width: float, bare: float) -> DrawList:
    """Draw a core from outside the shell to its joint: insulation, then bare strands."""
    length = math.dist(here, end)
    share = min(bare / length, 0.8) if length > 0 else 0.5
    cut = (here[0] + (end[0] - here[0]) * share, here[1] + (end[1] - here[1]) * share)
    if not flag.colours:
        return strands_stroke((end, here), width, PRINT)
    copper = strands_stroke((cut, here), width * 0.55, PRINT)
    return (*copper, *strip((end, cut), flag.colours, width, PRINT))
