"""What stops the lead, on the page of an end: in place of the steps, above the band."""

from collections.abc import Sequence

from planner.checks.finding import Finding
from planner.drawing.looks import PRINT
from planner.drawing.marks import mark
from planner.sheet.end_page.panel import PANEL_TOP, Panel, titled
from planner.sheet.finding_words import stop_lines
from planner.sheet.lettering import BODY, HEAD, paragraph
from planner.sheet.paper import LIVE_WIDTH
from planner.sheet.stack import joined
from planner.sheet.words import Words

_INDENT = 1600.0
_LINE, _GAP = 470.0, 200.0
_MARK = 560.0


def stops_panel(
    findings: Sequence[Finding], ends: Sequence[str], words: Words, width: float, room: float
) -> Panel:
    """Draw the stops of these ends in full, as many as `room` lets; then where the others are."""
    stops = [finding for finding in findings if finding.weight == "stop"]
    here = [stop for stop in stops if {place.end for place in stop.where} & set(ends)]
    parts, used, shown = [], 0.0, 0
    for stop in here:
        part = _stop(stop, words, width)
        last = shown + 1 == len(stops)
        if used + part.height + (0 if last else _LINE) > room - PANEL_TOP:
            break
        parts.append(part.at(0, used))
        used, shown = used + part.height, shown + 1
    if shown < len(stops):
        said = words.counted("end.more_stops", len(stops) - shown)
        items, height = paragraph((_INDENT if shown else 0, used + 380), said, width)
        parts.append(items)
        used += height + 150
    note = words.counted("page.stops", len(stops))
    return titled(words("findings.stops"), LIVE_WIDTH, Panel(joined(parts), used), note)


def _stop(finding: Finding, words: Words, width: float) -> Panel:
    items = [mark("stop", (620, 660), _MARK, PRINT)]
    y = 620.0
    for place, (text, bold) in enumerate(stop_lines(words, finding)):
        size = HEAD if place == 0 else BODY
        drawn, height = paragraph(
            (_INDENT, y), text, width - _INDENT, bold=bold, size=size, pitch=_LINE
        )
        items.append(drawn)
        y += height + (120 if place == 0 else 0)
    return Panel(joined(items), max(y - _LINE, 2 * _MARK) + _GAP)
