"""Plain shapes for the bench: boxes of draw lists, moving them, spreading along a line."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from planner.drawing.metrics import text_width
from planner.drawing.primitives import Circle, DrawList, Path, Point, Poly, Primitive, Rect, Text

Box = tuple[float, float, float, float]  # left, top, right, bottom
NO_BOX: Box = (0.0, 0.0, 0.0, 0.0)


def _text_box(item: Text) -> Box:
    width = text_width(item.text, item.size, item.bold)
    share = {"start": 0.0, "middle": 0.5, "end": 1.0}[item.anchor]
    left, top = item.at[0] - share * width, item.at[1] - item.size * 0.97
    return (left, top, left + width, item.at[1] + item.size * 0.25)


def _points_of(item: Primitive) -> Sequence[Point]:
    if isinstance(item, Poly):
        return item.points
    if isinstance(item, Path):
        return [
            (figures[place], figures[place + 1])
            for _, figures in item.commands
            for place in range(0, len(figures), 2)
        ]
    return ()


def _box_of_one(item: Primitive) -> Box | None:
    if isinstance(item, Text):
        return _text_box(item)
    half = item.style.width / 2 if item.style.stroke else 0.0
    if isinstance(item, Circle):
        reach = item.radius + half
        x, y = item.centre
        return (x - reach, y - reach, x + reach, y + reach)
    if isinstance(item, Rect):
        x, y = item.corner
        return (x - half, y - half, x + item.width + half, y + item.height + half)
    points = _points_of(item)
    if not points:
        return None
    xs, ys = [point[0] for point in points], [point[1] for point in points]
    return (min(xs) - half, min(ys) - half, max(xs) + half, max(ys) + half)


def joined_box(boxes: Iterable[Box]) -> Box:
    """Return the box round all boxes; an empty one at the origin for none."""
    known = [box for box in boxes if box != NO_BOX]
    if not known:
        return NO_BOX
    lefts, tops, rights, bottoms = zip(*known, strict=True)
    return (min(lefts), min(tops), max(rights), max(bottoms))


def box_of(items: DrawList) -> Box:
    """Return the box round what a draw list draws, strokes included."""
    return joined_box(box for item in items if (box := _box_of_one(item)) is not None)


def moved_box(box: Box, by: Point) -> Box:
    """Return a box moved by (dx, dy)."""
    return (box[0] + by[0], box[1] + by[1], box[2] + by[0], box[3] + by[1])


def boxes_meet(one: Box, other: Box, gap: float = 0.0) -> bool:
    """Tell whether two boxes come nearer than `gap`."""
    beside = one[2] + gap <= other[0] or other[2] + gap <= one[0]
    return not (beside or one[3] + gap <= other[1] or other[3] + gap <= one[1])


def spread(wanted: Sequence[float], gaps: Sequence[float]) -> list[float]:
    """Move sorted places apart as little as needed: place i+1 is at least gaps[i] after place i.

    Neighbours that push each other settle round the mean of what they wanted (pool adjacent
    violators, the exact least-squares answer).
    """
    offsets, total = [], 0.0
    for place in range(len(wanted)):
        offsets.append(total)
        total += gaps[place] if place < len(gaps) else 0.0
    pools: list[tuple[float, int]] = []
    for want, offset in zip(wanted, offsets, strict=True):
        mean, count = want - offset, 1
        while pools and pools[-1][0] > mean:
            before, many = pools.pop()
            mean = (before * many + mean * count) / (many + count)
            count += many
        pools.append((mean, count))
    levels = [mean for mean, count in pools for _ in range(count)]
    return [level + offset for level, offset in zip(levels, offsets, strict=True)]


def moved(items: DrawList, dx: float, dy: float) -> DrawList:
    """Return a draw list moved by (dx, dy)."""
    return tuple(_moved_one(item, dx, dy) for item in items)


def _moved_one(item: Primitive, dx: float, dy: float) -> Primitive:
    if isinstance(item, Poly):
        return replace(item, points=tuple((x + dx, y + dy) for x, y in item.points))
    if isinstance(item, Circle):
        return replace(item, centre=(item.centre[0] + dx, item.centre[1] + dy))
    if isinstance(item, Rect):
        return replace(item, corner=(item.corner[0] + dx, item.corner[1] + dy))
    if isinstance(item, Text):
        return replace(item, at=(item.at[0] + dx, item.at[1] + dy))
    shifts = (dx, dy)
    commands = tuple(
        (name, tuple(figure + shifts[place % 2] for place, figure in enumerate(figures)))
        for name, figures in item.commands
    )
    return replace(item, commands=commands)
