"""What the pages of the owner's window share: the library, the folder to save in, who saves."""

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from planner.files.folders import library_folder
from planner.library.loading import load_library
from planner.library.papers import described_text
from planner.library.store import NEW, Conflict, Saved, Store
from planner.library.using import PlanUse, Uses
from planner.model.definition import kind_name
from planner.problem import InputError
from planner.services.sharing import save_with_papers

if TYPE_CHECKING:
    from collections.abc import Callable

    from planner.app.settings import Settings
    from planner.app.workbench import Workbench
    from planner.library.collection import Library
    from planner.library.history import Change
    from planner.model.definition import Definition, DefinitionKind
    from planner.model.source import Document


class Owner(QObject):
    """Save definitions and bring the library up; tell what could not be done.

    `conflict` gives what stands there now: the page shows the difference and saves again.
    """

    changed = Signal()  # the library is another
    said = Signal(str)
    refused = Signal(object)  # tuple[Problem, ...]
    conflict = Signal(object)  # Conflict

    def __init__(
        self, workbench: "Workbench", settings: "Settings", parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self.workbench, self.settings = workbench, settings
        self.folder = library_folder()
        self._uses: Uses | None = None
        workbench.library_changed.connect(self._on_library_changed)

    def _on_library_changed(self) -> None:
        self._uses = None
        self.changed.emit()

    @property
    def library(self) -> "Library":
        """The collection as it was last read."""
        return self.workbench.library

    @property
    def store(self) -> Store:
        """The folder that is saved in."""
        return Store(self.folder)

    @property
    def who(self) -> str:
        """Who saves: the name of the bench, or nobody named."""
        return self.settings.bench_name or "this bench"

    @property
    def today(self) -> str:
        """The date of today, as it is written on a source card."""
        return datetime.now().astimezone().date().isoformat()

    def folders(self) -> tuple[Path, ...]:
        """Return where a definition may be saved: the user's own folder, then the shared ones."""
        return (library_folder(), *self.settings.folders)

    def found(self, kind: "DefinitionKind", record_id: str) -> Saved | None:
        """Return a definition as it stands in the folder; None where it only ships."""
        try:
            return self.store.find(kind, record_id)
        except InputError as error:
            self.refused.emit(error.problems)
            return None

    def changes(self, record: "Definition") -> "tuple[Change, ...]":
        """Return what was changed of a definition in the folder that is saved in."""
        try:
            return self.store.changes(kind_name(record), record.id)
        except InputError as error:
            self.refused.emit(error.problems)
            return ()

    def save(self, record: "Definition", basis: str = NEW, *, why: str = "") -> Saved | None:
        """Save as the next revision; None, and a signal, where it could not be."""
        return self._told(lambda: self._put(record, basis, why), "saved")

    def retitle(self, record: "Definition", title: str) -> Saved | None:
        """Give a definition another title; its id stays. One that only ships is copied first."""

        def act() -> Saved:
            kind = kind_name(record)
            if self.store.find(kind, record.id) is None:
                self._put(record, NEW, "copied, to be retitled")
            return self.store.retitle(kind, record.id, title=title, who=self.who)

        return self._told(act, "has its title")

    def uses(self, record: "Definition") -> "tuple[PlanUse, ...]":
        """Return the plans that use a definition: those opened lately, and beside them."""
        if self._uses is None:
            folders = dict.fromkeys(it.path.parent for it in self.settings.recent)
            self._uses = Uses(folders)
        return self._uses.of(kind_name(record), record.id)

    def retire(self, record: "Definition", reason: str) -> Saved | None:
        """Say why a definition is to be used no more; one that only ships is copied first."""

        def act() -> Saved:
            kind = kind_name(record)
            if self.store.find(kind, record.id) is None:
                self._put(record, NEW, "copied, to be retired")
            return self.store.retire(kind, record.id, reason=reason, who=self.who)

        return self._told(act, "retired")

    def _put(self, record: "Definition", basis: str, why: str) -> Saved:
        """Save with the documents, which may lie in another of the folders."""
        folders = self.settings.folders
        return save_with_papers(self.store, record, basis, who=self.who, why=why, folders=folders)

    def _told(self, act: "Callable[[], Saved]", done: str) -> Saved | None:
        try:
            saved = act()
        except Conflict as found:
            self.conflict.emit(found)
            return None
        except InputError as error:
            self.refused.emit(error.problems)
            return None
        self.renew()
        self.said.emit(f"{saved.record.title}: {done}, revision {saved.record.revision}.")
        return saved

    def keep(self, path: Path) -> "Document | None":
        """Keep a copy of a paper with the library."""
        try:
            return self.store.add_document(path)
        except InputError as error:
            self.refused.emit(error.problems)
            return None

    def keep_text(self, name: str, text: str, remark: str) -> "Document | None":
        """Keep a text of the program's own with the library, such as what was measured."""
        document, data = described_text(name, text, remark)
        try:
            self.store.keep_document(document, data)
        except InputError as error:
            self.refused.emit(error.problems)
            return None
        return document

    def renew(self) -> None:
        """Read the library anew."""
        self.workbench.library = load_library(self.settings.folders)
        self.workbench.library_changed.emit()
