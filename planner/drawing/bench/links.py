"""The cable between the ends: see-through between its breaks, split blocks, legs, lengths."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from planner.drawing.bench.parts import SectionRun
from planner.drawing.bench.shapes import Box, box_of, boxes_meet
from planner.drawing.cores import strip
from planner.drawing.looks import Look
from planner.drawing.primitives import DrawList, Path, Point, Poly, Style, Text
from planner.drawing.runs import curve
from planner.model.cable import Cable, Core

CORE_PX, CORE_PITCH_PX = 10.0, 18.0
TUCK_PX = 8.0
# Where along a leg its length may stand, the best first.
_SHARES = (0.74, 0.8, 0.86, 0.92, 0.66, 0.58, 0.5)
SPLIT_PX = 40.0


@dataclass(frozen=True, slots=True)
class Tie:
    """Where a section meets an end or a split: place, half height, conductors top to bottom."""

    at: Point
    half: float
    order: tuple[str, ...]

    def lanes(self) -> dict[str, float]:
        """Return the y of each conductor, evenly spaced inside the jacket."""
        count = len(self.order)
        pitch = min(CORE_PITCH_PX, 2 * self.half * 0.84 / max(count, 1))
        return {
            name: self.at[1] + (place - (count - 1) / 2) * pitch
            for place, name in enumerate(self.order)
        }

    def pitch(self) -> float:
        """Return the distance between neighbours."""
        return min(CORE_PITCH_PX, 2 * self.half * 0.84 / max(len(self.order), 1))


@dataclass(frozen=True)
class LinkFacts:
    """What one section is drawn from."""

    section: str
    left: Tie
    right: Tie
    materials: tuple[tuple[str, Core], ...]
    shielded: bool
    length: str
    note: str = ""
    words_at: str = "under"
    words_share: float = 0.74
    drawn: bool = True


def _ease(start: Point, end: Point) -> tuple[Point, ...]:
    """Return a level-to-level curve with a short straight tuck at both ends."""
    reach = (end[0] - start[0]) * 0.5
    inner = curve(start, (start[0] + reach, start[1]), (end[0] - reach, end[1]), end, 22)
    return ((start[0] - TUCK_PX, start[1]), *inner, (end[0] + TUCK_PX, end[1]))


def _band(facts: LinkFacts, look: Look) -> DrawList:
    """Draw the jacket seen through: a pale ribbon with its two edges, the shield dashed inside."""
    left, right = facts.left, facts.right
    half = min(left.half, right.half, 46.0)
    top = _ease((left.at[0], left.at[1] - half), (right.at[0], right.at[1] - half))
    low = _ease((left.at[0], left.at[1] + half), (right.at[0], right.at[1] + half))
    edge = Style(
        stroke=look.jacket if look.name == "light" else look.edge, width=2 if half > 8 else 1.2
    )
    items: DrawList = (
        Poly((*top, *reversed(low)), Style(fill=look.bench, opacity=0.75), closed=True),
        Poly(top, edge),
        Poly(low, edge),
    )
    if facts.shielded and half > 12:
        dash = Style(stroke=look.tin_edge, width=1.6, dash=(5.0, 3.0))
        for line, inset in ((top, 5.0), (low, -5.0)):
            items += (Poly(tuple((x, y + inset) for x, y in line), dash),)
    return items


def section_ways(facts: LinkFacts) -> dict[str, tuple[Point, ...]]:
    """Return the way of each conductor between the breaks."""
    left, right = facts.left.lanes(), facts.right.lanes()
    return {
        name: _ease((facts.left.at[0], left[name]), (facts.right.at[0], right[name]))
        for name in facts.left.order
        if name in right
    }


def _box(facts: LinkFacts) -> Box:
    half = max(min(facts.left.half, facts.right.half, 46.0), 6.0)
    ys = (facts.left.at[1], facts.right.at[1])
    return (facts.left.at[0], min(ys) - half, facts.right.at[0], max(ys) + half)


def _words(facts: LinkFacts, look: Look) -> DrawList:
    if not facts.length or facts.words_at == "none":
        return ()
    (x0, y0), (x1, y1) = facts.left.at, facts.right.at
    half = min(facts.left.half, facts.right.half, 46.0)
    if facts.words_at == "beside":
        way = _ease((x0, y0), (x1, y1))
        at = way[round(facts.words_share * (len(way) - 1))]
        return (
            Text(
                (at[0] - half - 12, at[1] + 4), facts.length, 13, look.ink, bold=True, anchor="end"
            ),
        )
    middle, base = (x0 + x1) / 2, max(y0, y1) + max(facts.left.half, facts.right.half) + 24
    items: DrawList = (
        Text((middle, base), facts.length, 13, look.ink, bold=True, anchor="middle"),
    )
    if facts.note:
        items += (Text((middle, base + 19), facts.note, 12, look.ink2, anchor="middle"),)
    return items


def with_free_words(links: Sequence[LinkFacts], look: Look) -> list[LinkFacts]:
    """Return the links with the words beside the legs moved along them, clear of other words."""
    taken = [box_of(_words(link, look)) for link in links if link.words_at == "under"]
    found = []
    for link in links:
        if link.words_at == "beside":
            tries = [replace(link, words_share=share) for share in _SHARES]
            boxes = [box_of(_words(one, look)) for one in tries]
            clear = (not any(boxes_meet(box, other, 6.0) for other in taken) for box in boxes)
            place = next((number for number, free in enumerate(clear) if free), 0)
            link = tries[place]  # noqa: PLW2901 - the same link, its words moved
            taken.append(boxes[place])
        found.append(link)
    return found


def _dashed(facts: LinkFacts, look: Look) -> DrawList:
    """Draw a link without cable: one dashed line."""
    points = _ease(facts.left.at, facts.right.at)
    return (Poly(points, Style(stroke=look.edge, width=2, dash=(7.0, 5.0))),)


def link_items(facts: LinkFacts, look: Look) -> tuple[DrawList, DrawList, SectionRun]:
    """Draw a section between its breaks: the ribbon with its words, its cores, its ways."""
    words = _words(facts, look)
    if not facts.drawn:
        return _dashed(facts, look) + words, (), SectionRun(_box(facts), {}, 0.0)
    ways = section_ways(facts)
    pitch = min(facts.left.pitch(), facts.right.pitch())
    width = min(CORE_PX, pitch * 0.62)
    cores: DrawList = ()
    for name, core in facts.materials:
        if name in ways:
            cores += _core(ways[name], core, width, look, f"section/{facts.section}/{name}")
    return _band(facts, look) + words, cores, SectionRun(_box(facts), ways, width)


def _core(way: tuple[Point, ...], core: Core, width: float, look: Look, owner: str) -> DrawList:
    if width >= 2.0:
        return strip(way, core.colours, width, look, owner)
    return (Poly(way, Style(stroke=look.core(core.colours[0])[0], width=1.2), owner=owner),)


def split_items(at: Point, half: float, width: float, look: Look) -> DrawList:
    """Draw a split block: square towards the trunk, rounded towards the legs."""
    x, y = at
    left, right, top, low = x - width / 2, x + width / 2, y - half, y + half
    round_x, round_y = width * 0.6, min(14.0, half * 0.5)
    shoulder = right - round_x * 0.33
    outline = (
        ("M", (left, top)), ("L", (right - round_x, top + 2)),
        ("C", (shoulder, top + 3, right, top + round_y * 0.5, right, top + round_y)),
        ("L", (right, low - round_y)),
        ("C", (right, low - round_y * 0.5, shoulder, low - 3, right - round_x, low - 2)),
        ("L", (left, low)), ("Z", ()),
    )  # fmt: skip
    level = top + half * 0.36
    shine = Style(stroke=look.jacket_shine, width=min(4.0, half * 0.2), cap="round")
    return (
        Path(outline, Style(fill=look.jacket, stroke=look.casing, width=1.4)),
        Poly(((left + 7, level), (right - 13, level)), shine),
    )


def materials_of(cable: Cable | None, runs: Mapping[str, str]) -> tuple[tuple[str, Core], ...]:
    """Return (conductor, core) for the cores of a section; `runs` gives the core's id."""
    if cable is None:
        return ()
    known = cable.core_by_id
    return tuple((name, known[core]) for name, core in runs.items() if core in known)


def in_order(names: Sequence[str], places: Mapping[str, float]) -> tuple[str, ...]:
    """Return names from top to bottom by a mapping of their y; unknown ones last."""
    return tuple(sorted(names, key=lambda name: (places.get(name, float("inf")), name)))
