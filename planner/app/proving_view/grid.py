"""The readings under the keys: typing goes into the cell, Enter takes it and goes on."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QModelIndex, QObject, QPersistentModelIndex, QPoint, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QLineEdit,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from planner.app.panels.landings_typing import OfferBox
from planner.app.panels.widgets.labels import restyle
from planner.app.panels.widgets.styles import panel_qss
from planner.app.proving_view.grid_model import FROM, LIMIT, READING, TO, GridModel
from planner.app.proving_view.grid_paint import (
    LEAST_CONTACT,
    ROW_HEIGHT,
    WIDTHS,
    GridDelegate,
    GridHead,
)
from planner.app.proving_view.rows import ProbeRow, Section

if TYPE_CHECKING:
    from planner.app.proving_view.state import Proving
    from planner.drawing.looks import Look
    from planner.proving.entries import EntryError

Index = QModelIndex | QPersistentModelIndex
_ENTER = {Qt.Key.Key_Return, Qt.Key.Key_Enter}
_STEPS = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1, Qt.Key.Key_PageUp: -10, Qt.Key.Key_PageDown: 10}
_LEAVES = {Qt.Key.Key_Tab: 1, Qt.Key.Key_Backtab: -1, Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}
_PLAIN = {Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.KeypadModifier}


class ReadingDelegate(GridDelegate):
    """Give the cell its line to type in; the table hears how it is left."""

    def __init__(self, model: GridModel, look: "Look", table: "ReadingsGrid") -> None:
        super().__init__(model, look, table)
        self._table = table

    def createEditor(self, parent: QWidget, option: QStyleOptionViewItem, index: Index) -> QWidget:
        """Make the line."""
        line = QLineEdit(parent)
        line.setAccessibleName(f"Reading, {self.model.spoken(index.row())}")
        line.setProperty("cell", "true")
        line.setFrame(False)
        line.textEdited.connect(lambda _text: self._table.show_wrong(None))
        self._table.line = line
        return line

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        """Begin empty: a reading is typed, not corrected."""

    def setModelData(self, *_args: object) -> None:
        """Take nothing when the line only loses the focus: Enter takes it."""

    def destroyEditor(self, editor: QWidget, index: Index) -> None:
        """Forget the line."""
        self._table.line = None
        self._table.show_wrong(None)
        super().destroyEditor(editor, index)

    def eventFilter(self, editor: QObject, event: QEvent) -> bool:
        """Turn Enter, Tab and the arrows into taking what was typed."""
        if event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            key = Qt.Key(event.key())
            if key in _ENTER:
                self._table.take()
                return True
            if key in _LEAVES:
                self._table.take(_LEAVES[key])
                return True
        return super().eventFilter(editor, event)


class ReadingsGrid(QTableView):
    """Rows are probes; the reading's cell is always the current one."""

    begin_wanted = Signal()

    def __init__(self, proving: "Proving", look: "Look") -> None:
        super().__init__()
        self.proving, self.look = proving, look
        self.line: QLineEdit | None = None
        self._box: OfferBox | None = None
        self._model = GridModel(proving, self)
        self._delegate = ReadingDelegate(self._model, look, self)
        self._head = GridHead(look, self)
        self.setModel(self._model)
        self.setItemDelegate(self._delegate)
        self.setHorizontalHeader(self._head)
        self._set_up()
        proving.rows_changed.connect(self._on_rows)
        proving.row_changed.connect(self._on_row)
        proving.unit_changed.connect(self.viewport().update)

    def _set_up(self) -> None:
        self.setShowGrid(False)
        self.setTabKeyNavigation(False)
        self.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        self.setEditTriggers(
            QAbstractItemView.EditTrigger.AnyKeyPressed
            | QAbstractItemView.EditTrigger.DoubleClicked
        )
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(ROW_HEIGHT)
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self._head.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.setAccessibleName("Readings")

    # -- shown ------------------------------------------------------------------------------------

    def _on_rows(self) -> None:
        self.clearSpans()
        for place, row in enumerate(self.proving.rows):
            if isinstance(row, Section):
                self.setSpan(place, 0, 1, self._model.columnCount())
        if self.proving.row is None:
            self.proving.go_to(self.proving.next_unread(-1))
        self._on_row()

    def _on_row(self) -> None:
        index = self._model.index(self.proving.at, READING)
        if index.isValid() and index != self.currentIndex():
            self.setCurrentIndex(index)
        above = self._model.index(self.proving.at - 1, READING)
        if above.isValid():
            self.scrollTo(above)  # a head over the row stays in sight
        self.scrollTo(index)
        self.viewport().update()

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.look = self._delegate.look = self._head.look = look
        if self._box is not None:
            self._box.set_look(look, panel_qss(look))
        self.viewport().update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share the width: the contacts take what is left; the limit goes first."""
        super().resizeEvent(event)
        room = self.viewport().width()
        narrow = room < sum(WIDTHS.values())
        self.setColumnHidden(LIMIT, narrow)
        shown = [it for it in WIDTHS if it not in {FROM, TO} and not (narrow and it == LIMIT)]
        left = room - sum(WIDTHS[it] for it in shown)
        for column in shown:
            self.setColumnWidth(column, WIDTHS[column])
        for column in (FROM, TO):
            self.setColumnWidth(column, max(left // 2, LEAST_CONTACT))

    # -- typed ------------------------------------------------------------------------------------

    def take(self, by: int = 0) -> None:
        """Take what was typed, and go on: to the next unread row, or up or down by a row."""
        place, line = self.currentIndex().row(), self.line
        typed = line.text() if line is not None else ""
        if typed.strip() or not by:
            wrong = self.proving.enter(place, typed)
            if wrong is not None:
                self.show_wrong(wrong)
                return
        self.end_typing()
        if by:
            self.step(by)
        else:
            self.go_on()

    def end_typing(self) -> None:
        """Close the line without taking it."""
        if self.line is not None:
            self.closeEditor(self.line, ReadingDelegate.EndEditHint.NoHint)
        self.setFocus()

    def go_on(self) -> None:
        """Go to the next unread row, if there is one."""
        following = self.proving.next_unread(self.proving.at)
        if following >= 0:
            self.proving.go_to(following)

    def step(self, by: int) -> bool:
        """Go so many rows down, heads not counted; False where there is none."""
        places = [at for at, row in enumerate(self.proving.rows) if isinstance(row, ProbeRow)]
        if not places:
            return False
        here = places.index(self.proving.at) if self.proving.at in places else 0
        wanted = min(max(here + by, 0), len(places) - 1)
        self.proving.go_to(places[wanted])
        return wanted != here

    def show_wrong(self, wrong: "EntryError | None") -> None:
        """Say at the cell what is wrong, or clear it; what was typed stays."""
        if self.line is not None:
            restyle(self.line, "wrong", "true" if wrong is not None else "")
        if wrong is None:
            if self._box is not None:
                self._box.hide()
            return
        if self._box is None:
            self._box = OfferBox(self.window(), self.look)
            self._box.set_look(self.look, panel_qss(self.look))
        self._box.show_offers((), -1, (("stop", str(wrong)),))
        cell = self.visualRect(self.currentIndex())
        self._box.place_by(self.viewport(), QPoint(cell.left(), cell.top()), cell.height())

    # -- keys -------------------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Type a reading, walk, unread; the letters of the view's own acts never come here."""
        key, plain = Qt.Key(event.key()), event.modifiers() in _PLAIN
        if plain and key in _ENTER:
            self._on_enter()
        elif plain and key in _STEPS:
            self.step(_STEPS[key])
        elif plain and key in {Qt.Key.Key_Delete, Qt.Key.Key_Backspace} and self.proving.at >= 0:
            self.proving.unread(self.proving.at)
        elif key == Qt.Key.Key_F2:
            self.edit(self.currentIndex())
        elif self._types(event):
            super().keyPressEvent(event)
        else:
            event.ignore()

    @staticmethod
    def _types(event: QKeyEvent) -> bool:
        held = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier
        return event.text().strip().isprintable() and bool(
            event.text().strip() and not event.modifiers() & held
        )

    def _on_enter(self) -> None:
        if self.proving.unit is None:
            self.begin_wanted.emit()
        elif self.proving.at >= 0 and self.proving.standing(self.proving.at) in {"unread", "part"}:
            self.edit(self.currentIndex())
        else:
            self.go_on()

    def focusNextPrevChild(self, forward: bool) -> bool:  # noqa: FBT001 - Qt's own
        """Go back row by row with Shift+Tab; Tab, and Shift+Tab from the first row, leave."""
        if not forward and self.line is None and self.step(-1):
            return True
        return super().focusNextPrevChild(forward)

    def currentChanged(self, current: Index, previous: Index) -> None:
        """Keep to the reading's column, and look at the row."""
        super().currentChanged(current, previous)
        if current.isValid() and current.column() != READING:
            self.setCurrentIndex(self._model.index(current.row(), READING))
        elif current.isValid():
            self.proving.go_to(current.row())

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Begin where something is to be read."""
        super().focusInEvent(event)
        if self.proving.row is None:
            self.proving.go_to(self.proving.next_unread(-1))

    def detach(self) -> None:
        """Take the box of refusals down."""
        if self._box is not None:
            self._box.deleteLater()
            self._box = None
