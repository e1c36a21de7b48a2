"""Order disc, name and signal of each contact round a fitted face, none over another."""

import itertools
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from planner.drawing.bench.shapes import Box, box_of, joined_box, spread
from planner.drawing.cores import PLATE_HEIGHT, plate, plate_width
from planner.drawing.face import contact_owner, contact_radius_mm, shell_outlines
from planner.drawing.fitting.discs import order_disc
from planner.drawing.fitting.scene import Scene
from planner.drawing.metrics import text_width
from planner.drawing.primitives import (
    CAP_HEIGHT,
    Anchor,
    Circle,
    DrawList,
    Point,
    Poly,
    Style,
    Text,
    centred_baseline,
)
from planner.model.codes import told_apart

_WIDE = 1.5  # times as wide as high: labels stand in rows above and below
_GAP = 5.0


@dataclass(frozen=True, slots=True)
class Label:
    """One contact's label; `number` is 0 where nothing is soldered."""

    contact: str
    name: str
    signal: str
    codes: tuple[tuple[str, str], ...]  # (conductor, letter code) of each lead in it
    number: int
    joint: Point
    radius: float


@dataclass(frozen=True, slots=True)
class Placed:
    """A label's items, and the box of its words and disc."""

    items: DrawList
    box: Box


def outline_box(scene: Scene) -> Box:
    """Return the box round the shell as drawn."""
    outer, _ = shell_outlines(
        scene.connector, centre=scene.centre, scale=scene.scale, turn_deg=scene.face_deg
    )
    xs, ys = [x for x, _ in outer], [y for _, y in outer]
    return (min(xs), min(ys), max(xs), max(ys))


def labels_of(scene: Scene, signals: Mapping[str, str], *, numbered: bool) -> list[Label]:
    """Gather the labels; spoken names where they are few."""
    few = scene.connector.poles <= 8
    order = scene.place_in_order if numbered else {}
    codes = _codes(scene)
    return [
        Label(
            contact.id,
            contact.spoken if few else contact.id,
            signals.get(contact.id, ""),
            codes.get(contact.id, ()),
            order.get(contact.id, 0),
            scene.joint(contact.id),
            contact_radius_mm(contact) * scene.scale,
        )
        for contact in scene.connector.contacts
    ]


def _codes(scene: Scene) -> dict[str, tuple[tuple[str, str], ...]]:
    """Return for each contact the conductors in it with their codes."""
    leads = scene.fit.leads
    found: dict[str, tuple[tuple[str, str], ...]] = {}
    for lead, code in zip(leads, told_apart([lead.part for lead in leads]), strict=True):
        landing = lead.landing
        found[landing.contact] = (*found.get(landing.contact, ()), (landing.conductor, code))
    return found


def labels_drawn(
    scene: Scene, signals: Mapping[str, str], *, numbered: bool, withheld: bool
) -> tuple[DrawList, list[Box]]:
    """Draw every contact's label; also return the boxes that they take."""
    labels = labels_of(scene, signals, numbered=numbered)
    box = outline_box(scene)
    wide = box[2] - box[0] > _WIDE * (box[3] - box[1])
    pen = _Pen(scene, box, withheld)
    placed = pen.rows(labels) if wide else pen.columns(labels)
    items = tuple(item for one in placed for item in one.items)
    return items, [one.box for one in placed]


