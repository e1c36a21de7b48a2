"""One end of the lead as a block: face, fanned cores, cable stub, plates, labels, head, foot."""

import math
from dataclasses import replace

from planner.drawing.bench.facts import CoreFact, EndFacts
from planner.drawing.bench.fan import Fan, approaches, cut_gap, make_fan
from planner.drawing.bench.head import (
    HEAD_HEIGHT,
    HEAD_LEAD,
    HEAD_LEAST,
    LOW_HEAD_HEIGHT,
    compact_head,
    head,
    scale_bar,
)
from planner.drawing.bench.labels import Busy, Ring, contact_labels
from planner.drawing.bench.parts import EndBlock, Group, Layer, Settings, Strand, box_of_groups
from planner.drawing.bench.plates import plate_items, plate_places
from planner.drawing.bench.shapes import Box, box_of, boxes_meet, joined_box, moved_box
from planner.drawing.bench.shown_face import ShownFace, draw_face, is_compact
from planner.drawing.bench.strands import strand_items, strands_of, turn_words
from planner.drawing.bench.stub import cable_stub
from planner.drawing.primitives import DrawList, Point, Primitive


def build_block(facts: EndFacts, settings: Settings, before: EndBlock | None = None) -> EndBlock:
    """Draw one end round the centre of its face; `facts.scale` is that of 100 %.

    `before` is the end's last block with the same settings: what is equal is taken from it, the
    face's own parts too where it shows the same connector the same way.
    """
    return _Builder(replace(facts, scale=facts.scale * settings.zoom), settings, before).block()


