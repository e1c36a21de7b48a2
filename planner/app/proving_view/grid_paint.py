"""How readings are drawn: heads, contacts with the plate of their end, marks of the verdict."""

from PySide6.QtCore import QModelIndex, QObject, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPen
from PySide6.QtWidgets import (
    QHeaderView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from planner.app.canvas.paint import paint
from planner.app.fonts import BODY, SMALL
from planner.app.panels.landings_paint import draw_text
from planner.app.panels.widgets.drawn import end_plate
from planner.app.proving_view.grid_model import (
    EXPECTED,
    FROM,
    HEADS,
    LIMIT,
    READING,
    ROW,
    STANDING,
    TO,
    VERDICT,
    GridModel,
)
from planner.app.proving_view.rows import BAD, STANDINGS, ProbeRow, Section, contacts_words
from planner.drawing.looks import Look
from planner.drawing.marks import mark
from planner.model.signals import signals_text
from planner.proving.reading import Contact

Index = QModelIndex | QPersistentModelIndex
ROW_HEIGHT, HEAD_HEIGHT = 28, 30
# px; the contacts share what is left, and the limit goes where that is less than they need.
WIDTHS = {FROM: 96, TO: 96, EXPECTED: 72, LIMIT: 58, READING: 80, VERDICT: 82}
LEAST_CONTACT = 62
_PLATE = 18.0


class GridDelegate(QStyledItemDelegate):
    """Draw one cell."""

    def __init__(self, model: GridModel, look: Look, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.model, self.look = model, look

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """Return the room of a cell."""
        return QSize(WIDTHS[index.column()], ROW_HEIGHT)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Draw the ground, then what stands on it."""
        row, box = index.data(ROW), QRect(option.rect)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if isinstance(row, Section):
            self._head(painter, box, row)
        else:
            here = index.row() == self.model.state.at
            if here:
                painter.fillRect(box, QColor(self.look.accent_wash))
            painter.setPen(QPen(QColor(self.look.rule), 1))
            painter.drawLine(box.bottomLeft(), box.bottomRight())
            focused = bool(option.state & QStyle.StateFlag.State_HasFocus)
            self._cell(painter, box, row, index, framed=here and focused)
        painter.restore()

    def _head(self, painter: QPainter, box: QRect, row: Section) -> None:
        painter.fillRect(box, QColor(self.look.panel))
        painter.setPen(QPen(QColor(self.look.ink), 1))
        painter.drawLine(box.bottomLeft(), box.bottomRight())
        words = box.adjusted(12, 0, -8, 0)
        draw_text(painter, words, row.title, self.look.ink, bold=True)
        wide = painter.fontMetrics().horizontalAdvance(row.title) + 12
        draw_text(painter, words.adjusted(wide, 0, 0, 0), row.note, self.look.ink2, size=SMALL)

    def _cell(
        self, painter: QPainter, box: QRect, row: ProbeRow, index: Index, *, framed: bool
    ) -> None:
        column = index.column()
        if column in {FROM, TO}:
            inset = 12 if row.inner and column == FROM else 0
            inner = box.adjusted(8 + inset if column == FROM else 4, 0, -2, 0)
            self._contacts(painter, inner, row.ones if column == FROM else row.others)
        elif column == READING:
            self._reading(painter, box, str(index.data()), framed=framed)
        elif column == VERDICT:
            self._verdict(painter, box, index)
        else:
            draw_text(painter, box.adjusted(4, 0, -2, 0), str(index.data()), self.look.ink2)

    def _contacts(self, painter: QPainter, box: QRect, contacts: tuple[Contact, ...]) -> None:
        """Draw the end's plate and the contact; several are told in words."""
        if len(contacts) != 1:
            draw_text(painter, box, contacts_words(contacts), self.look.ink, bold=True)
            return
        end, contact = contacts[0]
        top = box.top() + (box.height() - _PLATE) / 2
        paint(painter, end_plate((float(box.left()), top), end, self.look, _PLATE))
        left = round(max(_PLATE, 10.0 + 8.5 * len(end))) + 6
        words = box.adjusted(left, 0, 0, 0)
        draw_text(painter, words, contact, self.look.ink, bold=True)
        wide = painter.fontMetrics().horizontalAdvance(contact) + 6
        rest = words.adjusted(wide, 0, 0, 0)
        signals = signals_text(self.model.state.workbench.wiring.signals_at(end, contact))
        if signals and rest.width() > 24:
            draw_text(painter, rest, signals, self.look.ink2, size=SMALL)

    def _reading(self, painter: QPainter, box: QRect, words: str, *, framed: bool) -> None:
        cell = box.adjusted(1, 2, -3, -3)
        painter.setPen(
            QPen(QColor(self.look.ink if framed else self.look.rule), 2 if framed else 1)
        )
        painter.setBrush(QColor(self.look.field))
        painter.drawRect(cell)
        draw_text(painter, cell.adjusted(6, 0, -4, 0), words, self.look.ink, bold=True)

    def _verdict(self, painter: QPainter, box: QRect, index: Index) -> None:
        standing = index.data(STANDING)
        kind, word = STANDINGS[standing]
        middle = (box.left() + 14.0, box.center().y() + 0.5)
        paint(painter, mark(kind, middle, 8.0, self.look))
        unread = standing in {"unread", "part"}
        colour = self.look.ink2 if unread else self.look.ink
        draw_text(painter, box.adjusted(28, 0, -2, 0), word, colour, bold=standing in BAD)


class GridHead(QHeaderView):
    """The heads of the columns."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.look = look
        self.setFixedHeight(HEAD_HEIGHT)
        self.setSectionsClickable(False)
        self.setAccessibleName("Columns of the readings")

    def paintSection(self, painter: QPainter, rect: QRect, logicalIndex: int) -> None:  # noqa: N803 - Qt's own name
        """Draw one head."""
        painter.save()
        painter.fillRect(rect, QColor(self.look.panel))
        painter.setPen(QPen(QColor(self.look.rule), 1))
        painter.drawLine(rect.bottomLeft(), rect.bottomRight())
        left = {FROM: 8, READING: 7, VERDICT: 6}.get(logicalIndex, 4)
        words = rect.adjusted(left, 0, -2, 0)
        draw_text(painter, words, HEADS[logicalIndex], self.look.ink2, bold=True, size=BODY)
        painter.restore()
