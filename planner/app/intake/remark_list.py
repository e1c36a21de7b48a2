"""What is odd or missing about the draft, the gravest first; pressing one chooses its contacts."""

from collections.abc import Callable, Sequence
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from planner.app.panels.widgets.drawn import MarkLabel
from planner.app.panels.widgets.labels import Head, button, label

if TYPE_CHECKING:
    from planner.drawing.looks import Look
    from planner.intake.live_checks import Remark


class RemarkList(QWidget):
    """A row a remark: mark, what, how to mend."""

    def __init__(self, look: "Look", choose: Callable[[tuple[str, ...]], object]) -> None:
        super().__init__()
        self.look, self._choose = look, choose
        self.shown: Sequence[Remark] | None = None
        self.head = Head("While you draw")
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(12, 6, 12, 8)
        self._column.setSpacing(6)
        self._column.addWidget(self.head)
        self._rows = QWidget()
        self._column.addWidget(self._rows)
        self._column.addStretch(1)

    def show_remarks(self, found: "Sequence[Remark]") -> None:
        """Show other remarks."""
        if found == self.shown:
            return
        self.shown = found
        self._rows.hide()
        self._rows.deleteLater()
        self._rows = QWidget()
        rows = QVBoxLayout(self._rows)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(6)
        for remark in found:
            rows.addWidget(self._row(remark))
        if not found:
            rows.addWidget(label("Nothing is odd, nothing is missing.", "second"))
        self._column.insertWidget(1, self._rows)
        self.head.set_note(str(len(found)) if found else "")

    def _row(self, remark: "Remark") -> QWidget:
        holder = QWidget()
        row = QHBoxLayout(holder)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        mark = MarkLabel(remark.weight, 9, self.look, remark.weight)
        row.addWidget(mark, 0, Qt.AlignmentFlag.AlignTop)
        text = f"{remark.what[:1].upper()}{remark.what[1:]}. {remark.mend}"
        row.addWidget(label(text, wrap=True), 1)
        if remark.contacts:
            show = button("Show", partial(self._choose, remark.contacts), "plain")
            row.addWidget(show, 0, Qt.AlignmentFlag.AlignTop)
        return holder

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.look = look
        found, self.shown = self.shown, None
        self.show_remarks(found or ())
