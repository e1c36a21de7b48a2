"""What a parcel brings: new, the same, or differing, with an answer for each that differs."""

from typing import TYPE_CHECKING, cast

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QFrame, QScrollArea, QVBoxLayout, QWidget

from planner.app.dialogs.message import Choice, buttons_row
from planner.app.fonts import BODY, GUIDE
from planner.app.labels import label
from planner.app.panels.widgets.fields import Combo
from planner.model.definition import kind_name

if TYPE_CHECKING:
    from collections.abc import Sequence

    from planner.library.arriving import Answer, Arrival

_STATES = {
    "new": "new here",
    "same": "here already, the same",
    "differs": "here already, and it differs",
}
_ANSWERS = (
    ("leave", "leave what is here"),
    ("next", "take it as the next revision"),
    ("beside", "put it beside, under a name of its own"),
)
_MOST = 12


class ArrivalsDialog(QDialog):
    """Nothing is overwritten unless it is answered so."""

    def __init__(self, parent: QWidget | None, arrivals: "Sequence[Arrival]") -> None:
        super().__init__(parent)
        self.setWindowTitle("Take in a parcel")
        self.resize(620, 520)
        self.boxes: dict[str, Combo] = {}
        inner = QWidget()
        lines = QVBoxLayout(inner)
        lines.setContentsMargins(4, 4, 12, 4)
        lines.setSpacing(4)
        for arrival in arrivals:
            self._add(lines, arrival)
        lines.addStretch(1)
        area = QScrollArea()
        area.setWidget(inner)
        area.setWidgetResizable(True)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setAccessibleName("What the parcel brings")
        row, (take, leave) = buttons_row(
            (Choice("take", "Take in", primary=True), Choice("leave", "Cancel", escape=True))
        )
        take.clicked.connect(self.accept)
        leave.clicked.connect(self.reject)
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 20, 24, 20)
        column.setSpacing(10)
        column.addWidget(label("What the parcel brings", GUIDE, bold=True))
        column.addWidget(area, 1)
        column.addLayout(row)

    def _add(self, lines: QVBoxLayout, arrival: "Arrival") -> None:
        record = arrival.definition
        head = f"{record.title} ({kind_name(record)}): {_STATES[arrival.state]}"
        lines.addWidget(_wrapped(head, bold=True))
        for change in arrival.changes[:_MOST]:
            words = f"{change.key}: {change.first or 'nothing'} here, {change.second or 'nothing'}"
            lines.addWidget(_wrapped(f"{words} in the parcel", role="second"))
        if len(arrival.changes) > _MOST:
            more = len(arrival.changes) - _MOST
            lines.addWidget(_wrapped(f"and {more} more", role="second"))
        if arrival.state == "differs":
            box = Combo()
            box.setAccessibleName(f"What becomes of {record.title}")
            for value, words in _ANSWERS:
                box.addItem(words, value)
            self.boxes[record.id] = box
            lines.addWidget(box)
        lines.addSpacing(8)

    def answers(self) -> "dict[str, Answer]":
        """Return what is to become of each that differs, by id."""
        return {name: cast("Answer", box.currentData()) for name, box in self.boxes.items()}

    def ask(self) -> "dict[str, Answer] | None":
        """Show, wait, and return the answers; None where it was left."""
        taken = bool(self.exec())
        found = self.answers()
        self.deleteLater()
        return found if taken else None


def _wrapped(words: str, *, bold: bool = False, role: str = "") -> QWidget:
    made = label(words, BODY, bold=bold, role=role)
    made.setWordWrap(True)
    made.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    return made
