"""One face on paper: leads to their joints, order discs, leaders to names and flags."""

import math
from collections.abc import Sequence
from functools import cached_property

from planner.drawing.bench.shapes import box_of, spread
from planner.drawing.face import contact_point, contact_radius_mm, face, shell_reach_mm
from planner.drawing.fitting.discs import order_disc
from planner.drawing.fitting.face import fitted_face, jacket_reach_mm
from planner.drawing.fitting.leads import dab_radius_mm, sleeve_half_mm
from planner.drawing.fitting.scene import Scene
from planner.drawing.looks import PRINT
from planner.drawing.metrics import text_width
from planner.drawing.primitives import Anchor, Circle, DrawList, Point, Poly, Style
from planner.model.connector import Connector
from planner.sheet.boxes import Box, contact_boxes, free_spot
from planner.sheet.facts import EndFacts, Flag, Joint
from planner.sheet.flags import draw_flag, flag_width
from planner.sheet.lettering import BODY, HEAD, HEAVY, INK, PAPER, THIN, cap, say
from planner.sheet.sides import GAP, WIDE, Side, Sizes, block_height, column_width

OUTSIDE = 320.0  # how far discs reach beyond the shell
DISC = 300.0
TIE = 45.0
_BESIDE = 130.0  # between a leader and a name in the face
_SPINE = 110.0  # from flags to the line that they hang on
_AIR = 90.0  # between a shell or a disc and what is written beside it


