"""One face on paper: cores to their joints, leaders to names and flags, names in the face."""

import math

from planner.drawing.cores import strands_stroke, strip
from planner.drawing.face import contact_point, contact_radius_mm, face, shell_reach_mm
from planner.drawing.looks import PRINT
from planner.drawing.metrics import text_width
from planner.drawing.primitives import Anchor, Circle, DrawList, Point, Poly, Style
from planner.model.connector import Connector
from planner.sheet.boxes import Box, contact_boxes, free_spot
from planner.sheet.facts import EndFacts, Flag, Joint
from planner.sheet.flags import draw_flag, flag_width
from planner.sheet.lettering import BODY, HEAD, INK, PEN, THIN, cap, say
from planner.sheet.sides import GAP, WIDE, Side, Sizes, block_height, column_width

OUTSIDE = 320.0  # how far a core is drawn beyond the shell
_BETWEEN = 90.0  # between cores on one contact


class FaceDrawing:
    """One face with its leaders."""

    def __init__(
        self, facts: EndFacts, connector: Connector, sizes: Sizes, scale: float, centre: Point
    ) -> None:
        self.facts, self.connector, self.sizes = facts, connector, sizes
        self.scale, self.centre = scale, centre
        self.turn_deg = facts.turn_deg
        self._leaders: list[tuple[Point, Point]] = []

    def spot(self, contact: str) -> Point:
        """Return where a contact is soldered."""
        return contact_point(
            self.connector,
            contact,
            centre=self.centre,
            scale=self.scale,
            turn_deg=self.turn_deg,
        )

    def face(self) -> DrawList:
        """Draw the face with the cores that land on it."""
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
        return (*drawn, *(item for stub in stubs for item in stub))

    def _outward(self, joint: Joint) -> Point:
        """Return the unit vector, y down, along which the core of a joint is drawn."""
        x, y = self.spot(joint.contact.id)
        away = (x - self.centre[0], y - self.centre[1])
        size = math.hypot(*away)
        if size > 0.12 * self.connector.shell.narrowest_mm / 2 * self.scale:
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
        return (x + dx * (length + OUTSIDE), y + dy * (length + OUTSIDE))

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

    def names(self) -> DrawList:
        """Set each contact's name in the face beside it, where the cores and leaders leave room."""
        size = HEAD if self.sizes.width == WIDE.width else BODY
        taken = contact_boxes(self.connector, self.centre, self.scale, self.turn_deg)
        spots = [self.spot(joint.contact.id) for joint in self.facts.joints]
        for joint, spot in zip(self.facts.joints, spots, strict=True):
            if joint.flags:
                taken.append(Box.round_line(spot, self._tail(joint), self._widest(joint) / 2))
        taken += [Box.round_line(start, stop, 50) for start, stop in self._leaders]
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
        reach = self.connector.shell.narrowest_mm / 2 * self.scale * 0.97
        return all(math.dist(corner, self.centre) < reach for corner in found.corners)

    def side(self, side: Side, top: float, bottom: float, *, on_left: bool) -> DrawList:
        """Set the names and flags of one side, each near its core, with their leaders."""
        tops = self._tops(side, top, bottom)
        blocks = [
            self._block(joint, y, on_left=on_left)
            for joint, y in zip(side.joints, tops, strict=True)
        ]
        return tuple(item for block in blocks for item in block)

    def _tops(self, side: Side, top: float, bottom: float) -> list[float]:
        """Return where each block starts: as near its core as the others and the area let it."""
        heights = [block_height(joint, self.sizes) for joint in side.joints]
        tops: list[float] = []
        for joint, height in zip(side.joints, heights, strict=True):
            least = tops[-1] + heights[len(tops) - 1] + GAP if tops else top
            tops.append(max(self._tail(joint)[1] - height * 0.7, least))
        most = bottom
        for place in range(len(tops) - 1, -1, -1):
            tops[place] = min(tops[place], most - heights[place])
            most = tops[place] - GAP
        return tops

    def _block(self, joint: Joint, y: float, *, on_left: bool) -> DrawList:
        sizes = self.sizes
        edge = 250.0 if on_left else sizes.width - 250
        base = y + cap(sizes.name)
        items: list[DrawList] = [self._title(joint, edge, base, on_left=on_left)]
        top = base + 200
        for flag, end in list(zip(joint.flags, self._ends(joint), strict=True))[: sizes.shown]:
            width = flag_width(flag, sizes.flag)
            x = edge if on_left else edge - width
            start = (x + width if on_left else x, top + sizes.flag / 2)
            items.append((self._leader(start, end),))
            items.append(draw_flag(flag, (x, top), sizes.flag))
            top += sizes.flag + 80
        if len(joint.flags) > sizes.shown:
            more = f"and {len(joint.flags) - sizes.shown} more, see table"
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
        return (self._leader(start, here), Circle(here, 60, Style(fill=INK)))

    def _leader(self, start: Point, end: Point) -> Poly:
        self._leaders.append((start, end))
        return Poly((start, end), Style(stroke=INK, width=THIN))

    def _title(self, joint: Joint, edge: float, base: float, *, on_left: bool) -> DrawList:
        size = self.sizes.name
        first = text_width(joint.contact.id, size, bold=True)
        gap = 0.3 * size
        carries = joint.carries
        room = column_width(self.facts, self.sizes) - 400 - first - gap
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
    core = (*copper, *strip((end, cut), flag.colours, width, PRINT))
    return (*core, *_sleeve(here, end, cut, width)) if flag.sleeved else core


def _sleeve(here: Point, end: Point, cut: Point, width: float) -> DrawList:
    """Draw, dashed, the sleeve that goes over the joint and some of the core afterwards."""
    length = math.dist(here, end)
    dx, dy = (end[0] - here[0]) / length, (end[1] - here[1]) / length
    half, stop = width / 2 + 110, min(math.dist(here, cut) + 300, length)
    corners = ((-100.0, -half), (stop, -half), (stop, half), (-100.0, half))
    points = tuple(
        (here[0] + dx * along - dy * aside, here[1] + dy * along + dx * aside)
        for along, aside in corners
    )
    return (Poly(points, Style(stroke=INK, width=PEN, dash=(160, 100)), closed=True),)
