"""The table of landings under the keys: arrows, a typed contact, and single letters for acts."""

from PySide6.QtCore import QEvent, QModelIndex, QObject, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from planner.app.canvas.paint import paint
from planner.app.fonts import font
from planner.app.panels.landings_model import LandingsModel
from planner.app.panels.landings_paint import (
    CARRIES_AT,
    HEAD_HEIGHT,
    ROW_HEAD_WIDTH,
    ROW_HEIGHT,
    CellDelegate,
    CoreHeader,
    EndHeader,
)
from planner.app.panels.landings_typing import ContactEdit, offers
from planner.app.workbench import Workbench
from planner.drawing.looks import Look
from planner.drawing.primitives import Text

LEAST_COLUMN = 148
ACTS = {
    Qt.Key.Key_Delete: "lift",
    Qt.Key.Key_Backspace: "lift",
    Qt.Key.Key_X: "exchange",
    Qt.Key.Key_C: "cap",
    Qt.Key.Key_G: "by_signal",
    Qt.Key.Key_Space: "pick_up",
    Qt.Key.Key_Escape: "put_back",
}


class TypingDelegate(CellDelegate):
    """Give a cell its line to type in, and tell the table what happens in it."""

    def __init__(self, workbench: Workbench, look: Look, table: "LandingsTable") -> None:
        super().__init__(workbench, look, table)
        self._table = table

    def createEditor(
        self,
        parent: QWidget,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> QWidget:
        """Make the line, and say that typing has begun."""
        line = ContactEdit(parent)
        line.setProperty("cell", "true")
        self._table.line = line
        self._table.typing_began.emit(line)
        return line

    def setEditorData(self, editor: QWidget, index: QModelIndex | QPersistentModelIndex) -> None:
        """Begin empty: a contact is typed, not corrected."""

    def destroyEditor(self, editor: QWidget, index: QModelIndex | QPersistentModelIndex) -> None:
        """Say that typing has ended."""
        self._table.line = None
        self._table.typing_ended.emit()
        super().destroyEditor(editor, index)

    def eventFilter(self, editor: QObject, event: QEvent) -> bool:
        """Keep Enter from closing the line: the panel closes it, when the landing was done."""
        if event.type() == QEvent.Type.KeyPress:
            key = event.key() if isinstance(event, QKeyEvent) else 0
            if key in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
                return False
        return super().eventFilter(editor, event)

    def setModelData(self, *_args: object) -> None:
        """Land nothing when the line only loses the focus: Enter lands."""


class LandingsTable(QTableView):
    """Rows are conductors, columns are ends. Acts are told by name, cells by the current index."""

    act_wanted = Signal(str)
    typing_began = Signal(object)  # ContactEdit
    typing_ended = Signal()
    hovered = Signal(object)  # QModelIndex
    moved = Signal()

    def __init__(self, workbench: Workbench, model: LandingsModel, look: Look) -> None:
        super().__init__()
        self.line: ContactEdit | None = None  # what is typed into now
        self._workbench = workbench
        self._model = model
        self._delegate = TypingDelegate(workbench, look, self)
        self._ends = EndHeader(model, workbench, look)
        self._cores = CoreHeader(model, workbench, look)
        self._corner = Corner(look, self)
        self.setModel(model)
        self.setItemDelegate(self._delegate)
        self.setHorizontalHeader(self._ends)
        self.setVerticalHeader(self._cores)
        self._set_up()

    def _set_up(self) -> None:
        self.setShowGrid(False)
        self.setCornerButtonEnabled(False)
        self.setMouseTracking(True)
        self.setTabKeyNavigation(False)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(
            QAbstractItemView.EditTrigger.AnyKeyPressed
            | QAbstractItemView.EditTrigger.DoubleClicked
        )
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self._cores.setDefaultSectionSize(ROW_HEIGHT)
        self._cores.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self._ends.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self._ends.sectionClicked.connect(self._on_end_clicked)
        self._cores.sectionClicked.connect(self._on_core_clicked)
        self.setAccessibleName("Landings")

    def set_look(self, look: Look) -> None:
        """Take on a look."""
        for drawn in (self._delegate, self._ends, self._cores, self._corner):
            drawn.look = look
        self.viewport().update()

    def fit_columns(self) -> None:
        """Share the width among the ends; many ends keep their least width and scroll."""
        count = self._model.columnCount()
        if count:
            room = self.width() - ROW_HEAD_WIDTH - self.verticalScrollBar().sizeHint().width()
            self._ends.setDefaultSectionSize(max(LEAST_COLUMN, min(room // count, 280)))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share the width anew."""
        super().resizeEvent(event)
        self.fit_columns()
        self._corner.setGeometry(0, 0, ROW_HEAD_WIDTH, HEAD_HEIGHT)
        self._corner.raise_()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Turn single keys into acts, Enter and F2 into typing; the rest walks or types.

        A letter that begins a contact of the end is typed, not an act; Shift+C caps at any end.
        """
        plain = event.modifiers() in {
            Qt.KeyboardModifier.NoModifier,
            Qt.KeyboardModifier.KeypadModifier,
        }
        act = ACTS.get(Qt.Key(event.key()))
        shift = event.modifiers() == Qt.KeyboardModifier.ShiftModifier
        if (shift and act == "cap") or (plain and act and not self._begins_contact(event.text())):
            self.act_wanted.emit(act or "")
        elif plain and event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_F2}:
            self.edit(self.currentIndex())
        elif (plain or shift) and event.key() == Qt.Key.Key_N:
            event.ignore()
        else:
            super().keyPressEvent(event)

    def _begins_contact(self, letter: str) -> bool:
        index, bench = self.currentIndex(), self._workbench
        if not (letter.isalpha() and index.isValid()):
            return False
        return bool(offers(bench.plan, bench.wiring, self._model.place(index).end, letter))

    def currentChanged(
        self,
        current: QModelIndex | QPersistentModelIndex,
        previous: QModelIndex | QPersistentModelIndex,
    ) -> None:
        """Say that another cell is the current one."""
        super().currentChanged(current, previous)
        self.moved.emit()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Say over which cell the pointer is."""
        super().mouseMoveEvent(event)
        self.hovered.emit(self.indexAt(event.position().toPoint()))

    def leaveEvent(self, event: object) -> None:
        """Say that the pointer is over none."""
        self.hovered.emit(QModelIndex())

    def finish_typing(self) -> None:
        """Close the line of the current cell, and go to the next core."""
        index = self.currentIndex()
        if self.line is not None:
            self.closeEditor(self.line, TypingDelegate.EndEditHint.NoHint)
        self.setCurrentIndex(self._model.after(index))
        self.setFocus()

    def repaint_all(self) -> None:
        """Paint cells and heads again: light, selection or hand are others now."""
        self.viewport().update()
        self._cores.viewport().update()

    def _on_end_clicked(self, column: int) -> None:
        row = max(self.currentIndex().row(), 0)
        self.setCurrentIndex(self._model.index(row, column))

    def _on_core_clicked(self, row: int) -> None:
        column = max(self.currentIndex().column(), 0)
        self.setCurrentIndex(self._model.index(row, column))


class Corner(QWidget):
    """The corner over the frozen heads: the panel's title, and what the second column is."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self.look = look
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the title and the column's word."""
        with QPainter(self) as painter:
            painter.setFont(font())
            paint(
                painter,
                (
                    Text((16.0, 24.5), "Landings", 15.0, self.look.ink, bold=True),
                    Text((float(CARRIES_AT), 24.0), "Carries", 13.0, self.look.ink2, bold=True),
                ),
            )
