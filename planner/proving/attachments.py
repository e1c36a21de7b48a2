"""Files attached to a unit: copies beside the plan, named and checked by their digest."""

import hashlib
from pathlib import Path

from planner.files.atomic import write_atomic
from planner.files.limits import forbidden_mark, read_bytes
from planner.problem import InputError, Problem, reason_of
from planner.proving.unit_file import refuse_strange, units_path
from planner.proving.units import Attachment

ATTACHMENT_BYTES = 25_000_000
_MOST_SUFFIX = 8
_MOST_NAME = 120


def attachments_folder(plan_path: Path) -> Path:
    """Return the folder of the attachments that go with a plan's file."""
    path = units_path(plan_path)
    return path.with_name(path.name.removesuffix(".jsonl"))


def attach(plan_path: Path, file: Path) -> Attachment:
    """Keep a copy of `file` beside the plan; InputError if it can't be read, kept, or is too big.

    The copy is whole before a record names it. The same file twice is one copy.
    """
    data = read_bytes(file, ATTACHMENT_BYTES)
    suffix = file.suffix.lower()
    plain = suffix[1:].isascii() and suffix[1:].isalnum() and len(suffix) <= _MOST_SUFFIX + 1
    attachment = Attachment(
        name=_plain(file.name),
        digest=hashlib.sha256(data).hexdigest(),
        suffix=suffix if plain else "",
        size_bytes=len(data),
    )
    target = kept_at(plan_path, attachment)
    _make_folder(target.parent)
    if attachment_problem(plan_path, attachment) is not None:
        refuse_strange(target)
        write_atomic(target, data)
    return attachment


def kept_at(plan_path: Path, attachment: Attachment) -> Path:
    """Return where the copy of an attachment lies; it need not be there."""
    return attachments_folder(plan_path) / attachment.file_name


def attachment_problem(plan_path: Path, attachment: Attachment) -> Problem | None:
    """Say what is wrong with the copy of an attachment: gone, unreadable, changed."""
    path = kept_at(plan_path, attachment)
    mend = "Restore it from a copy, or attach the file again."
    try:
        data = read_bytes(path, ATTACHMENT_BYTES)
    except InputError as error:
        first = error.problems[0]
        return Problem(f"{attachment.name!r}: {first.what}", str(path), mend)
    if hashlib.sha256(data).hexdigest() != attachment.digest:
        what = f"{attachment.name!r} was changed since it was attached"
        return Problem(what, str(path), mend)
    return None


def _make_folder(folder: Path) -> None:
    if folder.is_symlink():
        raise InputError.single("it is a link to elsewhere", str(folder), "Move it out of the way.")
    try:
        folder.mkdir(exist_ok=True)
    except OSError as error:
        what = f"the folder can't be made: {reason_of(error)}"
        raise InputError.single(what, str(folder), "Choose another place for the plan.") from error


def _plain(name: str) -> str:
    """Return a file's name as a record can hold it: no control characters, not too long."""
    kept = "".join(
        mark if mark.isprintable() and not forbidden_mark(mark) else "_" for mark in name
    )
    return kept.strip()[-_MOST_NAME:] or "file"
