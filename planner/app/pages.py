"""A strip of buttons that stand for pages: one of them is shown."""

from collections.abc import Callable, Sequence

from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QPushButton, QWidget

from planner.app.buttons import segment
from planner.app.panels.widgets.labels import restyle
from planner.drawing.looks import Look


class PageStrip(QWidget):
    """Buttons by the names of the pages; `chosen` is called with the one that is pressed."""

    def __init__(self, names: Sequence[str], look: Look, chosen: Callable[[str], object]) -> None:
        super().__init__()
        group = QButtonGroup(self)
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 6, 12, 4)
        row.setSpacing(0)
        self.tabs: dict[str, QPushButton] = {}
        for name in names:
            tab = self.tabs[name] = segment(name, "middle", look)
            tab.setAccessibleName(name)
            tab.clicked.connect(lambda _on=False, page=name: chosen(page))
            group.addButton(tab)
            row.addWidget(tab)
        row.addStretch(1)

    def show_pages(self, names: Sequence[str], current: str) -> None:
        """Offer these pages only, in their order, and press the one that is shown."""
        for name, tab in self.tabs.items():
            tab.setVisible(name in names)
            at = "first" if name == names[0] else "last" if name == names[-1] else "middle"
            restyle(tab, "at", at)
        self.tabs[current].setChecked(True)
