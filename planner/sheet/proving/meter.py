"""The meter plan: zero, the resistance of each joint, and what must not be joined."""

import math
from collections.abc import Iterator, Sequence
from itertools import combinations

from planner.drawing.primitives import DrawList
from planner.electrical.network import network_of
from planner.sheet.block import Block, moved
from planner.sheet.end_page.rich import rich_lines, rich_width
from planner.sheet.leaf import Making
from planner.sheet.lettering import BODY, HEAD, PITCH, box, cap
from planner.sheet.paper import HALF_WIDTH
from planner.sheet.proving.panel import (
    APART,
    ARROW,
    TICK,
    TOP,
    apart,
    arrow,
    named,
    named_width,
    pitches,
    tick,
    title,
)
from planner.sheet.stack import chunked, joined, piled
from planner.units import number
from planner.wiring.partners import Contact, Hold, holds

# A joint is good at 1 ohm plus the wire's own, or at 2 ohm where the wire's own is not known
# (IPC/WHMA-A-620 rev. A as quoted by others).
_JOINT_OHM, _FLAT_OHM = 1.0, 2.0
_MOST_PAIRS = 15
_NEIGHBOUR = 1.35  # how many times the least distance still counts as beside
Pair = tuple[Contact, Contact]


def readings(making: Making) -> tuple[Pair, ...]:
    """Return every pair that is measured for a good joint: a net's first contact to each other."""
    found = holds(making.wiring)
    return tuple((hold.contact, other) for hold in found for other in hold.partners)


def continuity_blocks(making: Making, room: float) -> Iterator[Block]:
    """Yield the readings of good joints, with a field to write each and the most it may show."""
    pairs = readings(making)
    if not pairs:
        return
    rows = [_reading(making, pair) for pair in pairs]
    lead, top = _continuity_head(making, pairs)
    after, below = _unseen(making)
    parts = [*rows, (after, below)]
    for place, chunk in enumerate(chunked(parts, min(room, _MOST) - TOP - top)):
        items, height = piled(chunk)
        head = title(
            making, "continuity", HALF_WIDTH, making.words("proving.ohm"), first=place == 0
        )
        start = TOP + (top if place == 0 else 0)
        shown = (*(lead if place == 0 else ()), *moved(items, (0, start)))
        yield Block((*head, *shown), start + height)


_MOST = 11000.0


def _continuity_head(making: Making, pairs: Sequence[Pair]) -> tuple[DrawList, float]:
    """Say how to zero the meter, and what to expect."""
    words, pitch = making.words, pitches(making).row
    x = rich_width(words("proving.zero")) + 250
    items: list[DrawList] = [
        rich_lines((0, TOP + pitch / 2 + cap(BODY) / 2), words("proving.zero"), HALF_WIDTH)[0],
        (box((max(x, 4200), TOP), 1750, pitch - 60),),
    ]
    known = [ohm for ohm in (_ohm(making, pair) for pair in pairs) if ohm is not None]
    about = dict.fromkeys(_two(ohm) for ohm in (min(known), max(known))) if known else {}
    text = words("proving.expect", ohm="\u2013".join(about)) if about else words("proving.zero_off")
    said, used = rich_lines((0, TOP + pitch + 400), text, HALF_WIDTH)
    return (*joined(items), *said), pitch + used + 150


def _ohm(making: Making, pair: Pair) -> float | None:
    return network_of(making.plan, making.wiring).ohm(*pair)


def _two(ohm: float) -> str:
    """Print two decimals: what a hand meter shows."""
    return f"{ohm:.2f}"


def _limit(ohm: float | None) -> str:
    return number(_FLAT_OHM) if ohm is None else _two(_JOINT_OHM + ohm)


def pair_width(pair: Pair, *, size: float = HEAD) -> float:
    """Return how wide two contacts with the arrow between are."""
    return sum(named_width(one, size=size) for one in pair) + ARROW + 300


def draw_pair(pair: Pair, middle: float, column: float) -> DrawList:
    """Draw two joined contacts; the arrow starts at `column` after the first."""
    one, _ = named(pair[0], (0, middle))
    other, _ = named(pair[1], (column + ARROW + 150, middle))
    return (*one, *arrow(column, middle), *other)


def _reading(making: Making, pair: Pair) -> tuple[DrawList, float]:
    pitch = pitches(making).row
    middle = pitch / 2
    limit = making.words("proving.under", ohm=_limit(_ohm(making, pair)))
    said = rich_width(limit)
    right = HALF_WIDTH - TICK - 200
    text, _ = rich_lines((right - said, middle + cap(BODY) / 2), limit, HALF_WIDTH)
    column = max(named_width(one) for one, _ in readings(making)) + 150
    field = box((right - said - 1500 - 200, middle - pitch / 2 + 30), 1500, pitch - 60)
    side = min(TICK, pitch - 90)
    return (*draw_pair(pair, middle, column), field, *text, tick(HALF_WIDTH, middle, side)), pitch


