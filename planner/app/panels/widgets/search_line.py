"""A search line that hands the arrows and Enter on to the list below it."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit


class SearchLine(QLineEdit):
    """Type to search; Up and Down walk the list, Enter takes what is marked, Esc clears."""

    entered = Signal()
    walked = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.setClearButtonEnabled(True)
        self.setAccessibleName("Search")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Tell the arrows and Enter; keep the rest."""
        steps = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}
        if event.key() in steps:
            self.walked.emit(steps[Qt.Key(event.key())])
        elif event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.entered.emit()
        elif event.key() == Qt.Key.Key_Escape and self.text():
            self.clear()
        else:
            super().keyPressEvent(event)
