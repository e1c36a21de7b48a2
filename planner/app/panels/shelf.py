"""The shelf: connectors, pinouts and cable, searched, dragged out, or chosen with Enter."""

from dataclasses import replace

from PySide6.QtCore import QModelIndex, QPoint, Qt, QTimer, Signal
from PySide6.QtGui import QContextMenuEvent, QDrag, QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QLineEdit, QListView, QMenu, QVBoxLayout, QWidget

from planner.app.icons import icon
from planner.app.panels.choosing import Target, choosing, target_now, targets, why_not
from planner.app.panels.shelf_paint import ShelfDelegate
from planner.app.panels.shelf_rows import ROW, ShelfRow, ShelfRows, Wanted, shelf_rows
from planner.app.panels.widgets.labels import Head, label
from planner.app.panels.widgets.panel import Panel
from planner.app.panels.widgets.search_line import SearchLine
from planner.app.workbench import Workbench
from planner.drawing.looks import Look
from planner.model.definition import Definition
from planner.model.part import Part


class ShelfPanel(Panel):
    """Show what can be put on the lead; it goes to the end or section that is selected."""

    looked_up = Signal(object)  # a definition, to be looked at in the library
    offered = Signal(object)  # a definition, while there is no lead yet to put it on

    def __init__(self, workbench: Workbench, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(workbench, look, parent)
        self._wanted = Wanted()
        self.model = ShelfRows(self)
        self.delegate = ShelfDelegate(look, self)
        self.search = SearchLine()
        self.list = ShelfList(self)
        self.hint = label("", "small", wrap=True)
        self._lay_out()
        self._listen()
        self.set_look(look)
        self.refresh()

    def set_look(self, look: Look) -> None:
        """Take on a look."""
        super().set_look(look)
        self.delegate.look = look
        self._lens.setIcon(icon("search", look))
        self.list.viewport().update()

    def focus_search(self) -> None:
        """Give the keyboard to the search, with what is in it selected."""
        self.search.setFocus()
        self.search.selectAll()

    def refresh(self) -> None:
        """Read library, plan and selection again."""
        self._wanted = replace(self._wanted, end=self.workbench.selection.end)
        here = self._row()
        self.model.show_rows(shelf_rows(self.workbench.library, self.workbench.plan, self._wanted))
        if here is None or self._row() is None:
            self._go_to_first(here)
        self._show_hint()

    # -- made -------------------------------------------------------------------------------

    def _lay_out(self) -> None:
        self._lens = self.search.addAction(
            icon("search", self.look), QLineEdit.ActionPosition.LeadingPosition
        )
        self.search.setPlaceholderText("size, poles, maker")
        self.search.setAccessibleName("Search the shelf")
        self.search.setToolTip("Search by size, poles, family, maker or signal, such as 3.5 two")
        self.list.setModel(self.model)
        self.list.setItemDelegate(self.delegate)
        head = Head("Shelf")
        head.setContentsMargins(16, 8, 14, 4)
        head.setFixedHeight(40)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 6)
        column.setSpacing(6)
        column.addWidget(head)
        self.head = head
        column.addWidget(_inset(self.search, 16, 14))
        column.addWidget(self.list, 1)
        column.addWidget(_inset(self.hint, 16, 14))
        self.setFocusProxy(self.search)
        self.setTabOrder(self.search, self.list)
        self.setAccessibleName("Shelf")

    def _listen(self) -> None:
        bench = self.workbench
        for signal in (bench.plan_changed, bench.selection_changed, bench.library_changed):
            self.attach(signal, self._on_changed)
        self.attach(self.search.textChanged, self._on_search)
        self.attach(self.search.entered, self._on_search_entered)
        self.attach(self.search.walked, self._on_walked)

    def _on_changed(self, *_what: object) -> None:
        self.refresh()

    # -- rows -------------------------------------------------------------------------------

    @property
    def record(self) -> Definition | None:
        """The definition of the current row."""
        row = self._row()
        return row.record if row is not None else None

    def _row(self) -> ShelfRow | None:
        index = self.list.currentIndex()
        return index.data(ROW) if index.isValid() else None

    def _go_to_first(self, before: ShelfRow | None) -> None:
        rows = self.model.rows
        same = [
            at
            for at, row in enumerate(rows)
            if before and row.record and row.record is before.record
        ]
        first = same or [at for at, row in enumerate(rows) if row.sort == "item"]
        if first and (same or self._wanted.text):
            self.list.setCurrentIndex(self.model.index(first[0]))

    def _on_search(self, text: str) -> None:
        self._wanted = replace(self._wanted, text=text.strip())
        self.list.setCurrentIndex(QModelIndex())
        self.refresh()
        self.list.scrollToTop()

    def _on_search_entered(self) -> None:
        if self._row() is not None:
            self.choose_current()

    def _on_walked(self, step: int) -> None:
        """Go from the search into the list, to the next row that can be taken."""
        rows, at = self.model.rows, self.list.currentIndex().row() + step
        while 0 <= at < len(rows) and rows[at].sort in {"head", "none"}:
            at += step
        if 0 <= at < len(rows):
            self.list.setCurrentIndex(self.model.index(at))
            self.list.setFocus()

    def on_current_changed(self) -> None:
        """Say what Enter would do now."""
        self._show_hint()

    def _show_hint(self) -> None:
        self.hint.setText(self._hint())

    def _hint(self) -> str:
        row = self._row()
        if row is None or row.record is None:
            return "Drag a row onto an end, or pick it and press Enter."
        target = target_now(self.workbench, row.record)
        if target is None:
            return "Enter asks where to put it." if self.workbench.plan.ends else _START
        reason = why_not(self.workbench.plan, row.record, target)
        if reason:
            return f"{row.title} {reason}." if reason.startswith("is") else f"First {reason}."
        return f"Enter puts it on {target.words}."

    # -- choosing ---------------------------------------------------------------------------

    def choose_current(self) -> None:
        """Put the current definition where Enter says; ask for the place where none is selected."""
        row = self._row()
        if row is not None and row.sort == "more" and row.kind:
            self._wanted = replace(self._wanted, unfolded=self._wanted.unfolded ^ {row.kind})
            self.refresh()
        elif row is not None and row.record is not None:
            target = target_now(self.workbench, row.record)
            if target is not None:
                self.put(row.record, target)
            elif self.workbench.plan.ends:
                self.menu(row.record).popup(self._menu_corner())
            else:
                self.offered.emit(row.record)

    def put(self, record: Definition, target: Target) -> bool:
        """Put a definition on an end or a section as one undo step."""
        plan, reason = self.workbench.plan, why_not(self.workbench.plan, record, target)
        if reason:
            self.workbench.refused.emit(f"{record.title} {reason}", "Choose one that fits it.")
            return False
        edit = choosing(plan, self.workbench.library, record, target)
        return self.workbench.do(f"Choose {record.title} for {target.key}", edit)

    def menu(self, record: Definition) -> QMenu:
        """Offer every place that a definition may go; those it does not fit say why."""
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.setAccessibleName(f"Put {record.title} on")
        for target in targets(self.workbench.plan, record):
            reason = why_not(self.workbench.plan, record, target)
            words = f"Put on {target.words}" + (f" ({reason})" if reason else "")
            action = menu.addAction(words)
            action.setEnabled(not reason)
            action.triggered.connect(lambda _on=False, to=target: self.put(record, to))
        if menu.isEmpty():
            menu.addAction("Take it for the new lead", lambda: self.offered.emit(record))
        if not isinstance(record, Part):
            menu.addSeparator()
            menu.addAction("Look at it in the library", lambda: self.looked_up.emit(record))
        return menu

    def _menu_corner(self) -> QPoint:
        box = self.list.visualRect(self.list.currentIndex())
        return self.list.viewport().mapToGlobal(box.bottomLeft() + QPoint(60, 0))


