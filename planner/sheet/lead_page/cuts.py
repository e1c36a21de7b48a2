"""What to cut and pick: the table for one lead, and what a whole run takes and in which order."""

from collections.abc import Iterator, Sequence

from planner.drawing.metrics import text_width
from planner.drawing.primitives import DrawList
from planner.dryfit.cutting import CutLine, Total
from planner.sheet.block import Block, moved
from planner.sheet.cut_words import cut_words, step_words, total_words
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.lead_page.tags import HEIGHT, draw_tag, tag_width
from planner.sheet.leaf import Making
from planner.sheet.lettering import (
    BODY,
    HAIR,
    HEAD,
    TITLE_HEIGHT,
    cap,
    panel_title,
    rule,
    say,
    tick_box,
)
from planner.sheet.paper import COLUMN_GAP, HALF_WIDTH
from planner.sheet.stack import Part, chunked, joined, piled

ROW, _BOX, _LINE = 550.0, 470.0, 440.0
_TEXT = 700.0
_CUT = 1700.0  # from the right edge to where the lengths end
_TAG_GAP, _MOST_TAGS = 80.0, 2900.0


def cut_rows(making: Making, width: float) -> tuple[Part, ...]:
    """Draw a row for each line of the cut list, with the tags of the parts in it."""
    tags = [tags_of(making, line) for line in making.cuts.lines]
    room = max((_tags_width(each) for each in tags), default=0.0)
    start = _TEXT + (min(room, _MOST_TAGS) + 60 if room else 0.0)
    return tuple(
        _row(making, line, each, (start, width))
        for line, each in zip(making.cuts.lines, tags, strict=True)
    )


def tags_of(making: Making, line: CutLine) -> tuple[str, ...]:
    """Return the tags of the threaded parts in a line."""
    routes = (making.threading.route_of(use) for use in line.uses)
    return tuple(route.tag for route in routes if route is not None)


def cut_table(making: Making, rows: Sequence[Part], width: float, *, goes_on: bool = False) -> Part:
    """Put rows under the title of the cut list and its columns."""
    words = making.words
    title = words("cuts.title")
    return _table(
        words("page.goes_on", title=title) if goes_on else title,
        words("cuts.cut"),
        rows,
        making,
        width,
    )


def _table(title: str, lengths: str, rows: Sequence[Part], making: Making, width: float) -> Part:
    head = panel_title(0, width, 0, title, making.words("cuts.pieces"))
    over = say((width - _CUT, TITLE_HEIGHT - 160), lengths, anchor="end")
    items, height = piled(rows)
    return (*head, over, *moved(items, (0, TITLE_HEIGHT))), TITLE_HEIGHT + height


def _row(making: Making, line: CutLine, tags: tuple[str, ...], across: tuple[float, float]) -> Part:
    start, width = across
    text = cut_words(line, making.plan, making.words)
    figures = _figures(
        width, making.words.number(line.length_mm) if line.length_mm else "", str(line.count)
    )
    drawn, height = _lined(text, figures, width, start)
    return (*drawn, *_tags(tags, start)), height


def _tags(tags: tuple[str, ...], stop: float) -> DrawList:
    """Set tags side by side; of many, the first and the last with dots between them."""
    items: list[DrawList] = []
    x = _TEXT
    many = x + _tags_width(tags) > stop + 1
    for tag in (tags[0], tags[-1]) if many else tags:
        if items and many:
            items.append((say((x, ROW / 2 + cap(BODY) / 2), "\u2026", bold=True),))
            x += text_width("\u2026", BODY, bold=True) + _TAG_GAP
        items.append(draw_tag(tag, (x, (ROW - HEIGHT) / 2)))
        x += tag_width(tag) + _TAG_GAP
    return joined(items)


def _tags_width(tags: tuple[str, ...]) -> float:
    return sum(tag_width(tag) + _TAG_GAP for tag in tags)


def _lined(text: str, figures: DrawList, width: float, start: float = _TEXT) -> Part:
    """Set a row: a box to tick, its words, its figures, a hairline under all."""
    middle = ROW / 2
    base = middle + cap(BODY) / 2
    said, tall = rich_lines((start, base), text, width - _CUT - 1300 - start, pitch=_LINE)
    height = ROW + max(0.0, tall - _LINE)
    box = tick_box((0, middle - _BOX / 2), _BOX)
    return (box, *said, *figures, rule(0, width, height, HAIR)), height


def _figures(width: float, length: str, count: str) -> DrawList:
    base = ROW / 2 + cap(HEAD) / 2
    shown = [say((width, base), count, HEAD, bold=True, anchor="end")]
    if length:
        shown.append(say((width - _CUT, base), length, HEAD, bold=True, anchor="end"))
    return tuple(shown)


def run_blocks(making: Making, room: float) -> Iterator[Block]:
    """Yield what a run of more than one lead takes, and beside it the order it is made in.

    Totals that are too many for a page go on under one another.
    """
    if making.leads < 2:
        return
    words = making.words
    rows = [_total(making, total) for total in making.batch.totals]
    title = words("cuts.run", count=making.leads).replace("*", "")
    order, least = _order(making)
    for place, chunk in enumerate(chunked(rows, room - TITLE_HEIGHT)):
        name = title if place == 0 else words("page.goes_on", title=title)
        items, height = _table(name, words("cuts.together"), chunk, making, HALF_WIDTH)
        if place == 0:
            items = (*items, *moved(order, (HALF_WIDTH + COLUMN_GAP, 0)))
            height = max(height, least)
        yield Block(items, height, full=True)


def _total(making: Making, total: Total) -> Part:
    text = total_words(total, making.plan, making.words)
    length = making.words.number(total.length_mm) if total.length_mm else ""
    return _lined(text, _figures(HALF_WIDTH, length, str(total.count)), HALF_WIDTH)


def _order(making: Making) -> Part:
    """Set the order of a run under its title, half a page wide."""
    words, plan = making.words, making.plan
    items, height = piled(_act(step_words(step, plan, words)) for step in making.batch.steps)
    head, top = panel_title(0, HALF_WIDTH, 0, words("cuts.order")), TITLE_HEIGHT + 60
    return (*head, *moved(items, (0, top))), top + height


def _act(text: str) -> Part:
    base = ROW / 2 + cap(BODY) / 2
    said, tall = rich_lines((_TEXT, base), text, HALF_WIDTH - _TEXT, pitch=_LINE)
    return (tick_box((0, ROW / 2 - _BOX / 2), _BOX), *said), ROW + max(0.0, tall - _LINE)