class FaceDrawing:
    """One face with its leaders."""

    def __init__(
        self,
        facts: EndFacts,
        connector: Connector,
        sizes: Sizes,
        scale: float,
        centre: Point,
        *,
        withheld: bool = False,
        packed: tuple[int, int] | None = None,
    ) -> None:
        self.facts, self.connector, self.sizes = facts, connector, sizes
        self.scale, self.centre, self.packed = scale, centre, packed
        self.turn_deg, self.withheld = facts.turn_deg, withheld
        self._leaders: list[tuple[Point, Point]] = []
        self._blocks: list[Box] = []
        self._ties: list[tuple[str, Point, Point]] = []
        self._named: list[tuple[str, Box]] = []

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
        """Draw the face with its leads as they lie, and the order disc of each joint."""
        discs = tuple(
            item for joint in self.facts.joints if joint.number for item in self._disc(joint)
        )
        return (*leads_or_face(self.facts, self.connector, self.centre, self.scale), *discs)

    def _disc(self, joint: Joint) -> DrawList:
        """Draw a joint's order disc on the rim of the shell, tied to the joint."""
        here, rim = self.spot(joint.contact.id), self._rims[joint.contact.id]
        length = math.dist(here, rim)
        start = min(contact_radius_mm(joint.contact) * self.scale * 0.7 / max(length, 1.0), 1.0)
        tied = (here[0] + (rim[0] - here[0]) * start, here[1] + (rim[1] - here[1]) * start)
        self._leaders.append((tied, rim))
        owner = f"order/{joint.contact.id}"
        disc = order_disc(rim, joint.number, DISC, PRINT, owner, withheld=self.withheld)
        return (
            Poly((tied, rim), Style(stroke=PAPER, width=HEAVY)),
            Poly((tied, rim), Style(stroke=INK, width=TIE)),
            *disc,
        )

    @cached_property
    def _rims(self) -> dict[str, Point]:
        """Where each joint's disc stands: outward on the rim of the shell, none over another."""
        aims = {joint.contact.id: self._aim(joint) for joint in self.facts.joints if joint.number}
        reach = [half * self.scale for half in shell_reach_mm(self.connector)]
        apart = 2.3 * DISC / min(reach)
        placed = apart_on_a_ring(list(aims.values()), apart)
        return {
            contact: (
                self.centre[0] + reach[0] * math.cos(angle),
                self.centre[1] - reach[1] * math.sin(angle),
            )
            for contact, angle in zip(aims, placed, strict=True)
        }

    def _aim(self, joint: Joint) -> float:
        """Return the direction, counter-clockwise, in which a joint's disc stands."""
        dx, dy = self._outward(joint)
        return math.atan2(-dy, dx)

    def _outward(self, joint: Joint) -> Point:
        """Return the unit vector, y down, that leads from the axis out past a joint."""
        x, y = self.spot(joint.contact.id)
        away = (x - self.centre[0], y - self.centre[1])
        size = math.hypot(*away)
        if size > 0.12 * self.connector.shell.narrowest_mm / 2 * self.scale:
            return (away[0] / size, away[1] / size)
        angle = math.radians(joint.contact.terminal.opening_deg + self.turn_deg)
        return (math.cos(angle), -math.sin(angle))

    def _tail(self, joint: Joint) -> Point:
        """Return where a joint's leader ends: at its disc, or at an empty contact itself."""
        return self._rims.get(joint.contact.id) or self.spot(joint.contact.id)

    def is_clear_of(self, others: Sequence[Box]) -> bool:
        """Tell whether shell and discs keep off the names and flags set so far, and off `others`.

        For a round shell.
        """
        shell = drawn_reach_mm(self.facts, self.connector)[0] * self.scale
        discs = [(rim, DISC) for rim in self._rims.values()]
        return all(
            math.dist(at, box.nearest(at)) > radius + _AIR
            for box in (*self._blocks, *others)
            for at, radius in ((self.centre, shell), *discs)
        )

    def has_free_leaders(self) -> bool:
        """Tell whether no leader runs through the name and flags of another contact."""
        return not any(
            box.meets(Box.round_line(start, stop, 60))
            for owner, start, stop in self._ties
            for other, box in self._named
            if owner != other
        )

    def names(self) -> DrawList:
        """Set each contact's name in the face beside it, if leads and leaders leave room for all.

        The names outside are tied to the contacts; some inside and some not would mislead.
        """
        size = HEAD if self.sizes.width == WIDE.width else BODY
        taken = contact_boxes(self.connector, self.centre, self.scale, self.turn_deg)
        spots = [self.spot(joint.contact.id) for joint in self.facts.joints]
        taken += lead_boxes(self.facts, self.centre, self.scale)
        taken += [Box.round_line(start, stop, _BESIDE) for start, stop in self._leaders]
        items = []
        for joint, spot in zip(self.facts.joints, spots, strict=True):
            extent = (text_width(joint.contact.id, size, bold=True), cap(size))
            start = contact_radius_mm(joint.contact) * self.scale
            dx, dy = self._outward(joint)
            inward = math.atan2(-dy, -dx)
            found = free_spot(spot, start, extent, inward, taken, rivals=spots, fits=self._inside)
            if found is None:
                return ()
            taken.append(found)
            at = (found.middle[0], found.bottom)
            items.append(say(at, joint.contact.id, size, bold=True, anchor="middle"))
        return tuple(items)

    def _inside(self, found: Box) -> bool:
        reach = self.connector.shell.narrowest_mm / 2 * self.scale * 0.97
        return all(math.dist(corner, self.centre) < reach for corner in found.corners)

    def side(self, side: Side, top: float, bottom: float, *, on_left: bool) -> DrawList:
        """Set the names and flags of one side, each near its core, with their leaders."""
        tops = self._tops(side, top, bottom, on_left=on_left)
        blocks = [
            self._block(joint, y, on_left=on_left)
            for joint, y in zip(side.joints, tops, strict=True)
        ]
        return tuple(item for block in blocks for item in block)

    def _tops(self, side: Side, top: float, bottom: float, *, on_left: bool) -> list[float]:
        """Return where each block starts: as near its core as the others and the area let it.

        Packed ones stand in the upper and the lower corner, out of the way of a large shell.
        """
        heights = [block_height(joint, self.sizes) for joint in side.joints]
        if self.packed is not None:
            return _packed_tops(heights, self.packed[0 if on_left else 1], top, bottom)
        tops: list[float] = []
        for joint, height in zip(side.joints, heights, strict=True):
            least = tops[-1] + heights[len(tops) - 1] + GAP if tops else top
            tops.append(max(self._tail(joint)[1] - height * 0.7, least))
        most = bottom
        for place in range(len(tops) - 1, -1, -1):
            tops[place] = min(tops[place], most - heights[place])
            most = tops[place] - GAP
        return tops

    def upper(self, side: Side) -> int:
        """Return how many joints of a side lie in the upper half."""
        return sum(self._tail(joint)[1] < self.centre[1] for joint in side.joints)

    def _block(self, joint: Joint, y: float, *, on_left: bool) -> DrawList:
        sizes = self.sizes
        edge = 250.0 if on_left else sizes.width - 250
        base = y + cap(sizes.name)
        title = self._title(joint, edge, base, on_left=on_left)
        self._take(joint, title)
        flags = () if joint.instead else joint.flags[: sizes.shown]
        drawn = self._flags(flags, edge, base + 200, on_left=on_left)
        words = self._block_words(joint, len(flags), edge, base + 200, on_left=on_left)
        under = (*drawn, words) if words else tuple(drawn)
        tied = self._tied(joint, title, under, len(flags), on_left=on_left)
        return (*title, *tied, *(item for each in under for item in each))

    def _flags(
        self, flags: Sequence[Flag], edge: float, top: float, *, on_left: bool
    ) -> list[DrawList]:
        size, drawn = self.sizes.flag, []
        for flag in flags:
            x = edge if on_left else edge - flag_width(flag, size)
            drawn.append(draw_flag(flag, (x, top), size))
            top += size + 80
        return drawn

    def _tied(
        self,
        joint: Joint,
        title: DrawList,
        under: Sequence[DrawList],
        flags: int,
        *,
        on_left: bool,
    ) -> DrawList:
        """Lead from flags, or from what is said in their place, to the joint.

        From over the name where its own name is in the way. Several flags hang on one spine.
        """
        end, own = self._tail(joint), Box(*box_of(title))
        boxes = [Box(*box_of(each)) for each in under]
        for each in under:
            self._take(joint, each)
        edge = max(box.right for box in boxes) if on_left else min(box.left for box in boxes)
        levels = [box.middle[1] for box in boxes[: max(flags, 1)]]
        spine = edge + (_SPINE if on_left else -_SPINE) if len(boxes) > 1 or not flags else edge
        start = (spine, min(levels, key=lambda level: abs(level - end[1])))
        if own.meets(Box.round_line(start, end, 40)):
            # Not from beside a signal: a leader there reads as a minus.
            over = (own.right - 200, own.top - 60)
            beside = (own.left - 80, own.middle[1])
            return self._to_disc(over if on_left else beside, end, joint)
        if len(boxes) > 1:
            ends = [
                (box.right if on_left else box.left, level)
                for box, level in zip(boxes, levels, strict=False)
            ]
            stubs = [self._leader(at, (spine, at[1])) for at in ends]
            stubs.append(self._leader((spine, levels[0]), (spine, levels[-1])))
            self._blocks.append(Box(spine, levels[0], spine, levels[-1]))
            return (*stubs, *self._to_disc(start, end, joint))
        return self._to_disc(start, end, joint)

    def _take(self, joint: Joint, items: DrawList) -> None:
        """Keep the place of something that belongs to a joint."""
        found = Box(*box_of(items))
        self._blocks.append(found)
        self._named.append((joint.contact.id, found))

    def _block_words(
        self, joint: Joint, flags: int, edge: float, top: float, *, on_left: bool
    ) -> DrawList:
        """Say what stands instead of flags, or that there are more in the table."""
        anchor: Anchor = "start" if on_left else "end"
        if not flags:
            return (say((edge, top + cap(BODY)), self._instead(joint), anchor=anchor),)
        if joint.instead or len(joint.flags) <= flags:
            return ()
        more = self.facts.words("end.more_in_table", count=len(joint.flags) - flags)
        down = top + flags * (self.sizes.flag + 80) + cap(BODY)
        return (say((edge, down), more, anchor=anchor),)

    def _to_disc(self, start: Point, end: Point, joint: Joint) -> DrawList:
        """Lead to the edge of a joint's disc unless they touch; to a dot on an empty contact."""
        if not joint.number:
            self._ties.append((joint.contact.id, start, end))
            return (self._leader(start, end), Circle(end, 60, Style(fill=INK)))
        length, off = math.dist(start, end), DISC
        if length <= off:
            return ()
        share = (length - off) / length
        edge = (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)
        self._ties.append((joint.contact.id, start, edge))
        return (self._leader(start, edge),)

    def _instead(self, joint: Joint) -> str:
        """Return what stands beside the face where no flags do."""
        return joint.instead or self.facts.words("end.leave_empty")

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


