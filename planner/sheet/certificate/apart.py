"""What was read apart: bridges first and in full, then each pair."""

from collections.abc import Iterator, Sequence

from planner.drawing.looks import PRINT
from planner.drawing.marks import mark
from planner.drawing.primitives import DrawList
from planner.markup import as_it_is
from planner.proving.reading import Contact, Reading
from planner.sheet.block import Block
from planner.sheet.certificate.case import Case
from planner.sheet.certificate.contacts import in_ranges, spot
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.lettering import BODY, PITCH, cap
from planner.sheet.paper import LIVE_WIDTH
from planner.sheet.proving.panel import APART, apart, named, named_width
from planner.sheet.stack import Part, joined, stacked

_PITCH, _GAP, _INDENT = 640.0, 500.0, 800.0
MOST_CELLS = 60


def apart_blocks(case: Case, room: float) -> Iterator[Block]:
    """Yield what was read between nets; nothing where nothing was."""
    words, found = case.words, case.judgement
    pairs = _cells(found.apart) if len(found.apart) <= MOST_CELLS else _rows(found.apart)
    parts = [*_bridges(case), *pairs]
    note = words("certificate.apart_note", count=len(found.open_pairs), all=len(found.all_pairs))
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


def _stop(text: str) -> Part:
    said, height = _text(text, _INDENT)
    return (*mark("stop", (330, 330), 290, PRINT), *said), max(height, 760)


def _text(text: str, indent: float) -> Part:
    said, used = rich_lines((indent, 440), text, LIVE_WIDTH - indent)
    return said, used + 180


def _cells(readings: Sequence[Reading]) -> Iterator[Part]:
    """Yield rows of pairs, as many beside one another as have room."""
    if not readings:
        return
    first = max(named_width(reading.one) for reading in readings)
    wide = first + APART + 300 + max(named_width(reading.other) for reading in readings) + _GAP
    count = max(int((LIVE_WIDTH + _GAP) // wide), 1)
    for start in range(0, len(readings), count):
        row = readings[start : start + count]
        drawn = (_cell(reading, place * wide, first) for place, reading in enumerate(row))
        yield joined(drawn), _PITCH


def _cell(reading: Reading, x: float, column: float) -> DrawList:
    middle = _PITCH / 2
    one, _ = named(reading.one, (x, middle))
    other, _ = named(reading.other, (x + column + APART + 300, middle))
    return (*one, *apart(x + column + 150, middle), *other)


def _rows(readings: Sequence[Reading]) -> Iterator[Part]:
    """Yield a row for each contact with all that it was read apart from, end by end."""
    found: dict[Contact, dict[str, list[str]]] = {}
    for reading in readings:
        end, name = reading.other
        found.setdefault(reading.one, {}).setdefault(end, []).append(name)
    column = max(named_width(contact) for contact in found)
    start = column + APART + 300
    for contact, ends in found.items():
        text = ", ".join(
            f"*{as_it_is(end)}* {as_it_is(' '.join(in_ranges(others)))}"
            for end, others in ends.items()
        )
        said, used = rich_lines((start, _PITCH / 2 + cap(BODY) / 2), text, LIVE_WIDTH - start)
        one, _ = named(contact, (0, _PITCH / 2))
        yield (*one, *apart(column + 150, _PITCH / 2), *said), used + _PITCH - PITCH
