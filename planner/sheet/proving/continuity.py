"""The meter on what is joined: its zero, a field for each reading, the most that it may show."""

from collections.abc import Iterator, Sequence

from planner.drawing.primitives import DrawList
from planner.proving.expected import Path, expected_sweep
from planner.proving.limits import FLAT, FLAT_OHM, METER_LEADS_OHM, OVER_WIRE, OVER_WIRE_OHM
from planner.proving.unseen import unreached_contacts
from planner.sheet.block import Block, moved
from planner.sheet.end_page.rich import rich_lines, rich_width
from planner.sheet.leaf import Making
from planner.sheet.lettering import BODY, PITCH, box, cap, say
from planner.sheet.paper import HALF_WIDTH
from planner.sheet.proving.panel import (
    ARROW,
    MOST_HIGH,
    TICK,
    TOP,
    arrow,
    named,
    named_width,
    pitches,
    tick,
    title,
)
from planner.sheet.stack import Part, chunked, joined, piled
from planner.units import number
from planner.wiring.partners import Contact

_FIELD, _ZERO = 1500.0, 1750.0
Pair = tuple[Contact, Contact]


def paths(making: Making) -> tuple[Path, ...]:
    """Return every path that is read for a good joint: a net's first contact to each other."""
    return expected_sweep(making.plan, making.wiring).paths


def continuity_blocks(making: Making, room: float) -> Iterator[Block]:
    """Yield the readings of good joints, with a field to write each and the most it may show."""
    found = paths(making)
    if not found:
        return
    column = max(named_width(path.one) for path in found) + 150
    lead, top = _head(making, found)
    parts = [*(_reading(making, path, column) for path in found), _notes(making, found)]
    count = making.words.counted("proving.readings", len(found))
    for place, chunk in enumerate(chunked(parts, min(room, MOST_HIGH) - TOP - top)):
        items, height = piled(chunk)
        head = title(making, "continuity", HALF_WIDTH, count, first=place == 0)
        start = TOP + (top if place == 0 else 0)
        shown = (*(lead if place == 0 else ()), *moved(items, (0, start)))
        yield Block((*head, *shown), start + height)


def _head(making: Making, found: Sequence[Path]) -> tuple[DrawList, float]:
    """Say how to zero the meter, and what to expect."""
    words, pitch = making.words, pitches(making).row
    x = max(rich_width(words("proving.zero")) + 250, 4200)
    base = TOP + pitch / 2 + cap(BODY) / 2
    items: list[DrawList] = [
        (
            say((0, base), words("proving.zero")),
            say((x + _ZERO + 200, base), words("proving.zero_off")),
        ),
        (box((x, TOP), _ZERO, pitch - 60),),
    ]
    said, used = rich_lines((0, TOP + pitch + 400), _expect_words(making, found), HALF_WIDTH)
    return (*joined(items), *said), pitch + used + 150


def _expect_words(making: Making, found: Sequence[Path]) -> str:
    """Say what the wires have by themselves, and where that is as little as a meter resolves."""
    known = [path.ohm for path in found if path.ohm is not None]
    if not known:
        return ""
    about = dict.fromkeys(_two(ohm) for ohm in (min(known), max(known)))
    little = "_little" if max(known) < 2 * METER_LEADS_OHM else ""
    return making.words(f"proving.expect{little}", ohm="\u2013".join(about))


def _two(ohm: float) -> str:
    """Print two decimals: what a hand meter shows."""
    return f"{ohm:.2f}"


def draw_pair(pair: Pair, middle: float, column: float) -> DrawList:
    """Draw two joined contacts; the arrow starts at `column` after the first."""
    one, _ = named(pair[0], (0, middle))
    other, _ = named(pair[1], (column + ARROW + 150, middle))
    return (*one, *arrow(column, middle), *other)


def _reading(making: Making, path: Path, column: float) -> Part:
    pitch = pitches(making).row
    middle = pitch / 2
    limit = making.words("proving.under", ohm=_two(path.limit_ohm))
    said = rich_width(limit)
    right = HALF_WIDTH - TICK - 200
    text, _ = rich_lines((right - said, middle + cap(BODY) / 2), limit, HALF_WIDTH)
    field = box((right - said - _FIELD - 200, middle - pitch / 2 + 30), _FIELD, pitch - 60)
    drawn = draw_pair((path.one, path.other), middle, column)
    return (*drawn, field, *text, tick(HALF_WIDTH, middle, min(TICK, pitch - 90))), pitch


def _notes(making: Making, found: Sequence[Path]) -> Part:
    """Say which rule the limits follow, and what no meter shows."""
    text = " ".join((*_limit_words(making, found), *_unseen_words(making)))
    said, height = rich_lines((0, 420), text, HALF_WIDTH, pitch=PITCH)
    return said, height + 80


def _limit_words(making: Making, found: Sequence[Path]) -> Iterator[str]:
    words, rules = making.words, {path.rule for path in found}
    if OVER_WIRE.key in rules:
        yield words("proving.over_wire", ohm=number(OVER_WIRE_OHM))
    if FLAT.key in rules:
        yield words("proving.flat", ohm=number(FLAT_OHM))
    spots = [_spot(making, path.other) for path in found if path.estimated]
    if spots:
        yield words("proving.by_shield", spots=", ".join(spots))


def _unseen_words(making: Making) -> Iterator[str]:
    """Say what no meter shows, and which joints it does not reach."""
    sweep = expected_sweep(making.plan, making.wiring)
    alone = [_spot(making, contact) for contact in unreached_contacts(making.wiring, sweep)]
    yield making.words("proving.unseen")
    if alone:
        yield making.words("proving.look_at", spots=", ".join(alone))


def _spot(making: Making, contact: Contact) -> str:
    return making.words("proving.spot", contact=contact[1], end=contact[0])
