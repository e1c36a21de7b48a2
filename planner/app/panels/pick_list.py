"""A searchable list to pick one definition from: a connector and then its pinout, or a cable."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QDialog, QListView, QVBoxLayout, QWidget

from planner.app.panels.shelf_paint import ShelfDelegate
from planner.app.panels.shelf_rows import ROW, ShelfRow, ShelfRows, item_row
from planner.app.panels.widgets.labels import button, label
from planner.app.panels.widgets.search_line import SearchLine
from planner.app.panels.widgets.styles import panel_qss
from planner.drawing.looks import Look
from planner.library.collection import Library
from planner.model.definition import Definition, DefinitionKind

Picked = Callable[[Definition | None], object]
SIZE = (380, 460)
# What the search meets, by what is asked for.
SEARCHED: dict[DefinitionKind, str] = {
    "connector": "size, poles, maker",
    "pinout": "maker, use, signal such as L+",
    "cable": "cores, spool, maker",
    "part": "kind, maker",
}


class PickList(QDialog):
    """Ask for one definition; `picked` gets it, or None for leaving it open."""

    def __init__(self, library: Library, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._library = library
        self._kind: DefinitionKind = "connector"
        self._among: Sequence[Definition] = ()
        self._picked: Picked = lambda _record: None
        self.model = ShelfRows(self)
        self.title = label("", "question", wrap=True)
        self.search = SearchLine()
        self.list = QListView()
        self.later = button("Later", lambda: self._take(None))
        self.later.setToolTip("Leave it open: it can be chosen from the shelf afterwards")
        self._lay_out(look)

    def _lay_out(self, look: Look) -> None:
        self._delegate = ShelfDelegate(look, self)
        self.list.setModel(self.model)
        self.list.setItemDelegate(self._delegate)
        self.list.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.list.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.list.setAccessibleName("What to choose from")
        self.list.clicked.connect(lambda _at: self.pick_current())
        self.search.textChanged.connect(self._refresh)
        self.search.entered.connect(self.pick_current)
        self.search.walked.connect(self._walk)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 14, 0, 14)
        for part in (self.title, self.search, self.list, self.later):
            if part is self.list:
                column.addWidget(part, 1)
                continue
            holder = QVBoxLayout()
            holder.setContentsMargins(16, 0, 16, 0)
            holder.addWidget(part)
            column.addLayout(holder)
        self.setProperty("surface", "panel")
        self.setStyleSheet(panel_qss(look))
        self.resize(*SIZE)

    def ask(
        self, title: str, kind: DefinitionKind, among: Sequence[Definition], picked: Picked
    ) -> None:
        """Ask for one of `among`."""
        self._kind, self._among, self._picked = kind, among, picked
        self.title.setText(title)
        self.setWindowTitle(title)
        self.later.setVisible(kind == "pinout")
        self.search.clear()
        self.search.setPlaceholderText(SEARCHED[kind])
        self._refresh()
        self.search.setFocus()
        self.open()

    def pick_current(self) -> None:
        """Take the row that is marked."""
        index = self.list.currentIndex()
        row = index.data(ROW) if index.isValid() else None
        if row is not None and row.record is not None:
            self._take(row.record)

    def _take(self, record: Definition | None) -> None:
        self.accept()
        self._picked(record)

    def _refresh(self, *_text: object) -> None:
        text = self.search.text().strip()
        known = {record.id for record in self._among}
        found = self._library.search(text, self._kind) if text else self._among
        rows = [item_row(record) for record in found if record.id in known]
        none = ShelfRow("none", f"Nothing fits {text!r}.", f"Try {SEARCHED[self._kind]}.")
        self.model.show_rows(rows or [none])
        self.list.setCurrentIndex(self.model.index(0))

    def _walk(self, step: int) -> None:
        at = self.list.currentIndex().row() + step
        self.list.setCurrentIndex(self.model.index(max(0, min(at, len(self.model.rows) - 1))))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter in the list picks, too."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.pick_current()
        else:
            super().keyPressEvent(event)
