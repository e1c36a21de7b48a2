"""A list of rows with a bold line and a small one below it, and a mark where it can't be so."""

from collections.abc import Sequence

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPen, QResizeEvent
from PySide6.QtWidgets import (
    QListWidget,
    QListWidgetItem,
    QStyledItemDelegate,
    QStyleOptionViewItem,
)

from planner.app.canvas.paint import colour, paint
from planner.drawing.looks import Look
from planner.drawing.marks import mark
from planner.drawing.primitives import DrawList, Text
from planner.drawing.rich import Type, lines_of, rich_text
from planner.markup import as_it_is

Index = QModelIndex | QPersistentModelIndex
Row = tuple[str, str, bool]
_PITCH, _PAD, _LEFT = 16.0, 6.0, 8.0
_TYPE = Type(12.0, _PITCH, disc=8.0)


class _Rows(QStyledItemDelegate):
    def __init__(self, owner: "PlainList") -> None:
        super().__init__(owner)
        self._owner = owner

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """Return the height of a row at the width that there is."""
        owner = self._owner
        small = lines_of(as_it_is(owner.shown[index.row()][1]), owner.room, _TYPE)
        return QSize(0, round(18 + len(small) * _PITCH + 2 * _PAD))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one row; the chosen one lies on a wash, the focus has a frame."""
        owner, box = self._owner, option.rect
        if index.row() == owner.marked:
            painter.fillRect(box, colour(owner.look.accent_wash))
        painter.save()
        painter.translate(box.topLeft())
        paint(painter, owner.drawn(index.row()))
        painter.restore()
        if owner.hasFocus() and index.row() == owner.currentRow():
            painter.setPen(QPen(colour(owner.look.ink), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(box.adjusted(1, 1, -1, -1))


class PlainList(QListWidget):
    """Show rows; tell `chosen` when a person goes to one."""

    chosen = Signal(int)

    def __init__(self, name: str, look: Look, stopped: str = "can\u2019t go on") -> None:
        super().__init__()
        self._stopped = stopped
        self.look = look
        self.shown: Sequence[Row] = ()
        self.marked = -1
        self.setAccessibleName(name)
        self.setItemDelegate(_Rows(self))
        self.setVerticalScrollMode(QListWidget.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
        self.currentRowChanged.connect(self._on_current)
        self.itemClicked.connect(lambda item: self.chosen.emit(self.row(item)))

    @property
    def room(self) -> float:
        """How wide the words may be, px."""
        return max(self.viewport().width() - 3 * _LEFT - 18, 80)

    def show_rows(self, rows: Sequence[Row]) -> None:
        """Show other rows."""
        self.shown = rows
        self.blockSignals(True)
        while self.count() > len(rows):
            self.takeItem(self.count() - 1)
        while self.count() < len(rows):
            self.addItem(QListWidgetItem())
        for place, (text, small, stop) in enumerate(rows):
            begun = f"{self._stopped}: " if stop else ""
            self.item(place).setText(f"{begun}{text}, {small}")
        self.blockSignals(False)
        self.doItemsLayout()
        self.viewport().update()

    def mark(self, place: int) -> None:
        """Mark the row that is chosen; -1 for none."""
        self.marked = place
        self.viewport().update()

    def drawn(self, place: int) -> DrawList:
        """Draw one row."""
        text, small, stop = self.shown[place]
        left = _LEFT + (24 if stop else 0)
        tone = self.look.stop if stop else self.look.ink2
        return (
            *(mark("stop", (_LEFT + 8, _PAD + 9), 8, self.look) if stop else ()),
            Text((left, _PAD + 13), text, 13.0, self.look.ink, bold=True),
            *rich_text((left, _PAD + 30), as_it_is(small), self.room, _TYPE, self.look, tone)[0],
        )

    def set_look(self, look: Look) -> None:
        """Draw in another look."""
        self.look = look
        self.viewport().update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Break the lines anew."""
        super().resizeEvent(event)
        self.doItemsLayout()

    def _on_current(self, place: int) -> None:
        if self.hasFocus() and 0 <= place < len(self.shown):
            self.chosen.emit(place)
