"""Text in its tones, heads of panels and sections, lines between them, buttons."""

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QWidget


def label(text: str = "", tone: str = "body", *, wrap: bool = False) -> QLabel:
    """Make a label of plain text in a tone: text from files is never read as markup."""
    made = QLabel(text)
    made.setTextFormat(Qt.TextFormat.PlainText)
    made.setProperty("tone", tone)
    made.setWordWrap(wrap)
    return made


def line() -> QFrame:
    """Make a 1 px divider."""
    made = QFrame()
    made.setProperty("line", "true")
    return made


def button(text: str, act: Callable[[], object], role: str = "", tip: str = "") -> QPushButton:
    """Make a button; `role` is empty, `primary` or `plain`."""
    made = QPushButton(text)
    made.setProperty("role", role)
    made.setToolTip(tip)
    made.setAccessibleName(text)
    made.setAutoDefault(False)
    made.clicked.connect(lambda _on=False: act())
    return made


def restyle(widget: QWidget, name: str, value: str) -> None:
    """Set a property that the style sheet looks at, and style the widget anew."""
    if widget.property(name) != value:
        widget.setProperty(name, value)
        widget.style().unpolish(widget)
        widget.style().polish(widget)


class Head(QWidget):
    """A head: its title left, a count or word right."""

    def __init__(self, title: str, tone: str = "head") -> None:
        super().__init__()
        self.title = label(title, tone)
        self.note = label("", "second")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.title)
        row.addStretch(1)
        row.addWidget(self.note)

    def set_note(self, text: str) -> None:
        """Show a count or word at the right."""
        self.note.setText(text)
