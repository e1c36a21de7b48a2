"""Ask who found on a part that a record is right, when, and by what means."""

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QDialog, QGridLayout, QVBoxLayout, QWidget

from planner.app.dialogs.message import Choice, buttons_row
from planner.app.fonts import BODY, GUIDE
from planner.app.labels import label
from planner.app.panels.widgets.text_line import TextLine
from planner.model.source import Confirmation

if TYPE_CHECKING:
    from planner.model.pinout import PinoutRecord

_LIMIT = 200
_WHY = (
    "Only what was found on a part counts: read from contact to contact, or heard. Unplug it from "
    "everything first. Two persons, each on their own, make it confirmed by two."
)
_FIELDS = (
    ("who", "Who"),
    ("date", "Date"),
    ("how", "How"),
)


class ConfirmDialog(QDialog):
    """Three lines; `ask` returns the confirmation, or None where it was left."""

    def __init__(
        self, parent: QWidget | None, record: "PinoutRecord", proposed: tuple[str, str, str]
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Cupwright")
        self.setMinimumWidth(520)
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 20, 24, 20)
        column.setSpacing(12)
        for words, size, bold in (
            (f"Confirm {record.title} on the part", GUIDE, True),
            (_WHY, BODY, False),
        ):
            part = label(words, size, bold=bold)
            part.setWordWrap(True)
            column.addWidget(part)
        self.lines: dict[str, TextLine] = {}
        column.addLayout(self._fields(proposed))
        self.said = label(_before(record), BODY, role="second")
        self.said.setWordWrap(True)
        column.addWidget(self.said)
        row, (self.ok, cancel) = buttons_row(
            (Choice("ok", "Confirm", primary=True), Choice("cancel", "Cancel", escape=True))
        )
        self.ok.clicked.connect(self._take)
        cancel.clicked.connect(self.reject)
        column.addLayout(row)
        self._begin_at()

    def _fields(self, proposed: tuple[str, str, str]) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        for at, ((name, words), text) in enumerate(zip(_FIELDS, proposed, strict=True)):
            line = TextLine()
            line.setText(text)
            line.setMaxLength(_LIMIT)
            line.setCursorPosition(0)  # a long one is read from its beginning
            line.setAccessibleName(words)
            grid.addWidget(label(words, BODY), at, 0)
            grid.addWidget(line, at, 1)
            self.lines[name] = line
        self.lines["how"].setPlaceholderText("such as: continuity from each contact to the board")
        return grid

    def _begin_at(self) -> None:
        """Begin at what is still empty; else at who, which is proposed and soon another."""
        empty = next((line for line in self.lines.values() if not line.text()), None)
        if empty is not None:
            empty.setFocus()
            return
        self.lines["who"].setFocus()
        self.lines["who"].selectAll()

    def _take(self) -> None:
        for name, why in (("who", "Write who found it."), ("how", "Write how it was found.")):
            if not self.lines[name].text().strip():
                self.said.setText(why)
                self.lines[name].setFocus()
                return
        self.accept()

    def ask(self) -> Confirmation | None:
        """Show, wait, and return what was written."""
        taken = bool(self.exec())
        self.deleteLater()
        if not taken:
            return None
        return Confirmation(**{name: line.text().strip() for name, line in self.lines.items()})


def _before(record: "PinoutRecord") -> str:
    people = ", ".join(dict.fromkeys(it.who for it in record.confirmations))
    return f"Confirmed before by {people}." if people else "Nobody has confirmed it yet."
