"""A folder of definitions that can be saved into, by several benches at once, losing nothing."""

import errno
import os
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from planner.files.atomic import write_atomic
from planner.files.definitions import definition_text, parse_definition
from planner.files.folders import check_inside, library_folder
from planner.files.limits import DEFINITION_BYTES, read_text
from planner.library.comparing import Difference, differences
from planner.library.folder import definition_files
from planner.library.history import Change, History, Kept, digest_of, file_stem, longer_stem
from planner.library.lock import STALE_S, WAIT_S, FolderLock
from planner.library.papers import Papers, described
from planner.model.base import next_revision
from planner.model.connector import Connector
from planner.model.definition import Definition, DefinitionKind, documents_of, kind_name
from planner.model.pinout import PinoutRecord
from planner.model.source import Document, Retired
from planner.problem import InputError, Problem, reason_of

_MAY_NOT = {errno.EACCES, errno.EPERM, errno.EROFS}
NEW = ""  # the basis of a definition that is not there yet


@dataclass(frozen=True, slots=True)
class Saved:
    """A definition as it stands in a folder; `digest` is what the next save names as its basis."""

    record: Definition
    digest: str
    path: Path
    text: str


class Conflict(InputError):  # noqa: N818 - it is an answer to the owner, not a fault
    """Somebody else changed the definition since it was opened; nothing was saved.

    `theirs` is what stands there now (None if it was deleted), `ours` what was to be saved,
    `begun` what both began from, where it was kept; `change` the last change that is noted.
    `difference` is what differs, first ours, second theirs; `they_changed` and `we_changed` what
    each did to `begun`. Save again with the digest of `theirs`.
    """

    def __init__(
        self,
        theirs: Saved | None,
        ours: Definition,
        begun: Definition | None = None,
        change: Change | None = None,
    ) -> None:
        self.theirs, self.ours, self.begun, self.change = theirs, ours, begun, change
        self.difference: tuple[Difference, ...] = ()
        self.they_changed: tuple[Difference, ...] = ()
        self.we_changed = differences(begun, ours) if begun is not None else ()
        if theirs is not None and begun is not None:
            self.they_changed = differences(begun, theirs.record)
        if theirs is not None:
            self.difference = differences(ours, theirs.record)
        by = f" by {change.who}" if change is not None and change.who else ""
        what = f"{ours.id} was {'changed' if theirs else 'deleted'} meanwhile{by}"
        mend = "Look at what differs, and save again with what is right of both."
        super().__init__([Problem(what, str(theirs.path) if theirs else ours.id, mend)])


class NotWritable(InputError):  # noqa: N818 - it is an answer to the owner, not a fault
    """The folder can be read only; `instead` is the user's own, which can be saved into."""

    def __init__(self, folder: Path, why: str) -> None:
        self.instead = library_folder()
        mend = f"Save into your own folder {self.instead}, or ask who keeps this one."
        super().__init__([Problem(f"it can't be saved there: {why}", str(folder), mend)])


