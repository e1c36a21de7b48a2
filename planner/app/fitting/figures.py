"""The figures of an end beside its face: crossings and the smallest gap, each with its mark."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QVBoxLayout, QWidget

from planner.app.fitting.words import Said, crossings_said, gap_said
from planner.app.fonts import SMALL
from planner.app.labels import ElidedLabel
from planner.app.panels.widgets.drawn import MarkLabel
from planner.app.panels.widgets.labels import label

if TYPE_CHECKING:
    from planner.app.fitting.state import Fitting
    from planner.drawing.looks import Look

_MARK_RADIUS = 8


class Figure(QWidget):
    """A mark, a figure in bold, and what says more, in the same room whatever it says."""

    def __init__(self, look: "Look", *, below: bool) -> None:
        super().__init__()
        self.mark = MarkLabel("tick", _MARK_RADIUS, look)
        self.figure = label("", "bold")
        self.more = ElidedLabel(SMALL, role="second")
        self.more.setProperty("tone", "small")
        words: QBoxLayout = QVBoxLayout() if below else QHBoxLayout()
        words.setSpacing(0 if below else 8)
        words.addWidget(self.figure)
        words.addWidget(self.more, 1)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        row.addWidget(self.mark, 0, Qt.AlignmentFlag.AlignTop)
        row.addLayout(words, 1)

    def show_said(self, said: Said) -> None:
        """Show another figure."""
        self.mark.set_kind(said.mark)
        self.figure.setText(said.figure)
        self.more.setText(said.more)


class Figures(QWidget):
    """Follow the state, at every step of a turn."""

    def __init__(self, state: "Fitting", look: "Look") -> None:
        super().__init__()
        self._state = state
        self.crossings, self.gap = Figure(look, below=False), Figure(look, below=True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addWidget(self.crossings)
        column.addWidget(self.gap)
        state.changed.connect(self.renew)
        state.turned.connect(self.renew)

    def renew(self) -> None:
        """Say what the fit is now."""
        fit = self._state.fit
        if fit is not None:
            self.crossings.show_said(crossings_said(self._state.plan, fit))
            self.gap.show_said(gap_said(self._state.plan, fit))
