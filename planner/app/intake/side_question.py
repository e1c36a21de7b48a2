"""The first question about any drawing is from which side it is seen."""

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from planner.app.buttons import segment
from planner.app.panels.widgets.labels import label

if TYPE_CHECKING:
    from collections.abc import Callable

    from planner.drawing.looks import Look
    from planner.model.connector import Side

_WHY = (
    "Seen from the other side the numbering is mirrored. Hold the part against the drawing: the "
    "solder side is where the cores go on."
)


class SideQuestion(QWidget):
    """Ask; nothing is answered before the owner does."""

    def __init__(self, look: "Look", answered: "Callable[[Side], object]") -> None:
        super().__init__()
        self.title = label("Seen from which side?", "question")
        self.why = label(_WHY, "second", wrap=True)
        self._answered = answered
        self._side: Side = "unstated"
        # No group: in one, Tab would pass by what is not chosen yet.
        self.buttons = {
            "solder": segment("Solder side", "first", look),
            "mating": segment("Mating side", "last", look),
        }
        row = QHBoxLayout()
        row.setSpacing(0)
        for side, button in self.buttons.items():
            button.setAccessibleName(f"Seen from the {side} side")
            button.clicked.connect(lambda _on=False, it=side: self._answer(it))
            row.addWidget(button)
        row.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        for part in (self.title, self.why):
            column.addWidget(part)
        column.addLayout(row)

    def _answer(self, side: "Side") -> None:
        self.show_side(self._side)
        self._answered(side)

    def show_side(self, side: "Side") -> None:
        """Show what was answered."""
        self._side = side
        for name, button in self.buttons.items():
            button.setChecked(name == side)
