"""Write the cut list of a plan, for one lead or a run, as comma-separated values."""

import csv
import io
from collections.abc import Iterator, Sequence
from pathlib import Path

from planner.checks.finding import Finding
from planner.dryfit.cut_lengths import Strip
from planner.dryfit.cutting import CutList, batch, cut_list
from planner.files.atomic import write_atomic
from planner.model.plan import Plan
from planner.units import number

COLUMNS = (
    "list", "kind", "item", "stock", "bore_mm", "length_mm",
    "strip_mm", "pieces", "total_mm", "for", "note",
)  # fmt: skip
# A spreadsheet takes a cell that begins so for a formula, also in the wide forms of East Asia.
_FORMULA = tuple("=+-@\t\r\n＝＋－＠")
_DIGITS = 3

Row = dict[str, str]


def write_cut_list(
    plan: Plan, findings: Sequence[Finding], path: Path, *, leads: int = 1
) -> tuple[Path, ...]:
    """Write the cut list of a run of `leads` to `path` and return the file written.

    InputError where it can't be written; ValueError for less than one lead.
    """
    write_atomic(path, cut_csv(plan, findings, leads=leads).encode("utf-8"))
    return (path,)


def cut_csv(plan: Plan, findings: Sequence[Finding], *, leads: int = 1) -> str:
    """Return the cut list as text: a header, then a row a line; rows end in CR LF (RFC 4180).

    With a stop, nothing may be cut: the rows are the stops. ValueError for less than one lead.
    """
    text = io.StringIO()
    writer = csv.DictWriter(text, COLUMNS, restval="")
    writer.writeheader()
    stops = [finding for finding in findings if finding.weight == "stop"]
    rows = map(_stop, stops) if stops else _rows(plan, leads)
    writer.writerows({key: guarded(cell) for key, cell in row.items()} for row in rows)
    return text.getvalue()


def guarded(text: str) -> str:
    """Put an apostrophe before what a spreadsheet would run as a formula."""
    return f"'{text}" if text.startswith(_FORMULA) else text


def _stop(finding: Finding) -> Row:
    return {"list": "stop", "kind": finding.code, "item": finding.what, "note": finding.mend}


def _rows(plan: Plan, leads: int) -> Iterator[Row]:
    totals, cuts = batch(plan, leads).totals, cut_list(plan)
    yield from _lines(cuts, leads)
    yield from _ends(plan, cuts, leads)
    yield from _openings(cuts, leads)
    for total in totals:
        yield {
            "list": "total",
            "kind": total.kind,
            "item": total.title,
            "stock": total.stock,
            "bore_mm": _figure(total.bore_mm),
            "pieces": str(total.count),
            "total_mm": _figure(total.length_mm),
        }


def _lines(cuts: CutList, leads: int) -> Iterator[Row]:
    for line in cuts.lines:
        pieces = line.count * leads
        yield {
            "list": "cut",
            "kind": line.kind,
            "item": line.title,
            "stock": line.stock,
            "bore_mm": _figure(line.bore_mm),
            "length_mm": _figure(line.length_mm),
            "pieces": str(pieces),
            "total_mm": _figure(line.length_mm * pieces),
            "for": " ".join(line.where),
            "note": line.note,
        }


def _ends(plan: Plan, cuts: CutList, leads: int) -> Iterator[Row]:
    """Yield, end by end, how much jacket to take off if there is any, then each lead."""
    for end in cuts.ends:
        if end.known and not end.fanned:
            yield _at("jacket", "", end.end, leads) | {"length_mm": _figure(end.jacket_off_mm)}
        for strip in cuts.strips:
            if strip.end == end.end:
                yield _lead(plan, strip, leads)


def _lead(plan: Plan, strip: Strip, leads: int) -> Row:
    conductor = plan.conductor_by_id[strip.conductor]
    spare = conductor.kind == "core" and strip.strip_mm == 0
    return _at("spare" if spare else conductor.kind, strip.conductor, strip.end, leads) | {
        "length_mm": _figure(strip.cut_mm),
        "strip_mm": _figure(strip.strip_mm),
    }


def _openings(cuts: CutList, leads: int) -> Iterator[Row]:
    for opening in cuts.openings:
        yield _at("opening", f"from {opening.start}", opening.split, leads) | {
            "length_mm": _figure(opening.keep_mm),
            "strip_mm": _figure(opening.off_mm),
            "note": "spliced" if opening.spliced else "",
        }


def _at(kind: str, item: str, place: str, leads: int) -> Row:
    return {"list": "strip", "kind": kind, "item": item, "for": place, "pieces": str(leads)}


def _figure(value: float) -> str:
    """Print a figure with a decimal point; nothing for 0, where there is no such size."""
    return number(value, _DIGITS) if value else ""
