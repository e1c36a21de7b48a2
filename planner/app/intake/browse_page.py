"""The library: every definition with its trust and its use, and the card of the chosen one."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QListView,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from planner.app.intake.record_card import RecordCard
from planner.app.panels.shelf_paint import ShelfDelegate
from planner.app.panels.shelf_rows import ROW, ShelfRow, ShelfRows, item_row
from planner.app.panels.widgets.fields import Choice, check
from planner.app.panels.widgets.search_line import SearchLine
from planner.app.panels.widgets.styles import panel_qss
from planner.model.part import Part
from planner.model.pinout import PinoutRecord

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from planner.app.intake.owner import Owner
    from planner.drawing.looks import Look
    from planner.model.definition import Definition
    from planner.model.source import Document

_KINDS = (
    ("pinout", "Pinouts"),
    ("connector", "Connectors"),
    ("cable", "Cables"),
)
_TRUST = (
    ("", "any trust"),
    ("hearsay", "hearsay"),
    ("documented", "documented"),
    ("confirmed", "confirmed on the part"),
    ("confirmed-by-two", "confirmed by two"),
)


class BrowsePage(QWidget):
    """Search, filter, look at one; `chosen` tells that another is looked at."""

    chosen = Signal()

    def __init__(
        self, owner: "Owner", look: "Look", open_paper: "Callable[[Document], object]"
    ) -> None:
        super().__init__()
        self.owner = owner
        self.search = SearchLine()
        self.search.setPlaceholderText("Size, poles, maker, signal: 4.4 L+")
        self.kind = Choice("Show", _KINDS, lambda _it: self.renew(), 44)
        self.trust = Choice("Trust", _TRUST, lambda _it: self.renew(), 44)
        self.retired = check("Retired too", lambda _on: self.renew())
        self.into = Choice("Save into", (), self._save_into, 64)
        self.model = ShelfRows(self)
        self.list = QListView()
        self.card = RecordCard(owner, look, open_paper, self.look_at)
        self._delegate = ShelfDelegate(look, self)
        self._meant = False
        self._lay_out(look)
        owner.changed.connect(self.renew)
        owner.changed.connect(self._show_folders)
        self._show_folders()
        self.renew()

    def _lay_out(self, look: "Look") -> None:
        self.list.setModel(self.model)
        self.list.setItemDelegate(self._delegate)
        self.list.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.list.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.list.setResizeMode(QListView.ResizeMode.Adjust)  # long titles take more lines
        self.list.setAccessibleName("Definitions")
        self.list.selectionModel().currentChanged.connect(lambda *_at: self._on_current())
        self.search.textChanged.connect(lambda _text: self.renew())
        self.search.walked.connect(self._walk)
        self.search.entered.connect(self.list.setFocus)
        self.list.clicked.connect(lambda _at: self._mean())
        left = QWidget()
        left.setProperty("surface", "panel")
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 10, 0, 0)
        column.setSpacing(6)
        for part in (self.search, self.kind, self.trust, self.retired):
            row = QHBoxLayout()
            row.setContentsMargins(12, 0, 12, 0)
            row.addWidget(part)
            column.addLayout(row)
        column.addWidget(self.list, 1)
        foot = QHBoxLayout()
        foot.setContentsMargins(12, 4, 12, 6)
        foot.addWidget(self.into)
        column.addLayout(foot)
        both = QSplitter(Qt.Orientation.Horizontal)
        both.addWidget(left)
        both.addWidget(self.card)
        both.setStretchFactor(0, 2)
        both.setStretchFactor(1, 3)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(both)
        self.set_look(look)

    @property
    def is_meant(self) -> bool:
        """Tell whether a person came to what is looked at, rather than it being the first."""
        return self._meant or bool(self.search.text())

    def _mean(self) -> None:
        self._meant = True

    @property
    def record(self) -> "Definition | None":
        """The definition that is looked at."""
        index = self.list.currentIndex()
        row: ShelfRow | None = index.data(ROW) if index.isValid() else None
        return row.record if row is not None else None

    def renew(self) -> None:
        """List anew, and keep looking at the same one."""
        kept = self.record.id if self.record is not None else ""
        rows = tuple(self._rows())
        self.model.show_rows(rows or (ShelfRow("none", "Nothing fits.", "Search for less."),))
        ids = [row.record.id if row.record is not None else "" for row in rows]
        self.list.setCurrentIndex(self.model.index(ids.index(kept) if kept in ids else 0))
        self._on_current()

    def _rows(self) -> "Iterator[ShelfRow]":
        kind = str(self.kind.box.currentData())
        trust = str(self.trust.box.currentData())
        self.trust.setVisible(kind == "pinout")
        for record in self.owner.library.search(self.search.text(), kind):  # type: ignore[arg-type] # one of the kinds
            if isinstance(record, Part):
                continue
            if getattr(record, "retired", None) is not None and not self.retired.isChecked():
                continue
            if trust and isinstance(record, PinoutRecord) and record.trust != trust:
                continue
            yield item_row(record)

    def _show_folders(self) -> None:
        """Offer the folders to save in: the owner's own, then each shared one."""
        own, *shared = self.owner.folders()
        self.into.set_choices([(str(own), "my own folder"), *((str(it), it.name) for it in shared)])
        self.into.show_value(str(self.owner.folder))
        self.into.box.setToolTip(str(self.owner.folder))
        self.into.setVisible(bool(shared))

    def _save_into(self, folder: str) -> None:
        self.owner.folder = Path(folder)
        self.into.box.setToolTip(folder)
        self.card.show_record(self.record)

    def look_at(self, record_id: str, kind: str = "pinout") -> None:
        """Look at one definition, whatever is searched for."""
        self._mean()
        self.search.clear()
        self.kind.show_value(kind)
        self.trust.show_value("")
        self.renew()
        for at, row in enumerate(self.model.rows):
            if row.record is not None and row.record.id == record_id:
                self.list.setCurrentIndex(self.model.index(at))

    def _walk(self, step: int) -> None:
        self._mean()
        at = self.list.currentIndex().row() + step
        self.list.setCurrentIndex(self.model.index(max(0, min(at, len(self.model.rows) - 1))))

    def _on_current(self) -> None:
        if self.card.record is not self.record or self.record is None:
            self.card.show_record(self.record)
        self.chosen.emit()

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.setStyleSheet(panel_qss(look))
        self._delegate.look = look
        self.card.set_look(look)