def _unseen(making: Making) -> tuple[DrawList, float]:
    """Say what no meter shows, and which joints it does not reach."""
    words = making.words
    alone = [
        words("proving.spot", contact=hold.contact[1], end=hold.contact[0])
        for hold in holds(making.wiring)
        if not hold.partners and making.wiring.landed_on(*hold.contact)
    ]
    text = words("proving.unseen")
    if alone:
        text += " " + words("proving.look_at", spots=", ".join(alone))
    said, height = rich_lines((0, 420), text, HALF_WIDTH, pitch=PITCH)
    return said, height + 80


def isolation_pairs(making: Making) -> tuple[tuple[Pair, ...], bool]:
    """Return the pairs that must not be joined, nearest first, and whether these are all.

    Of many only neighbours are measured: a bridge forms between joints that stand side by side, and
    the sweep's "nothing else" covers the rest.
    """
    found = holds(making.wiring)
    every = [_nearest(making, one, other) for one, other in combinations(found, 2)]
    every.sort(key=lambda pair: pair[0])
    if len(every) <= _MOST_PAIRS:
        return tuple(pair for _, pair in every), True
    least = _least_mm(making)
    kept = [
        pair for far, pair in every if far <= least.get(pair[0][0], 0.0) * _NEIGHBOUR and far > 0
    ]
    return tuple(kept), False


def _nearest(making: Making, one: Hold, other: Hold) -> tuple[float, Pair]:
    """Return where two nets come nearest, and how near; across ends they are far apart."""
    spots = [
        (_apart_mm(making, first, second), (first, second))
        for first in one.all
        for second in other.all
    ]
    return min(spots, key=lambda spot: spot[0])


def _apart_mm(making: Making, one: Contact, other: Contact) -> float:
    connector = making.plan.connector_of(one[0])
    if one[0] != other[0] or connector is None:
        return 1e6
    first, second = (connector.by_id[name].terminal for name in (one[1], other[1]))
    return math.dist((first.x_mm, first.y_mm, first.z_mm), (second.x_mm, second.y_mm, second.z_mm))


def _least_mm(making: Making) -> dict[str, float]:
    """Return the least distance of two terminals of each end."""
    found = {}
    for end in making.plan.ends:
        connector = making.plan.connector_of(end.id)
        names = [(end.id, contact.id) for contact in getattr(connector, "contacts", ())]
        found[end.id] = min(
            (_apart_mm(making, one, other) for one, other in combinations(names, 2)), default=0.0
        )
    return found


def isolation_blocks(making: Making, room: float) -> Iterator[Block]:
    """Yield the pairs that must not be joined, two columns of boxes."""
    pairs, every = isolation_pairs(making)
    if not pairs:
        return
    words, pitch = making.words, pitches(making).row
    ends = {one[0] for pair in pairs for one in pair}
    single = ends.pop() if len(ends) == 1 else ""
    note = words("proving.end_only", end=single) if single else ""
    lead, used = _isolation_head(making, every=every)
    columns = 2 if _fits_two(pairs, badges=not single) else 1
    count = -(-len(pairs) // columns)
    rows = [
        (_isolation_row(pairs[row::count], HALF_WIDTH / columns, pitch, badges=not single), pitch)
        for row in range(count)
    ]
    for place, chunk in enumerate(chunked(rows, min(room, _MOST) - TOP - used)):
        items, height = piled(chunk)
        start = TOP + (used if place == 0 else 0)
        head = title(making, "isolation", HALF_WIDTH, note, first=place == 0)
        yield Block(
            (*head, *(lead if place == 0 else ()), *moved(items, (0, start))), start + height
        )


def _isolation_head(making: Making, *, every: bool) -> tuple[DrawList, float]:
    words, y = making.words, TOP + 420.0
    items = []
    texts = ["proving.highest_range", "proving.over"] + ([] if every else ["proving.neighbours"])
    for key in texts:
        drawn, used = rich_lines((0, y), words(key), HALF_WIDTH)
        items.append(drawn)
        y += used + 80
    return joined(items), y - TOP - 300


def _fits_two(pairs: Sequence[Pair], *, badges: bool) -> bool:
    widest = max(sum(named_width(one, end=badges) for one in pair) for pair in pairs)
    return widest + APART + 300 + TICK + 500 <= HALF_WIDTH / 2


def _isolation_row(pairs: Sequence[Pair], width: float, pitch: float, *, badges: bool) -> DrawList:
    items: list[DrawList] = []
    middle = pitch / 2
    for place, (one, other) in enumerate(pairs):
        x = place * (width + 150)
        first, used = named(one, (x, middle), end=badges)
        used = max(used, 750 if badges else 800)
        second, _ = named(other, (x + used + APART + 300, middle), end=badges)
        right = x + width - (300 if place == 0 and width < HALF_WIDTH else 0)
        box_ = tick(min(right, HALF_WIDTH), middle, min(TICK, pitch - 90))
        items.append((*first, *apart(x + used + 150, middle), *second, box_))
    return joined(items)