def _packed_tops(heights: Sequence[float], upper: int, top: float, bottom: float) -> list[float]:
    """Return where blocks start: so many from the top down, the others up from the bottom."""
    tops, y = [], top
    for place, height in enumerate(heights):
        if place == upper:
            y = bottom - sum(each + GAP for each in heights[upper:]) + GAP
        tops.append(y)
        y += height + GAP
    return tops


def lead_boxes(facts: EndFacts, centre: Point, scale: float) -> list[Box]:
    """Return the corridors that leads take, and the places of sleeves and dabs."""
    if facts.fit is None or facts.connector is None:
        return []
    scene = Scene(facts.connector, facts.fit, centre, scale, PRINT, facts.view_deg)
    found = []
    for lead in facts.fit.leads:
        start, stop = scene.at(lead.exit), scene.at(lead.mouth)
        found.append(Box.round_line(start, stop, lead.covered_mm * scale / 2 + 60))
        if lead.covered:
            around = max(sleeve_half_mm(lead), dab_radius_mm(lead)) * scale + 60
            found.append(Box.round_line(stop, stop, around))
    return found


def drawn_reach_mm(facts: EndFacts, connector: Connector) -> tuple[float, float]:
    """Return half the width and height of a face, or of a cable that is thicker than the plug."""
    width, height = shell_reach_mm(connector)
    around = jacket_reach_mm(facts.fit, facts.jacket_mm) if facts.fit else 0.0
    return max(width, around), max(height, around)


