"""The file of units beside a plan: one line for each state of a unit, only ever added to."""

import hashlib
import json
import re
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import BinaryIO

from pydantic import ValidationError

from planner.files.appending import append_line, settled_size
from planner.files.definitions import validated
from planner.files.syntax import parse_json
from planner.problem import InputError, Problem, reason_of
from planner.proving.units import UnitRecord

FORMAT, VERSION = "cupwright-unit", 1
LINE_BYTES = 4_000_000

# The head of a line has one shape in every version, so that its bytes can be checked unread.
_LINE = re.compile(
    rb'\{"format":"cupwright-unit","version":(\d{1,9}),"sha256":"([0-9a-f]{64})","record":(\{.*\})\}',
    re.DOTALL,
)
_START = b'{"format":"cupwright-unit"'
_NUMBER = re.compile(rb'"record":\{"number":(\d{1,6}),')
_NEEDS_A_LOOK = re.compile(rb"\\[ubf]|[\x80-\xff]")
_TORN = "It was being written when the program or the machine stopped; enter that unit again."
_SPOILT = "Something changed it since it was written; restore the file from a copy if you have one."

_STRANGE = "Nothing else is kept in this file; take that line out."


@dataclass(frozen=True)
class Units:
    """What a file of units holds, in the order in which it was written, and what was dropped."""

    records: tuple[UnitRecord, ...] = ()
    dropped: tuple[Problem, ...] = ()

    @cached_property
    def latest(self) -> dict[int, UnitRecord]:
        """The last state of each unit, by number, in the order of the numbers."""
        found = {record.number: record for record in self.records}
        return dict(sorted(found.items()))

    def history(self, number: int) -> tuple[UnitRecord, ...]:
        """Return every state of a unit, the oldest first."""
        return tuple(record for record in self.records if record.number == number)

    @property
    def next_number(self) -> int:
        """The number after the highest."""
        return max(self.latest, default=0) + 1


def units_path(plan_path: Path) -> Path:
    """Return the file of units that goes with a plan's file."""
    target = plan_path.resolve()
    return target.with_name(f"{target.stem}.units.jsonl")


def append_unit(plan_path: Path, record: UnitRecord) -> None:
    """Add the state of a unit to the file beside the plan; InputError if it can't be written."""
    path = units_path(plan_path)
    line = unit_line(record)
    if len(line) >= LINE_BYTES:
        raise InputError.single(
            f"unit {record.number} takes {len(line) / 1e6:.1f} MB, more than the "
            f"{LINE_BYTES / 1e6:.0f} MB of a line",
            str(path),
            "Shorten its remarks, or keep them in a file and attach that.",
        )
    refuse_strange(path)
    append_line(path, line)


def refuse_strange(path: Path) -> None:
    """Raise InputError where something else than a plain file stands: a link leads elsewhere."""
    if path.is_symlink() or (path.exists() and not path.is_file()):
        raise InputError.single("it is no plain file", str(path), "Move it out of the way.")


def unit_line(record: UnitRecord) -> bytes:
    """Return the line of a record, without its end."""
    values = record.model_dump(mode="json", exclude_defaults=True)
    # In full: the meter that was used must not change with what is typical later.
    values.setdefault("readings", {})["meter"] = record.meter.model_dump(mode="json")
    body = json.dumps(values, separators=(",", ":")).encode("ascii")
    digest = hashlib.sha256(body).hexdigest().encode()
    head = b'{"format":"%b","version":%d,"sha256":"%b","record":'
    return head % (FORMAT.encode(), VERSION, digest) + body + b"}"


def load_units(plan_path: Path) -> Units:
    """Read the file beside a plan; none is no units. InputError only where it can't be read.

    A line that is torn, spoilt, strange or too long is dropped with its reason; all others load.
    """
    path = units_path(plan_path)
    records: list[UnitRecord] = []
    dropped: list[Problem] = []
    refuse_strange(path)
    try:
        size = settled_size(path)
        with path.open("rb") as stream:
            for number, line in enumerate(_lines(stream, size), start=1):
                if not line.strip():
                    continue
                try:
                    records.append(_record(line, f"{path}: line {number}"))
                except InputError as error:
                    dropped.append(_dropped(line, error))
    except FileNotFoundError:
        return Units()
    except OSError as error:
        what = f"it can't be read: {reason_of(error)}"
        raise InputError.single(what, str(path), "Check the file and its permissions.") from None
    return Units(tuple(records), tuple(dropped))


def _lines(stream: BinaryIO, size: int) -> Iterator[bytes]:
    """Yield each line of the first `size` bytes with its end; of a too long one the beginning."""
    while line := stream.readline(min(LINE_BYTES, size - stream.tell())):
        rest = line
        while len(rest) == LINE_BYTES and not rest.endswith(b"\n"):
            rest = stream.readline(LINE_BYTES)
        yield line


def _dropped(line: bytes, error: InputError) -> Problem:
    """Say which unit was dropped, as far as its line tells, and why."""
    first, more = error.problems[0], len(error.problems) - 1
    named = _NUMBER.search(line)
    unit = f"unit {int(named.group(1))}" if named else "a unit"
    and_more = f" (and {more} more)" if more else ""
    return Problem(f"{unit} was dropped: {first.what}{and_more}", first.where, first.mend)


def _record(line: bytes, where: str) -> UnitRecord:
    """Return the record of a line; InputError says what keeps it from being one."""
    if len(line) >= LINE_BYTES and not line.endswith(b"\n"):
        what = f"the line has more than {LINE_BYTES / 1e6:.0f} MB"
        raise InputError.single(what, where, "Check that it is the right file.")
    match = _LINE.fullmatch(line.rstrip(b"\r\n"))
    if match is None:
        if line.startswith(_START) or _START.startswith(line):
            raise InputError.single("its line is torn", where, _TORN)
        raise InputError.single("the line is no unit of ours", where, _STRANGE)
    version, digest, body = match.groups()
    if int(version) != VERSION:
        what = f"it is of version {int(version)}, this Cupwright reads {VERSION}"
        raise InputError.single(what, where, "Install a newer Cupwright to read it.")
    if hashlib.sha256(body).hexdigest().encode() != digest:
        if not line.endswith(b"\n"):  # torn where it looks whole
            raise InputError.single("its line is torn", where, _TORN)
        raise InputError.single("its digest does not fit what it holds", where, _SPOILT)
    return unit_from(body, where)


def unit_from(body: bytes, where: str) -> UnitRecord:
    """Make a record of its JSON; InputError if it is not valid.

    What is plain ASCII without an escape that could hide a control character goes the fast way;
    anything else, and all that is wrong, the way that checks every text and says what is wrong.
    """
    if not _NEEDS_A_LOOK.search(body):
        with suppress(ValidationError):
            return UnitRecord.model_validate_json(body, strict=True)
    try:
        text = body.decode("utf-8")
    except UnicodeDecodeError:
        raise InputError.single("it is not text in UTF-8", where, _SPOILT) from None
    return validated(UnitRecord, parse_json(text, Path(where)), Path(where))
