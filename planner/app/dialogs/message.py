"""A question or a message: a headline, a paragraph, problems if there are any, and buttons."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QDialog,
    QFrame,
    QHBoxLayout,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from planner.app.fonts import BODY, GUIDE, font
from planner.app.labels import label

if TYPE_CHECKING:
    from planner.problem import Problem

_WIDTH = 520
_MOST_PROBLEMS = 50


@dataclass(frozen=True, slots=True)
class Choice:
    """One button: what it stands for, its words, whether Enter or Esc chooses it."""

    name: str
    text: str
    primary: bool = False
    escape: bool = False


def buttons_row(choices: Sequence[Choice]) -> tuple[QHBoxLayout, list[QPushButton]]:
    """Return a row of buttons at the right; what they do is for the dialog to connect."""
    row = QHBoxLayout()
    row.setSpacing(8)
    row.addStretch(1)
    made = []
    for choice in choices:
        button = QPushButton(choice.text)
        button.setFont(font(BODY, bold=True))
        button.setAccessibleName(choice.text)
        if choice.primary:
            button.setProperty("role", "primary")
            button.setDefault(True)
        row.addWidget(button)
        made.append(button)
    return row, made


class Message(QDialog):
    """Ask, and return the name of the choice; Esc and closing choose the one marked so."""

    def __init__(
        self,
        parent: QWidget | None,
        headline: str,
        text: str,
        choices: Sequence[Choice],
        *,
        problems: "Sequence[Problem]" = (),
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Cupwright")
        self.setModal(True)
        self.setMinimumWidth(_WIDTH)
        self._answer = next((choice.name for choice in choices if choice.escape), "")
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 20, 24, 20)
        column.setSpacing(12)
        for words, size, bold in ((headline, GUIDE, True), (text, BODY, False)):
            part = label(words, size, bold=bold)
            part.setWordWrap(True)
            part.setMinimumWidth(_WIDTH - 48)
            column.addWidget(part)
        if problems:
            column.addWidget(problem_list(problems))
        row, self.buttons = buttons_row(choices)
        for choice, button in zip(choices, self.buttons, strict=True):
            button.clicked.connect(lambda _checked=False, name=choice.name: self._choose(name))
        column.addSpacing(4)
        column.addLayout(row)

    def _choose(self, name: str) -> None:
        self._answer = name
        self.accept()

    def ask(self) -> str:
        """Show, wait, and return the name of what was chosen."""
        self.exec()
        self.deleteLater()
        return self._answer

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let Enter press the button that has the focus, not only the default one."""
        focused = self.focusWidget()
        enter = event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}
        if enter and isinstance(focused, QPushButton):
            focused.click()
        else:
            super().keyPressEvent(event)


def problem_list(problems: "Sequence[Problem]") -> QScrollArea:
    """Return a list of problems: the place bold, then what is wrong, then the mend."""
    inner = QWidget()
    column = QVBoxLayout(inner)
    column.setContentsMargins(12, 10, 12, 10)
    column.setSpacing(4)
    for problem in problems[:_MOST_PROBLEMS]:
        for words, bold, role in (
            (problem.where, True, ""),
            (f"{problem.what}.", False, ""),
            (problem.mend, False, "second"),
        ):
            part = label(words, BODY, bold=bold, role=role)
            part.setWordWrap(True)
            part.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
            column.addWidget(part)
        column.addSpacing(8)
    if len(problems) > _MOST_PROBLEMS:
        column.addWidget(label(f"and {len(problems) - _MOST_PROBLEMS} more", BODY, role="second"))
    column.addStretch(1)
    area = QScrollArea()
    area.setWidget(inner)
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setMinimumHeight(min(320, 28 + 72 * len(problems)))
    area.setAccessibleName("What is wrong")
    return area
