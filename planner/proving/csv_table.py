"""The grid of a file of readings: its separator, its head, its rows by column, its `#` lines."""

import csv
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from planner.problem import InputError, Problem, did_you_mean
from planner.proving.entries import Entry, EntryError, parse_entry

COLUMNS = ("from_end", "from_contact", "to_end", "to_contact", "reading")
# What the expected sweep and people write beside the readings; it is not read.
PASSED_OVER = ("expected_ohm", "limit_ohm", "remark")
# Of a sample's readings: its contacts belong to no end.
SAMPLE_COLUMNS = ("from", "to", "reading")
MOST_PROBLEMS = 200
_SEPARATORS = "\t;,"
_FILLED_UP = re.compile(r"[,;\t]{3,}$")
_SPOKEN = {"\t": "tabs", ";": "semicolons", ",": "commas"}


@dataclass(frozen=True, slots=True)
class Slip:
    """One thing wrong in a row: the line from 1, the column's name or nothing, what, the mend."""

    line: int
    column: str
    what: str
    mend: str

    def problem(self, name: str) -> Problem:
        """Return it as a problem of the file `name`."""
        column = f", column {self.column}" if self.column else ""
        return Problem(self.what, f"{name}: row {self.line}{column}", self.mend)


@dataclass(frozen=True, slots=True)
class Note:
    """A line `# key: value`, with its line number from 1."""

    line: int
    key: str
    value: str


@dataclass(frozen=True, slots=True)
class Row:
    """The cells of one reading, stripped, in the order of the columns; `line` from 1."""

    line: int
    cells: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """What the text holds, and what is wrong with its rows."""

    notes: tuple[Note, ...]
    rows: tuple[Row, ...]
    slips: tuple[Slip, ...]


def entry_of(line: int, column: str, typed: str, slips: list[Slip]) -> Entry | None:
    """Return what a cell says was read; None where it is empty, or else a slip."""
    if not typed:
        return None
    try:
        return parse_entry(typed)
    except EntryError as error:
        slips.append(Slip(line, column, error.what, error.mend))
        return None


def problems_of(slips: list[Slip], name: str) -> list[Problem]:
    """Return the problems by row; of very many the first ones and how many more there are."""
    slips.sort(key=lambda slip: slip.line)
    problems = [slip.problem(name) for slip in slips[:MOST_PROBLEMS]]
    if len(slips) > MOST_PROBLEMS:
        what = f"there are {len(slips) - MOST_PROBLEMS} more problems"
        problems.append(Problem(what, name, "Mend these first, then read it again."))
    return problems


def table_of(text: str, name: str, columns: Sequence[str] = COLUMNS) -> Table:
    """Split a text into notes and rows; InputError where the head does not say what is what.

    The separator is a tab, a semicolon or a comma, whichever the first row has, in this order. A
    head may name the columns in any order; without one they stand in the order of `columns`.
    """
    lines = [
        (number, line) for number, line in enumerate(_lines(text), start=1) if line.strip(" \t;,")
    ]
    notes = tuple(_notes(lines))
    body = [(number, line) for number, line in lines if not _remark(line)]
    if not body:
        raise InputError.single(
            "there are no readings in it",
            name,
            f"Write a row for each reading: {','.join(columns)}.",
        )
    separator = next((mark for mark in _SEPARATORS if mark in body[0][1]), ",")
    places, width, headed = _head(body[0], separator, name, columns)
    grid, slips = _Grid(separator, places, width), list[Slip]()
    rows = tuple(grid.rows(body[1:] if headed else body, slips))
    return Table(notes, rows, tuple(slips))


def _lines(text: str) -> list[str]:
    """Return the lines without their ends; no other mark than these two ends a line."""
    return text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n").split("\n")


def _remark(line: str) -> str:
    """Return a `#` line as it was before a spreadsheet quoted it and filled it up with cells."""
    if "#" not in line:
        return ""
    bare = _FILLED_UP.sub("", line.strip())
    if bare.startswith('"#'):
        bare = bare[1:].removesuffix('"').replace('""', '"')
    return bare if bare.startswith("#") else ""


def _notes(lines: Sequence[tuple[int, str]]) -> Iterator[Note]:
    for number, line in lines:
        key, colon, value = _remark(line).lstrip("#").partition(":")
        if colon:
            yield Note(number, normal(key), value.strip())


def normal(name: str) -> str:
    """Return a column's or key's name as it is compared: `From end` is `from_end`."""
    return "_".join(name.strip().casefold().replace("-", " ").replace("_", " ").split())


def _cells(line: str, separator: str) -> list[str]:
    """Split one line; csv.Error where a quote is not closed."""
    if '"' not in line:  # nearly every line: twice as fast without the reader
        return [cell.strip() for cell in line.split(separator)]
    return [cell.strip() for cell in next(csv.reader([line], delimiter=separator, strict=True))]


def _head(
    first: tuple[int, str], separator: str, name: str, columns: Sequence[str]
) -> tuple[tuple[int, ...], int, bool]:
    """Return where each of `columns` stands, how many cells a row has, and if there is a head."""
    number, line = first
    try:
        names = [normal(cell) for cell in _cells(line, separator)]
    except csv.Error:
        names = [normal(cell) for cell in line.replace('"', "").split(separator)]
    known = {*columns, *PASSED_OVER}
    if not known & set(names):
        return tuple(range(len(columns))), len(columns), False
    while names and not names[-1]:
        names.pop()
    slips = tuple(_head_slips(names, number, columns))
    if slips:
        raise InputError(slip.problem(name) for slip in slips)
    return tuple(names.index(column) for column in columns), len(names), True


def _head_slips(names: Sequence[str], line: int, columns: Sequence[str]) -> Iterator[Slip]:
    known = {*columns, *PASSED_OVER}
    for place, name in enumerate(names, start=1):
        if name not in known:
            free = [column for column in columns if column not in names]
            mend = did_you_mean(name, free or known)
            yield Slip(line, str(place), f"the column {name!r} is not known here", mend)
        elif name in names[: place - 1]:
            yield Slip(
                line, str(place), f"the column {name!r} stands twice", "Keep one of the two."
            )
    for column in columns:
        if column not in names:
            yield Slip(line, "", f"the column {column!r} is missing", "Add it to the head.")


@dataclass(frozen=True, slots=True)
class _Grid:
    separator: str
    places: tuple[int, ...]
    width: int

    def rows(self, lines: Sequence[tuple[int, str]], slips: list[Slip]) -> Iterator[Row]:
        for number, line in lines:
            try:
                cells = _cells(line, self.separator)
            except csv.Error:
                slips.append(Slip(number, "", "a quote is not closed", 'Close it: "0,12".'))
                continue
            while len(cells) > self.width and not cells[-1]:
                cells.pop()
            if len(cells) == self.width:
                yield Row(number, tuple(cells[place] for place in self.places))
            else:
                slips.append(self._ragged(cells, number))

    def _ragged(self, cells: Sequence[str], number: int) -> Slip:
        found = "1 cell" if len(cells) == 1 else f"{len(cells)} cells"
        what = f"the row has {found}, not {self.width}"
        if self.separator == "," and len(cells) > self.width:
            mend = 'Between commas a decimal comma stands in quotes: "0,12"; or write 0.12.'
        else:
            spoken = _SPOKEN[self.separator]
            mend = f"Put {spoken} between the cells, as in the first row, and leave none out."
        return Slip(number, "", what, mend)
