"""Blocks: what stands together on a page, and how blocks flow over pages in two columns."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from planner.drawing.primitives import Circle, DrawList, Path, Point, Poly, Primitive, Rect, Text
from planner.sheet.paper import COLUMN_GAP, HALF_WIDTH, Paper

BLOCK_GAP = 260.0


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


def flow(blocks: Sequence[Block], paper: Paper, bottoms: tuple[float, float]) -> Iterator[DrawList]:
    """Yield what stands on each page; a block goes to the emptier column, the left one on a tie.

    `bottoms` is how far down the left and the right column go. A block that is higher than a page
    stands alone on one.
    """
    columns = _Columns(paper, bottoms)
    page: list[DrawList] = []
    for block in blocks:
        place = columns.place_for(block)
        if place is None and page:
            yield tuple(item for items in page for item in items)
            page, columns = [], _Columns(paper, bottoms)
            place = columns.place_for(block)
        page.append(moved(block.items, columns.take(block, place or 0)))
    if page:
        yield tuple(item for items in page for item in items)


class _Columns:
    """How far the two columns of a page are filled."""

    def __init__(self, paper: Paper, bottoms: tuple[float, float]) -> None:
        self._paper, self._bottoms = paper, bottoms
        self._filled = [paper.body_top, paper.body_top]

    def place_for(self, block: Block) -> int | None:
        """Return the column that has room for a block (0 for a full one), the emptier first."""
        if block.full:
            return 0 if max(self._filled) + block.height <= min(self._bottoms) else None
        for column in sorted((0, 1), key=lambda place: self._filled[place]):
            if self._filled[column] + block.height <= self._bottoms[column]:
                return column
        return None

    def take(self, block: Block, column: int) -> Point:
        """Fill a column (both with a full block); return the block's corner."""
        top = max(self._filled) if block.full else self._filled[column]
        end = top + block.height + BLOCK_GAP
        if block.full:
            self._filled = [end, end]
        else:
            self._filled[column] = end
        return (self._paper.left + column * (HALF_WIDTH + COLUMN_GAP), top)
