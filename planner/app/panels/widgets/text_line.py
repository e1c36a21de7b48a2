"""A line of text that shows its beginning while it is not typed in."""

from PySide6.QtGui import QFocusEvent
from PySide6.QtWidgets import QLineEdit


class TextLine(QLineEdit):
    """A line edit that goes back to the beginning of a long text when it is set or left."""

    def setText(self, text: str | None) -> None:
        """Set the text; the cursor stays at its end only while the line is typed in."""
        super().setText(text)
        self._show_beginning()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Show the beginning again."""
        super().focusOutEvent(event)
        self._show_beginning()

    def _show_beginning(self) -> None:
        if not self.hasFocus():
            self.setCursorPosition(0)