class _Builder:
    """Draw the parts of one end, each from those before it."""

    def __init__(self, facts: EndFacts, settings: Settings, before: EndBlock | None) -> None:
        self._facts, self._settings, self._before = facts, settings, before
        self._kept = {group.key: group for group in before.groups} if before else {}
        self._face: ShownFace = draw_face(facts, settings, self._kept_face())
        self._compact = is_compact(self._face.radii)
        self._groups: list[Group] = []
        self._half = self._cable_half()
        edge = self._face.ring.box[2] if facts.facing > 0 else self._face.ring.box[0]
        gap = cut_gap(facts, self._half, settings.zoom, plates=not self._compact)
        self._cut = (edge + facts.facing * gap, 0.0)
        self._strands: dict[str, Strand] = {}

    def _kept_face(self) -> dict[str, DrawList]:
        """Return the parts of the last face that are the same now, by owner."""
        before, facts = self._before, self._facts
        if before is None or before.shows != facts.shows or self._settings.side != "solder":
            return {}
        prefix = f"end/{facts.end}/"
        was = {strand.contact for strand in before.strands.values()}
        now = {core.contact for core in facts.cores}
        changed = {f"contact/{contact}" for contact in was ^ now}
        kept = {
            key.removeprefix(prefix): group.items
            for key, group in self._kept.items()
            if group.layer in {Layer.FACE, Layer.CONTACT}
        }
        kept["shell"] = kept.pop("face", ())
        return {owner: items for owner, items in kept.items() if owner not in changed}

    def _cable_half(self) -> float:
        if self._facts.connector is None:
            return 24.0 * min(self._settings.zoom, 1.0)
        return max(self._facts.jacket_mm * self._facts.scale / 2, 8.0)

    def _add(self, key: str, layer: Layer, items: DrawList) -> None:
        kept = self._kept.get(key)
        same = kept is not None and kept.items == items and kept.layer == layer
        self._groups.append(kept if kept is not None and same else Group(key, layer, items))

    def _add_face(self) -> None:
        """Add the shell, and each terminal by itself: a landing changes no more than one."""
        end, shell = self._facts.end, list[Primitive]()
        contacts: dict[str, list[Primitive]] = {}
        for item in self._face.items:
            # On the mating side rings lie over one another: there the order must stay.
            known = item.owner.startswith("contact/") and self._settings.side == "solder"
            (contacts.setdefault(item.owner, []) if known else shell).append(item)
        self._add(f"end/{end}/face", Layer.FACE, tuple(shell))
        for owner, items in contacts.items():
            self._add(f"end/{end}/{owner}", Layer.CONTACT, tuple(items))

    def block(self) -> EndBlock:
        """Return the whole end."""
        facts, settings, end = self._facts, self._settings, self._facts.end
        self._add_face()
        ways = approaches(facts, self._face.joints, self._face.radii, self._cut, self._half)
        fan = make_fan(facts, ways, self._cut, self._half, plates=not self._compact)
        if settings.side == "solder":
            self._strands = strands_of(fan, self._face.joints, ways, zoom=settings.zoom)
            self._draw_cores(fan)
        stub, tie = cable_stub(facts, self._cut, self._half, settings.look, settings.zoom)
        self._add(f"end/{end}/jacket", Layer.JACKET, stub)
        labels, label_boxes = self._labels()
        self._add(f"end/{end}/labels", Layer.LABEL, labels)
        return replace(self._finished(fan, tie), label_boxes=label_boxes)

    def _draw_cores(self, fan: Fan) -> None:
        """Draw cores and plates, the plates after all cores are known."""
        boxes = {}
        if not self._compact:
            boxes = plate_places(fan, self._strands, self._settings.zoom)
        for core in fan.order:
            strand = replace(self._strands[core.conductor], plate=boxes.get(core.conductor))
            self._strands[core.conductor] = strand
            name, look = f"{self._facts.end}/{core.conductor}", self._settings.look
            kept = self._kept_core(core, strand)
            if kept is not None:
                self._groups.append(kept)
            else:
                items = strand_items(core, strand, self._facts, look)
                # A loose core lies over the landed ones: it is what is taken in hand next.
                layer = Layer.CORE if strand.contact else Layer.LOOSE
                self._add(f"conductor/{name}", layer, items)
            if strand.plate is not None:
                self._add(f"plate/{name}", Layer.PLATE, plate_items(strand, strand.plate, look))

    def _kept_core(self, core: CoreFact, strand: Strand) -> Group | None:
        """Return the drawing of a core that lies as it did."""
        before = self._before
        if before is None or before.scale != self._facts.scale:
            return None
        same = before.materials.get(core.conductor) == core
        was = before.strands.get(core.conductor)
        lies = was is not None and (was.points, was.contact) == (strand.points, strand.contact)
        return (
            self._kept.get(f"conductor/{self._facts.end}/{core.conductor}")
            if same and lies
            else None
        )

    def _labels(self) -> tuple[DrawList, dict[str, Box]]:
        strands = self._strands.values()
        busy = Busy(
            tuple((strand.points, strand.width / 2 + 2) for strand in strands),
            tuple(strand.plate for strand in strands if strand.plate is not None),
        )
        shown = self._face
        return contact_labels(
            self._facts, shown.joints, shown.ring, shown.radii, look=self._settings.look, busy=busy
        )

    def _head(self, reach: Box, tie: Point) -> tuple[DrawList, float]:
        if self._compact:
            return compact_head(self._facts, self._settings.look, 150.0)
        room = max(reach[2] - reach[0] + 40.0, 340.0)
        if self._settings.narrow:
            # No wider than the end itself: what lies beside it are the other ends and the legs.
            wide = reach[2] - (tie[0] - HEAD_LEAD if self._facts.facing < 0 else reach[0])
            room = max(wide, HEAD_LEAST)
        settings = self._settings
        return head(self._facts, settings.look, settings.side, room, low=settings.low)

    def _foot(self, reach: Box, tie: Point) -> tuple[DrawList, Point]:
        """Draw the scale bar, shorter where that keeps it beside the face; else under all."""
        if self._facts.connector is None or self._compact:
            return (), (0.0, 0.0)
        words = turn_words(self._facts, self._strands)
        longest = 90.0 if self._facts.facing > 0 else 66.0
        bars = [
            scale_bar(self._facts.scale, self._settings.look, words, room)
            for room in (longest, 42.0)
        ]
        for bar in bars:
            for spot in self._foot_spots(box_of(bar), reach, tie):
                if self._is_free(moved_box(box_of(bar), spot)):
                    return bar, spot
        x = tie[0] + 4 if self._facts.facing < 0 else reach[0]
        return bars[0], (x, reach[3] + (4 if self._settings.low else 14))

    def _foot_spots(self, size: Box, reach: Box, tie: Point) -> list[Point]:
        """Return where the scale bar may go: under the jacket, or in a corner beside the shell."""
        low = self._face.ring.box[3] + 3 - size[3]
        under = max(low, self._half + 16)
        near = tie[0] + 4 if self._facts.facing < 0 else reach[0]
        width = size[2] - size[0]
        far = reach[2] - width if self._facts.facing < 0 else tie[0] - width - 4
        return [(near, under), (far, under), (far, reach[3] - size[3])]

    def _is_free(self, box: Box) -> bool:
        terminals = {Layer.FACE, Layer.CONTACT}
        drawn = [
            group
            for group in self._groups
            if group.layer not in terminals and boxes_meet(box, group.box, 8.0)
        ]
        busy = [box_of((item,)) for group in drawn for item in group.items]
        over = any(boxes_meet(box, other, 8.0) for other in busy)
        return not over and not _over_ring(box, self._face.ring)

    def _finished(self, fan: Fan, tie: Point) -> EndBlock:
        facts = self._facts
        reach = joined_box([self._face.ring.box, box_of_groups(tuple(self._groups))])
        heading, width = self._head(reach, tie)
        foot, foot_at = self._foot(reach, tie)
        return EndBlock(
            end=facts.end,
            facing=facts.facing,
            scale=facts.scale,
            groups=tuple(self._groups),
            head=heading,
            foot=foot,
            foot_at=foot_at,
            head_width=width,
            head_height=LOW_HEAD_HEIGHT if self._settings.low else HEAD_HEIGHT,
            contacts=self._face.joints,
            contact_radius=self._face.radii,
            strands=self._strands,
            signals=dict(facts.signals),
            materials={core.conductor: core for core in facts.cores},
            face_box=self._face.ring.box,
            reach=reach,
            cable=tie,
            cable_half=self._half,
            ties={core.conductor: fan.slot(core.conductor)[1] for core in fan.order},
            compact=self._compact,
            shows=facts.shows,
        )


def _over_ring(box: Box, ring: Ring) -> bool:
    """Tell whether a box comes onto the shell."""
    if not ring.round:
        return boxes_meet(box, ring.box, 6.0)
    x = min(max(0.0, box[0]), box[2])
    y = min(max(0.0, box[1]), box[3])
    return math.hypot(x, y) < ring.box[2] + 4.0
