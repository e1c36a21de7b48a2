"""What to cut and pick: the table for one lead, and what a whole run takes and in which order."""

from collections.abc import Iterator

from planner.drawing.primitives import DrawList
from planner.dryfit.cutting import CutLine, Total
from planner.sheet.block import Block, moved
from planner.sheet.cut_words import cut_words, step_words, total_words
from planner.sheet.end_page.rich import rich_lines
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
from planner.sheet.paper import LIVE_WIDTH
from planner.sheet.stack import Part, chunked, piled
from planner.units import number

ROW, _BOX, _LINE = 550.0, 470.0, 440.0
_TEXT = 700.0
_CUT, _COUNT = 2000.0, 250.0  # from the right edge to where figures end


def cut_blocks(making: Making, room: float) -> Iterator[Block]:
    """Yield the cut list of one lead over the live width; it goes on where it is too long."""
    words = making.words
    rows = [_row(making, line, LIVE_WIDTH) for line in making.cuts.lines]
    for place, chunk in enumerate(chunked(rows, room - TITLE_HEIGHT)):
        title = (
            words("cuts.title") if place == 0 else words("page.goes_on", title=words("cuts.title"))
        )
        head = panel_title(0, LIVE_WIDTH, 0, title, words("cuts.pieces"))
        cut = say((LIVE_WIDTH - _CUT, TITLE_HEIGHT - 160), words("cuts.cut"), anchor="end")
        items, height = piled(chunk)
        yield Block(
            (*head, cut, *moved(items, (0, TITLE_HEIGHT))), TITLE_HEIGHT + height, full=True
        )


def _row(making: Making, line: CutLine, width: float) -> Part:
    text = cut_words(line, making.plan, making.words)
    figures = _figures(width, number(line.length_mm) if line.length_mm else "", str(line.count))
    return _lined(text, figures, width)


def _lined(text: str, figures: DrawList, width: float) -> Part:
    """Set a row: a box to tick, its words, its figures, a hairline under all."""
    middle = ROW / 2
    base = middle + cap(BODY) / 2
    said, tall = rich_lines((_TEXT, base), text, width - _CUT - 1500 - _TEXT, pitch=_LINE)
    height = ROW + max(0.0, tall - _LINE)
    box = tick_box((0, middle - _BOX / 2), _BOX)
    return (box, *said, *figures, rule(0, width, height, HAIR)), height


def _figures(width: float, length: str, count: str) -> DrawList:
    base = ROW / 2 + cap(HEAD) / 2
    shown = [say((width - 0, base), count, HEAD, bold=True, anchor="end")]
    if length:
        shown.append(say((width - _CUT, base), length, HEAD, bold=True, anchor="end"))
    return tuple(shown)


def run_blocks(making: Making, room: float) -> Iterator[Block]:
    """Yield what a run of more than one lead takes, and the order in which it is made."""
    if making.leads < 2:
        return
    words, plan = making.words, making.plan
    rows = [_total(making, total) for total in making.batch.totals]
    title = words("cuts.run", count=making.leads).replace("*", "")
    for place, chunk in enumerate(chunked(rows, room - TITLE_HEIGHT)):
        name = title if place == 0 else words("page.goes_on", title=title)
        head = panel_title(0, LIVE_WIDTH, 0, name, words("cuts.pieces"))
        cut = say((LIVE_WIDTH - _CUT, TITLE_HEIGHT - 160), words("cuts.together"), anchor="end")
        items, height = piled(chunk)
        yield Block(
            (*head, cut, *moved(items, (0, TITLE_HEIGHT))), TITLE_HEIGHT + height, full=True
        )
    parts = [_act(step_words(step, plan, words)) for step in making.batch.steps]
    items, height = piled(parts)
    head = panel_title(0, LIVE_WIDTH, 0, words("cuts.order"))
    yield Block(
        (*head, *moved(items, (0, TITLE_HEIGHT + 60))), TITLE_HEIGHT + 60 + height, full=True
    )


def _total(making: Making, total: Total) -> Part:
    text = total_words(total, making.plan, making.words)
    length = number(total.length_mm) if total.length_mm else ""
    return _lined(text, _figures(LIVE_WIDTH, length, str(total.count)), LIVE_WIDTH)


def _act(text: str) -> Part:
    base = ROW / 2 + cap(BODY) / 2
    said, tall = rich_lines((_TEXT, base), text, LIVE_WIDTH - _TEXT, pitch=_LINE)
    return (tick_box((0, ROW / 2 - _BOX / 2), _BOX), *said), ROW + max(0.0, tall - _LINE)
