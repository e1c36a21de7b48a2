"""The steps as one numbered list, to choose from and to put in another order."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QPointF, QRect, QSize, Qt
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QApplication,
    QFrame,
    QListWidget,
    QListWidgetItem,
    QStyledItemDelegate,
    QStyleOptionViewItem,
)

from planner.app.canvas.paint import colour, paint
from planner.app.order_of_work.rows import step_rows
from planner.app.order_of_work.step_paint import StepRow, row_high, stage_high, step_items

if TYPE_CHECKING:
    from planner.app.order_of_work.state import Work
    from planner.drawing.looks import Look

Index = QModelIndex | QPersistentModelIndex
_MOVES = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}


class _Rows(QStyledItemDelegate):
    """Paint each row as a draw list."""

    def __init__(self, owner: "StepList") -> None:
        super().__init__(owner)
        self._owner = owner

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """Return the height of a row at the width that there is."""
        width = self._owner.viewport().width()
        return QSize(0, row_high(self._owner.rows[index.row()], width))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one row; the chosen one lies on a wash, the focus has a frame."""
        owner, box = self._owner, QRect(option.rect)
        row = owner.rows[index.row()]
        inner = box.adjusted(0, stage_high(row), 0, 0)
        if row.id == owner.work.step:
            painter.fillRect(inner, colour(owner.look.accent_wash))
        painter.save()
        painter.translate(box.topLeft())
        paint(painter, step_items(row, box.width(), owner.look))
        painter.restore()
        if owner.hasFocus() and index.row() == owner.currentRow():
            painter.setPen(QPen(colour(owner.look.ink), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(inner.adjusted(1, 1, -1, -1))


class StepList(QListWidget):
    """Show the steps; a step goes elsewhere by drag, or by Alt with Up and Down."""

    def __init__(self, work: "Work", look: "Look") -> None:
        super().__init__()
        self.work, self.look = work, look
        self.rows: tuple[StepRow, ...] = ()
        self._pressed: QPointF | None = None
        self._carried = ""
        self._gap = -1
        self._free = range(0)
        self.setAccessibleName("Order of work")
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setItemDelegate(_Rows(self))
        self.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)
        work.changed.connect(self.renew)
        work.step_changed.connect(self._show_step)
        self.currentRowChanged.connect(self._on_current)

    def renew(self) -> None:
        """Show the steps as they are now."""
        self.rows = step_rows(self.work.plan, self.work.facts.steps)
        self.blockSignals(True)
        while self.count() > len(self.rows):
            self.takeItem(self.count() - 1)
        while self.count() < len(self.rows):
            self.addItem(QListWidgetItem())
        for place, row in enumerate(self.rows):
            self.item(place).setText(row.said)
        self._show_step()
        self.blockSignals(False)
        self.doItemsLayout()

    def _show_step(self) -> None:
        place = self.work.place_of(self.work.step) - 1
        if place >= 0 and place != self.currentRow():
            self.setCurrentRow(place)
        self.viewport().update()

    def _on_current(self, place: int) -> None:
        if self.hasFocus() and 0 <= place < len(self.rows):
            self.work.choose_step(self.rows[place].id)

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.look = look
        self.viewport().update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Break the lines anew."""
        super().resizeEvent(event)
        self.doItemsLayout()

    # -- mouse ----------------------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose a step, and take hold of it."""
        place = self.indexAt(event.position().toPoint()).row()
        if event.button() == Qt.MouseButton.LeftButton and place >= 0:
            self._pressed = event.position()
            self.setCurrentRow(place)
            self.work.choose_step(self.rows[place].id)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Carry the step in hand to another place."""
        if self._pressed is None:
            return
        at = event.position()
        far = abs(at.y() - self._pressed.y()) >= QApplication.startDragDistance()
        if far and not self._carried:
            self._carried = self.work.step
            self._free = self.work.may_go(self._carried)
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
        if self._carried:
            self._gap = self._gap_at(round(at.y()))
            self.viewport().update()

    def _gap_at(self, y: int) -> int:
        middles = (self._box(place).center().y() for place in range(len(self.rows)))
        return sum(y > middle for middle in middles)

    def _box(self, place: int) -> QRect:
        return self.visualItemRect(self.item(place))

    def _target(self) -> int:
        """Return the number that the step in hand would have."""
        here = self.work.place_of(self._carried)
        return self._gap if self._gap >= here else self._gap + 1

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Put the step in hand where the line is; what must come before refuses it."""
        carried, to = self._carried, self._target() if self._carried else 0
        self._let_go()
        if carried:
            self.work.move(carried, to)

    def _let_go(self) -> None:
        self._pressed, self._carried, self._gap = None, "", -1
        self.unsetCursor()
        self.viewport().update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the rows, and the line where the step in hand would go: dashed where it can't."""
        super().paintEvent(event)
        if self._gap < 0 or not self.rows:
            return
        last = self._gap == len(self.rows)
        y = self._box(self._gap - 1).bottom() if last else self._box(self._gap).top()
        fits = self._target() in self._free
        line = Qt.PenStyle.SolidLine if fits else Qt.PenStyle.DashLine
        with QPainter(self.viewport()) as painter:
            painter.setPen(QPen(colour(self.look.accent if fits else self.look.stop), 3, line))
            painter.drawLine(0, max(y, 1), self.viewport().width(), max(y, 1))

    # -- keys -----------------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move the chosen step with Alt, put back what is in hand with Esc, else walk."""
        key, alt = Qt.Key(event.key()), Qt.KeyboardModifier.AltModifier
        if key == Qt.Key.Key_Escape and self._carried:
            self._let_go()
        elif key in _MOVES and event.modifiers() & alt:
            place = self.currentRow()
            if 0 <= place < len(self.rows):
                self.work.move(self.rows[place].id, place + 1 + _MOVES[key])
        else:
            super().keyPressEvent(event)
