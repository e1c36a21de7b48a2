"""One end of the lead as a block: face, fanned cores, cable stub, plates, labels, head, foot."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from planner.drawing.bench.facts import CoreFact, EndFacts
from planner.drawing.bench.fan import (
    PLATE_PITCH_PX,
    Approach,
    Fan,
    approaches,
    core_width,
    make_fan,
    stub,
    way_to,
)
from planner.drawing.bench.head import compact_head, head, scale_bar
from planner.drawing.bench.labels import Busy, Ring, contact_labels
from planner.drawing.bench.parts import (
    EndBlock,
    Group,
    Layer,
    Settings,
    Strand,
    box_of_groups,
)
from planner.drawing.bench.shapes import Box, box_of, boxes_meet, joined_box, moved_box
from planner.drawing.bench.stub import COLLAR_PX, JACKET_PX, cable_stub
from planner.drawing.cores import PLATE_HEIGHT, lead, plate, plate_width, tail_stroke
from planner.drawing.face import contact_point, contact_radius_mm, face, shell_outlines
from planner.drawing.looks import Look
from planner.drawing.primitives import Circle, DrawList, Point, Poly, Style, Text
from planner.drawing.runs import Run
from planner.model.cable import Core, Shield
from planner.units import MINUS

# Below this terminal size (px) an end is shown compact: no source line, scale bar or plates.
COMPACT_TERMINAL_PX = 12.5
UNKNOWN_RADIUS = 76.0
_BARE_MM = 1.0
# Where a plate may go: first a little up or down, then farther along its core.
_PLATE_TRIES = [(step, shift) for step in range(9) for shift in (0.0, -3.0, 3.0, -6.0, 6.0)]


@dataclass(frozen=True, slots=True)
class _Face:
    items: DrawList
    joints: dict[str, Point]
    radii: dict[str, float]
    ring: Ring


def _unknown_face(facts: EndFacts, settings: Settings) -> _Face:
    """Draw the place of a connector that is not chosen yet."""
    look, radius = settings.look, UNKNOWN_RADIUS * min(max(settings.zoom, 0.4), 1.3)
    ring = Style(stroke=look.edge, width=1.75, dash=(7.0, 5.0))
    words = f"Choose {facts.end}"
    items: DrawList = (
        Circle((0, 0), radius, ring),
        Text((0, 2), words, 15, look.accent, bold=True, anchor="middle"),
    )
    if radius > 60:
        items += (Text((0, 21), "from the shelf", 12, look.ink2, anchor="middle"),)
    box = (-radius, -radius, radius, radius)
    return _Face(items, {}, {}, Ring(box, round=True))


def _draw_face(facts: EndFacts, settings: Settings, scale: float) -> _Face:
    connector = facts.connector
    if connector is None:
        return _unknown_face(facts, settings)
    side, turn = settings.side, facts.shown_turn_deg
    solder = side == "solder"
    landed = frozenset(core.contact for core in facts.cores if core.contact and solder)
    items = face(
        connector,
        centre=(0, 0), scale=scale, look=settings.look, turn_deg=turn, side=side, landed=landed,
    )  # fmt: skip
    joints = {
        contact.id: contact_point(
            connector, contact.id, centre=(0, 0), scale=scale, turn_deg=turn, side=side
        )
        for contact in connector.contacts
    }
    radii = {contact.id: contact_radius_mm(contact) * scale for contact in connector.contacts}
    outer, _ = shell_outlines(connector, centre=(0, 0), scale=scale, turn_deg=turn, side=side)
    xs, ys = [point[0] for point in outer], [point[1] for point in outer]
    box = (min(xs), min(ys), max(xs), max(ys))
    return _Face(items, joints, radii, Ring(box, round=connector.shell.shape == "round"))


def _cut_gap(facts: EndFacts, half: float, zoom: float, *, plates: bool) -> float:
    """Return how far beside the shell the jacket is cut, in px: room for the plates to stagger."""
    count = len(facts.cores)
    gap = 30.0 + 15.0 * min(max(count - 2, 0), 4)
    pitch = 2 * half * 0.94 / max(count, 1)
    if plates and count > 1 and pitch < 0.7 * PLATE_PITCH_PX:
        columns = min(math.ceil(PLATE_PITCH_PX / max(pitch, 5.0)), count, 4)
        gap += 34.0 * (columns - 1)
    return gap * min(max(zoom, 0.35), 1.5)


def _strand_of(
    core: CoreFact, fan: Fan, drawn: _Face, ways: Mapping[str, Approach], settings: Settings
) -> Strand:
    slot = fan.slot(core.conductor)
    joint = drawn.joints.get(core.contact)
    if joint is not None:
        points = way_to(slot, joint, fan.facing, ways[core.contact])
    else:
        towards = drawn.joints.get(core.wanted)
        points = stub(slot, fan, towards=towards, zoom=settings.zoom, capped=core.capped)
    contact = core.contact if joint is not None else ""
    width = core_width(core, fan.scale)
    return Strand(core.conductor, points, width, core.code, core.carried, contact)


def strand_items(
    core: CoreFact, strand: Strand, facts: EndFacts, look: Look, scale: float
) -> DrawList:
    """Draw one conductor along its way, from the cut to its tip."""
    owner = f"conductor/{facts.end}/{core.conductor}"
    across = None
    if strand.contact and facts.connector is not None:
        across = facts.connector.by_id[strand.contact].terminal.across_mm
    material = core.material
    if isinstance(material, Shield):
        return tail_stroke(
            strand.points, material, scale=scale, look=look, owner=owner,
            sleeved=bool(strand.contact), joint_on_mm=across,
        )  # fmt: skip
    bare = 0.05 if core.capped else _BARE_MM
    drawn = lead(
        strand.points,
        material,
        scale=scale,
        look=look,
        owner=owner,
        bare_mm=bare,
        joint_on_mm=across,
    )
    return drawn + (_cap(strand, material, scale, look) if core.capped else ())


def _cap(strand: Strand, core: Core, scale: float, look: Look) -> DrawList:
    """Draw the cap over a spare core's end."""
    run = Run(strand.points)
    cover = run.part(max(run.length - 14, 0), run.length)
    width = core.insulation_mm * scale + 5
    start, end = cover[0], cover[-1]
    return (
        Poly((start, end), Style(stroke=look.casing, width=width + 2.6, cap="round")),
        Poly((start, end), Style(stroke=look.jacket, width=width, cap="round")),
    )


