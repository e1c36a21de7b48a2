"""Where a notice may lie: the spot in a page at which it covers least of what is needed."""

from collections.abc import Iterable, Sequence

from PySide6.QtCore import QRect

GAP = 16
_ACROSS = (0.5, 0.375, 0.625, 0.25, 0.75, 0.125, 0.875, 0.0, 1.0)  # the middle is liked best
_DOWN = 12


def spots(room: QRect, sizes: Iterable[tuple[int, int]]) -> Iterable[QRect]:
    """Return the spots in a room for something of one of these sizes, the one liked best first."""
    for width, height in sizes:
        free = (room.width() - width - 2 * GAP, room.height() - height - 2 * GAP)
        for step in range(_DOWN, -1, -1):
            for share in _ACROSS:
                x, y = round(max(free[0], 0) * share), round(max(free[1], 0) * step / _DOWN)
                yield QRect(room.left() + GAP + x, room.top() + GAP + y, width, height)


def covered(spot: QRect, taken: Sequence[QRect]) -> int:
    """Return how much of what is taken a spot covers, px2."""
    met = (spot.intersected(box) for box in taken)
    return sum(box.width() * box.height() for box in met if not box.isEmpty())
