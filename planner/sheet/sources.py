"""The page on who says so: pinouts and their sources, cautions and notes, the plan's remarks."""

import math
from collections.abc import Iterator, Sequence

from planner.drawing.metrics import wrapped
from planner.markup import as_it_is
from planner.model.pinout import PinoutRecord
from planner.sheet.badge import badge
from planner.sheet.block import BLOCK_GAP, Block, flow, moved
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.findings_panel import finding_blocks
from planner.sheet.leaf import Leaf, Making
from planner.sheet.lettering import BODY
from planner.sheet.paper import COLUMN_GAP, HALF_WIDTH
from planner.sheet.stack import Part, joined, piled, sentences, stacked
from planner.sheet.stop_band import free_above

_PITCH = 450.0
_COLUMNS = (0.0, HALF_WIDTH + COLUMN_GAP)


def source_leaves(making: Making) -> Iterator[Leaf]:
    """Yield the pages on whose word the lead is built."""
    paper, words = making.paper, making.words
    bottoms = free_above(paper) if making.stopped else (paper.body_bottom, paper.body_bottom)
    room = min(bottoms) - paper.body_top
    blocks = [
        *_pinouts(making, room),
        *finding_blocks(making, room),
        *_remarks(making, room),
    ]
    for body in flow(blocks, paper, bottoms):
        yield Leaf(words("sources.tab"), words("sources.title"), "", "", body)


def sources_block(making: Making) -> Block:
    """Set all in one block over the live width: cautions and notes at the right."""
    left = [*_pinouts(making, math.inf), *_remarks(making, math.inf)]
    columns = [_under(left), _under([*finding_blocks(making, math.inf)])]
    items = [moved(found, (x, 0)) for (found, _), x in zip(columns, _COLUMNS, strict=True)]
    return Block(joined(items), max(height for _, height in columns), full=True)


def _under(blocks: Sequence[Block]) -> Part:
    """Put blocks under one another, with the white of blocks between."""
    items, height = piled((block.items, block.height + BLOCK_GAP) for block in blocks)
    return items, max(height - BLOCK_GAP, 0.0)


def _pinouts(making: Making, room: float) -> Iterator[Block]:
    """Yield for each pinout whose word it rests on, and how far it is confirmed."""
    words = making.words
    parts = [_pinout(making, record, ends) for record, ends in _records(making)]
    if not parts:
        parts = list(sentences([(words("sources.no_pinout"), False)], HALF_WIDTH))
    yield from _panel(making, "sources.pinouts", parts, room)


def _panel(making: Making, key: str, parts: list[Part], room: float) -> Iterator[Block]:
    title = making.words(key)
    goes_on = making.words("page.goes_on", title=title)
    yield from stacked(title, parts, room=room, goes_on=goes_on)


def _records(making: Making) -> list[tuple[PinoutRecord, list[str]]]:
    found: dict[str, tuple[PinoutRecord, list[str]]] = {}
    for end in making.plan.ends:
        record = making.plan.pinout_of(end.id)
        if record is not None:
            found.setdefault(record.id, (record, []))[1].append(end.id)
    return list(found.values())


def _pinout(making: Making, record: PinoutRecord, ends: list[str]) -> Part:
    """Set a record beside the badges of its ends: title, source, trust."""
    words = making.words
    shown = ends if len(ends) <= 3 else [f"{ends[0]}\u2013{ends[-1]}"]
    items = []
    x = 0.0
    for name in shown:
        drawn, width = badge(name, (x, 0), 460)
        items.append(drawn)
        x += width + 80
    x += 70
    trust = words(f"sources.trust_{record.trust}")
    sure = "sources.so_far" if record.confirmed else "sources.not_confirmed"
    y = 360.0
    for text in (f"*{as_it_is(record.title)}*", _source(making, record), words(sure, trust=trust)):
        said, used = rich_lines((0, y), text, HALF_WIDTH - x, pitch=_PITCH)
        items.append(moved(said, (x, 0)))
        y += used
    return joined(items), y - 360 + 200


def _source(making: Making, record: PinoutRecord) -> str:
    words, source = making.words, record.source
    by = words("sources.by", name=source.recorded_by) if source.recorded_by else ""
    parts = [part for part in (source.reference, source.date, by) if part]
    kind = words(f"sources.kind_{source.kind}")
    return as_it_is(f"{kind}: {', '.join(parts)}" if parts else kind)


def _remarks(making: Making, room: float) -> Iterator[Block]:
    lines = [
        (line, False)
        for text in making.plan.remarks.splitlines()
        for line in wrapped(text, BODY, HALF_WIDTH)
    ]
    yield from _panel(making, "sources.remarks", list(sentences(lines, HALF_WIDTH)), room)
