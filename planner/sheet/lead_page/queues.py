"""What goes on at each end before it is soldered: the parts in their queue, and a last look."""

from collections.abc import Iterator, Sequence

from planner.drawing.looks import PRINT
from planner.drawing.metrics import text_width
from planner.drawing.primitives import DrawList, Rect, Style, centred_baseline
from planner.drawing.threading import CELL_MM, END_MM, strip_height, threading_strip
from planner.dryfit.threading import Route
from planner.sheet.block import Block, moved
from planner.sheet.leaf import Making
from planner.sheet.lettering import BODY, HEAD, INK, PAPER, TITLE_HEIGHT, panel_title, say
from planner.sheet.paper import LIVE_WIDTH, MM
from planner.sheet.stack import Part, joined
from planner.sheet.way_bar import named

_BANNER = 800.0
_TOP = TITLE_HEIGHT + 150
_GAP = 600.0
_NARROW_FIRST = frozenset({"boot", "clamp"})
_SIZED = frozenset({"heat-shrink", "sleeve"})

Ends = tuple[str, ...]


def queue_blocks(making: Making) -> Iterator[Block]:
    """Yield the queues, short ones side by side; ends with like queues share one.

    The banner stands under the last, so that it is never alone on a page.
    """
    blocks = [_row(making, row) for row in _rows(making, _groups(making))]
    yield from blocks[:-1]
    if not blocks:
        return
    last = blocks[-1]
    if any(route.after_joint for route in making.threading.routes):
        yield last
        return
    under = last.height + 150
    banner = moved(_banner(making), (0, under))
    yield Block((*last.items, *banner), under + _BANNER, full=True)


def _rows(making: Making, groups: Sequence[Ends]) -> list[list[Ends]]:
    """Return the queues that stand side by side."""
    rows: list[list[Ends]] = []
    free = 0.0
    for ends in groups:
        needed = _width(making, ends) + _GAP
        if needed > free:
            rows.append([])
            free = LIVE_WIDTH + _GAP
        rows[-1].append(ends)
        free -= needed
    return rows


def _width(making: Making, ends: Ends) -> float:
    """Return how wide a queue is on one line, or the live width where it takes more."""
    count = len(making.threading.at_end(ends[0]))
    return min((END_MM + CELL_MM * count) * MM, LIVE_WIDTH)


def _row(making: Making, row: Sequence[Ends]) -> Block:
    items: list[DrawList] = []
    x = highest = 0.0
    for place, ends in enumerate(row):
        width = LIVE_WIDTH - x if place + 1 == len(row) else _width(making, ends)
        drawn, height = _strip(making, ends, width)
        items.append(moved(drawn, (x, 0)))
        x, highest = x + width + _GAP, max(highest, height)
    return Block(joined(items), highest, full=True)


def _groups(making: Making) -> list[Ends]:
    """Return the ends that parts go on at, those with like queues together."""
    found: dict[tuple[tuple[str, bool], ...], list[str]] = {}
    for end in making.plan.ends:
        queue = making.threading.at_end(end.id)
        if queue:
            kind = tuple((route.part.id, route.at == end.id) for route in queue)
            found.setdefault(kind, []).append(end.id)
    return [tuple(ends) for ends in found.values()]


def _strip(making: Making, ends: Ends, width: float) -> Part:
    first, *alike = ends
    threading = making.threading
    drawn = threading_strip(
        making.plan,
        threading,
        end=first,
        origin=(0, _TOP),
        width=width,
        look=PRINT,
        scale=MM,
        alike=alike,
        words=lambda route: _lines(making, route, ends),
    )
    height = strip_height(threading, end=first, width=width, scale=MM)
    return (*_title(making, ends, width), *drawn), _TOP + height


def _title(making: Making, ends: Ends, width: float) -> DrawList:
    """Say the ends, and which part goes on first in as many words as there is room for."""
    words = making.words
    title = words.counted("lead.thread", len(ends), ends=named(ends))
    tags = named([making.threading.at_end(end)[0].tag for end in ends])
    forms = (words.counted("lead.goes_first", len(ends), tags=tags), words("lead.first", tags=tags))
    room = width - text_width(title, HEAD, bold=True) - 300
    note = next((form for form in forms if text_width(form, BODY) <= room), "")
    return panel_title(0, width, 0, title, note)


def _lines(making: Making, route: Route, ends: Ends) -> tuple[str, str]:
    """Say what a part is, and which way round it goes on or what it is for."""
    words, part = making.words, route.part
    name = words(f"lead.part_{part.kind}")
    if part.kind in _SIZED:
        name = f"{name} {words.number(part.bore_mm)}"
    if part.kind in _NARROW_FIRST:
        return name, words("lead.narrow_first")
    if part.kind == "shell":
        return name, words("lead.thread_last")
    if part.kind == "cover":
        wide = len(route.ends) == 1
        return name, words("lead.wide_first" if wide else "lead.narrow_first")
    if route.at in making.plan.end_by_id:
        return name, words("lead.for_plug", end=named(ends if route.at in ends else (route.at,)))
    return name, words("lead.for_split")


def _banner(making: Making) -> DrawList:
    ground = Rect((0, 0), LIVE_WIDTH, _BANNER, Style(fill=INK))
    at = (LIVE_WIDTH / 2, centred_baseline(_BANNER / 2, HEAD))
    said = making.words("lead.all_ticked")
    return (ground, say(at, said, HEAD, bold=True, anchor="middle", colour=PAPER))
