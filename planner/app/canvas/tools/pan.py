"""Drag the bench itself with the middle button."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, Qt

if TYPE_CHECKING:
    from planner.app.canvas.view import BenchView


class Pan:
    """Scroll by as much as the pointer moves."""

    def __init__(self, view: "BenchView", view_at: QPointF) -> None:
        self._view, self._last = view, view_at
        view.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)

    def move(self, at: QPointF, view_at: QPointF, modifiers: Qt.KeyboardModifier) -> None:
        """Scroll on."""
        step = view_at - self._last
        self._last = view_at
        across, down = self._view.horizontalScrollBar(), self._view.verticalScrollBar()
        across.setValue(across.value() - round(step.x()))
        down.setValue(down.value() - round(step.y()))

    def release(self, at: QPointF, modifiers: Qt.KeyboardModifier) -> None:
        """Let go of the bench."""
        self._view.viewport().unsetCursor()

    def cancel(self) -> None:
        """Stay where the bench is now."""
        self._view.viewport().unsetCursor()
