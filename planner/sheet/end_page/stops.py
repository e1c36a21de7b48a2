"""What stops the lead, on the page of an end: in place of the steps, above the band."""

from collections.abc import Sequence

from planner.checks.finding import Finding
from planner.drawing.looks import PRINT
from planner.drawing.marks import mark
from planner.sheet.end_page.panel import PANEL_TOP, Panel, titled
from planner.sheet.finding_words import stop_lines
from planner.sheet.lettering import BODY, HEAD, paragraph
from planner.sheet.stack import joined
from planner.sheet.words import Words

_INDENT = 1600.0
_LINE, _GAP = 470.0, 200.0
_MARK = 560.0


def stops_panel(
    findings: Sequence[Finding],
    ends: Sequence[str],
    words: Words,
    space: tuple[float, float],
    title_width: float,
) -> Panel:
    """Draw the stops of these ends, as many as `space` (width, height) lets; then where others are.

    Where not all of them have room in full, they are told without the why; the first page has it.
    """
    width, room = space
    stops = [finding for finding in findings if finding.weight == "stop"]
    here = [stop for stop in stops if {place.end for place in stop.where} & set(ends)]
    others = len(stops) - len(here)
    full = [_stop(stop, words, width) for stop in here]
    brief = [_stop(stop, words, width, brief=True) for stop in here]
    free = room - PANEL_TOP
    kept = full if _height(full, others) <= free else _fitting(brief, others, free)
    body = _body(kept, len(stops) - len(kept), words, width)
    note = words.counted("page.stops", len(stops))
    return titled(words("findings.stops"), title_width, body, note)


def _height(parts: Sequence[Panel], others: int) -> float:
    return sum(part.height for part in parts) + (_LINE if others else 0.0)


def _fitting(parts: Sequence[Panel], others: int, room: float) -> list[Panel]:
    kept = list(parts)
    while kept and _height(kept, others + len(parts) - len(kept)) > room:
        kept.pop()
    return kept


def _body(parts: Sequence[Panel], others: int, words: Words, width: float) -> Panel:
    items, y = [], 0.0
    for part in parts:
        items.append(part.at(0, y))
        y += part.height
    if others:
        key = "end.more_stops" if parts else "end.stops_elsewhere"
        said = words.counted(key, others)
        lines, height = paragraph((_INDENT if parts else 0, y + 380), said, width)
        items.append(lines)
        y += height
    return Panel(joined(items), y)


def _stop(finding: Finding, words: Words, width: float, *, brief: bool = False) -> Panel:
    items = [mark("stop", (620, 660), _MARK, PRINT)]
    y = 620.0
    lines = list(stop_lines(words, finding))
    if brief:
        del lines[-2]
    for place, (text, bold) in enumerate(lines):
        size = HEAD if place == 0 else BODY
        drawn, height = paragraph(
            (_INDENT, y), text, width - _INDENT, bold=bold, size=size, pitch=_LINE
        )
        items.append(drawn)
        y += height + (120 if place == 0 else 0)
    return Panel(joined(items), max(y - _LINE, 2 * _MARK) + _GAP)
