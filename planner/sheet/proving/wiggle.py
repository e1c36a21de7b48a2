"""The wiggle test: hold each pair, bend the cable at each place, and it keeps beeping."""

from collections.abc import Iterator, Sequence

from planner.drawing.metrics import text_width
from planner.drawing.primitives import DrawList, Path, Poly, Rect, Style
from planner.sheet.block import Block, moved
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.leaf import Making
from planner.sheet.lettering import BODY, HEAVY, INK, PAPER, PEN, say
from planner.sheet.paper import HALF_WIDTH
from planner.sheet.proving.continuity import Pair, draw_pair, paths
from planner.sheet.proving.panel import (
    MOST_HIGH,
    TICK,
    TOP,
    named,
    named_width,
    pitches,
    tick,
    title,
)
from planner.sheet.stack import Part, chunked, joined, piled
from planner.wiring.partners import Contact

_PICTURE = 1150.0
_MOST_ROWS = 8
_STEP = 1700.0  # the least from one place to bend to the next
_BEFORE = 600.0  # from the widest row to the middle of the first box


def wiggle_blocks(making: Making, room: float) -> Iterator[Block]:
    """Yield rows of pairs (or of ends, where there are many pairs) with a box a place to bend."""
    pairs = [(path.one, path.other) for path in paths(making)]
    if not pairs:
        return
    names = _places(making)
    right = HALF_WIDTH - max(700, text_width(names[-1], BODY) / 2)
    rows, widest = _rows(making, pairs, right - _STEP * (len(names) - 1) - _BEFORE)
    columns = _columns(names, max(widest + _BEFORE, 4000), right)
    lead, used = _head(making, columns)
    parts = [(_boxed(drawn, making, columns), height) for drawn, height in rows]
    note = making.words("proving.bend")
    for place, chunk in enumerate(chunked(parts, min(room, MOST_HIGH) - TOP - used)):
        items, height = piled(chunk)
        head = title(making, "wiggle", HALF_WIDTH, note, first=place == 0)
        start = TOP + used
        yield Block((*head, *lead, *moved(items, (0, start))), start + height)


def _rows(making: Making, pairs: Sequence[Pair], most: float) -> tuple[list[Part], float]:
    """Draw a row a pair, or, where they are many, the contacts of each end, `most` wide a row."""
    pitch = pitches(making).row
    if len(pairs) <= _MOST_ROWS:
        column = max(named_width(one) for one, _ in pairs) + 150
        widest = max(column + named_width(other) for _, other in pairs) + 800
        return [(draw_pair(pair, pitch / 2, column), pitch) for pair in pairs], widest
    found: dict[str, list[str]] = {}
    for _, (end, contact) in pairs:
        found.setdefault(end, []).append(contact)
    shown = [row for end, each in found.items() for row in _gathered(end, each, most)]
    rows = [(named(row, (0, pitch / 2))[0], pitch) for row in shown]
    return rows, max(named_width(row) for row in shown)


def _gathered(end: str, contacts: Sequence[str], most: float) -> Iterator[Contact]:
    """Yield an end with as many of its contacts as a row has room for."""
    row = ""
    for contact in dict.fromkeys(contacts):
        longer = f"{row}, {contact}" if row else contact
        if row and named_width((end, longer)) > most:
            yield end, row
            longer = contact
        row = longer
    yield end, row


def _places(making: Making) -> list[str]:
    """Name the places to bend: the first end, splits, the other ends."""
    words, plan = making.words, making.plan
    names = [words("proving.at_end", end=plan.ends[0].id)]
    if plan.splits:
        names.append(words("proving.at_split"))
    others = [end.id for end in plan.ends[1:]]
    if others:
        shown = ", ".join(others) if len(others) < 4 else f"{others[0]}\u2013{others[-1]}"
        names.append(words("proving.at_end", end=shown))
    return names


def _columns(names: Sequence[str], left: float, right: float) -> list[tuple[str, float]]:
    """Return the places to bend with the middle of their boxes."""
    step = (right - left) / max(len(names) - 1, 1)
    return [(name, left + step * place) for place, name in enumerate(names)]


def _head(making: Making, columns: Sequence[tuple[str, float]]) -> tuple[DrawList, float]:
    said, used = rich_lines((0, TOP + 420), making.words("proving.keep_beeping"), HALF_WIDTH)
    y = TOP + used + 100
    items: list[DrawList] = [said, _picture([x for _, x in columns], y + 620, making)]
    for name, x in columns:
        items.append((say((x, y + _PICTURE + 150), name, anchor="middle"),))
    return joined(items), used + 100 + _PICTURE + 330


def _picture(places: Sequence[float], y: float, making: Making) -> DrawList:
    """Draw the lead with the places to bend under arrows both ways."""
    first, last = places[0], places[-1]
    cable = Style(stroke=INK, width=HEAVY)
    pen = Style(fill=PAPER, stroke=INK, width=PEN)
    items: list[DrawList] = [
        (Poly(((first - 300, y), (last, y)), cable),),
        (Rect((first - 900, y - 120), 600, 240, pen),),
        (Rect((last, y - 120), 600, 240, pen),),
    ]
    if making.plan.splits and len(places) > 2:
        items.append((Rect((places[1] - 220, y - 170), 440, 340, pen),))
    items += [_bend(x, y - 330) for x in places]
    return joined(items)


def _bend(x: float, y: float) -> DrawList:
    arc = Path(
        (("M", (x - 330, y + 60)), ("C", (x - 180, y - 160, x + 180, y - 160, x + 330, y + 60))),
        Style(stroke=INK, width=PEN),
    )
    heads = tuple(
        Poly(
            ((x + way * 390, y + 160), (x + way * 380, y - 50), (x + way * 230, y + 70)),
            Style(fill=INK),
            closed=True,
        )
        for way in (-1, 1)
    )
    return (arc, *heads)


def _boxed(drawn: DrawList, making: Making, columns: Sequence[tuple[str, float]]) -> DrawList:
    middle = pitches(making).row / 2
    side = min(TICK, pitches(making).row - 90)
    return (*drawn, *(tick(x + side / 2, middle, side) for _, x in columns))