def _plate_places(fan: Fan, strands: Mapping[str, Strand], zoom: float) -> dict[str, Box]:
    """Return the box of each plate: on its core near the cut, none over another."""
    first = 26.0 * min(max(zoom, 0.6), 1.2)
    joints = [_around(strand.tip, 9.0) for strand in strands.values() if strand.contact]
    found: dict[str, Box] = {}
    for core in fan.order:
        strand = strands[core.conductor]
        taken = list(found.values())
        box = _free_box(strand, first, [*taken, *joints]) or _free_box(strand, first, taken)
        if box is None and not strand.contact:
            box = _beyond_tip(strand, fan.facing, plate_width(core.code, core.carried))
        if box is not None:
            found[core.conductor] = box
    return found


def _around(point: Point, reach: float) -> Box:
    return (point[0] - reach, point[1] - reach, point[0] + reach, point[1] + reach)


def _free_box(strand: Strand, first: float, taken: Sequence[Box]) -> Box | None:
    """Return the first place along a core where its plate lies over nothing that is taken."""
    run, width = Run(strand.points), plate_width(strand.code, strand.carried)
    half = PLATE_HEIGHT / 2
    for step, shift in _PLATE_TRIES:
        along = first + width * 0.28 + step * (width * 0.25 + 4)
        if along > run.length:
            break
        x, y = run.at(along)
        box = (x - width / 2, y + shift - half, x + width / 2, y + shift + half)
        if not any(boxes_meet(box, other, 0.5) for other in taken):
            return box
    return None