class _Pen:
    """What all labels of a face are placed and drawn with."""

    def __init__(self, scene: Scene, box: Box, withheld: bool) -> None:  # noqa: FBT001 - a state
        self.scene, self.box, self.withheld = scene, box, withheld
        self.look, self.type = scene.look, scene.letters
        self.unit = scene.look.line
        self.middle = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)

    # -- columns left and right of a round face --

    def columns(self, labels: Sequence[Label]) -> list[Placed]:
        left, right = self._share(labels)
        return [*self._column(left, -1), *self._column(right, 1)]

    def _share(self, labels: Sequence[Label]) -> tuple[list[Label], list[Label]]:
        lean = 0.06 * (self.box[2] - self.box[0])
        left = [label for label in labels if label.joint[0] < self.middle[0] - lean]
        right = [label for label in labels if label.joint[0] > self.middle[0] + lean]
        for label in labels:
            if label not in left and label not in right:
                (right if len(right) <= len(left) else left).append(label)
        return left, right

    def _height(self, label: Label) -> float:
        words = self.type.word + (self.type.name + 3 * self.unit if label.signal else 0.0)
        return max(words, 2 * self.type.disc if label.number else 0.0) + 8 * self.unit

    def _column(self, labels: Sequence[Label], way: int) -> list[Placed]:
        ordered = sorted(labels, key=lambda label: label.joint[1])
        heights = [self._height(label) for label in ordered]
        wanted = [self.middle[1] + (label.joint[1] - self.middle[1]) * 1.3 for label in ordered]
        gaps = [(one + other) / 2 for one, other in itertools.pairwise(heights)]
        levels = spread(wanted, gaps)
        return [
            self._beside(label, (self._edge(y, height, way), y), way)
            for label, y, height in zip(ordered, levels, heights, strict=True)
        ]

    def _edge(self, y: float, height: float, way: int) -> float:
        """Return the x where a label of a column starts: along the outline of a round shell."""
        half = (self.box[2] - self.box[0]) / 2
        if self.scene.connector.shell.shape != "round":
            return self.middle[0] + way * (half + 14 * self.unit)
        near = max(abs(y - self.middle[1]) - height / 2, 0.0)
        level = min(near, half * 0.8)
        return self.middle[0] + way * (math.sqrt(half * half - level * level) + 14 * self.unit)

    def _beside(self, label: Label, at: Point, way: int) -> Placed:
        x, y = at
        disc: DrawList = ()
        end = at
        if label.number:
            middle = (x + way * self.type.disc, y)
            disc = self._disc(label, middle)
            end = middle
            x += way * (2 * self.type.disc + _GAP * self.unit)
        else:
            x += way * _GAP * self.unit
        words = self._two_lines(label, (x, y), "start" if way > 0 else "end")
        x += way * (self._words_width(label) + 8 * self.unit)
        words += self._plates(label, (x, y), way)
        leader = self._leader(label, end)
        return Placed((*leader, *disc, *words), _box_of((*disc, *words)))

    def _words_width(self, label: Label) -> float:
        name = text_width(label.name, self.type.word)
        return max(name, text_width(label.signal, self.type.name, bold=True))

    def _plates(self, label: Label, at: Point, way: int) -> DrawList:
        """Draw the plates of a label's cores side by side, away from the face."""
        x = at[0]
        items: DrawList = ()
        for conductor, code in label.codes:
            width = plate_width(code)
            middle = (x + way * width / 2, at[1])
            items += plate(middle, code, look=self.look, owner=f"lead/{conductor}")
            x += way * (width + 4)
        return items

    def _two_lines(self, label: Label, at: Point, anchor: Anchor) -> DrawList:
        (x, y), name, word = at, self.type.name, self.type.word
        low = centred_baseline(y, word)
        first = y - 3 * self.unit if label.signal else low
        items = [Text((x, first), label.name, word, self.look.ink2, anchor=anchor)]
        if label.signal:
            base = y + 2 * self.unit + name * CAP_HEIGHT
            items.append(Text((x, base), label.signal, name, self.look.ink, True, anchor))
        return tuple(_of(item, label) for item in items)

    # -- rows above and below a wide face --

    def rows(self, labels: Sequence[Label]) -> list[Placed]:
        up = [label for label in labels if label.joint[1] < self.middle[1]]
        down = [label for label in labels if label.joint[1] >= self.middle[1]]
        width = (self.box[2] - self.box[0]) * 1.1
        level = max(sum(self._width(one, turned=False) for one in row) for row in (up, down))
        turned = level > width
        return [*self._row(up, -1, turned=turned), *self._row(down, 1, turned=turned)]

    def _width(self, label: Label, *, turned: bool) -> float:
        name = text_width(label.name, self.type.word, bold=True)
        signal = self.type.word if turned else text_width(label.signal, self.type.word)
        disc = 2 * self.type.disc if label.number else 0.0
        codes = 0.0 if turned else max((plate_width(code) for _, code in label.codes), default=0.0)
        return max(name, signal, disc, codes) + 4 * self.unit

    def _row(self, labels: Sequence[Label], way: int, *, turned: bool) -> list[Placed]:
        ordered = sorted(labels, key=lambda label: label.joint[0])
        widths = [self._width(label, turned=turned) for label in ordered]
        gaps = [(one + other) / 2 for one, other in itertools.pairwise(widths)]
        places = spread([label.joint[0] for label in ordered], gaps)
        edge = self.box[3] if way > 0 else self.box[1]
        y = edge + way * (12 * self.unit + self.type.disc)
        return [
            self._stack(label, (x, y), way, turned=turned)
            for label, x in zip(ordered, places, strict=True)
        ]

    def _stack(self, label: Label, at: Point, way: int, *, turned: bool) -> Placed:
        (x, y), word = at, self.type.word
        disc = self._disc(label, at) if label.number else ()
        y += way * (self.type.disc + 4 * self.unit + word * CAP_HEIGHT / 2)
        items = [self._word((x, y), label.name, bold=True)]
        y += way * (word * CAP_HEIGHT / 2 + 5 * self.unit)
        if turned:
            said = " ".join([label.signal, *(code for _, code in label.codes)]).strip()
            items += [self._turned((x, y), said, way)] if said else []
        elif label.signal:
            items.append(self._word((x, y + way * word * CAP_HEIGHT / 2), label.signal, bold=False))
        words: DrawList = tuple(_of(item, label) for item in items)
        if not turned:
            y += way * (word * CAP_HEIGHT + 5 * self.unit if label.signal else 0.0)
            words += self._piled((x, y), label, way)
        leader = self._leader(label, at)
        return Placed((*leader, *disc, *words), _box_of((*disc, *words)))

    def _word(self, at: Point, text: str, *, bold: bool) -> Text:
        word = self.type.word
        base = centred_baseline(at[1], word)
        return Text((at[0], base), text, word, self.look.ink, bold=bold, anchor="middle")

    def _turned(self, at: Point, text: str, way: int) -> Text:
        """Set a text to be read from below up: it stands above a face, hangs below one."""
        (x, y), word = at, self.type.word
        base = (x + word * CAP_HEIGHT / 2, y)
        return Text(
            base, text, word, self.look.ink, anchor="end" if way > 0 else "start", turn_deg=-90
        )

    def _piled(self, at: Point, label: Label, way: int) -> DrawList:
        """Draw the plates of a label's cores one beyond the other, away from the face."""
        items: DrawList = ()
        y = at[1] + way * PLATE_HEIGHT / 2
        for conductor, code in label.codes:
            items += plate((at[0], y), code, look=self.look, owner=f"lead/{conductor}")
            y += way * (PLATE_HEIGHT + 3)
        return items

    # -- both --

    def _disc(self, label: Label, at: Point) -> DrawList:
        return order_disc(
            at,
            label.number,
            self.type.disc,
            self.look,
            f"order/{label.contact}",
            withheld=self.withheld,
        )

    def _leader(self, label: Label, end: Point) -> DrawList:
        distance = math.dist(label.joint, end)
        if distance < 1e-9:
            return ()
        share = min(label.radius * 0.55 / distance, 1.0)
        start = (
            label.joint[0] + (end[0] - label.joint[0]) * share,
            label.joint[1] + (end[1] - label.joint[1]) * share,
        )
        owner = contact_owner(label.contact)
        halo = Style(stroke=self.look.paper, width=4 * self.unit, opacity=0.75, cap="round")
        dot = Style(fill=self.look.ink, stroke=self.look.paper, width=0.8 * self.unit)
        return (
            Poly((start, end), halo, owner=owner),
            Poly((start, end), Style(stroke=self.look.ink, width=1.2 * self.unit), owner=owner),
            Circle(start, 2.6 * self.unit, dot, owner=owner),
        )


def _box_of(items: DrawList) -> Box:
    """Return the box round words and discs, those turned to be read from below up as they lie."""
    turned = [item for item in items if isinstance(item, Text) and item.turn_deg]
    level = box_of(tuple(item for item in items if item not in turned))
    return joined_box([level, *(_turned_box(item) for item in turned)])


def _turned_box(item: Text) -> Box:
    width = text_width(item.text, item.size, item.bold)
    x, low = item.at[0], item.at[1] + (width if item.anchor == "end" else 0.0)
    return (x - item.size * 0.97, low - width, x + item.size * 0.25, low)


def _of(item: Text, label: Label) -> Text:
    return Text(
        item.at,
        item.text,
        item.size,
        item.colour,
        item.bold,
        item.anchor,
        item.turn_deg,
        contact_owner(label.contact),
    )
