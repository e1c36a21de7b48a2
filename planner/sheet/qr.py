"""The plan's digest as a QR code (ISO/IEC 18004), so that paper and plan can be matched."""

from functools import lru_cache

import segno

from planner.drawing.primitives import Command, DrawList, Path, Point, Style
from planner.sheet.lettering import INK

MODULES = 33  # along each side: version 4 holds the digest with level M to spare
QUIET = 4  # modules of white that the standard wants on every side


@lru_cache(maxsize=8)  # each page of a sheet bears the same
def qr_code(figures: str, corner: Point, side: float) -> DrawList:
    """Draw a SHA-256 in hexadecimal, `side` wide, as one path; the white around is the caller's."""
    code = segno.make(
        f"SHA256:{figures.upper()}", error="m", version=4, micro=False, boost_error=False
    )
    module = side / MODULES
    commands = tuple(
        command
        for row, cells in enumerate(code.matrix)
        for start, stop in _runs(cells)
        for command in _bar(corner, module, row, (start, stop))
    )
    return (Path(commands, Style(fill=INK)),)


def _runs(cells: bytearray) -> list[tuple[int, int]]:
    """Return where dark cells start and stop in a row."""
    found, start = [], None
    for place, cell in enumerate((*cells, 0)):
        if cell and start is None:
            start = place
        elif not cell and start is not None:
            found.append((start, place))
            start = None
    return found


def _bar(corner: Point, module: float, row: int, span: tuple[int, int]) -> tuple[Command, ...]:
    left, right = (corner[0] + module * place for place in span)
    top, bottom = (corner[1] + module * place for place in (row, row + 1))
    return (
        ("M", (left, top)),
        ("L", (right, top)),
        ("L", (right, bottom)),
        ("L", (left, bottom)),
        ("Z", ()),
    )
