"""The joints in the order of soldering, as a list to choose from and to put in another order."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QPointF, QRect, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
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
from planner.app.fitting.order_paint import ROW_HIGH, row_items
from planner.app.fitting.rows import JointRow, joint_rows
from planner.model.place import Place

if TYPE_CHECKING:
    from planner.app.fitting.keys import FitKeys
    from planner.app.fitting.state import Fitting
    from planner.drawing.looks import Look

Index = QModelIndex | QPersistentModelIndex


class _Rows(QStyledItemDelegate):
    """Paint each row as a draw list."""

    def __init__(self, owner: "OrderList") -> None:
        super().__init__(owner)
        self._owner = owner

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """Return the height of a row."""
        return QSize(120, ROW_HIGH)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one row; what is chosen lies on a wash, the focus has a frame."""
        owner, box = self._owner, QRect(option.rect)
        row = owner.rows[index.row()]
        if row.contact == owner.fitting.joint:
            painter.fillRect(box, colour(owner.look.accent_wash))
        painter.save()
        painter.translate(box.topLeft())
        paint(painter, row_items(row, box.width(), owner.look))
        painter.restore()
        if owner.hasFocus() and index.row() == owner.currentRow():
            painter.setPen(QPen(colour(owner.look.ink), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(box.adjusted(1, 1, -1, -1))


class OrderList(QListWidget):
    """Show the joints; tell `moved` when one is dragged elsewhere in the order."""

    moved = Signal(str, int)  # contact, its new place from 0

    def __init__(self, state: "Fitting", look: "Look") -> None:
        super().__init__()
        self.fitting, self.look = state, look
        self.rows: tuple[JointRow, ...] = ()
        self.keys: FitKeys | None = None
        self._pressed: QPointF | None = None
        self._carried = ""
        self._gap = -1
        self.setAccessibleName("Order of soldering")
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setItemDelegate(_Rows(self))
        self.setMouseTracking(True)
        self.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        state.ready.connect(self.renew)
        state.joint_changed.connect(self.show_joint)

    def renew(self) -> None:
        """Show the joints as they are now; a row that says the same is left alone."""
        rows = joint_rows(self.fitting.workbench, self.fitting.fit, self.fitting.slow.access)
        if rows == self.rows and self.count() == len(rows):
            return
        self.rows = rows
        while self.count() > len(rows):
            self.takeItem(self.count() - 1)
        while self.count() < len(rows):
            self.addItem(QListWidgetItem())
        for place, row in enumerate(rows):
            item = self.item(place)
            item.setText(row.said)
            item.setToolTip(_tip(row))
        self.setFixedHeight(max(ROW_HIGH * len(rows), 1) + 2)
        self.show_joint()
        self.viewport().update()

    def show_joint(self) -> None:
        """Mark the joint that is looked at."""
        chosen = self.fitting.workbench.selection
        here = Place(end=chosen.end, contact=chosen.contact)
        for place, row in enumerate(self.rows):
            if Place(end=self.fitting.end, contact=row.contact) == here:
                self.setCurrentRow(place)
        self.viewport().update()

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.look = look
        self.viewport().update()

    # -- mouse ----------------------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose a joint, and take hold of it."""
        row = self.indexAt(event.position().toPoint()).row()
        if event.button() == Qt.MouseButton.LeftButton and row >= 0:
            self._pressed = event.position()
            self.setCurrentRow(row)
            self.fitting.point_at("")
            self.fitting.choose(self.rows[row].contact)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Point at a joint, or carry the one in hand to another place."""
        at = event.position()
        if self._pressed is None:
            row = self.indexAt(at.toPoint()).row()
            self.fitting.point_at(self.rows[row].contact if row >= 0 else "")
            return
        far = abs(at.y() - self._pressed.y()) >= QApplication.startDragDistance()
        if far and not self._carried:
            self._carried = self.rows[self.currentRow()].contact
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
        if self._carried:
            self._gap = min(max(round(at.y() / ROW_HIGH), 0), len(self.rows))
            self.viewport().update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Put the joint in hand where the line is."""
        carried, gap = self._carried, self._gap
        self._let_go()
        if carried:
            here = [row.contact for row in self.rows].index(carried)
            self.moved.emit(carried, gap - 1 if gap > here else gap)

    def _let_go(self) -> None:
        self._pressed, self._carried, self._gap = None, "", -1
        self.unsetCursor()
        self.viewport().update()

    def leaveEvent(self, event: object) -> None:
        """Point at nothing."""
        self.fitting.point_at("")

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the rows, and the line where the joint in hand would go."""
        super().paintEvent(event)
        if self._gap >= 0:
            with QPainter(self.viewport()) as painter:
                painter.setPen(QPen(colour(self.look.accent), 3))
                y = min(max(self._gap * ROW_HIGH, 1), self.viewport().height() - 2)
                painter.drawLine(0, y, self.viewport().width(), y)

    # -- keys -----------------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Put back what is in hand, else hand the key to the view."""
        if event.key() == Qt.Key.Key_Escape and self._carried:
            self._let_go()
        elif self.keys is None or not self.keys.press(event):
            super().keyPressEvent(event)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """Hand on that a key was let go of."""
        if self.keys is None or not self.keys.release(event):
            super().keyReleaseEvent(event)


def _tip(row: JointRow) -> str:
    near = f", nearest: {row.blocker}" if row.blocker else ""
    return f"{row.said[:1].upper()}{row.said[1:]}{near}"
