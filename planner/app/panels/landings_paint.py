"""How the table of landings is drawn: cells, the heads of columns and rows, the corner."""

from PySide6.QtCore import QModelIndex, QObject, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPen
from PySide6.QtWidgets import QHeaderView, QStyle, QStyledItemDelegate, QStyleOptionViewItem

from planner.app.canvas.paint import paint
from planner.app.fonts import font
from planner.app.panels.landings_model import CELL, Cell, LandingsModel
from planner.app.panels.patch import patch
from planner.app.panels.widgets.drawn import end_plate
from planner.app.panels.words import end_title
from planner.app.workbench import Workbench
from planner.drawing.looks import Look
from planner.drawing.marks import MarkKind, mark

ROW_HEIGHT = 28
HEAD_HEIGHT = 38
ROW_HEAD_WIDTH = 284
CARRIES_AT = 206
CODE_AT = 66
_MARKS: dict[str, MarkKind] = {
    "loose": "empty",
    "landed": "landed",
    "hand": "hand",
    "capped": "nothing",
    "stop": "stop",
    "caution": "caution",
}


def draw_text(
    painter: QPainter, box: QRect, text: str, colour: str, *, bold: bool = False, size: int = 13
) -> None:
    """Draw one line, shortened to the box with an ellipsis."""
    face = font(size, bold=bold)
    painter.setFont(face)
    painter.setPen(QColor(colour))
    shown = QFontMetrics(face).elidedText(text, Qt.TextElideMode.ElideRight, box.width())
    painter.drawText(box, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, shown)


