"""One explanation as a card: how likely, what went wrong, where to look."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QEnterEvent, QFocusEvent, QMouseEvent
from PySide6.QtWidgets import QFrame, QVBoxLayout

from planner.app.panels.widgets.labels import label, restyle

if TYPE_CHECKING:
    from collections.abc import Sequence

    from planner.proving.diagnosing import Fault


class ExplanationCard(QFrame):
    """Show faults that belong together; tell when they are looked at."""

    chosen = Signal(int)
    pointed = Signal(int)  # -1 when the pointer leaves

    def __init__(self, place: int, head: str, faults: "Sequence[Fault]") -> None:
        super().__init__()
        self.place = place
        self.setProperty("card", "true")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        column = QVBoxLayout(self)
        column.setContentsMargins(10, 6, 10, 8)
        column.setSpacing(2)
        if head:
            column.addWidget(label(head, "small"))
        for fault in faults:
            column.addWidget(label(fault.words, "bold", wrap=True))
            if fault.look:
                column.addWidget(label(fault.look, "second", wrap=True))
        said = "; ".join(fault.words for fault in faults)
        looks = " ".join(fault.look for fault in faults)
        self.setAccessibleName(f"{head}: {said}" if head else said)
        self.setAccessibleDescription(looks)

    def set_current(self, *, current: bool) -> None:
        """Frame the card whose contacts are marked."""
        restyle(self, "current", "true" if current else "")

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Mark its contacts."""
        super().focusInEvent(event)
        self.chosen.emit(self.place)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Mark its contacts, and keep them marked."""
        super().mousePressEvent(event)
        self.setFocus(Qt.FocusReason.MouseFocusReason)

    def enterEvent(self, event: QEnterEvent) -> None:
        """Mark its contacts while the pointer is over it."""
        super().enterEvent(event)
        self.pointed.emit(self.place)

    def leaveEvent(self, event: QEvent) -> None:
        """Mark what is chosen again."""
        super().leaveEvent(event)
        self.pointed.emit(-1)
