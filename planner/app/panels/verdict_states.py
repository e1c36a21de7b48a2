"""What the findings panel says when nothing is found: before a lead, and when it is clear."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from planner.app.panels.widgets.drawn import MarkLabel
from planner.app.panels.widgets.labels import label
from planner.drawing.looks import Look
from planner.drawing.marks import MarkKind

_LEGEND: tuple[tuple[MarkKind, str, str], ...] = (
    ("stop", "Stop", "do not heat the iron"),
    ("caution", "Caution", "mend, or accept and say why"),
    ("note", "Note", "good to know"),
)


_WHAT = (
    "Findings come as you land cores. Each says what is wrong, why it matters and how to mend it."
)


class EmptyState(QWidget):
    """Say what findings are, with the three weights by mark and word."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 2, 16, 12)
        column.setSpacing(14)
        column.addWidget(label(_WHAT, "second", wrap=True))
        legend = QGridLayout()
        legend.setHorizontalSpacing(12)
        legend.setVerticalSpacing(6)
        legend.setColumnStretch(2, 1)
        for row, (kind, word, means) in enumerate(_LEGEND):
            legend.addWidget(MarkLabel(kind, 10, look), row, 0)
            legend.addWidget(label(word, "bold"), row, 1)
            legend.addWidget(label(means, "small", wrap=True), row, 2)
        column.addLayout(legend)


class ClearState(QWidget):
    """Say that nothing is wrong: so far, or for good."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.mark = MarkLabel("clear", 12, look)
        self.title = label("", "head")
        self.words = label("", wrap=True)
        text = QVBoxLayout()
        text.setSpacing(3)
        text.addWidget(self.title)
        text.addWidget(self.words)
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 8, 12, 12)
        row.addWidget(self.mark, 0, Qt.AlignmentFlag.AlignTop)
        row.addSpacing(4)
        row.addLayout(text, 1)

    def show_state(self, *, done: bool, notes: int) -> None:
        """Show whether the lead is ready, or only faultless so far."""
        self.mark.set_kind("clear" if done else "empty", "clear" if done else "not finished")
        self.title.setText("Clear to solder" if done else "Nothing wrong so far")
        more = " Read the notes below before the iron is hot." if notes else ""
        said = "Every core is landed, and every check passes." + more
        self.words.setText(said if done else "Land what is left below, or cap what stays spare.")
