"""A dialog that is read and answered: a headline, a body, and two buttons below it."""

from collections.abc import Iterable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QDialog,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from planner.app.dialogs.message import Choice, buttons_row
from planner.app.fonts import BODY, GUIDE
from planner.app.labels import label


def framed(
    dialog: QDialog, headline: str, body: QWidget, yes: Choice, no: Choice
) -> tuple[QPushButton, QPushButton]:
    """Fill a dialog, and return the button that accepts it and the one that leaves it."""
    column = QVBoxLayout(dialog)
    column.setContentsMargins(24, 20, 24, 20)
    column.setSpacing(12)
    head = label(headline, GUIDE, bold=True)
    head.setWordWrap(True)
    column.addWidget(head)
    column.addWidget(body, 1)
    row, accepts, rejects = answer_row(dialog, yes, no)
    column.addLayout(row)
    return accepts, rejects


def answer_row(
    dialog: QDialog, yes: Choice, no: Choice
) -> tuple[QHBoxLayout, QPushButton, QPushButton]:
    """Return a row of two buttons, the one that accepts and the one that leaves the dialog."""
    row, (accepts, rejects) = buttons_row((yes, no))
    accepts.clicked.connect(dialog.accept)
    rejects.clicked.connect(dialog.reject)
    return row, accepts, rejects


def written(words: str, *, bold: bool = False, role: str = "") -> QLabel:
    """Return words that wrap, and that can be copied."""
    made = label(words, BODY, bold=bold, role=role)
    made.setWordWrap(True)
    made.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    return made


def lines_pane(lines: Iterable[QWidget], name: str) -> QScrollArea:
    """Return a pane of lines under each other, without a frame, that scrolls."""
    inner = QWidget()
    column = QVBoxLayout(inner)
    column.setContentsMargins(4, 4, 12, 4)
    column.setSpacing(4)
    for line in lines:
        column.addWidget(line)
    column.addStretch(1)
    area = QScrollArea()
    area.setWidget(inner)
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setAccessibleName(name)
    return area
