"""The grid of a file of readings: its separator, its head, its rows by column, its `#` lines."""

import csv
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from planner.problem import InputError, Problem, did_you_mean

COLUMNS = ("from_end", "from_contact", "to_end", "to_contact", "reading")
# What the expected sweep and people write beside the readings; it is not read.
PASSED_OVER = ("expected_ohm", "limit_ohm", "remark")
_SEPARATORS = "\t;,"
_SPOKEN = {"\t": "tabs", ";": "semicolons", ",": "commas"}


@dataclass(frozen=True, slots=True)
class Note:
    """A line `# key: value`, with its line number from 1."""

    line: int
    key: str
    value: str


@dataclass(frozen=True, slots=True)
class Row:
    """The five cells of one reading, stripped, in the order of COLUMNS; `line` from 1."""

    line: int
    cells: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """What the text holds, and what is wrong with its rows."""

    notes: tuple[Note, ...]
    rows: tuple[Row, ...]
    problems: tuple[Problem, ...]


def table_of(text: str, name: str) -> Table:
    """Split a text into notes and rows; InputError where the head does not say what is what.

    The separator is a tab, a semicolon or a comma, whichever the first row has, in this order. A
    head may name the columns in any order; without one they stand in the order of COLUMNS.
    """
    lines = [
        (number, line) for number, line in enumerate(_lines(text), start=1) if line.strip(" \t;,")
    ]
    notes = tuple(_notes(lines))
    body = [(number, line) for number, line in lines if not line.lstrip().startswith("#")]
    if not body:
        raise InputError.single(
            "there are no readings in it",
            name,
            f"Write a row for each reading: {','.join(COLUMNS)}.",
        )
    separator = next((mark for mark in _SEPARATORS if mark in body[0][1]), ",")
    places, width, headed = _head(body[0], separator, name)
    grid = _Grid(separator, places, width, name)
    problems: list[Problem] = []
    rows = tuple(grid.rows(body[1:] if headed else body, problems))
    return Table(notes, rows, tuple(problems))


def _lines(text: str) -> list[str]:
    """Return the lines without their ends; no other mark than these two ends a line."""
    return text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n").split("\n")


def _notes(lines: Sequence[tuple[int, str]]) -> Iterator[Note]:
    for number, line in lines:
        key, colon, value = line.strip().strip('",;\t').lstrip("#").partition(":")
        if line.strip().strip('"').startswith("#") and colon:
            yield Note(number, normal(key), value.strip())


def normal(name: str) -> str:
    """Return a column's or key's name as it is compared: `From end` is `from_end`."""
    return "_".join(name.strip().casefold().replace("-", " ").replace("_", " ").split())


def _cells(line: str, separator: str) -> list[str]:
    """Split one line; csv.Error where a quote is not closed."""
    return [cell.strip() for cell in next(csv.reader([line], delimiter=separator, strict=True))]


def _head(first: tuple[int, str], separator: str, name: str) -> tuple[tuple[int, ...], int, bool]:
    """Return where each of COLUMNS stands, how many columns there are, and if there is a head."""
    number, line = first
    try:
        names = [normal(cell) for cell in _cells(line, separator)]
    except csv.Error:
        names = [normal(cell) for cell in line.replace('"', "").split(separator)]
    known = {*COLUMNS, *PASSED_OVER}
    if not known & set(names):
        return tuple(range(len(COLUMNS))), len(COLUMNS), False
    while names and not names[-1]:
        names.pop()
    problems = tuple(_head_problems(names, f"{name}: row {number}"))
    if problems:
        raise InputError(problems)
    return tuple(names.index(column) for column in COLUMNS), len(names), True


def _head_problems(names: Sequence[str], where: str) -> Iterator[Problem]:
    known = {*COLUMNS, *PASSED_OVER}
    for place, name in enumerate(names, start=1):
        at = f"{where}, column {place}"
        if name not in known:
            free = [column for column in COLUMNS if column not in names]
            mend = did_you_mean(name, free or known)
            yield Problem(f"the column {name!r} is not known here", at, mend)
        elif name in names[: place - 1]:
            yield Problem(f"the column {name!r} stands twice", at, "Keep one of the two.")
    for column in COLUMNS:
        if column not in names:
            yield Problem(f"the column {column!r} is missing", where, "Add it to the head.")


@dataclass(frozen=True, slots=True)
class _Grid:
    separator: str
    places: tuple[int, ...]
    width: int
    name: str

    def rows(self, lines: Sequence[tuple[int, str]], problems: list[Problem]) -> Iterator[Row]:
        for number, line in lines:
            where = f"{self.name}: row {number}"
            try:
                cells = _cells(line, self.separator)
            except csv.Error:
                mend = 'Close the quote: "0,12".'
                problems.append(Problem("a quote is not closed", where, mend))
                continue
            while len(cells) > self.width and not cells[-1]:
                cells.pop()
            if len(cells) == self.width:
                yield Row(number, tuple(cells[place] for place in self.places))
            else:
                problems.append(self._ragged(cells, where))

    def _ragged(self, cells: Sequence[str], where: str) -> Problem:
        what = (
            f"the row has {len(cells)} {'cell' if len(cells) == 1 else 'cells'}, not {self.width}"
        )
        if self.separator == "," and len(cells) > self.width:
            mend = 'Between commas a decimal comma stands in quotes: "0,12"; or write 0.12.'
        else:
            spoken = _SPOKEN[self.separator]
            mend = f"Put {spoken} between the cells, as in the first row, and leave none out."
        return Problem(what, where, mend)