_START = "Enter takes it for the next open place of the new lead."


def _inset(widget: QWidget, left: int, right: int) -> QWidget:
    holder = QWidget()
    column = QVBoxLayout(holder)
    column.setContentsMargins(left, 0, right, 0)
    column.addWidget(widget)
    return holder


class ShelfList(QListView):
    """The list under the keys and the pointer."""

    def __init__(self, panel: ShelfPanel) -> None:
        super().__init__()
        self._panel = panel
        self.setAccessibleName("Definitions")
        self.setMouseTracking(True)
        self.setUniformItemSizes(False)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setDragEnabled(True)
        self.setDragDropMode(QAbstractItemView.DragDropMode.DragOnly)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.doubleClicked.connect(lambda _at: panel.choose_current())
        self.clicked.connect(self._on_clicked)

    def currentChanged(self, current: QModelIndex, previous: QModelIndex) -> None:  # type: ignore[override]
        """Tell the panel that another row is current."""
        super().currentChanged(current, previous)
        self._panel.on_current_changed()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter chooses; a letter goes on in the search."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self._panel.choose_current()
        elif event.key() == Qt.Key.Key_Slash or self._is_text(event):
            self._panel.search.setFocus()
            if event.key() != Qt.Key.Key_Slash:
                self._panel.search.insert(event.text())
        else:
            super().keyPressEvent(event)

    @staticmethod
    def _is_text(event: QKeyEvent) -> bool:
        held = event.modifiers() & ~Qt.KeyboardModifier.ShiftModifier
        return bool(event.text().strip()) and event.text().isprintable() and not held

    def startDrag(self, actions: Qt.DropAction) -> None:
        """Drag the current row out."""
        drag = QDrag(self)
        drag.setMimeData(self.model().mimeData([self.currentIndex()]))
        drag.exec(Qt.DropAction.CopyAction)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Offer the places the row may go."""
        row = self.currentIndex().data(ROW) if self.currentIndex().isValid() else None
        if row is not None and row.record is not None:
            self._panel.menu(row.record).popup(event.globalPos())

    def _on_clicked(self, index: QModelIndex) -> None:
        if index.data(ROW).sort == "more":
            QTimer.singleShot(0, self._panel.choose_current)
