"""The plates that name the cores: each on its own core near the cut, none over another."""

from collections.abc import Mapping, Sequence

from planner.drawing.bench.fan import Fan
from planner.drawing.bench.parts import Strand
from planner.drawing.bench.shapes import Box
from planner.drawing.cores import PLATE_HEIGHT, plate, plate_width
from planner.drawing.looks import Look
from planner.drawing.primitives import DrawList, Point
from planner.drawing.runs import Run

# Where a plate may go: first a little up or down, then farther along its core.
_PLATE_TRIES = [(step, shift) for step in range(9) for shift in (0.0, -3.0, 3.0, -6.0, 6.0)]


def plate_places(fan: Fan, strands: Mapping[str, Strand], zoom: float) -> dict[str, Box]:
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
        left, top, right, bottom = box[0] - 0.5, box[1] - 0.5, box[2] + 0.5, box[3] + 0.5
        for low_x, low_y, high_x, high_y in taken:
            if left < high_x and low_x < right and top < high_y and low_y < bottom:
                break
        else:
            return box
    return None


def _beyond_tip(strand: Strand, facing: int, width: float) -> Box:
    """Return the box of a plate that stands before a loose core's tip."""
    x, y = strand.tip
    middle, half = x - facing * (width / 2 + strand.width / 2 + 4), PLATE_HEIGHT / 2
    return (middle - width / 2, y - half, middle + width / 2, y + half)


def plate_items(
    core: Strand, box: Box, look: Look, *, lit: bool = False, selected: bool = False
) -> DrawList:
    """Draw a core's plate in its box."""
    at = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
    return plate(at, core.code, core.carried, look=look, lit=lit, selected=selected)
