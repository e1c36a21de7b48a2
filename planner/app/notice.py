"""A notice: what an act left, or why it was refused. It asks nothing and stands in no way."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QRect, Qt, QTimer
from PySide6.QtGui import QHideEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QWidget

from planner.app.fonts import BODY
from planner.app.icons import icon
from planner.app.labels import label, set_tone
from planner.app.notice_room import GAP, covered, spots
from planner.drawing.looks import Look

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

SHOWN_MS = 8000
_WIDTHS = (640, 440, 320)
_LEAST_WIDTH = 200
_ROUND_TEXT = 68  # margins and the button that closes


class Notice(QWidget):
    """Lie over the canvas where it covers nothing needed, until closed, replaced, or out of time.

    `taken` tells what is needed there. Esc closes it, unless Esc is wanted elsewhere.
    """

    def __init__(self, parent: QWidget, look: Look) -> None:
        super().__init__(parent)
        self._over = parent
        self._escapes = True
        self.taken: Callable[[], Sequence[QRect]] = tuple
        self.setObjectName("notice")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self._text: QLabel = label("", BODY)
        self._text.setWordWrap(True)
        self._text.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self._close = QPushButton()
        self._close.setProperty("role", "fold")
        self._close.setFixedSize(28, 28)
        self._close.setToolTip("Close this notice (Esc)")
        self._close.setAccessibleName("Close this notice")
        self._close.clicked.connect(self.hide)
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 8, 8, 8)
        row.addWidget(self._text, 1)
        row.addWidget(self._close, 0, Qt.AlignmentFlag.AlignTop)
        self.timer = QTimer(self)
        self.timer.setSingleShot(True)
        self.timer.setInterval(SHOWN_MS)
        self.timer.timeout.connect(self._on_time_out)
        self._escape = QShortcut(QKeySequence("Esc"), parent.window(), self.hide)
        self._look = look
        self.hide()

    @property
    def text(self) -> str:
        """What is said."""
        return self._text.text()

    def say(self, text: str, *, tone: str = "", stays: bool = False) -> None:
        """Say something. It goes after eight seconds, or `stays` until it is closed or replaced."""
        self._text.setText(text)
        self.setAccessibleName(text)
        set_tone(self, tone)
        self._close.setIcon(icon("close", self._look))
        self.show()
        self.place()
        self.raise_()
        self._escape.setEnabled(self._escapes)
        if stays:
            self.timer.stop()
        else:
            self.timer.start()

    def take_escape(self, *, taken: bool) -> None:
        """Close at Esc, or leave Esc to what is in hand."""
        self._escapes = taken
        self._escape.setEnabled(taken and not self.isHidden())

    def _on_time_out(self) -> None:
        if self.underMouse() or self._close.hasFocus():
            self.timer.start()  # it is being read
        else:
            self.hide()

    def hideEvent(self, event: QHideEvent) -> None:
        """Let go of time and of Esc."""
        super().hideEvent(event)
        self.timer.stop()
        self._escape.setEnabled(False)

    # -- where ------------------------------------------------------------------------------

    def place(self) -> None:
        """Lie at the foot of the parent, in the middle, or where less that is needed is covered."""
        if self.isHidden():
            return
        taken = self.taken()
        among = spots(self._over.rect(), [self._size(width) for width in self._widths()])
        self.setGeometry(min(among, key=lambda spot: covered(spot, taken)))

    def _widths(self) -> tuple[int, ...]:
        """Return the widths to try: one line where that is short, else narrower ones too."""
        line = self._text.fontMetrics().horizontalAdvance(self.text) + _ROUND_TEXT
        room = self._over.width() - 2 * GAP
        return tuple(dict.fromkeys(max(_LEAST_WIDTH, min(line, at, room)) for at in _WIDTHS))

    def _size(self, width: int) -> tuple[int, int]:
        tall = self.heightForWidth(width) if self.hasHeightForWidth() else self.sizeHint().height()
        return (width, tall)

    def set_look(self, look: Look) -> None:
        """Draw in another look."""
        self._look = look
        self._close.setIcon(icon("close", look))
