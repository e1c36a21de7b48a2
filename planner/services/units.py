"""Write what is kept of built units: a certificate for one, a summary of all."""

import csv
import io
from collections.abc import Iterator
from pathlib import Path

from planner.files.atomic import write_atomic
from planner.model.plan import Plan
from planner.problem import InputError
from planner.proving.attachments import attachment_problem
from planner.proving.judging import Judging
from planner.proving.reading_csv import readings_text
from planner.proving.unit_file import Units, load_units, units_path
from planner.proving.units import UnitRecord
from planner.services.cutting import guarded
from planner.services.sheets import PaperChoice, sheet_files
from planner.sheet.certificate import certificate_pages
from planner.sheet.words import Language
from planner.units import number

COLUMNS = (
    "unit", "at", "who", "verdict", "plan_revision", "plan_digest", "plan_changed_since", "meter",
    "paths_good", "paths", "worst_ohm", "pairs_apart", "pairs", "faults", "wiggle_broken",
    "rework", "attachments", "records", "remarks",
)  # fmt: skip


def write_certificate(  # noqa: PLR0913 - each names one choice, by keyword
    plan: Plan,
    plan_path: Path,
    unit: int,
    path: Path,
    *,
    paper: PaperChoice = "a4",
    language: Language = "en",
    one_file: bool = False,
    outlines: bool = False,
) -> tuple[Path, ...]:
    """Write the pages of a unit's latest record to `path` (.pdf or .svg); return the files written.

    A unit that has not passed gets pages that say so. InputError for a unit that there is no record
    of, for another ending, or where it can't be written.
    """
    units = load_units(plan_path)
    record = latest_of(units, unit, plan_path)
    spoilt = [each.digest for each in record.attachments if attachment_problem(plan_path, each)]
    earlier = units.history(unit)[:-1]
    pages = certificate_pages(
        plan, record, earlier=earlier, spoilt=spoilt, paper=paper, language=language
    )
    title = f"Unit {unit} of {plan.order or plan.title or 'a lead'}"
    desc = "What was read on one built unit, and the verdict."
    contents = sheet_files(
        pages, path, title=title, desc=desc, one_file=one_file, outlines=outlines
    )
    for target, data in contents:
        write_atomic(target, data)
    return tuple(target for target, _ in contents)


def latest_of(units: Units, unit: int, plan_path: Path) -> UnitRecord:
    """Return the latest record of a unit; InputError names those that there are."""
    record = units.latest.get(unit)
    if record is None:
        known = ", ".join(map(str, list(units.latest)[:8]))
        mend = f"Kept are {known}." if known else "Prove it first, in the view Prove."
        raise InputError.single(f"there is no unit {unit}", str(units_path(plan_path)), mend)
    return record


def write_unit_readings(plan_path: Path, unit: int, path: Path) -> tuple[Path, ...]:
    """Write what was read of a unit as a file of readings, which can be diagnosed again.

    InputError for a unit that there is no record of, or where it can't be written.
    """
    record = latest_of(load_units(plan_path), unit, plan_path)
    write_atomic(path, readings_text(record.readings).encode("utf-8"))
    return (path,)


def write_summary(plan: Plan, units: Units, path: Path) -> tuple[Path, ...]:
    """Write a row for the latest record of each unit; InputError where it can't be written."""
    write_atomic(path, summary_csv(plan, units).encode("utf-8"))
    return (path,)


def summary_csv(plan: Plan, units: Units) -> str:
    """Return the summary as text: a header, then a row a unit; rows end in CR LF (RFC 4180)."""
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow(COLUMNS)
    judging = Judging(plan)
    for record in units.latest.values():
        writer.writerow(guarded(cell) for cell in _cells(judging, record, units))
    return text.getvalue()


def _cells(judging: Judging, record: UnitRecord, units: Units) -> Iterator[str]:
    found = judging.judged(record)
    own = [path.own_ohm for path in found.paths if path.own_ohm is not None]
    yield from (str(record.number), record.at, record.who, found.verdict)
    yield from (str(record.plan_revision), record.plan_digest)
    yield from ("yes" if judging.is_stale(record) else "no", record.meter.name)
    yield from (str(found.good), str(len(found.paths)), number(max(own), 3) if own else "")
    yield from (str(len(found.open_pairs)), str(len(found.all_pairs)), str(found.faults))
    yield str(sum(entry.state == "broken" for entry in record.wiggle))
    yield from (str(len(record.rework)), str(len(record.attachments)))
    yield from (str(len(units.history(record.number))), " ".join(record.remarks.split()))
