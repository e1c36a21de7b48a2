"""The owner's window: the library, and the pages on which connectors and pinouts are taken in."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QUrl
from PySide6.QtGui import QCloseEvent, QDesktopServices, QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from planner.app.intake.browse_page import BrowsePage
from planner.app.intake.owner import Owner
from planner.app.intake.pinout_editor import PinoutEditor
from planner.app.panels.widgets.labels import button, label
from planner.app.panels.widgets.styles import panel_qss
from planner.intake.pinout_draft import PinoutDraft, drafted
from planner.model.connector import Connector
from planner.model.pinout import PinoutRecord
from planner.problem import InputError

if TYPE_CHECKING:
    from planner.app.intake.asking import OwnerAsk
    from planner.app.settings import Settings
    from planner.app.workbench import Workbench
    from planner.drawing.looks import Look
    from planner.library.store import Conflict
    from planner.model.source import Document

SIZE = (1180, 780)


class LibraryWindow(QWidget):
    """A window of its own, so that the plan stays at hand beside it.

    No dialog: there Enter in a field would press a button.
    """

    def __init__(
        self,
        workbench: "Workbench",
        settings: "Settings",
        ask: "OwnerAsk",
        look: "Look",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self.setWindowTitle("Library \u2013 Cupwright")
        self.ask = ask
        ask.parent = self
        self.owner = Owner(workbench, settings, self)
        self.browse = BrowsePage(self.owner, look, self._open_paper)
        self.pinout = PinoutEditor(self.owner, look, ask.paper_to_keep)
        self.stack = QStackedWidget()
        for page in (self.browse, self.pinout):
            self.stack.addWidget(page)
        self.said = label("", "second", wrap=True)
        self._lay_out()
        self._listen()
        self.set_look(look)
        self.resize(*SIZE)

    def _lay_out(self) -> None:
        self.acts = {
            "new_pinout": button("New pinout\u2026", self.take_in_pinout, "primary", "Ctrl+N"),
            "revise": button("Next revision\u2026", self.revise, tip="Ctrl+E"),
            "retire": button("Retire\u2026", self.retire),
        }
        head = QHBoxLayout()
        head.setContentsMargins(12, 8, 12, 8)
        head.setSpacing(8)
        for each in self.acts.values():
            head.addWidget(each)
        head.addStretch(1)
        self.head = QWidget()
        self.head.setLayout(head)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.head)
        column.addWidget(self.stack, 1)
        foot = QHBoxLayout()
        foot.setContentsMargins(16, 4, 16, 6)
        foot.addWidget(self.said)
        column.addLayout(foot)

    def _listen(self) -> None:
        self.browse.chosen.connect(self._on_chosen)
        self.pinout.done.connect(self._on_done)
        self.owner.said.connect(self.said.setText)
        self.owner.refused.connect(
            lambda problems: self.ask.trouble("That could not be saved", problems)
        )
        self.owner.conflict.connect(self._on_conflict)
        for keys, act in (("Ctrl+N", self.take_in_pinout), ("Ctrl+E", self.revise)):
            QShortcut(QKeySequence(keys), self, act)
        self._on_chosen()

    # -- acts ------------------------------------------------------------------------------------

    def take_in_pinout(self, connector: str = "") -> None:
        """Begin a new pinout record, for the connector that is looked at."""
        record = self.browse.record
        if not connector and isinstance(record, Connector):
            connector = record.id
        self._edit(PinoutDraft(connector=connector, recorded_by=self.owner.who))

    def revise(self) -> None:
        """Write the next revision of the record that is looked at."""
        record = self.browse.record
        if not isinstance(record, PinoutRecord):
            return
        connector = next(filter(None, map(self.owner.library.connector, record.fits)), None)
        saved = self.owner.found("pinout", record.id)
        if connector is not None:
            draft = drafted(record, connector)
            # What ships is not overwritten: its next revision stands in the owner's own folder.
            self._edit(draft, saved.digest if saved is not None else "")

    def retire(self) -> None:
        """Say why the record that is looked at is to be used no more."""
        record = self.browse.record
        if isinstance(record, PinoutRecord | Connector):
            reason = self.ask.reason(f"Why is {record.title} to be used no more?")
            if reason:
                self.owner.retire(record, reason)

    def _edit(self, draft: PinoutDraft, basis: str = "") -> None:
        if self._may_leave():
            self.pinout.begin(draft, basis)
            self._show(self.pinout)

    def _may_leave(self) -> bool:
        page = self.stack.currentWidget()
        return page is not self.pinout or not self.pinout.drafting.dirty or self.ask.leave_draft()

    # -- heard -----------------------------------------------------------------------------------

    def _show(self, page: QWidget) -> None:
        self.stack.setCurrentWidget(page)
        self.head.setVisible(page is self.browse)

    def _on_done(self, record_id: str) -> None:
        if not record_id and not self._may_leave():
            return
        self._show(self.browse)
        if record_id:
            self.browse.look_at(record_id)
        self.browse.list.setFocus()

    def _on_chosen(self) -> None:
        record = self.browse.record
        self.acts["revise"].setEnabled(isinstance(record, PinoutRecord))
        self.acts["retire"].setEnabled(isinstance(record, PinoutRecord | Connector))

    def _on_conflict(self, conflict: "Conflict") -> None:
        if self.ask.conflict(conflict) and conflict.theirs is not None:
            self.pinout.basis = conflict.theirs.digest
            self.said.setText("Yours is saved as the next revision when you save again.")

    def _open_paper(self, document: "Document") -> None:
        try:
            path = self.owner.store.papers.path(document)
        except InputError as error:
            self.ask.trouble("The paper can\u2019t be opened", error.problems)
            return
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(path)))

    def closeEvent(self, event: QCloseEvent) -> None:
        """Ask before a draft is lost."""
        if self._may_leave():
            super().closeEvent(event)
        else:
            event.ignore()

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.setStyleSheet(panel_qss(look))
        self.browse.set_look(look)
        self.pinout.set_look(look)
