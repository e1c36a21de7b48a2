"""Parts stacked under a panel's title; where they grow too high, a further panel goes on."""

from collections.abc import Iterable, Iterator, Sequence

from planner.drawing.primitives import DrawList
from planner.sheet.block import Block, moved
from planner.sheet.lettering import PITCH, TITLE_HEIGHT, cap, panel_title, paragraph
from planner.sheet.paper import HALF_WIDTH, LIVE_WIDTH

Part = tuple[DrawList, float]
_TOP = TITLE_HEIGHT + 200
MOST = 12000.0


def joined(lists: Iterable[DrawList]) -> DrawList:
    """Return many draw lists as one."""
    return tuple(item for items in lists for item in items)


def stacked(
    title: str,
    parts: Sequence[Part],
    *,
    room: float,
    goes_on: str,
    note: str = "",
    full: bool = False,
    first: float | None = None,
) -> Iterator[Block]:
    """Yield panels no higher than `room` (or one part); nothing where there are no parts.

    `goes_on` is the title of the panels after the first, which may be no higher than `first`.
    """
    top = None if first is None else first - _TOP
    width, most = (LIVE_WIDTH, room) if full else (HALF_WIDTH, min(room, MOST))
    for number, chunk in enumerate(chunked(parts, most - _TOP, top)):
        name = title if number == 0 else goes_on
        items, height = piled(chunk)
        head = panel_title(0, width, 0, name, note if number == 0 else "")
        yield Block((*head, *moved(items, (0, _TOP))), _TOP + height, full)


def chunked(
    parts: Sequence[Part], room: float, first: float | None = None
) -> Iterator[tuple[Part, ...]]:
    """Yield runs of parts that are together no higher than `room`; a part is never split.

    The first run is no higher than `first`, where one part at least is.
    """
    chunk: list[Part] = []
    height = 0.0
    high = bool(parts) and first is not None and parts[0][1] <= first
    most = first if high and first is not None else room
    for part in parts:
        if chunk and height + part[1] > most:
            yield tuple(chunk)
            chunk, height, most = [], 0.0, room
        chunk.append(part)
        height += part[1]
    if chunk:
        yield tuple(chunk)


def piled(parts: Iterable[Part]) -> Part:
    """Return parts as one, each under the one before."""
    lists, y = [], 0.0
    for items, height in parts:
        lists.append(moved(items, (0, y)))
        y += height
    return joined(lists), y


def sentences(texts: Iterable[tuple[str, bool]], width: float) -> Iterator[Part]:
    """Yield each paragraph (a text, and whether it is bold) as a part."""
    for text, bold in texts:
        items, height = paragraph((0, cap(PITCH) * 0.75), text, width, bold=bold)
        yield items, height
