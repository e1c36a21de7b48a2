"""A sample's readings as comma-separated values: which contact to which, and what was shown."""

import csv
import io
import re
from difflib import get_close_matches
from pathlib import Path

from planner.files.limits import read_text
from planner.problem import InputError
from planner.proving.csv_table import (
    SAMPLE_COLUMNS,
    Note,
    Row,
    Slip,
    entry_of,
    problems_of,
    table_of,
)
from planner.proving.entries import Entry, entry_text, shown
from planner.proving.identifying.sample import MOST_CONTACTS, SampleReading, SampleReadings
from planner.proving.meter_lines import meter_of, meter_text

SAMPLE_BYTES = 1_000_000
_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]{0,63}")
_LISTS = ("contacts", "shells")


def read_sample(path: Path) -> SampleReadings:
    """Read a sample's readings; InputError lists all that is wrong, by row and column."""
    return sample_from_text(read_text(path, SAMPLE_BYTES), str(path))


def sample_from_text(text: str, name: str) -> SampleReadings:
    """Read a sample's readings from text; `name` is only for the message.

    A row with an empty reading was not read: it is unknown, not open, but names its contacts. A
    pair may stand twice, the other way round the second time; the same way round twice is a slip.
    """
    table = table_of(text, name, SAMPLE_COLUMNS)
    slips = list(table.slips)
    meter = meter_of((note for note in table.notes if note.key not in _LISTS), slips)
    lists = {note.key: _names(note, slips) for note in table.notes if note.key in _LISTS}
    slips += [_misspelt(note) for note in table.notes if _nearly(note.key)]
    readings = _Rows(slips).readings(table.rows)
    named = [name for row in table.rows for name in row.cells[:2] if _NAME.fullmatch(name)]
    shells = lists.get("shells", ())
    contacts = tuple(dict.fromkeys((*lists.get("contacts", ()), *named, *shells)))
    if slips:
        raise InputError(problems_of(slips, name))
    _check_count(len(contacts), name)
    return SampleReadings(contacts=contacts, readings=readings, meter=meter, shells=shells)


def _check_count(count: int, name: str) -> None:
    if count < 2:
        what = "a sample has two contacts at least"
        raise InputError.single(what, name, "Write a row for each reading: from,to,reading.")
    if count > MOST_CONTACTS:
        what = f"there are {count} contacts, more than the {MOST_CONTACTS} that are read"
        raise InputError.single(what, name, "Check that it is the right file.")


def _names(note: Note, slips: list[Slip]) -> tuple[str, ...]:
    names = tuple(note.value.replace(",", " ").replace(";", " ").split())
    slips += [_no_name(name, note.line, "") for name in names if not _NAME.fullmatch(name)]
    return names


def _nearly(key: str) -> list[str]:
    """Return the key of ours that a line's key is nearly, if it is."""
    return [] if key in _LISTS else get_close_matches(key, _LISTS, n=1, cutoff=0.8)


def _misspelt(note: Note) -> Slip:
    what = f"the line '# {note.key}:' is not known here"
    return Slip(note.line, "", what, f"Did you mean '# {_nearly(note.key)[0]}:'?")


def _no_name(typed: str, line: int, column: str) -> Slip:
    if not typed:
        return Slip(line, column, "the contact is missing", "Write its name or number.")
    mend = "Use letters, digits, dot, hyphen and underscore, at most 64, such as 3 or shell."
    return Slip(line, column, f"{shown(typed)} can't be a contact", mend)


class _Rows:
    def __init__(self, slips: list[Slip]) -> None:
        self.slips = slips
        self._seen: dict[tuple[str, str], int] = {}

    def readings(self, rows: tuple[Row, ...]) -> tuple[SampleReading, ...]:
        """Return the readings of the rows; what is wrong with them goes to the slips."""
        read = [self._reading(row) for row in rows]
        return tuple(each for each in read if each is not None)

    def _reading(self, row: Row) -> SampleReading | None:
        one, other, typed = row.cells
        known = len(self.slips)
        for contact, column in ((one, "from"), (other, "to")):
            if not _NAME.fullmatch(contact):
                self.slips.append(_no_name(contact, row.line, column))
        if one and one == other:
            what = f"{one} is measured against itself"
            self.slips.append(Slip(row.line, "to", what, "Delete the row."))
        entry = entry_of(row.line, "reading", typed, self.slips)
        if entry is None or len(self.slips) > known:
            return None
        return self._first(
            row, SampleReading(one=one, other=other, joined=entry.joined, ohm=entry.ohm)
        )

    def _first(self, row: Row, reading: SampleReading) -> SampleReading | None:
        way = (reading.one, reading.other)
        if way in self._seen:
            what = f"{way[0]} to {way[1]} stands in row {self._seen[way]} already"
            mend = "Keep the row that is right; the other way round is written from the other side."
            self.slips.append(Slip(row.line, "", what, mend))
            return None
        self._seen[way] = row.line
        return reading


def sample_text(sample: SampleReadings) -> str:
    """Return a sample's readings as a file that reads back the same; rows end in CR LF."""
    text = io.StringIO()
    for line in meter_text(sample.meter):
        text.write(f"{line}\r\n")
    text.write(f"# contacts: {' '.join(sample.contacts)}\r\n")
    if sample.shells:
        text.write(f"# shells: {' '.join(sample.shells)}\r\n")
    writer = csv.writer(text)
    writer.writerow(SAMPLE_COLUMNS)
    for it in sample.readings:
        writer.writerow((it.one, it.other, entry_text(Entry(it.joined, it.ohm))))
    return text.getvalue()
