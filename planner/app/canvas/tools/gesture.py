"""What every gesture is: moved, released, or called off."""

from typing import Protocol

from PySide6.QtCore import QPointF, Qt


class Gesture(Protocol):
    """One gesture from press to release. Points are scene points, but for `view_at`."""

    def move(self, at: QPointF, view_at: QPointF, modifiers: Qt.KeyboardModifier) -> None:
        """Follow the pointer."""

    def release(self, at: QPointF, modifiers: Qt.KeyboardModifier) -> None:
        """End where the pointer is."""

    def cancel(self) -> None:
        """Call it off and leave everything as it was."""
