"""The owner's window: the library, and the pages on which connectors and pinouts are taken in."""

from functools import partial
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QSize, Qt, QUrl
from PySide6.QtGui import QCloseEvent, QDesktopServices, QKeyEvent
from PySide6.QtWidgets import (
    QAbstractButton,
    QHBoxLayout,
    QScrollArea,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from planner.app.intake.browse_page import BrowsePage
from planner.app.intake.confirming import Confirming
from planner.app.intake.connector_editor import ConnectorEditor
from planner.app.intake.head_bar import HeadBar
from planner.app.intake.owner import Owner
from planner.app.intake.pinout_editor import PinoutEditor
from planner.app.intake.sample_page import SamplePage
from planner.app.intake.sharing_acts import SharingActs
from planner.app.panels.widgets.labels import label
from planner.app.panels.widgets.styles import panel_qss
from planner.intake.agreement import Agreement, agreement
from planner.intake.connector_draft import ConnectorDraft
from planner.intake.connector_draft import drafted as connector_drafted
from planner.intake.pinout_draft import PinoutDraft
from planner.intake.pinout_draft import drafted as pinout_drafted
from planner.library.store import NEW
from planner.model.base import next_revision
from planner.model.connector import Connector
from planner.model.definition import kind_name
from planner.model.pinout import PinoutRecord
from planner.problem import InputError
from planner.proving.identifying import SampleReadings
from planner.proving.identifying.sample_csv import sample_text
from planner.services.sharing import find_paper

if TYPE_CHECKING:
    from collections.abc import Sequence

    from planner.app.intake.asking import OwnerAsk
    from planner.app.settings import Settings
    from planner.app.workbench import Workbench
    from planner.drawing.looks import Look
    from planner.library.collection import Library
    from planner.library.store import Conflict
    from planner.model.source import Document

SIZE = (1180, 780)
_SHARE = 0.94  # of the screen at the most, so that the title bar stays in sight


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
        self.setProperty("surface", "panel")  # its controls frame themselves
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.ask = ask
        ask.parent = self
        self.owner = Owner(workbench, settings, self)
        self.sharing = SharingActs(self.owner, ask)
        self.confirming = Confirming(self.owner, ask)
        self.browse = BrowsePage(self.owner, look, self._open_paper)
        self.pinout = PinoutEditor(self.owner, look, ask.paper_to_keep)
        self.stack = QStackedWidget()
        self.connector = ConnectorEditor(self.owner, look, ask.picture_to_trace)
        self.sample = SamplePage(self.owner, look)
        self._titles: dict[QWidget, str] = {
            self.browse: "Library",
            self.pinout: "Library: take in a pinout",
            self.connector: "Library: draw a connector",
            self.sample: "Library: measure a sample",
        }
        for page in self._titles:
            self.stack.addWidget(page)
        self.said = label("", "second", wrap=True)
        self._lay_out()
        self._listen()
        self.set_look(look)
        self.resize(QSize(*SIZE).boundedTo(self.screen().availableSize() * _SHARE))
        self.browse.search.setFocus()

    def _lay_out(self) -> None:
        self.head = HeadBar(
            self,
            {
                "new_pinout": self.take_in_pinout,
                "new_connector": self.take_in_connector,
                "measure": self.measure,
                "confirm": self.confirm,
                "revise": self.revise,
                "draw_alike": self.draw_alike,
                "retitle": self.retitle,
                "retire": self.retire,
                "export": lambda: self.sharing.export(self.browse.record),
                "take_in": self.take_in_parcel,
            },
        )
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
        self.pinout.done.connect(partial(self._on_done, "pinout"))
        self.connector.done.connect(partial(self._on_done, "connector"))
        self.sample.done.connect(partial(self._on_done, "pinout", ""))
        self.sample.measured.connect(self._on_measured)
        self.owner.said.connect(self.said.setText)
        self.owner.refused.connect(
            lambda problems: self.ask.trouble("That could not be saved", problems)
        )
        self.owner.conflict.connect(self._on_conflict)
        self._on_chosen()

    # -- acts ------------------------------------------------------------------------------------

    def take_in_pinout(self, connector: str = "") -> None:
        """Begin a new pinout record, for the connector that is looked at."""
        record = self.browse.record
        if not connector and isinstance(record, Connector):
            connector = record.id
        elif not connector and isinstance(record, PinoutRecord) and self.browse.is_meant:
            connector = _searched(record.fits, self.browse.search.text(), self.owner.library)
        self._edit(self.pinout, PinoutDraft(connector=connector, recorded_by=self.owner.who))

    def take_in_connector(self) -> None:
        """Begin to draw a new connector."""
        self._edit(self.connector, ConnectorDraft())

    def draw_alike(self) -> None:
        """Begin a new connector with the drawing of the one that is looked at."""
        record = self.browse.record
        if isinstance(record, Connector):
            draft = connector_drafted(record)
            like = draft.evolve(id="", title="", revision=1, retired=None, remarks="")
            self._edit(self.connector, like)

    def revise(self) -> None:
        """Write the next revision of the record that is looked at.

        What ships is not overwritten: its next revision stands in the owner's own folder.
        """
        record = self.browse.record
        if not isinstance(record, PinoutRecord | Connector):
            return
        saved = self.owner.found(kind_name(record), record.id)
        basis = saved.digest if saved is not None else NEW
        if saved is None:
            record = record.evolve(revision=next_revision(record.revision))
        if isinstance(record, Connector):
            self._edit(self.connector, connector_drafted(record), basis)
            return
        connector = next(filter(None, map(self.owner.library.connector, record.fits)), None)
        if connector is not None:
            self._edit(self.pinout, pinout_drafted(record, connector), basis)

    def measure(self) -> None:
        """Measure a sample of what is looked at; of a record, to confirm it."""
        record = self.browse.record
        pinout = record if isinstance(record, PinoutRecord) else None
        connector = record if isinstance(record, Connector) else None
        if pinout is not None:
            known = map(self.owner.library.connector, pinout.fits)
            connector = next(filter(None, known), None)
        if connector is not None and self._may_leave():
            self.sample.begin(connector, pinout)
            self._show(self.sample)

    def look_at(self, record_id: str, kind: str) -> None:
        """Look at one definition, unless a draft that is not saved is gone on with."""
        if self._may_leave():
            self._show(self.browse)
            self.browse.look_at(record_id, kind)

    def confirm(self) -> None:
        """Write that somebody found on a part that the record is right."""
        record = self.browse.record
        if isinstance(record, PinoutRecord) and self.confirming.confirm(record):
            self._on_done("pinout", record.id)

    def retitle(self) -> None:
        """Give what is looked at another title; its short name stays, so no plan loses it."""
        record = self.browse.record
        title = self.ask.reason("Another title", record.title) if record is not None else ""
        if record is not None and title and title != record.title:
            self.owner.retitle(record, title)

    def take_in_parcel(self) -> None:
        """Take in what somebody exported."""
        taken = self.sharing.take_in()
        if taken:
            kind = "pinout" if self.owner.library.pinout(taken) is not None else "connector"
            self.browse.look_at(taken, kind)

    def retire(self) -> None:
        """Say why the record that is looked at is to be used no more."""
        record = self.browse.record
        if isinstance(record, PinoutRecord | Connector):
            reason = self.ask.reason(f"Why is {record.title} to be used no more?")
            if reason:
                self.owner.retire(record, reason)

    def _edit(self, page: "PinoutEditor | ConnectorEditor", draft: Any, basis: str = NEW) -> None:  # noqa: ANN401 - what the page edits
        if self._may_leave():
            page.begin(draft, basis)
            self._show(page)
            for area in page.findChildren(QScrollArea):
                area.verticalScrollBar().setValue(0)  # another draft was scrolled before

    def _may_leave(self) -> bool:
        page = self.stack.currentWidget()
        drafting = getattr(page, "drafting", None)
        return drafting is None or not drafting.dirty or self.ask.leave_draft()

    # -- heard -----------------------------------------------------------------------------------

    def _show(self, page: QWidget) -> None:
        self.stack.setCurrentWidget(page)
        if page is not self.browse:
            self.said.setText("")  # what was said of the page before
        self.head.setVisible(page is self.browse)
        self.setWindowTitle(f"{self._titles[page]} \u2013 Cupwright")
        for act in self.head.acts.values():
            act.setEnabled(page is self.browse)
        if page is self.browse:
            self._on_chosen()

    def _on_done(self, kind: str, record_id: str) -> None:
        if not record_id and not self._may_leave():
            return
        self._show(self.browse)
        if record_id:
            self.browse.look_at(record_id, kind)
        self.browse.list.setFocus()

    def _on_measured(self, draft: PinoutDraft, readings: SampleReadings) -> None:
        """Confirm the record that was measured if it is the same; else write what was measured."""
        record = self.sample.record
        found = agreement(draft, record) if record is not None else Agreement(same=False)
        if record is not None and found.same:
            if self.confirming.confirm(record, found.told(draft.reference)):
                self._on_done("pinout", record.id)
            return
        name, remark = f"readings of {draft.date}.txt", "every reading, as `identify` takes it"
        paper = self.owner.keep_text(name, sample_text(readings), remark)
        self.pinout.begin(draft.evolve(documents=(paper,) if paper is not None else ()))
        self._show(self.pinout)
        if record is not None:
            self.said.setText(f"It differs from {record.title}: see what, and write it beside.")

    def _on_chosen(self) -> None:
        record = self.browse.record
        hardware, can = isinstance(record, Connector), isinstance(record, PinoutRecord | Connector)
        sound = isinstance(record, PinoutRecord) and record.retired is None
        wanted = {
            "confirm": sound,
            "measure": can,
            "revise": can,
            "retire": can,
            "draw_alike": hardware,
        }
        there = record is not None
        self.head.allow(wanted | {"retitle": there, "export": there})

    def _on_conflict(self, conflict: "Conflict") -> None:
        page = self.stack.currentWidget()
        editing = page in {self.pinout, self.connector}
        if self.ask.conflict(conflict) and conflict.theirs is not None and editing:
            page.basis_digest = conflict.theirs.digest  # type: ignore[union-attr] # an editor
            self.said.setText("Yours is saved as the next revision when you save again.")

    def _open_paper(self, document: "Document") -> None:
        try:
            path = find_paper(document, (self.owner.folder, *self.owner.settings.folders))
        except InputError as error:
            self.ask.trouble("The paper can\u2019t be opened", error.problems)
            return
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(path)))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter presses a button that has the keyboard; Esc goes back a page, then closes."""
        focused, key = self.focusWidget(), event.key()
        if key in {Qt.Key.Key_Return, Qt.Key.Key_Enter} and isinstance(focused, QAbstractButton):
            focused.click()
        elif key == Qt.Key.Key_Escape and self.stack.currentWidget() is self.browse:
            self.close()
        elif key == Qt.Key.Key_Escape:
            self._on_done("", "")
        else:
            super().keyPressEvent(event)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Ask before a draft is lost."""
        if self._may_leave():
            self.sample.sample.let_go()
            super().closeEvent(event)
        else:
            event.ignore()

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.setStyleSheet(panel_qss(look))
        self.browse.set_look(look)
        self.pinout.set_look(look)
        self.connector.set_look(look)
        self.sample.set_look(look)


def _searched(fits: "Sequence[str]", text: str, library: "Library") -> str:
    """Return the connector that a search names most of, so that `XLR-5 male` begins the male."""
    words = set(text.casefold().split())

    def named(record_id: str) -> int:
        connector = library.connector(record_id)
        return len(words & set(connector.title.casefold().split())) if connector else -1

    return max(fits, key=named)
