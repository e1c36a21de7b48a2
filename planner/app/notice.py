"""A notice: what an act left, or why it was refused. It asks nothing and stands in no way."""

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QWidget

from planner.app.fonts import BODY
from planner.app.icons import icon
from planner.app.labels import label, set_tone
from planner.drawing.looks import Look

_WIDEST = 640
_ROUND_TEXT = 68  # margins and the button that closes
_SHORT_MS = 6000


class Notice(QWidget):
    """Lie at the foot of the canvas until it is closed or replaced; a short one goes by itself."""

    def __init__(self, parent: QWidget, look: Look) -> None:
        super().__init__(parent)
        self._over = parent
        self.setObjectName("notice")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self._text: QLabel = label("", BODY)
        self._text.setWordWrap(True)
        self._text.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self._close = QPushButton()
        self._close.setProperty("role", "fold")
        self._close.setFixedSize(28, 28)
        self._close.setToolTip("Close this notice")
        self._close.setAccessibleName("Close this notice")
        self._close.clicked.connect(self.hide)
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 8, 8, 8)
        row.addWidget(self._text, 1)
        row.addWidget(self._close, 0, Qt.AlignmentFlag.AlignTop)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self.hide)
        self.set_look(look)
        self.hide()

    @property
    def text(self) -> str:
        """What is said."""
        return self._text.text()

    def say(self, text: str, *, tone: str = "", short: bool = False) -> None:
        """Say something; a `short` notice goes after six seconds."""
        self._text.setText(text)
        self.setAccessibleName(text)
        set_tone(self, tone)
        self.show()
        self.place()
        self.raise_()
        self._timer.stop()
        if short:
            self._timer.start(_SHORT_MS)

    def place(self) -> None:
        """Lie at the foot of the parent, in the middle."""
        parent = self._over
        line = self._text.fontMetrics().horizontalAdvance(self.text) + _ROUND_TEXT
        width = max(200, min(line, _WIDEST, parent.width() - 32))
        height = (
            self.heightForWidth(width) if self.hasHeightForWidth() else self.sizeHint().height()
        )
        self.setGeometry(
            (parent.width() - width) // 2, parent.height() - height - 16, width, height
        )

    def set_look(self, look: Look) -> None:
        """Draw in another look."""
        self._close.setIcon(icon("close", look))