class Store:
    """One folder. Only the user's own is made if it is not there: a drive may just be off."""

    def __init__(self, folder: Path, *, stale_s: float = STALE_S, wait_s: float = WAIT_S) -> None:
        self.folder = folder
        self.papers = Papers(folder)
        self._stale_s, self._wait_s = stale_s, wait_s

    def find(self, kind: DefinitionKind, record_id: str) -> Saved | None:
        """Return a definition, or None; InputError if its file is there and not valid."""
        path = self._path_of(kind, record_id)
        return _read(path) if path is not None else None

    def history(self, kind: DefinitionKind, record_id: str) -> tuple[Kept, ...]:
        """Return the revisions kept of a definition, the oldest first."""
        now = self.find(kind, record_id)
        return History(self.folder, kind, record_id).revisions(now.digest if now else "")

    def changes(self, kind: DefinitionKind, record_id: str) -> tuple[Change, ...]:
        """Return what was changed in a definition, the oldest first."""
        return History(self.folder, kind, record_id).changes()

    def save(
        self, record: Definition, basis: str, *, who: str, why: str = "", what: str = "saved"
    ) -> Saved:
        """Save a definition as its next revision, if it is still the one of digest `basis`.

        `basis` is NEW for one that is not there yet. Raises Conflict if it was changed meanwhile,
        NotWritable if the folder can only be read, InputError for anything else.
        """
        kind = kind_name(record)
        with self._held(who) as lock:
            now = self.find(kind, record.id)
            history = History(self.folder, kind, record.id)
            if (now.digest if now else NEW) != basis:
                last = next(reversed(history.changes()), None)
                raise Conflict(now, record, history.kept_as(basis), last)
            self._check_papers(record, now)
            if now is not None and not differences(now.record, record):
                return now
            new = _next(record, now, self._free_path(kind, record.id))
            if now is not None:
                history.keep(now.text, now.record.revision)
            history.keep(new.text, new.record.revision)
            revision, at = new.record.revision, _now()
            history.note(Change(record.id, revision, at, who, what, why, basis, new.digest))
            self._replace(new, lock)
        return new

    def retire(self, kind: DefinitionKind, record_id: str, *, reason: str, who: str) -> Saved:
        """Say why a definition is to be used no more; it stays, and so do plans that use it."""
        now = self._the(kind, record_id)
        if not isinstance(now.record, Connector | PinoutRecord):
            what = f"a {kind} can't be retired, only a connector or a pinout record"
            raise InputError.single(what, str(now.path), "Say in its remarks not to use it.")
        retired = Retired(reason=reason, by=who, date=_now()[:10])
        record = now.record.evolve(retired=retired)
        return self.save(record, now.digest, who=who, why=reason, what="retired")

    def retitle(self, kind: DefinitionKind, record_id: str, *, title: str, who: str) -> Saved:
        """Give a definition another title; its id stays, so no plan loses it."""
        now = self._the(kind, record_id)
        return self.save(now.record.evolve(title=title), now.digest, who=who, what="retitled")

    def add_document(self, path: Path, remark: str = "") -> Document:
        """Copy a document into the folder, and return what a record says of it."""
        document, data = described(path, remark)
        self.keep_document(document, data)
        return document

    def keep_document(self, document: Document, data: bytes) -> None:
        """Keep a document's bytes; no lock: a digest names the same bytes for everyone."""
        with self._told():
            self._there()
            self.papers.keep(document, data)

    @contextmanager
    def _held(self, who: str) -> Iterator[FolderLock]:
        with self._told():
            self._there()
            with FolderLock(self.folder, who, stale_s=self._stale_s, wait_s=self._wait_s) as lock:
                yield lock

    @contextmanager
    def _told(self) -> Iterator[None]:
        """Say that the folder can't be written where the system or a writer of files says so."""
        try:
            yield
        except OSError as error:
            raise NotWritable(self.folder, reason_of(error)) from error
        except InputError as error:
            cause = error.__cause__
            if isinstance(cause, OSError) and cause.errno in _MAY_NOT:
                raise NotWritable(self.folder, reason_of(cause)) from error
            raise

    def _there(self) -> None:
        if self.folder.is_dir():
            return
        if self.folder != library_folder():
            what = "the folder can't be reached"
            raise InputError.single(what, str(self.folder), "Connect the drive, then save again.")
        self.folder.mkdir(parents=True)

    def _the(self, kind: DefinitionKind, record_id: str) -> Saved:
        now = self.find(kind, record_id)
        if now is None:
            what = f"there is no {kind} {record_id!r} in it"
            raise InputError.single(what, str(self.folder), "Save it there first.")
        return now

    def _check_papers(self, record: Definition, now: Saved | None) -> None:
        """Refuse a new document that was not copied here; an old one may have been lost."""
        known = {each.digest for each in documents_of(now.record)} if now else set()
        for document in documents_of(record):
            if document.digest not in known and not self.papers.holds(document):
                what = f"the document {document.name} is not in the folder"
                raise InputError.single(what, str(self.folder), "Add it again, or take it off.")

    def _replace(self, new: Saved, lock: FolderLock) -> None:
        check_inside(new.path.parent, self.folder)
        new.path.parent.mkdir(exist_ok=True)
        for left in new.path.parent.glob(".*.toml.*.part"):
            left.unlink(missing_ok=True)  # of a save that was killed; nobody else saves now
        lock.check()
        write_atomic(new.path, new.text.encode())

    def _path_of(self, kind: DefinitionKind, record_id: str) -> Path | None:
        """Return the file that holds a definition, wherever in the folder it was put."""
        usual = self._usual_path(kind, record_id)
        if _is_inside(usual, self.folder) and _names(usual, kind, record_id):
            return usual
        files = definition_files(self.folder, []) if self.folder.is_dir() else ()
        return next((path for path in files if _names(path, kind, record_id)), None)

    def _usual_path(self, kind: DefinitionKind, record_id: str) -> Path:
        return self.folder / f"{kind}s" / f"{file_stem(record_id)}.toml"

    def _free_path(self, kind: DefinitionKind, record_id: str) -> Path:
        """Return a name for a new file; of ids that differ in case only, one gets a longer one."""
        usual = self._usual_path(kind, record_id)
        if not os.path.lexists(usual):
            return usual
        return usual.with_stem(longer_stem(record_id))


def _next(record: Definition, now: Saved | None, free: Path) -> Saved:
    """Make the next revision; InputError if what it says could not be read back."""
    path = now.path if now else free
    if now is not None:
        record = record.evolve(revision=next_revision(now.record.revision))
    text = definition_text(record, now.text if now else "")
    again = parse_definition(text, path)
    if again != record:
        what = f"{', '.join(each.key for each in differences(record, again))} would not be kept"
        raise InputError.single(what, str(path), "Write it in another way.")
    return Saved(record, digest_of(text), path, text)


def _read(path: Path) -> Saved:
    text = read_text(path, DEFINITION_BYTES)
    return Saved(parse_definition(text, path), digest_of(text), path, text)


def _names(path: Path, kind: DefinitionKind, record_id: str) -> bool:
    """Tell whether a file is this definition's; of one that is not valid, its name decides."""
    try:
        text = read_text(path, DEFINITION_BYTES)
        if record_id not in text:
            return False
        record = parse_definition(text, path)
    except InputError:
        usual = (f"{kind}s", file_stem(record_id))
        return (path.parent.name, path.stem) == usual and path.is_file()
    return (kind_name(record), record.id) == (kind, record_id)


def _is_inside(path: Path, folder: Path) -> bool:
    return path.resolve().is_relative_to(folder.resolve())


def _now() -> str:
    return datetime.now(UTC).isoformat(timespec="seconds")
