"""Small text and mark widgets that the shell is made of."""

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QLabel, QSizePolicy, QWidget

from planner.app.canvas.paint import paint
from planner.app.fonts import BODY, font
from planner.drawing.looks import Look
from planner.drawing.marks import MarkKind, mark


def label(
    text: str = "",
    size: int = BODY,
    *,
    bold: bool = False,
    role: str = "",
    parent: QWidget | None = None,
) -> QLabel:
    """Make a label in the face; `role` is one of the style sheet's (second, small, key)."""
    made = QLabel(text, parent)
    made.setFont(font(size, bold=bold))
    made.setTextFormat(Qt.TextFormat.PlainText)
    if role:
        made.setProperty("role", role)
    return made


def set_tone(widget: QWidget, tone: str) -> None:
    """Give a widget one of the style sheet's tones (stop, caution, clear, or none)."""
    if (widget.property("tone") or "") != tone:
        widget.setProperty("tone", tone)
        widget.style().unpolish(widget)
        widget.style().polish(widget)


class ElidedLabel(QLabel):
    """One line that ends in an ellipsis where there is no room, and then tells all in its tip."""

    def __init__(
        self, size: int = BODY, *, bold: bool = False, role: str = "", floor: int = 40
    ) -> None:
        super().__init__()
        self.setFont(font(size, bold=bold))
        self.setTextFormat(Qt.TextFormat.PlainText)
        self._floor = floor
        if role:
            self.setProperty("role", role)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)

    def setText(self, text: str) -> None:
        """Show another line."""
        super().setText(text)
        self.setAccessibleName(text)
        self._tell()

    def minimumSizeHint(self) -> QSize:
        """Shrink down to the floor, but never ask for more than the text needs."""
        wanted = self.sizeHint()
        return QSize(min(self._floor, wanted.width()), wanted.height())

    def is_cut(self) -> bool:
        """Tell whether the text does not fit."""
        return QFontMetrics(self.font()).horizontalAdvance(self.text()) > self.width()

    def _tell(self) -> None:
        self.setToolTip(self.text() if self.is_cut() else "")

    def resizeEvent(self, event: object) -> None:
        """See anew whether the text fits."""
        self._tell()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the line, cut at the right."""
        with QPainter(self) as painter:
            painter.setFont(self.font())
            painter.setPen(self.palette().color(self.foregroundRole()))
            shown = QFontMetrics(self.font()).elidedText(
                self.text(), Qt.TextElideMode.ElideRight, self.width()
            )
            flags = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
            painter.drawText(QRect(0, 0, self.width(), self.height()), flags, shown)


class MarkLabel(QWidget):
    """A mark by its shape: stop, caution, note, clear, a cup."""

    def __init__(self, kind: MarkKind, radius: int, look: Look) -> None:
        super().__init__()
        self._kind: MarkKind = kind
        self._look = look
        self._radius = radius
        self.setFixedSize(radius * 2, radius * 2)

    def show_mark(self, kind: MarkKind, radius: int, look: Look) -> None:
        """Show another mark."""
        self._kind, self._radius, self._look = kind, radius, look
        self.setFixedSize(radius * 2, radius * 2)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the mark."""
        centre = (self.width() / 2, self.height() / 2)
        with QPainter(self) as painter:
            paint(painter, mark(self._kind, centre, self._radius, self._look))


def divider(height: int = 40) -> QFrame:
    """Return a thin upright rule."""
    made = QFrame()
    made.setProperty("role", "divider")
    made.setFixedSize(1, height)
    return made
