"""The meter on what must be apart: pairs by risk of a bridge, and where measuring stops."""

from collections.abc import Iterator, Sequence

from planner.drawing.primitives import DrawList
from planner.proving.limits import APART_OHM
from planner.proving.probing import IsolationPlan, isolation_plans
from planner.proving.reading import Contact
from planner.proving.unseen import StopLine
from planner.sheet.block import Block, moved
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.leaf import Making
from planner.sheet.paper import HALF_WIDTH
from planner.sheet.proving.panel import (
    APART,
    MOST_HIGH,
    TICK,
    TOP,
    apart,
    named,
    named_width,
    pitches,
    tick,
    title,
)
from planner.sheet.stack import joined
from planner.sheet.words import Words
from planner.units import number

Pair = tuple[Contact, Contact]
_LEAST_ROWS = 3


def isolation_pairs(isolation: IsolationPlan) -> tuple[Pair, ...]:
    """Return the two contacts of each reading, in the order of measuring."""
    return tuple(probe.pair for probe in isolation.probes if probe.pair is not None)


def isolation_blocks(making: Making, room: float) -> Iterator[Block]:
    """Yield the pairs that must not be joined, nearest first, down each column of boxes."""
    by_pairs, *clipped = isolation_plans(making.plan, making.wiring)
    pairs = isolation_pairs(by_pairs)
    if not pairs:
        return
    single = _single_end(pairs)
    lead, used = _head(making, single, by_pairs, clipped)
    count = making.words.counted("proving.readings", len(pairs))
    badges, rest = not single, list(pairs)
    columns = 2 if _fits_two(pairs, badges=badges) else 1
    while rest:
        first = len(rest) == len(pairs)
        start = TOP + (used if first else 0)
        most = columns * _rows_in(making, min(room, MOST_HIGH) - start)
        shown, rest = rest[:most], rest[most:]
        items, height = _table(making, shown, columns, badges=badges)
        head = title(making, "isolation", HALF_WIDTH, count, first=first)
        drawn = (*head, *(lead if first else ()), *moved(items, (0, start)))
        yield Block(drawn, start + height)


def _single_end(pairs: Sequence[Pair]) -> str:
    """Return the end that all pairs are at, or nothing."""
    ends = {contact[0] for pair in pairs for contact in pair}
    return ends.pop() if len(ends) == 1 else ""


def _rows_in(making: Making, room: float) -> int:
    return max(int(room / pitches(making).row), _LEAST_ROWS)


def _table(
    making: Making, pairs: Sequence[Pair], columns: int, *, badges: bool
) -> tuple[DrawList, float]:
    """Draw pairs with their boxes, one column after the other."""
    pitch = pitches(making).row
    rows = -(-len(pairs) // columns)
    items = [
        moved(_row(pairs[row::rows], HALF_WIDTH / columns, pitch, badges=badges), (0, pitch * row))
        for row in range(rows)
    ]
    return joined(items), pitch * rows


def _head(
    making: Making, single: str, by_pairs: IsolationPlan, clipped: Sequence[IsolationPlan]
) -> tuple[DrawList, float]:
    """Say how to measure, what is good, where measuring stops, and what clips would save."""
    words = making.words
    texts = [
        *([words("proving.end_only", end=single)] if single else []),
        words("proving.highest_range"),
        words("proving.over", ohm=number(APART_OHM / 1e6)),
        words("proving.nearest_first"),
        *_stop_words(making, by_pairs.stop_after),
        *_clip_words(making, by_pairs, clipped),
    ]
    said, used = rich_lines((0, TOP + 420), " ".join(texts), HALF_WIDTH)
    return said, used + 150


def _stop_words(making: Making, stop: StopLine | None) -> Iterator[str]:
    if stop is None:
        return
    words = making.words
    yield words("proving.stop_line", gaps=stop_gaps(words, stop), pairs=stop.left)


def stop_gaps(words: Words, stop: StopLine) -> str:
    """Say the widest gap that is measured at each end."""
    return ", ".join(
        words("proving.line_at", mm=number(mm), ends=_named(ends))
        for mm, ends in stop.ends_by_mm.items()
    )


def _named(ends: Sequence[str]) -> str:
    return ", ".join(ends) if len(ends) < 4 else f"{ends[0]}\u2013{ends[-1]}"


def _clip_words(
    making: Making, by_pairs: IsolationPlan, clipped: Sequence[IsolationPlan]
) -> Iterator[str]:
    """Say how many readings gangs would take, where that is half as many or less."""
    gangs = next(it.count for it in clipped if it.method == "gangs")
    if 2 * gangs <= by_pairs.count:
        yield making.words("proving.clipped", gangs=gangs)


def _fits_two(pairs: Sequence[Pair], *, badges: bool) -> bool:
    widest = max(sum(named_width(one, end=badges) for one in pair) for pair in pairs)
    return widest + APART + 300 + TICK + 500 <= HALF_WIDTH / 2


def _row(pairs: Sequence[Pair], width: float, pitch: float, *, badges: bool) -> DrawList:
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