def _beyond_tip(strand: Strand, facing: int, width: float) -> Box:
    """Return the box of a plate that stands before a loose core's tip."""
    x, y = strand.tip
    middle, half = x - facing * (width / 2 + strand.width / 2 + 4), PLATE_HEIGHT / 2
    return (middle - width / 2, y - half, middle + width / 2, y + half)


def plate_items(
    core: CoreFact, box: Box, look: Look, *, lit: bool = False, selected: bool = False
) -> DrawList:
    """Draw a core's plate in its box."""
    at = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
    return plate(at, core.code, core.carried, look=look, lit=lit, selected=selected)


def is_compact(drawn_radii: Mapping[str, float]) -> bool:
    """Tell whether terminals this small are shown without their smaller words."""
    return bool(drawn_radii) and 2 * min(drawn_radii.values()) < COMPACT_TERMINAL_PX


def _crossings_words(facts: EndFacts, strands: Mapping[str, Strand]) -> str:
    landed = [strand for strand in strands.values() if strand.contact]
    turn = f"turn {facts.turn_deg:g}°".replace("-", MINUS) if facts.turn_deg else ""
    if facts.shown_turn_deg != facts.turn_deg:
        turn = "shown turned 90°"
    if not 1 < len(landed) <= 8:
        return turn
    count = sum(
        _cross(one, other) for place, one in enumerate(landed) for other in landed[place + 1 :]
    )
    if not turn and not count:
        return ""
    words = {0: "no crossing", 1: "1 crossing"}.get(count, f"{count} crossings")
    return f"{turn}, {words}" if turn else words


def _cross(one: Strand, other: Strand) -> bool:
    """Tell whether two cores cross each other between the cut and their tips."""
    ys = [point[1] for point in other.points]
    return any(
        _segments_cross(start, end, other.points[place], other.points[place + 1])
        for start, end in pairwise(one.points)
        for place in range(len(ys) - 1)
        if min(ys[place], ys[place + 1]) <= max(start[1], end[1])
        and max(ys[place], ys[place + 1]) >= min(start[1], end[1])
    )


