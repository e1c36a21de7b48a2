"""The records of the bench drawing: settings, groups, one end's block, the whole bench."""

import math
from dataclasses import dataclass, field
from enum import IntEnum
from functools import cached_property
from typing import Literal

from planner.drawing.bench.facts import CoreFact, Shows
from planner.drawing.bench.shapes import Box, box_of, joined_box, moved_box
from planner.drawing.looks import Look
from planner.drawing.primitives import DrawList, Point

Side = Literal["solder", "mating"]

# WCAG 2.2, 2.5.8: a target measures at least 24 CSS px.
TARGET_PX = 24.0


class Layer(IntEnum):
    """What lies over what."""

    LINK = 0
    LINK_GLOW = 1
    LINK_CORE = 2
    FACE = 3
    CONTACT = 4
    GLOW = 5
    CORE = 6
    LOOSE = 7
    JACKET = 8
    PLATE = 9
    LABEL = 10
    MARK = 11
    GESTURE = 12


@dataclass(frozen=True, slots=True)
class Settings:
    """How the bench is shown: look, zoom (1 is 100 %), scales, side, room in px to fill.

    `narrow` and `low` say that width or height is short, so that heads take less of it.
    `only` names the one end that is shown, large; empty for the whole lead.
    """

    look: Look
    zoom: float = 1.0
    one_scale: bool = False
    side: Side = "solder"
    width: float = 920.0
    height: float = 544.0
    narrow: bool = False
    low: bool = False
    only: str = ""


@dataclass(frozen=True)
class Group:
    """One thing that is drawn, moved and replaced as a whole. `key` names it among all groups."""

    key: str
    layer: Layer
    items: DrawList
    origin: Point = (0.0, 0.0)

    @cached_property
    def box(self) -> Box:
        """The box round what it draws, before it is moved to its origin."""
        return box_of(self.items)

    def moved_to(self, origin: Point) -> "Group":
        """Return the same group elsewhere; what is drawn, and its box, are shared."""
        other = Group(self.key, self.layer, self.items, origin)
        other.__dict__["box"] = self.box
        return other


@dataclass(frozen=True, slots=True)
class Strand:
    """One conductor as it comes out of the cable at an end, in the block's own coordinates.

    `points` run from the cable's cut to the tip. `plate` is the box of its plate, if it has one.
    """

    conductor: str
    points: tuple[Point, ...]
    width: float
    code: str
    carried: str
    contact: str = ""
    plate: Box | None = None

    @property
    def tip(self) -> Point:
        """Where the bare end lies."""
        return self.points[-1]


@dataclass(frozen=True)
class EndBlock:
    """One end: drawn round the centre of its face, which is the origin.

    `head` and `foot` are drawn from their own top left corner; the layout puts them in place.
    `reach` is the box of face, labels and cable stub; `cable` is where the link is tied on, with
    the y of each conductor there.
    """

    end: str
    facing: int
    scale: float
    groups: tuple[Group, ...]
    head: DrawList
    foot: DrawList
    foot_at: Point
    head_width: float
    contacts: dict[str, Point]
    contact_radius: dict[str, float]
    strands: dict[str, Strand]
    signals: dict[str, str]
    materials: dict[str, CoreFact]
    face_box: Box
    reach: Box
    cable: Point
    cable_half: float
    ties: dict[str, float]
    head_height: float = 44.0
    compact: bool = False
    shows: Shows | None = None
    label_boxes: dict[str, Box] = field(default_factory=dict)

    @property
    def bottom(self) -> float:
        """How far down the block goes, its scale bar included."""
        if not self.foot:
            return self.reach[3]
        return max(self.reach[3], self.foot_at[1] + box_of(self.foot)[3])


@dataclass(frozen=True, slots=True)
class PlacedEnd:
    """A block with the place of its face's centre on the bench."""

    block: EndBlock
    origin: Point

    def at(self, point: Point) -> Point:
        """Return a point of the block in bench coordinates."""
        return (point[0] + self.origin[0], point[1] + self.origin[1])

    @property
    def box(self) -> Box:
        """The reach of the end on the bench."""
        return moved_box(self.block.reach, self.origin)


