"""Rows of facts: a word left, its figure at a fixed column."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from planner.app.panels.widgets.drawn import MarkLabel
from planner.app.panels.widgets.labels import label
from planner.drawing.looks import Look
from planner.drawing.marks import MarkKind

NAME_WIDTH = 84


class Fact(QWidget):
    """One fact; the figure wraps, and may be marked and copied."""

    def __init__(self, name: str) -> None:
        super().__init__()
        self.name = label(name, "second", wrap=True)
        self.name.setFixedWidth(NAME_WIDTH)
        self.value = label("", wrap=True)
        self.value.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.value.setAccessibleName(name)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 1, 0, 1)
        row.setSpacing(4)
        row.addWidget(self.name, 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self.value, 1)

    def show_value(self, text: str) -> None:
        """Show the figure; a fact without one is not shown."""
        self.value.setText(text)
        self.setVisible(bool(text))

    def show_named(self, name: str, text: str) -> None:
        """Show another fact in this row."""
        self.name.setText(name)
        self.value.setAccessibleName(name)
        self.show_value(text)


class MarkedLine(QWidget):
    """A small mark and a sentence that wraps."""

    def __init__(self, kind: MarkKind, text: str, look: Look) -> None:
        super().__init__()
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 1, 0, 1)
        row.setSpacing(8)
        self.mark = MarkLabel(kind, 8, look)
        row.addWidget(self.mark, 0, Qt.AlignmentFlag.AlignTop)
        self.words = label(text, wrap=True)
        row.addWidget(self.words, 1)


def emptied(layout: QVBoxLayout) -> None:
    """Take everything out of a layout and let it go."""
    while layout.count():
        item = layout.takeAt(0)
        widget = item.widget() if item is not None else None
        if widget is not None:
            widget.hide()
            widget.deleteLater()
