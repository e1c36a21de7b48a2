"""The sweep with the beeper: a table of every contact against every other, or a row a net."""

from collections.abc import Iterator, Sequence

from planner.drawing.primitives import DrawList, Rect, Style
from planner.sheet.block import Block, moved
from planner.sheet.leaf import Making
from planner.sheet.lettering import (
    BIG,
    HAIR,
    INK,
    PAPER,
    THIN,
    TITLE_HEIGHT,
    rule,
    say,
)
from planner.sheet.paper import LIVE_WIDTH
from planner.sheet.proving.panel import TICK, TOP, line, named, named_width, pitches, tick, title
from planner.sheet.proving.touch import touch_column
from planner.sheet.stack import Part, chunked, joined, piled
from planner.wiring.partners import Contact, Hold, contacts_of, holds

WIDTH = 11800.0
_MOST_ROWS, _MOST_COLUMNS = 8, 4
_CELL_GAP, _BEEP = 100.0, 130.0
_HEAD = 850.0


def sweep_blocks(making: Making, room: float) -> Iterator[Block]:
    """Yield the table for a lead of few contacts, else the list."""
    if is_table(making):
        yield _table(making, *sides(making))
    else:
        yield from _list(making, room)


def is_table(making: Making) -> bool:
    """Tell whether the sweep of this lead is a table."""
    return fits_table(*sides(making), holds(making.wiring))


def sides(making: Making) -> tuple[tuple[Contact, ...], tuple[Contact, ...]]:
    """Return the contacts of the first end, and those of all others."""
    contacts = contacts_of(making.wiring)
    first = making.plan.ends[0].id if making.plan.ends else ""
    rows = tuple(contact for contact in contacts if contact[0] == first)
    return rows, tuple(contact for contact in contacts if contact[0] != first)


def fits_table(rows: Sequence[Contact], columns: Sequence[Contact], found: Sequence[Hold]) -> bool:
    """Tell whether a table has room, and shows every join: none is between two of its columns."""
    few = 0 < len(rows) <= _MOST_ROWS and 0 < len(columns) <= _MOST_COLUMNS
    return few and all(
        not hold.partners
        or (hold.contact in rows and not any(one in rows for one in hold.partners))
        for hold in found
    )


def _table(making: Making, rows: Sequence[Contact], columns: Sequence[Contact]) -> Block:
    partners = {hold.contact: hold.partners for hold in holds(making.wiring)}
    left = max(named_width(contact, size=BIG) for contact in rows) + 250
    wide = (WIDTH - left) / len(columns)
    pitch = pitches(making).sweep
    items: list[DrawList] = [title(making, "sweep", WIDTH)]
    for place, contact in enumerate(columns):
        half = named_width(contact, size=BIG) / 2
        items.append(named(contact, (left + wide * (place + 0.5) - half, TOP + 350), size=BIG)[0])
    for row, contact in enumerate(rows):
        y = TOP + _HEAD + pitch * (row + 0.5)
        items.append(named(contact, (0, y), size=BIG)[0])
        for place, other in enumerate(columns):
            corner = (left + wide * place, y - pitch / 2)
            size = (wide - _CELL_GAP, pitch - _CELL_GAP)
            items.append(_cell(making, corner, size, beeps=other in partners.get(contact, ())))
    side, touched = touch_column(making, LIVE_WIDTH - WIDTH - 400)
    height = max(TOP + _HEAD + pitch * len(rows), touched)
    return Block((*joined(items), *moved(side, (WIDTH + 400, 0))), height, full=True)


def _cell(
    making: Making, corner: tuple[float, float], size: tuple[float, float], *, beeps: bool
) -> DrawList:
    """Draw a cell: a thick frame and BEEP, or a thin one and silent; each with its box."""
    (x, y), (width, height) = corner, size
    pen, word = (_BEEP, "proving.beep") if beeps else (THIN, "proving.silent")
    inset = pen / 2
    frame = Rect(
        (x + inset, y + inset),
        width - pen,
        height - pen,
        Style(fill=PAPER, stroke=INK, width=pen),
    )
    middle = y + height / 2
    word_at = (x + 220, middle)
    return (
        frame,
        *line(word_at, making.words(word), bold=beeps),
        tick(x + width - 320, middle, TICK - 120),
    )


def _list(making: Making, room: float) -> Iterator[Block]:
    """Yield the rows, a page a panel, each with what beeps and the box that nothing else does."""
    rows = [_row(making, hold) for hold in holds(making.wiring)]
    top = TITLE_HEIGHT + 520
    for place, chunk in enumerate(chunked(rows, room - top - 100)):
        items, height = piled(chunk)
        head = (
            *title(making, "sweep", LIVE_WIDTH, first=place == 0),
            *_list_head(making, top - 160),
        )
        drawn = (*head, rule(0, LIVE_WIDTH, top, THIN), *moved(items, (0, top)))
        yield Block(drawn, top + height + 100, full=True)


_TOUCH, _BEEPS, _NOTHING = 3600.0, 14300.0, LIVE_WIDTH


def _list_head(making: Making, base: float) -> DrawList:
    words = making.words
    return (
        say((0, base), words("proving.hold")),
        say((_TOUCH, base), words("proving.touch")),
        say((_BEEPS, base), words("proving.beep"), bold=True, anchor="end"),
        say((_NOTHING, base), words("proving.nothing_else"), bold=True, anchor="end"),
    )


def _row(making: Making, hold: Hold) -> Part:
    pitch = pitches(making).row
    middle = pitch / 2
    items: list[DrawList] = [named(hold.contact, (0, middle))[0]]
    x, lines = _TOUCH, 0
    for partner in hold.partners:
        wide = named_width(partner) + 350
        if x > _TOUCH and x + wide > _BEEPS - TICK - 300:
            x, lines = _TOUCH, lines + 1
        items.append(named(partner, (x, middle + lines * pitch))[0])
        x += wide
    if hold.partners:
        items.append((tick(_BEEPS, middle, 520),))
    else:
        items.append(line((_TOUCH, middle), making.words("proving.nothing_beeps")))
    height = pitch * (lines + 1)
    items.append((tick(_NOTHING, middle, 520), rule(0, LIVE_WIDTH, height, HAIR)))
    return joined(items), height
