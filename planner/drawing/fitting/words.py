"""Words on a plate of paper near a place, where they lie over nothing that must be read."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from planner.drawing.bench.shapes import Box, boxes_meet
from planner.drawing.looks import Look
from planner.drawing.metrics import text_width
from planner.drawing.primitives import DrawList, Point, Poly, Rect, Style, Text, centred_baseline

_RINGS = (1.0, 1.5, 2.1, 2.8, 3.6, 4.6, 5.8)


@dataclass
class Room:
    """Boxes that nothing more may lie over, and spots that are better left free.

    `frame`, if given, is what the words must not leave.
    """

    taken: list[Box] = field(default_factory=list)
    precious: list[Box] = field(default_factory=list)
    frame: Box | None = None

    def place(self, at: Point, size: tuple[float, float], gap: float) -> Box | None:
        """Take the best free box of `size` near `at`; None where everything is taken."""
        best: tuple[float, Box] | None = None
        for away, box in _candidates(at, size):
            if not self._inside(box) or any(boxes_meet(box, other, gap) for other in self.taken):
                continue
            cost = away + 3 * size[1] * sum(boxes_meet(box, spot) for spot in self.precious)
            if best is None or cost < best[0] - 1e-6:
                best = (cost, box)
        if best is None:
            return None
        self.taken.append(best[1])
        return best[1]

    def _inside(self, box: Box) -> bool:
        if self.frame is None:
            return True
        left, top, right, bottom = self.frame
        return left <= box[0] and top <= box[1] and box[2] <= right and box[3] <= bottom


def _candidates(at: Point, size: tuple[float, float]) -> Iterator[tuple[float, Box]]:
    (x, y), (width, height) = at, size
    for ring in _RINGS:
        for turn in range(0, 360, 15):
            angle = math.radians(turn)
            cx = x + math.cos(angle) * (width / 2 + height * 0.7 * ring)
            cy = y - math.sin(angle) * height * 1.2 * ring
            box = (cx - width / 2, cy - height / 2, cx + width / 2, cy + height / 2)
            yield math.dist((cx, cy), at), box


def plated(
    lines: Sequence[tuple[str, bool]], at: Point, room: Room, *, look: Look, size: float, owner: str
) -> DrawList:
    """Set lines (text, bold) on a plate near `at`, with a leader to it; nothing without room."""
    unit = look.line
    wide = max(text_width(text, size, bold) for text, bold in lines) + 8 * unit
    pitch = size * 1.25
    box = room.place(at, (wide, pitch * len(lines) + 4 * unit), 3 * unit)
    if box is None:
        return ()
    edge = Style(fill=look.field, stroke=look.ink2, width=unit)
    near = (min(max(at[0], box[0]), box[2]), min(max(at[1], box[1]), box[3]))
    leader = Poly((at, near), Style(stroke=look.ink, width=1.2 * unit), owner=owner)
    plate = Rect((box[0], box[1]), wide, box[3] - box[1], edge, radius=3 * unit, owner=owner)
    words = tuple(
        Text(
            (
                (box[0] + box[2]) / 2,
                centred_baseline(box[1] + 2 * unit + pitch * (place + 0.5), size),
            ),
            text,
            size,
            look.ink,
            bold=bold,
            anchor="middle",
            owner=owner,
        )
        for place, (text, bold) in enumerate(lines)
    )
    return (leader, plate, *words)
