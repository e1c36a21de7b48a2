"""What was read apart: bridges first and in full, then each pair, then readings by clips."""

from collections.abc import Iterator, Sequence

from planner.drawing.looks import PRINT
from planner.drawing.marks import mark
from planner.drawing.primitives import DrawList
from planner.proving.reading import Reading
from planner.proving.units import Clipped
from planner.sheet.block import Block
from planner.sheet.certificate.case import Case
from planner.sheet.certificate.contacts import listed, spot
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.paper import LIVE_WIDTH
from planner.sheet.proving.panel import APART, apart, named, named_width
from planner.sheet.stack import Part, joined, stacked

_PITCH, _GAP, _INDENT = 640.0, 500.0, 800.0
MOST_CELLS = 600


def apart_blocks(case: Case, room: float) -> Iterator[Block]:
    """Yield what was read between nets; nothing where nothing was."""
    words, found = case.words, case.judgement
    parts = [*_bridges(case), *_cells(found.apart), *_clips(case)]
    if len(found.apart) > MOST_CELLS:
        parts.append(_text(words("certificate.more", count=len(found.apart) - MOST_CELLS), 0))
    note = words("certificate.apart_note", count=found.pairs_read, all=found.net_pairs)
    title = words("certificate.apart")
    goes_on = words("page.goes_on", title=title)
    yield from stacked(title, parts, room=room, goes_on=goes_on, note=note, full=True)


def _bridges(case: Case) -> Iterator[Part]:
    for reading in case.judgement.bridges:
        shown = "" if reading.ohm is None else case.ohm(reading.ohm)
        key = "bridge_ohm" if shown else "bridge"
        yield _stop(
            case.words(
                f"certificate.{key}", one=spot(reading.one), other=spot(reading.other), ohm=shown
            )
        )
    for clip in case.judgement.bridged_clips:
        yield _stop(case.words("certificate.clips_joined", **_sides(clip)))


def _stop(text: str) -> Part:
    said, height = _text(text, _INDENT)
    return (*mark("stop", (330, 330), 290, PRINT), *said), max(height, 760)


def _text(text: str, indent: float) -> Part:
    said, used = rich_lines((indent, 440), text, LIVE_WIDTH - indent)
    return said, used + 180


def _cells(readings: Sequence[Reading]) -> Iterator[Part]:
    """Yield rows of pairs, as many beside one another as have room."""
    shown = readings[:MOST_CELLS]
    if not shown:
        return
    first = max(named_width(reading.one) for reading in shown)
    wide = first + APART + 300 + max(named_width(reading.other) for reading in shown) + _GAP
    count = max(int((LIVE_WIDTH + _GAP) // wide), 1)
    for start in range(0, len(shown), count):
        row = shown[start : start + count]
        drawn = (_cell(reading, place * wide, first) for place, reading in enumerate(row))
        yield joined(drawn), _PITCH


def _cell(reading: Reading, x: float, column: float) -> DrawList:
    middle = _PITCH / 2
    one, _ = named(reading.one, (x, middle))
    other, _ = named(reading.other, (x + column + APART + 300, middle))
    return (*one, *apart(x + column + 150, middle), *other)


def _clips(case: Case) -> Iterator[Part]:
    for clip in case.record.clipped:
        if not clip.joined:
            yield _text(case.words("certificate.clips_apart", **_sides(clip)), 0)


def _sides(clip: Clipped) -> dict[str, str]:
    return {"one": listed(map(spot, clip.one)), "other": listed(map(spot, clip.other))}
