"""Readings as comma-separated values: what a tester or a spreadsheet hands over, and back."""

import csv
import io
from pathlib import Path

from planner.files.limits import read_text
from planner.model.plan import Plan
from planner.problem import InputError
from planner.proving.agreeing import Gathering
from planner.proving.csv_places import Finder, Missing
from planner.proving.csv_table import COLUMNS, Row, Slip, entry_of, problems_of, table_of
from planner.proving.entries import Entry, entry_text
from planner.proving.meter_lines import meter_of, meter_text
from planner.proving.reading import Contact, Reading, Readings

READINGS_BYTES = 4_000_000


def read_readings(path: Path, plan: Plan) -> Readings:
    """Read a file of readings; InputError lists all that is wrong with it, by row and column."""
    return readings_from_text(read_text(path, READINGS_BYTES), plan, str(path))


def readings_from_text(text: str, plan: Plan, name: str) -> Readings:
    """Read readings from text; `name` is only for the message.

    A row with an empty reading was not read: it is unknown, not open. Of several rows of a pair
    that agree the last counts (see `agreeing`).
    """
    table = table_of(text, name)
    slips = list(table.slips)
    meter = meter_of(table.notes, slips)
    finder, gathering = Finder(plan), Gathering(meter)
    for row in table.rows:
        reading = _reading(row, finder, slips)
        if reading is not None:
            gathering.take(row.line, reading)
    slips += gathering.slips
    if slips:
        raise InputError(problems_of(slips, name))
    return Readings(meter=meter, readings=gathering.readings)


def _reading(row: Row, finder: Finder, slips: list[Slip]) -> Reading | None:
    """Return the reading of a row; None where there is none, or something is wrong with it."""
    known = len(slips)
    one, other = _contact(row, 0, finder, slips), _contact(row, 2, finder, slips)
    entry = entry_of(row.line, COLUMNS[4], row.cells[4], slips)
    if one is not None and one == other:
        what = f"{one[1]} at {one[0]} is measured against itself"
        slips.append(Slip(row.line, COLUMNS[3], what, "Delete the row."))
    if one is None or other is None or entry is None or len(slips) > known:
        return None
    return Reading(one=one, other=other, joined=entry.joined, ohm=entry.ohm)


def _contact(row: Row, first: int, finder: Finder, slips: list[Slip]) -> Contact | None:
    """Return the contact that two cells from `first` on name."""
    found = finder.find(row.cells[first], row.cells[first + 1])
    if isinstance(found, Missing):
        slips.append(Slip(row.line, COLUMNS[first + found.column], found.what, found.mend))
        return None
    return found


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
