"""How a row of the shelf is drawn."""

from PySide6.QtCore import QModelIndex, QObject, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPen, QPixmap
from PySide6.QtWidgets import (
    QAbstractItemView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from planner.app.canvas.paint import paint
from planner.app.fonts import font
from planner.app.panels.landings_paint import draw_text
from planner.app.panels.pictograms import SIDE, pictogram
from planner.app.panels.shelf_rows import ROW, ShelfRow
from planner.app.panels.widgets.drawn import end_plate
from planner.drawing.looks import Look
from planner.drawing.marks import mark

ITEM_HEIGHT = 46
HEAD_HEIGHT = 34
LEFT = 14
TEXT_AT = 56
LINE = 16
RIGHT = 12
_FLAGS = int(Qt.AlignmentFlag.AlignLeft | Qt.TextFlag.TextWordWrap)


class ShelfDelegate(QStyledItemDelegate):
    """Draw heads, definitions with their pictograms, and what could not be read."""

    def __init__(self, look: Look, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self._pictures: dict[tuple[str, str, int, str, float], QPixmap] = {}

    def sizeHint(
        self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> QSize:
        """Return the height of a row; broken files take what their words need."""
        row = index.data(ROW)
        if row.sort == "item":
            return QSize(160, ITEM_HEIGHT + self._title_height(row, option.widget) - LINE)
        if row.sort in {"broken", "none"}:
            return QSize(160, self._wrapped_height(row, option.widget))
        return QSize(160, HEAD_HEIGHT if row.sort == "head" else 28)

    @staticmethod
    def _title_height(row: ShelfRow, view: QWidget | None) -> int:
        """Return the height of a title, which takes more lines where it is long."""
        width = view.viewport().width() if isinstance(view, QAbstractItemView) else 204
        box = QRect(0, 0, width - RIGHT - TEXT_AT, 200)
        lines = QFontMetrics(font()).boundingRect(box, _FLAGS, row.title).height() // LINE
        return LINE * max(lines, 1)

    def _wrapped_height(self, row: ShelfRow, view: QWidget | None) -> int:
        width = (
            (view.width() if view else 200) - (TEXT_AT if row.sort == "broken" else LEFT) - RIGHT
        )
        box = QRect(0, 0, max(width - 12, 80), 2000)
        first = QFontMetrics(font(13, bold=True)).boundingRect(box, _FLAGS | _ANYWHERE, row.title)
        second = QFontMetrics(font(12)).boundingRect(box, _FLAGS, row.second)
        return first.height() + second.height() + 14

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        """Draw a row."""
        row: ShelfRow = index.data(ROW)
        box = QRect(option.rect)
        state = option.state
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._ground(painter, box, row, state)
        {
            "head": self._head,
            "item": self._item,
            "more": self._more,
            "broken": self._broken,
            "none": self._none,
        }[row.sort](painter, box, row)
        painter.restore()

    def _ground(
        self, painter: QPainter, box: QRect, row: ShelfRow, state: QStyle.StateFlag
    ) -> None:
        if row.sort == "head":
            return
        if state & QStyle.StateFlag.State_Selected:
            painter.fillRect(box, QColor(self.look.accent_wash))
        elif state & QStyle.StateFlag.State_MouseOver:
            painter.fillRect(box, QColor(self.look.paper))
        if state & QStyle.StateFlag.State_HasFocus and state & QStyle.StateFlag.State_Selected:
            painter.setPen(QPen(QColor(self.look.ink), 2))
            painter.drawRect(box.adjusted(2, 1, -2, -2))

    def _head(self, painter: QPainter, box: QRect, row: ShelfRow) -> None:
        if box.top() > 2:
            painter.setPen(QPen(QColor(self.look.rule), 1))
            painter.drawLine(box.left() + LEFT, box.top() + 4, box.right() - RIGHT, box.top() + 4)
        line = box.adjusted(LEFT, 8, -RIGHT, 0)
        width = QFontMetrics(font(13, bold=True)).horizontalAdvance(row.title) + 8
        draw_text(painter, line, row.title, self.look.ink2, bold=True)
        note = QFontMetrics(font()).elidedText(
            row.second, Qt.TextElideMode.ElideRight, line.width() - width
        )
        painter.setFont(font())
        painter.drawText(line, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, note)

    def _item(self, painter: QPainter, box: QRect, row: ShelfRow) -> None:
        self._picture(painter, box, row)
        whole = box.right() - RIGHT - TEXT_AT
        # Letters stand beside the title, or a line lower where that would cut it.
        need = QFontMetrics(font()).horizontalAdvance(row.title)
        low = need > whole - self._letters_width(row)
        drop = box.height() - ITEM_HEIGHT
        lower = box.translated(0, 19 + drop if low else 0)
        beside = self._letters(painter, lower, row) - TEXT_AT - 4
        ink = self.look.ink2 if row.why_not else self.look.ink
        title = QRect(TEXT_AT, box.top() + 5, whole if low else beside, 18)
        second = QRect(TEXT_AT, box.top() + 23 + drop, beside if low else whole, 16)
        if drop:
            painter.setFont(font())
            painter.setPen(QColor(ink))
            painter.drawText(title.adjusted(0, 0, 0, drop), _FLAGS, row.title)
        else:
            draw_text(painter, title, row.title, ink)
        draw_text(painter, second, row.why_not or row.second, self.look.ink2, size=12)

    @staticmethod
    def _shown_letters(row: ShelfRow) -> tuple[str, ...]:
        letters = row.used if row.kind != "cable" else ()
        return letters if len(letters) <= 3 else (*letters[:1], f"+{len(letters) - 1}")

    def _letters_width(self, row: ShelfRow) -> int:
        widths = (int(max(19.0, 10.0 + 8.5 * len(it))) + 3 for it in self._shown_letters(row))
        return sum(widths)

    def _letters(self, painter: QPainter, box: QRect, row: ShelfRow) -> int:
        """Draw the letters of the ends from the right; return where they begin."""
        right = box.right() - RIGHT + 4
        for letter in reversed(self._shown_letters(row)):
            width = int(max(19.0, 10.0 + 8.5 * len(letter)))
            right -= width + 3
            paint(painter, end_plate((right + 3.0, box.top() + 5.0), letter, self.look, 19.0))
        if row.kind == "cable" and row.used:
            right -= 20
            paint(painter, mark("landed", (right + 12.0, box.top() + 14.0), 7.0, self.look))
        return right

    def _picture(self, painter: QPainter, box: QRect, row: ShelfRow) -> None:
        assert row.record is not None
        ratio = painter.device().devicePixelRatioF()
        key = (str(row.kind), row.record.id, row.record.revision, self.look.name, ratio)
        if key not in self._pictures:
            self._pictures[key] = self._drawn(row, ratio)
        painter.setOpacity(0.45 if row.why_not else 1.0)
        painter.drawPixmap(box.left() + LEFT + 2, box.top() + 7, self._pictures[key])
        painter.setOpacity(1.0)

    def _drawn(self, row: ShelfRow, ratio: float) -> QPixmap:
        assert row.record is not None
        made = QPixmap(QSize(SIDE, SIDE) * ratio)
        made.setDevicePixelRatio(ratio)
        made.fill(Qt.GlobalColor.transparent)
        with QPainter(made) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            paint(painter, pictogram(row.record, self.look))
        return made

    def _more(self, painter: QPainter, box: QRect, row: ShelfRow) -> None:
        line = QRect(TEXT_AT, box.top(), box.right() - TEXT_AT, box.height())
        draw_text(painter, line, row.title, self.look.accent, bold=True)

    def _broken(self, painter: QPainter, box: QRect, row: ShelfRow) -> None:
        middle = (box.left() + LEFT + 18.0, box.top() + 18.0)
        paint(painter, mark("caution", middle, 11.0, self.look))
        self._wrapped(painter, box.adjusted(TEXT_AT, 6, -RIGHT - 12, 0), row)

    def _none(self, painter: QPainter, box: QRect, row: ShelfRow) -> None:
        self._wrapped(painter, box.adjusted(LEFT, 6, -RIGHT - 12, 0), row)

    def _wrapped(self, painter: QPainter, box: QRect, row: ShelfRow) -> None:
        painter.setFont(font(13, bold=True))
        painter.setPen(QColor(self.look.ink))
        drawn = painter.boundingRect(box, _FLAGS | _ANYWHERE, row.title)
        painter.drawText(box, _FLAGS | _ANYWHERE, row.title)
        painter.setFont(font(12))
        painter.setPen(QColor(self.look.ink2))
        below = box.adjusted(0, drawn.height() + 2, 0, 0)
        painter.drawText(below, _FLAGS, row.second)


# A file's name has no spaces: it may break anywhere.
_ANYWHERE = int(Qt.TextFlag.TextWrapAnywhere)