def leads_or_face(facts: EndFacts, connector: Connector, centre: Point, scale: float) -> DrawList:
    """Draw the fitted face; the face alone where nothing is landed yet."""
    if facts.fit is None:
        landed = {joint.contact.id for joint in facts.joints if joint.flags}
        return face(
            connector,
            centre=centre,
            scale=scale,
            look=facts.look,
            turn_deg=facts.turn_deg,
            landed=landed,
        )
    return fitted_face(
        connector,
        facts.fit,
        centre=centre,
        scale=scale,
        look=facts.look,
        jacket_mm=facts.jacket_mm,
        labels=False,
        halos=False,
        view_deg=facts.view_deg,
    )


def apart_on_a_ring(angles: list[float], apart: float) -> list[float]:
    """Move directions (radians) apart on a ring as little as needed, keeping their order."""
    if len(angles) < 2:
        return angles
    order = sorted(range(len(angles)), key=lambda place: angles[place] % math.tau)
    apart = min(apart, math.tau / len(angles))
    sorted_angles = [angles[place] % math.tau for place in order]
    # Cut the ring at its widest gap, so that nothing is pushed round it.
    gaps = [
        (after - before) % math.tau
        for before, after in zip(sorted_angles, [*sorted_angles[1:], sorted_angles[0]], strict=True)
    ]
    first = (gaps.index(max(gaps)) + 1) % len(angles)
    row = order[first:] + order[:first]
    wanted = [angles[row[0]]]
    for place in row[1:]:
        wanted.append(wanted[-1] + (angles[place] - wanted[-1]) % math.tau)
    placed = spread(wanted, [apart] * (len(row) - 1))
    return [angle for _, angle in sorted(zip(row, placed, strict=True))]