@dataclass(frozen=True, slots=True)
class SectionRun:
    """A section between the breaks: its box and the way of each conductor."""

    box: Box
    ways: dict[str, tuple[Point, ...]]
    width: float


@dataclass(frozen=True)
class Bench:
    """The whole bench drawing with what can be hit."""

    groups: dict[str, Group] = field(default_factory=dict)
    ends: dict[str, PlacedEnd] = field(default_factory=dict)
    sections: dict[str, SectionRun] = field(default_factory=dict)
    box: Box = (0.0, 0.0, 0.0, 0.0)

    @cached_property
    def contacts(self) -> dict[tuple[str, str], Point]:
        """Contact centres by (end, contact)."""
        return {
            (end, contact): placed.at(point)
            for end, placed in self.ends.items()
            for contact, point in placed.block.contacts.items()
        }

    @cached_property
    def tips(self) -> dict[tuple[str, str], Point]:
        """Core tips by (end, conductor)."""
        return {
            (end, conductor): placed.at(strand.tip)
            for end, placed in self.ends.items()
            for conductor, strand in placed.block.strands.items()
        }

    def radius(self, end: str, contact: str) -> float:
        """Return how far round its centre a contact can be hit, in px: never under 12."""
        return max(self.ends[end].block.contact_radius[contact], TARGET_PX / 2)

    def contact_at(self, point: Point, *, reach: float = 0.0) -> tuple[str, str] | None:
        """Return the nearest contact whose target (or `reach`, if wider) covers a point."""
        best, found = math.inf, None
        for (end, contact), centre in self.contacts.items():
            distance = math.dist(point, centre)
            if distance < best and distance <= max(reach, self.radius(end, contact)):
                best, found = distance, (end, contact)
        return found

    def strand_at(self, point: Point) -> tuple[str, str] | None:
        """Return the (end, conductor) whose tip, plate or stroke is nearest under a point."""
        best, found = math.inf, None
        for end, placed in self.ends.items():
            if not _covers(placed.box, point, TARGET_PX):
                continue
            local = (point[0] - placed.origin[0], point[1] - placed.origin[1])
            for conductor, strand in placed.block.strands.items():
                distance = _strand_distance(strand, local)
                if distance < best:
                    best, found = distance, (end, conductor)
        return found

    def section_at(self, point: Point) -> str:
        """Return the section of cable under a point, or an empty string."""
        for name, run in self.sections.items():
            if _covers(run.box, point, 4.0):
                return name
        return ""

    def end_at(self, point: Point) -> str:
        """Return the end whose block covers a point, or an empty string."""
        for end, placed in self.ends.items():
            if _covers(placed.box, point, 8.0):
                return end
        return ""


def _covers(box: Box, point: Point, margin: float) -> bool:
    left, top, right, bottom = box
    inside_x = left - margin <= point[0] <= right + margin
    return inside_x and top - margin <= point[1] <= bottom + margin


def _strand_distance(strand: Strand, point: Point) -> float:
    """Return how far a point is from a strand; infinite outside its target."""
    if strand.plate is not None and _covers(strand.plate, point, 3.0):
        return 0.0
    if math.dist(strand.tip, point) <= TARGET_PX / 2:
        return 0.5
    half = max(strand.width / 2, TARGET_PX / 4)
    distance = min(
        _segment_distance(point, one, two)
        for one, two in zip(strand.points, strand.points[1:], strict=False)
    )
    return 1.0 + distance if distance <= half else math.inf


def _segment_distance(point: Point, one: Point, two: Point) -> float:
    dx, dy = two[0] - one[0], two[1] - one[1]
    length = dx * dx + dy * dy
    share = 0.0
    if length:
        share = ((point[0] - one[0]) * dx + (point[1] - one[1]) * dy) / length
        share = min(1.0, max(0.0, share))
    return math.dist(point, (one[0] + share * dx, one[1] + share * dy))


def box_of_groups(groups: tuple[Group, ...]) -> Box:
    """Return the box round what groups draw."""
    return joined_box([moved_box(group.box, group.origin) for group in groups])
