"""Findings on paper: stops first and in full, cautions with what was accepted, notes."""

from collections.abc import Iterator, Sequence

from planner.checks.acceptance import acceptance_of
from planner.checks.finding import Finding
from planner.drawing.looks import PRINT
from planner.drawing.marks import mark
from planner.model.plan import Plan
from planner.sheet.block import Block
from planner.sheet.lettering import paragraph
from planner.sheet.paper import HALF_WIDTH, LIVE_WIDTH
from planner.sheet.stack import Part, joined, stacked

_INDENT = 800.0
_LINE = 450.0


def stops_blocks(findings: Sequence[Finding], room: float) -> Iterator[Block]:
    """Yield what stops the lead, over the live width: code, what, why, mend."""
    stops = [finding for finding in findings if finding.weight == "stop"]
    note = f"{len(stops)} stop{'s' if len(stops) > 1 else ''}"
    parts = [_stop(finding) for finding in stops]
    yield from stacked("What stops it", parts, room=room, note=note, full=True)


def finding_blocks(plan: Plan, findings: Sequence[Finding], room: float) -> Iterator[Block]:
    """Yield cautions and notes in half-width panels."""
    kept = [finding for finding in findings if finding.weight != "stop"]
    parts = [_caution_or_note(plan, finding) for finding in kept]
    yield from stacked("Cautions and notes", parts, room=room)


def _stop(finding: Finding) -> Part:
    lines = ((_headline(finding), True), (finding.what, False), (f"Why: {finding.why}", False))
    return _part(finding, (*lines, (f"Mend: {finding.mend}", True)), LIVE_WIDTH)


def _caution_or_note(plan: Plan, finding: Finding) -> Part:
    if finding.weight == "note":
        return _part(finding, ((finding.what, False),), HALF_WIDTH)
    accepted = acceptance_of(plan, finding)
    if accepted is None:
        lines = ((_headline(finding), True), (finding.what, False), (f"Mend: {finding.mend}", True))
        return _part(finding, lines, HALF_WIDTH)
    by = f" {accepted.by}" if accepted.by else ""
    reason = f"\u201c{accepted.reason}\u201d{by}"
    said = ((_headline(finding) + ". Accepted:", True), (reason, False), (finding.what, False))
    return _part(finding, said, HALF_WIDTH)


def _headline(finding: Finding) -> str:
    places = sorted({place.end for place in finding.where if place.end})
    where = f", {' '.join(places)}" if places else ""
    return f"{finding.code}{where}"


def _part(finding: Finding, lines: Sequence[tuple[str, bool]], width: float) -> Part:
    """Set a finding's mark and its lines; return them and their height."""
    items = [mark(finding.weight, (330, 270), 290, PRINT)]
    y = 390.0
    for text, bold in lines:
        drawn, height = paragraph((_INDENT, y), text, width - _INDENT, bold=bold, pitch=_LINE)
        items.append(drawn)
        y += height
    return joined(items), max(y - 390 + 180, 700)
