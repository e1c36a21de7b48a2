"""Every revision of a definition that was ever saved, and who changed what and why.

`history/KIND/ID/` holds one file a revision, named by revision and digest and never overwritten,
and `changes.jsonl`, which only grows. A change is written down before it is carried out, so a kill
in between leaves a revision that nothing took up, told as such, and loses none.
"""

import hashlib
import json
import re
from collections.abc import Iterator
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from planner.files.appending import append_line
from planner.files.atomic import write_atomic
from planner.files.definitions import parse_definition
from planner.files.folders import check_inside
from planner.files.limits import DEFINITION_BYTES, read_bytes, read_text, without_forbidden
from planner.model.definition import Definition, DefinitionKind
from planner.problem import InputError

HISTORY_FOLDER = "history"
LOG_NAME = "changes.jsonl"
LOG_BYTES = 20_000_000
# On Windows such a name is a device, whatever its ending, and a dot at the end is cut off
# (Microsoft, Naming Files, Paths, and Namespaces; from memory).
_NO_FILE = re.compile(r"(con|prn|aux|nul|com\d|lpt\d)(\..*)?|.*\.", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Change:
    """One change: when (ISO, UTC), by whom, what was done, why; the digests it led from and to."""

    id: str
    revision: int
    at: str
    who: str
    what: str
    why: str
    before: str
    after: str


@dataclass(frozen=True, slots=True)
class Kept:
    """One revision that is kept: its file, its change if one is written down.

    `taken_up` is False of a revision whose save was cut short before it became the current one.
    """

    revision: int
    digest: str
    path: Path
    change: Change | None
    taken_up: bool

    def record(self) -> Definition:
        """Read it; InputError if the file was damaged since."""
        text = read_text(self.path, DEFINITION_BYTES)
        if not digest_of(text).startswith(self.digest):
            what = "the file is not what was kept"
            raise InputError.single(what, str(self.path), "Take it from a copy of the folder.")
        return parse_definition(text, self.path)


def digest_of(text: str) -> str:
    """Return the SHA-256 digest of a file's text, 64 hexadecimal digits."""
    return hashlib.sha256(text.encode()).hexdigest()


def file_stem(record_id: str) -> str:
    """Return the id as a name that a file may have on every system."""
    return longer_stem(record_id) if _NO_FILE.fullmatch(record_id) else record_id


def longer_stem(record_id: str) -> str:
    """Return a name for an id whose own name can't be had."""
    return f"{record_id}~{digest_of(record_id)[:6]}"


class History:
    """What was kept of one definition in one folder."""

    def __init__(self, folder: Path, kind: DefinitionKind, record_id: str) -> None:
        self._root = folder
        self.folder = folder / HISTORY_FOLDER / kind / file_stem(record_id)
        self._id = record_id

    def keep(self, text: str, revision: int) -> None:
        """Keep a revision's text, if it is not kept yet; InputError if it can't be written."""
        path = self.folder / f"{revision:04}-{digest_of(text)[:16]}.toml"
        if not path.exists():
            check_inside(path, self._root)
            self.folder.mkdir(parents=True, exist_ok=True)
            write_atomic(path, text.encode())

    def note(self, change: Change) -> None:
        """Add a line to the log, whole or not at all; InputError if it can't be."""
        path = self.folder / LOG_NAME
        check_inside(path, self._root)
        self.folder.mkdir(parents=True, exist_ok=True)
        # ASCII: no name of anyone can spoil the log.
        append_line(path, json.dumps(asdict(change)).encode("ascii"))

    def changes(self) -> tuple[Change, ...]:
        """Return what is written down, the oldest first; a torn or spoilt line is passed over."""
        return tuple(each for each in self._written() if each.id == self._id)

    def revisions(self, current: str) -> tuple[Kept, ...]:
        """Return what is kept, the oldest first; `current` is the digest of the file in use."""
        changes = {each.after[:16]: each for each in self.changes()}
        used = {current[:16], *(each.before[:16] for each in changes.values())}
        found = (
            Kept(revision, digest, path, changes.get(digest), digest in used)
            for revision, digest, path in sorted(self._files())
        )
        others = {each.after[:16] for each in self._written() if each.id != self._id}
        return tuple(each for each in found if self._is_ours(each, others))

    def _is_ours(self, kept: Kept, others: set[str]) -> bool:
        """Tell ours from one of an id in another case, where a drive makes both one folder."""
        if kept.change is not None or kept.taken_up:
            return True
        try:
            return kept.digest not in others and kept.record().id == self._id
        except InputError:
            return True  # nobody can tell whose it was: its damage is to be seen

    def _written(self) -> Iterator[Change]:
        try:
            lines = read_bytes(self.folder / LOG_NAME, LOG_BYTES).split(b"\n")
        except InputError:
            return
        yield from (each for each in map(_change, lines) if each is not None)

    def kept_as(self, digest: str) -> Definition | None:
        """Return the revision with this digest, or None if it is not kept or was damaged."""
        found = [it for it in self._files() if it[1] == digest[:16]]
        try:
            return Kept(*found[0], None, taken_up=True).record() if found else None
        except InputError:
            return None

    def _files(self) -> Iterator[tuple[int, str, Path]]:
        for path in self.folder.glob("*-*.toml"):
            revision, _dash, digest = path.stem.partition("-")
            if revision.isdigit() and len(digest) == 16:
                yield int(revision), digest, path


def _change(line: bytes) -> Change | None:
    try:
        values = json.loads(line)
        change = Change(**{key: _shown(value) for key, value in values.items()})
    except (ValueError, TypeError, AttributeError, RecursionError):
        return None
    texts = (change.id, change.at, change.who, change.what, change.why, change.before, change.after)
    whole = all(isinstance(each, str) for each in texts) and isinstance(change.revision, int)
    return change if whole else None


def _shown(value: Any) -> Any:  # noqa: ANN401 - whatever JSON holds
    return without_forbidden(value) if isinstance(value, str) else value
