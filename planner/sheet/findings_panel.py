"""Findings on paper: stops first and in full, cautions with what was accepted, notes."""

from collections.abc import Iterator, Sequence

from planner.checks.acceptance import acceptance_of
from planner.checks.finding import Finding
from planner.drawing.looks import PRINT
from planner.drawing.marks import mark
from planner.sheet.block import Block
from planner.sheet.finding_words import stop_lines, told
from planner.sheet.leaf import Making
from planner.sheet.lettering import paragraph
from planner.sheet.paper import HALF_WIDTH, LIVE_WIDTH
from planner.sheet.stack import Part, joined, stacked

_INDENT = 800.0
_LINE = 450.0


def stops_blocks(making: Making, room: float, first: float | None = None) -> Iterator[Block]:
    """Yield what stops the lead, over the live width: code, what, why, mend."""
    words = making.words
    stops = [finding for finding in making.findings if finding.weight == "stop"]
    parts = [_part(stop, stop_lines(words, stop), LIVE_WIDTH) for stop in stops]
    note = words.counted("page.stops", len(stops))
    title, goes_on = words("findings.stops"), words("page.goes_on", title=words("findings.stops"))
    yield from stacked(title, parts, room=room, note=note, full=True, goes_on=goes_on, first=first)


def finding_blocks(making: Making, room: float) -> Iterator[Block]:
    """Yield cautions and notes in half-width panels."""
    title = making.words("findings.others")
    kept = [finding for finding in making.findings if finding.weight != "stop"]
    parts = [_part(each, _lines(making, each), HALF_WIDTH) for each in kept]
    goes_on = making.words("page.goes_on", title=title)
    yield from stacked(title, parts, room=room, goes_on=goes_on)


def _lines(making: Making, finding: Finding) -> Sequence[tuple[str, bool]]:
    """Return the lines of a caution or a note: what was accepted of it, or how to mend it."""
    words, said = making.words, told(making.words, finding)
    what = [(line, False) for line in said.what]
    if finding.weight == "note":
        return what
    accepted = acceptance_of(making.plan, finding)
    if accepted is None:
        mend = words("findings.mend", mend=said.mend)
        return ((said.headline, True), *what, (mend, True))
    by = f" {accepted.by}" if accepted.by else ""
    reason = f"\u201c{accepted.reason}\u201d{by}"
    return ((words("findings.accepted", headline=said.headline), True), (reason, False), *what)


def _part(finding: Finding, lines: Sequence[tuple[str, bool]], width: float) -> Part:
    """Set a finding's mark and its lines; return them and their height."""
    items = [mark(finding.weight, (330, 270), 290, PRINT)]
    y = 390.0
    for text, bold in lines:
        drawn, height = paragraph((_INDENT, y), text, width - _INDENT, bold=bold, pitch=_LINE)
        items.append(drawn)
        y += height
    return joined(items), max(y - 390 + 180, 700)