def _segments_cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    def turn(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return turn(a, b, c) * turn(a, b, d) < 0 and turn(c, d, a) * turn(c, d, b) < 0


def build_block(facts: EndFacts, settings: Settings) -> EndBlock:
    """Draw one end round the centre of its face."""
    zoom, look, end = settings.zoom, settings.look, facts.end
    scale = facts.scale * zoom
    facts = replace(facts, scale=scale)
    drawn = _draw_face(facts, settings, scale)
    compact = is_compact(drawn.radii)
    half = max(facts.jacket_mm * scale / 2, 8.0) if facts.connector else 24.0 * min(zoom, 1.0)
    edge = drawn.ring.box[2] if facts.facing > 0 else drawn.ring.box[0]
    cut = (edge + facts.facing * _cut_gap(facts, half, zoom, plates=not compact), 0.0)
    ways = approaches(facts, drawn.joints, drawn.radii, cut, half)
    fan = make_fan(facts, ways, cut, half, plates=not compact)
    strands: dict[str, Strand] = {}
    groups = [Group(f"end/{end}/face", Layer.FACE, drawn.items)]
    if settings.side == "solder":
        strands = {
            core.conductor: _strand_of(core, fan, drawn, ways, settings) for core in fan.order
        }
        if not compact:
            boxes = _plate_places(fan, strands, zoom)
            strands = {
                name: replace(strand, plate=boxes.get(name)) for name, strand in strands.items()
            }
        groups += _core_groups(facts, fan, strands, look, scale)
    stub_items, tie = cable_stub(facts, cut, half, look, zoom)
    groups.append(Group(f"end/{end}/jacket", Layer.JACKET, stub_items))
    busy = Busy(
        tuple((strand.points, strand.width / 2 + 2) for strand in strands.values()),
        tuple(strand.plate for strand in strands.values() if strand.plate is not None),
    )
    labels, boxes = contact_labels(facts, drawn.joints, drawn.ring, drawn.radii, look, busy)
    groups.append(Group(f"end/{end}/labels", Layer.LABEL, labels))
    block = _finish(facts, settings, drawn, fan, strands, groups, tie, half)
    return replace(block, label_boxes=boxes)


def _core_groups(
    facts: EndFacts, fan: Fan, strands: Mapping[str, Strand], look: Look, scale: float
) -> list[Group]:
    groups = []
    # Far joints first, so that a near one's solder lies over the cores that pass it.
    for core in fan.order:
        strand = strands[core.conductor]
        items = strand_items(core, strand, facts, look, scale)
        groups.append(Group(f"conductor/{facts.end}/{core.conductor}", Layer.CORE, items))
        if strand.plate is not None:
            shown = plate_items(strand, strand.plate, look)
            groups.append(Group(f"plate/{facts.end}/{core.conductor}", Layer.PLATE, shown))
    return groups


def _finish(
    facts: EndFacts,
    settings: Settings,
    drawn: _Face,
    fan: Fan,
    strands: dict[str, Strand],
    groups: list[Group],
    tie: Point,
    half: float,
) -> EndBlock:
    look, compact = settings.look, is_compact(drawn.radii)
    scale = facts.scale
    reach = joined_box([drawn.ring.box, box_of_groups(tuple(groups))])
    if compact:
        heading, width = compact_head(facts, look, 150.0)
    else:
        room = max(reach[2] - reach[0] + 40.0, 320.0)
        heading, width = head(facts, look, settings.side, room)
    foot: DrawList = ()
    if facts.connector is not None and not compact:
        room = 90.0 if facts.facing > 0 else 66.0
        foot = scale_bar(scale, look, _crossings_words(facts, strands), room)
    foot_at = _foot_place(facts.facing, drawn, groups, foot, tie, half)
    ties = {core.conductor: fan.slot(core.conductor)[1] for core in fan.order}
    return EndBlock(
        end=facts.end,
        facing=facts.facing,
        scale=scale,
        groups=tuple(groups),
        head=heading,
        foot=foot,
        foot_at=foot_at,
        head_width=width,
        contacts=drawn.joints,
        contact_radius=drawn.radii,
        strands=strands,
        signals=dict(facts.signals),
        materials={core.conductor: core for core in facts.cores},
        face_box=drawn.ring.box,
        reach=reach,
        cable=tie,
        cable_half=half,
        ties=ties,
        compact=compact,
    )


def _over_ring(box: Box, ring: Ring) -> bool:
    """Tell whether a box comes onto the shell."""
    if not ring.round:
        return boxes_meet(box, ring.box, 6.0)
    x = min(max(0.0, box[0]), box[2])
    y = min(max(0.0, box[1]), box[3])
    return math.hypot(x, y) < ring.box[2] + 4.0


def _foot_place(
    facing: int, drawn: _Face, groups: list[Group], foot: DrawList, tie: Point, half: float
) -> Point:
    """Return where the scale bar goes: under the jacket where that is free, else under all."""
    if not foot:
        return (0.0, 0.0)
    size = box_of(foot)
    face_box, reach = drawn.ring.box, joined_box([drawn.ring.box, box_of_groups(tuple(groups))])
    x = tie[0] + 4 if facing < 0 else reach[0]
    spot = (x, max(face_box[3] + 3 - size[3], half + 16))
    box = moved_box(size, spot)
    busy = [
        box_of((item,)) for group in groups if group.layer != Layer.FACE for item in group.items
    ]
    if _over_ring(box, drawn.ring) or any(boxes_meet(box, other, 4.0) for other in busy):
        return (x, reach[3] + 14)
    return spot


__all__ = ["COLLAR_PX", "JACKET_PX", "build_block", "plate_items", "strand_items"]
