"""Readings as comma-separated values: what a tester or a spreadsheet hands over, and back."""

import csv
import io
from pathlib import Path

from planner.files.limits import read_text
from planner.model.plan import Plan
from planner.problem import InputError, Problem
from planner.proving.agreeing import Gathering
from planner.proving.csv_places import Finder, Missing
from planner.proving.csv_table import COLUMNS, Row, table_of
from planner.proving.entries import Entry, EntryError, entry_text, parse_entry
from planner.proving.meter_lines import meter_of, meter_text
from planner.proving.reading import Contact, Reading, Readings

READINGS_BYTES = 4_000_000
MOST_PROBLEMS = 200


def read_readings(path: Path, plan: Plan) -> Readings:
    """Read a file of readings; InputError lists all that is wrong with it, by row and column."""
    return readings_from_text(read_text(path, READINGS_BYTES), plan, str(path))


def readings_from_text(text: str, plan: Plan, name: str) -> Readings:
    """Read readings from text; `name` is only for the message.

    A row with an empty reading was not read: it is unknown, not open. Of several rows of a pair
    that agree the last counts (see `agreeing`).
    """
    table = table_of(text, name)
    problems = list(table.problems)
    meter = meter_of(table.notes, name, problems)
    finder, gathering = Finder(plan), Gathering(meter, name)
    for row in table.rows:
        reading = _reading(row, finder, name, problems)
        if reading is not None:
            gathering.take(row.line, reading)
    problems += gathering.problems
    if problems:
        raise InputError(_foremost(problems, name))
    return Readings(meter=meter, readings=gathering.readings)


def _reading(row: Row, finder: Finder, name: str, problems: list[Problem]) -> Reading | None:
    """Return the reading of a row; None where there is none, or something is wrong with it."""
    known = len(problems)
    one = _contact(row, 0, finder, name, problems)
    other = _contact(row, 2, finder, name, problems)
    entry: Entry | None = None
    if row.cells[4]:
        try:
            entry = parse_entry(row.cells[4])
        except EntryError as error:
            problems.append(error.at(_where(name, row, 4)))
    if one is not None and one == other:
        what = f"{one[1]} at {one[0]} is measured against itself"
        problems.append(Problem(what, _where(name, row, 3), "Delete the row."))
    if one is None or other is None or entry is None or len(problems) > known:
        return None
    return Reading(one=one, other=other, joined=entry.joined, ohm=entry.ohm)


def _contact(
    row: Row, first: int, finder: Finder, name: str, problems: list[Problem]
) -> Contact | None:
    found = finder.find(row.cells[first], row.cells[first + 1])
    if not isinstance(found, Missing):
        return found
    where = _where(name, row, first + found.column)
    problems.append(Problem(found.what, where, found.mend))
    return None


def _where(name: str, row: Row, column: int) -> str:
    return f"{name}: row {row.line}, column {COLUMNS[column]}"


def _foremost(problems: list[Problem], name: str) -> list[Problem]:
    """Return the first problems; of very many, the rest only as a number."""
    if len(problems) <= MOST_PROBLEMS:
        return problems
    more = len(problems) - MOST_PROBLEMS
    rest = Problem(f"there are {more} more problems", name, "Mend these first, then read it again.")
    return [*problems[:MOST_PROBLEMS], rest]


def readings_text(readings: Readings) -> str:
    """Return readings as a file that reads back the same; rows end in CR LF (RFC 4180)."""
    text = io.StringIO()
    for line in meter_text(readings.meter):
        text.write(f"{line}\r\n")
    writer = csv.writer(text)
    writer.writerow(COLUMNS)
    for reading in readings.by_pair.values():
        shown = entry_text(Entry(reading.joined, reading.ohm))
        writer.writerow((*reading.one, *reading.other, shown))
    return text.getvalue()