class CellDelegate(QStyledItemDelegate):
    """Draw a cell: the state's cup or mark, the contact's words, a frame where the hand is."""

    def __init__(self, workbench: Workbench, look: Look, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._workbench = workbench
        self.look = look

    def sizeHint(
        self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> QSize:
        """Return the room a cell needs."""
        return QSize(120, ROW_HEIGHT)

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        """Draw the ground, then the mark and the words, then the frame."""
        cell = index.data(CELL)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRect(option.rect)
        self._ground(painter, box, cell, index.row())
        focused = bool(option.state & QStyle.StateFlag.State_HasFocus)
        self._frame(painter, box, cell, focused=focused and self._is_current(index))
        self._content(painter, box, cell)
        painter.restore()

    def _is_current(self, index: QModelIndex | QPersistentModelIndex) -> bool:
        here = self._workbench.selection
        cell = index.data(CELL)
        return (here.end, here.conductor) == (cell.end, cell.conductor)

    def _ground(self, painter: QPainter, box: QRect, cell: Cell, row: int) -> None:
        if cell.conductor == self._workbench.selection.conductor:
            painter.fillRect(box, QColor(self.look.accent_wash))
        painter.setPen(QPen(QColor(self.look.rule), 1))
        painter.drawLine(box.bottomLeft(), box.bottomRight())

    def _lit(self, cell: Cell) -> bool:
        return any(
            place.end == cell.end
            and (
                (cell.contact and place.contact == cell.contact)
                or (not place.contact and place.conductor == cell.conductor)
            )
            for place in self._workbench.lit
        )

    def _frame(self, painter: QPainter, box: QRect, cell: Cell, *, focused: bool) -> None:
        inner = box.adjusted(1, 1, -3, -2)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        if focused:
            painter.fillRect(inner, QColor(self.look.field))
            painter.setPen(QPen(QColor(self.look.ink), 2))
            painter.drawRect(inner)
        elif cell.state == "hand":
            painter.setBrush(QColor(self.look.field))
            painter.setPen(QPen(QColor(self.look.accent), 2))
            painter.drawRoundedRect(inner, 4, 4)
        elif cell.state != "away" and self._lit(cell):
            painter.setPen(QPen(QColor(self.look.accent), 1))
            painter.drawRoundedRect(inner, 4, 4)

    def _content(self, painter: QPainter, box: QRect, cell: Cell) -> None:
        text = box.adjusted(30, 0, -6, 0)
        middle = (box.left() + 16.0, box.top() + ROW_HEIGHT / 2)
        if cell.state in _MARKS:
            paint(painter, mark(_MARKS[cell.state], middle, 8.0, self.look))
        elif cell.words:
            self._dead_end(painter, middle)
        quiet = cell.state in {"away", "loose", "capped"}
        colour = self.look.ink2 if quiet else self.look.ink
        bold = cell.state in {"stop", "caution"}
        draw_text(painter, text, cell.words, colour, bold=bold)

    def _dead_end(self, painter: QPainter, middle: tuple[float, float]) -> None:
        x, y = int(middle[0]), int(middle[1])
        painter.setPen(QPen(QColor(self.look.ink2), 1.5))
        painter.drawLine(x - 6, y, x + 4, y)
        painter.drawLine(x + 4, y - 4, x + 4, y + 4)


class EndHeader(QHeaderView):
    """The heads of the columns: the letter of each end on its plate, and its name."""

    def __init__(self, model: LandingsModel, workbench: Workbench, look: Look) -> None:
        super().__init__(Qt.Orientation.Horizontal)
        self._model = model
        self._workbench = workbench
        self.look = look
        self.setSectionsClickable(True)
        self.setFixedHeight(HEAD_HEIGHT)
        self.setAccessibleName("Ends")

    def paintSection(self, painter: QPainter, rect: QRect, logicalIndex: int) -> None:  # noqa: N803 - Qt's own name
        """Draw one head."""
        end = self._model.end(logicalIndex)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(rect, QColor(self.look.panel))
        painter.setPen(QPen(QColor(self.look.rule), 1))
        painter.drawLine(rect.bottomLeft(), rect.bottomRight())
        plate = end_plate((rect.left() + 8.0, rect.top() + 9.0), end.id, self.look)
        paint(painter, plate)
        width = int(max(20.0, 10.0 + 8.5 * len(end.id)))
        words = rect.adjusted(16 + width, 0, -6, 0)
        title = end_title(self._workbench.plan, end.id)
        draw_text(painter, words, title, self.look.ink, bold=True)
        painter.restore()


class CoreHeader(QHeaderView):
    """The heads of the rows: patch, letter code, colour word, and the signal carried.

    As the table's own row heads they stay in sight when many ends scroll by.
    """

    def __init__(self, model: LandingsModel, workbench: Workbench, look: Look) -> None:
        super().__init__(Qt.Orientation.Vertical)
        self._model = model
        self._workbench = workbench
        self.look = look
        self.setSectionsClickable(True)
        self.setFixedWidth(ROW_HEAD_WIDTH)
        self.setAccessibleName("Conductors")

    def paintSection(self, painter: QPainter, rect: QRect, logicalIndex: int) -> None:  # noqa: N803 - Qt's own name
        """Draw one head."""
        head = self._model.head(logicalIndex)
        here = head.conductor == self._workbench.selection.conductor
        ground = self.look.accent_wash if here else self.look.panel
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(rect, QColor(ground))
        painter.setPen(QPen(QColor(self.look.rule), 1))
        painter.drawLine(rect.left() + 16, rect.bottom(), rect.right(), rect.bottom())
        corner = (rect.left() + 17.0, rect.top() + 6.5)
        paint(painter, patch(corner, (38.0, 14.0), head.wire, self.look))
        self._words(painter, rect)
        painter.restore()

    def _words(self, painter: QPainter, rect: QRect) -> None:
        head = self._model.head(self.logicalIndexAt(rect.center()))
        code = QFontMetrics(font(bold=True)).horizontalAdvance(head.code)
        left = rect.left() + CODE_AT
        draw_text(painter, self._box(rect, left, code + 2), head.code, self.look.ink, bold=True)
        words = left + max(code, 24) + 9
        room = rect.left() + CARRIES_AT - 6 - words
        draw_text(painter, self._box(rect, words, room), _short(head.words), self.look.ink2)
        at = rect.left() + CARRIES_AT
        box = self._box(rect, at, rect.right() - at)
        draw_text(painter, box, head.carries, self.look.ink, bold=True)

    @staticmethod
    def _box(rect: QRect, left: int, width: int) -> QRect:
        return QRect(left, rect.top(), width, rect.height())


def _short(words: str) -> str:
    """Shorten `white, brown stripe, 1` to `white/brown`: the rest is in tip and spoken name."""
    colours = words.split(", ")
    if len(colours) > 1 and colours[1].endswith(" stripe"):
        return f"{colours[0]}/{colours[1].removesuffix(' stripe')}"
    return colours[0]
