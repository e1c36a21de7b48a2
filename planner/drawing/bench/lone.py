"""One end alone on the bench: as large as the room allows, its head where the cable leaves room."""

import math
from itertools import combinations

from planner.drawing.bench.parts import (
    TARGET_PX,
    Bench,
    EndBlock,
    Group,
    Layer,
    PlacedEnd,
    Settings,
)
from planner.drawing.bench.placing import MARGIN
from planner.drawing.bench.shapes import Box, box_of, boxes_meet, joined_box, moved_box
from planner.drawing.primitives import DrawList, Point

_CLEAR_PX, _STEP_PX = 8.0, 24.0


def least_zoom(block: EndBlock) -> float:
    """Return the zoom at which the targets of neighbouring contacts no longer overlap, at most 1.

    `block` is drawn at 100 %. An end with few contacts seldom needs it; a long one may then be
    larger than its room.
    """
    places = block.contacts.values()
    nearest = min((math.dist(one, two) for one, two in combinations(places, 2)), default=math.inf)
    return min(TARGET_PX / max(nearest, 1.0), 1.0)


def lone_bench(block: EndBlock, settings: Settings) -> Bench:
    """Lay out one end in the middle of its room, with head and scale bar where they are free."""
    busy = [box_of((item,)) for group in block.groups for item in group.items]
    furniture = []
    if block.foot:
        at = _foot_place(block, settings, busy)
        furniture.append(("foot", block.foot, at))
        busy.append(moved_box(box_of(block.foot), at))
    furniture.append(("head", block.head, _head_place(block, settings, busy)))
    boxes = [moved_box(box_of(items), at) for _, items, at in furniture]
    box = joined_box([block.reach, *boxes])
    origin = _origin(box, settings)
    groups = {group.key: group.moved_to(origin) for group in block.groups}
    for kind, items, (x, y) in furniture:
        groups |= _furniture_group(block, kind, items, (x + origin[0], y + origin[1]))
    placed = {block.end: PlacedEnd(block, origin)}
    return Bench(groups, placed, {}, moved_box(box, origin))


def _furniture_group(block: EndBlock, kind: str, items: DrawList, at: Point) -> dict[str, Group]:
    key = f"{kind}/{block.end}"
    return {key: Group(key, Layer.LABEL, items, (round(at[0]), round(at[1])))}


def _origin(box: Box, settings: Settings) -> Point:
    """Return where the face's centre goes so that the box lies in the middle, or at the corner."""
    spare_x = max(settings.width - 2 * MARGIN - (box[2] - box[0]), 0.0)
    spare_y = max(settings.height - 2 * MARGIN - (box[3] - box[1]), 0.0)
    return (round(MARGIN - box[0] + spare_x / 2), round(MARGIN - box[1] + spare_y / 2))


def _head_place(block: EndBlock, settings: Settings, busy: list[Box]) -> Point:
    """Return the top left corner of the head: over the cable if it is free there, else above."""
    size, top = box_of(block.head), block.reach[1]
    beside = _free_beside(block, settings, size, top, busy)
    if beside is not None:
        return beside
    left = block.reach[0] if block.facing > 0 else block.reach[2] - size[2]
    return (left, top - size[3] - _CLEAR_PX)


def _foot_place(block: EndBlock, settings: Settings, busy: list[Box]) -> Point:
    """Return the top left corner of the scale bar: level with the face where it is free there."""
    size = box_of(block.foot)
    if block.foot_at[1] + size[3] <= block.reach[3]:
        return block.foot_at
    beside = _free_beside(block, settings, size, block.reach[3] - size[3], busy)
    return beside if beside is not None else block.foot_at


def _free_beside(
    block: EndBlock, settings: Settings, size: Box, y: float, busy: list[Box]
) -> Point | None:
    """Return the free place at a level nearest to the face, on its cable's side."""
    left, _, right, _ = block.reach
    width = size[2] - size[0]
    spare = max(settings.width - 2 * MARGIN - (right - left) - 1.0, 0.0)
    edge = right - width if block.facing > 0 else left
    steps = math.ceil(spare / _STEP_PX)
    for out in [0.0, *(spare * (step + 1) / steps for step in range(steps))]:
        x = edge + block.facing * out
        box = moved_box(size, (x, y))
        if not any(boxes_meet(box, other, _CLEAR_PX) for other in busy):
            return (x, y)
    return None
