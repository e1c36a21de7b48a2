"""Where the ends go on the bench: two columns, their heads in line, all inside the room."""

from collections.abc import Mapping
from dataclasses import dataclass

from planner.drawing.bench.head import HEAD_LEAD
from planner.drawing.bench.links import SPLIT_PX
from planner.drawing.bench.parts import EndBlock, Group, Layer, PlacedEnd, Settings
from planner.drawing.bench.shapes import Box, box_of, joined_box, moved_box
from planner.drawing.bench.tree import Tree
from planner.drawing.primitives import DrawList, Point

MARGIN = 16.0


@dataclass(frozen=True, slots=True)
class _Column:
    """Blocks from top to bottom with the y of each face's centre."""

    blocks: tuple[EndBlock, ...]
    centres: tuple[float, ...]
    height: float

    @property
    def middle(self) -> float:
        return sum(self.centres) / len(self.centres) if self.centres else 0.0


def _lead_in(block: EndBlock) -> float:
    """Return how far above its face's centre a block begins, its head included."""
    return -block.reach[1] + (4.0 if block.compact else block.head_height + 8.0)


def _stacked(blocks: tuple[EndBlock, ...], extra: float) -> _Column:
    y, centres = 0.0, []
    for place, block in enumerate(blocks):
        if place:
            y += (6.0 if block.compact else 18.0) + extra
        centres.append(y + _lead_in(block))
        y += _lead_in(block) + max(block.bottom, 12.0)
    return _Column(blocks, tuple(centres), y)


def small(settings: Settings) -> float:
    """Return how much the cable's own parts follow the zoom."""
    return min(max(settings.zoom, 0.45), 1.2)


def _link_room(tree: Tree, height: float, settings: Settings) -> float:
    """Return the least width between the cable stubs of both sides, px."""
    if not tree.splits:
        return 120.0 * small(settings)
    legs = min(max(0.14 * height, 62.0), 150.0)
    return (66.0 + SPLIT_PX) * len(tree.splits) * small(settings) + legs


def place_ends(
    tree: Tree, blocks: Mapping[str, EndBlock], settings: Settings
) -> tuple[dict[str, PlacedEnd], Box]:
    """Place every end; return them with the box round all."""
    left = tuple(blocks[end] for end in tree.left)
    right = tuple(blocks[end] for end in tree.right)
    least = max(_stacked(left, 0).height, _stacked(right, 0).height)
    slack = max(settings.height - 2 * MARGIN - least, 0.0)
    column = _stacked(right, min(slack / max(len(right), 1), 36.0))
    other = _stacked(left, min(slack / max(len(left), 1), 36.0))
    height = max(column.height, other.height)
    placed: dict[str, PlacedEnd] = {}
    tie_x = max((-block.reach[0] + block.cable[0] for block in left), default=0.0)
    ahead_of_tie = _overhang(right)
    natural = 0.0
    if right:
        natural = _link_room(tree, height, settings) + max(ahead_of_tie - HEAD_LEAD, 0.0)
    ahead = max((_right_width(block) for block in right), default=0.0)
    width = tie_x + natural + ahead
    heads = max((block.head_width for block in left), default=0.0)
    spare = max(settings.width - 2 * MARGIN - width, 0.0)
    beside_heads = heads + HEAD_LEAD + ahead_of_tie if right else 0.0
    far_x = max(tie_x + natural + min(spare, 300.0), beside_heads)
    down = (height - column.height) / 2
    for block, y in zip(column.blocks, column.centres, strict=True):
        placed[block.end] = PlacedEnd(block, (far_x - block.cable[0], y + down))
    shift = (height - other.height) / 2
    for block, y in zip(other.blocks, other.centres, strict=True):
        centre = y + shift
        if len(left) == 1 and right:
            centre = max(column.middle + down, _lead_in(block))
        placed[block.end] = PlacedEnd(block, (tie_x - block.cable[0], centre))
    return _centred(placed, settings)


def _overhang(blocks: tuple[EndBlock, ...]) -> float:
    """Return how far the heads of the right column begin before its cables are tied, px."""
    wide = [
        block.head_width - (block.reach[2] - block.cable[0])
        for block in blocks
        if not block.compact
    ]
    return max([HEAD_LEAD, *wide]) if wide else 0.0


def _right_width(block: EndBlock) -> float:
    """Return how far a right block goes on from where its cable is tied."""
    reach = block.reach[2] - block.cable[0]
    if block.compact:
        return reach + 12 + block.head_width
    return reach


def _centred(placed: dict[str, PlacedEnd], settings: Settings) -> tuple[dict[str, PlacedEnd], Box]:
    """Move all into the room: centred where there is more than needed, else from the corner."""
    box = joined_box(
        box
        for end in placed.values()
        for box in (
            end.box,
            *(moved_box(box_of(items), at) for _, items, at in _furniture(end, placed)),
        )
    )
    dx = MARGIN - box[0] + max(settings.width - 2 * MARGIN - (box[2] - box[0]), 0.0) / 2
    dy = MARGIN - box[1] + max(settings.height - 2 * MARGIN - (box[3] - box[1]), 0.0) / 2
    dx, dy = round(dx), round(dy)
    # Left to right: the order in which the keyboard goes through the ends.
    ordered = sorted(placed.items(), key=lambda pair: -pair[1].block.facing)
    moved = {
        name: PlacedEnd(end.block, (round(end.origin[0] + dx), round(end.origin[1] + dy)))
        for name, end in ordered
    }
    return moved, moved_box(box, (dx, dy))


def _furniture(
    end: PlacedEnd, placed: Mapping[str, PlacedEnd]
) -> list[tuple[str, DrawList, Point]]:
    """Return head and foot of an end with the places of their top left corners."""
    block, (x, y) = end.block, end.origin
    if block.compact:
        left = block.reach[2] + 12 if block.facing < 0 else block.reach[0]
        top = -11.0 if block.facing < 0 else block.reach[1] - 30.0
        return [("head", block.head, (x + left, y + top))]
    alone = sum(other.block.facing == block.facing for other in placed.values()) == 1
    top = y - _lead_in(block)
    if alone:
        top = min(other.origin[1] - _lead_in(other.block) for other in placed.values())
    left = x + block.reach[0] if block.facing > 0 else heads_left(placed)
    foot = (x + block.foot_at[0], y + block.foot_at[1])
    return [("head", block.head, (left, top)), ("foot", block.foot, foot)]


def heads_left(placed: Mapping[str, PlacedEnd]) -> float:
    """Return where the heads of the right column begin, all at one place."""
    right = [end for end in placed.values() if end.block.facing < 0]
    jackets = min(end.origin[0] + end.block.cable[0] - HEAD_LEAD for end in right)
    room = min(end.origin[0] + end.block.reach[2] - end.block.head_width for end in right)
    return min(jackets, room)


def placed_groups(end: PlacedEnd, placed: Mapping[str, PlacedEnd]) -> dict[str, Group]:
    """Return an end's groups where they lie on the bench, its head and foot among them."""
    found = {group.key: group.moved_to(end.origin) for group in end.block.groups}
    for kind, items, at in _furniture(end, placed):
        key = f"{kind}/{end.block.end}"
        found[key] = Group(key, Layer.LABEL, items, (round(at[0]), round(at[1])))
    return found
