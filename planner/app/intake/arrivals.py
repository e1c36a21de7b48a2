"""What a parcel brings: new, the same, or differing, with an answer for each that differs."""

from typing import TYPE_CHECKING, cast

from PySide6.QtWidgets import QDialog, QWidget

from planner.app.dialogs.framed import framed, lines_pane, written
from planner.app.dialogs.message import Choice
from planner.app.panels.widgets.fields import Combo
from planner.model.definition import kind_name

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from planner.library.arriving import Answer, Arrival
    from planner.model.definition import Definition

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
        lines = [line for arrival in arrivals for line in self._lines(arrival)]
        framed(
            self,
            "What the parcel brings",
            lines_pane(lines, "What the parcel brings"),
            Choice("take", "Take in", primary=True),
            Choice("leave", "Cancel", escape=True),
        )

    def _lines(self, arrival: "Arrival") -> "Iterator[QWidget]":
        record = arrival.definition
        head = written(f"{record.title} ({kind_name(record)}): {_STATES[arrival.state]}", bold=True)
        head.setContentsMargins(0, 8, 0, 0)
        yield head
        for change in arrival.changes[:_MOST]:
            words = f"{change.key}: {change.first or 'nothing'} here, {change.second or 'nothing'}"
            yield written(f"{words} in the parcel", role="second")
        if len(arrival.changes) > _MOST:
            yield written(f"and {len(arrival.changes) - _MOST} more", role="second")
        if arrival.state == "differs":
            yield self._box(record)

    def _box(self, record: "Definition") -> Combo:
        box = self.boxes[record.id] = Combo()
        box.setAccessibleName(f"What becomes of {record.title}")
        for value, words in _ANSWERS:
            box.addItem(words, value)
        return box

    def answers(self) -> "dict[str, Answer]":
        """Return what is to become of each that differs, by id."""
        return {name: cast("Answer", box.currentData()) for name, box in self.boxes.items()}

    def ask(self) -> "dict[str, Answer] | None":
        """Show, wait, and return the answers; None where it was left."""
        taken = bool(self.exec())
        found = self.answers()
        self.deleteLater()
        return found if taken else None
