"""A strip of buttons that stand for pages: one of them is shown."""

from collections.abc import Callable, Sequence

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QPushButton, QWidget

from planner.app.buttons import segment, set_tight
from planner.app.panels.widgets.labels import restyle
from planner.drawing.looks import Look

_BESIDE = 30  # what a button takes beside its words, px


class PageStrip(QWidget):
    """Buttons by the names of the pages; `chosen` is called with the one that is pressed."""

    def __init__(self, names: Sequence[str], look: Look, chosen: Callable[[str], object]) -> None:
        super().__init__()
        group = QButtonGroup(self)
        self._row = row = QHBoxLayout(self)
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
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Leave less room beside the words where they would be cut."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        words = [tab for tab in self.tabs.values() if not tab.isHidden()]
        loose = sum(tab.fontMetrics().horizontalAdvance(tab.text()) + _BESIDE for tab in words)
        tight = loose > self.width()
        side = 4 if tight else 12
        self._row.setContentsMargins(side, 6, side, 4)
        for tab in words:
            set_tight(tab, tight=tight)
