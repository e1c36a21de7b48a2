"""Blocks: what stands together on a page, and how blocks flow over pages in two columns."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from planner.drawing.primitives import Circle, DrawList, Path, Point, Poly, Primitive, Rect, Text
from planner.sheet.paper import COLUMN_GAP, HALF_WIDTH, Paper

BLOCK_GAP = 300.0


@dataclass(frozen=True, slots=True)
class Block:
    """Items drawn from a corner at 0, 0; `full` blocks take both columns."""

    items: DrawList
    height: float
    full: bool = False


def moved(items: DrawList, by: Point) -> DrawList:
    """Return the items shifted."""
    return tuple(_moved(item, by) for item in items)


def _shifted(point: Point, by: Point) -> Point:
    return (point[0] + by[0], point[1] + by[1])


def _moved(item: Primitive, by: Point) -> Primitive:
    if isinstance(item, Text):
        return replace(item, at=_shifted(item.at, by))
    if isinstance(item, Circle):
        return replace(item, centre=_shifted(item.centre, by))
    if isinstance(item, Rect):
        return replace(item, corner=_shifted(item.corner, by))
    if isinstance(item, Poly):
        return replace(item, points=tuple(_shifted(point, by) for point in item.points))
    return _moved_path(item, by)


def _moved_path(item: Path, by: Point) -> Path:
    commands = tuple(
        (letter, tuple(figure + by[place % 2] for place, figure in enumerate(figures)))
        for letter, figures in item.commands
    )
    return replace(item, commands=commands)


def flow(blocks: Sequence[Block], paper: Paper, bottom: float) -> Iterator[DrawList]:
    """Yield what stands on each page; a block goes to the emptier column, the left one on a tie.

    A block that is higher than a page stands alone on one.
    """
    left = right = paper.body_top
    page: list[DrawList] = []
    for block in blocks:
        start = max(left, right) if block.full else min(left, right)
        if page and start + block.height > bottom:
            yield tuple(item for items in page for item in items)
            page, left, right = [], paper.body_top, paper.body_top
            start = paper.body_top
        on_right = not block.full and right < left
        x = paper.left + (HALF_WIDTH + COLUMN_GAP if on_right else 0)
        page.append(moved(block.items, (x, start)))
        end = start + block.height + BLOCK_GAP
        if block.full:
            left = right = end
        elif on_right:
            right = end
        else:
            left = end
    if page:
        yield tuple(item for items in page for item in items)
