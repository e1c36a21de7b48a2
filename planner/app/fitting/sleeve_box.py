"""Sleeves at an end: what is advised, in words, and the button that takes the advice."""

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from planner.app.buttons import ActionButton
from planner.app.fitting.sleeve_words import count_words, sleeve_lines
from planner.app.panels.widgets.labels import Head, label

if TYPE_CHECKING:
    from planner.app.actions import Actions
    from planner.app.fitting.fit_acts import FitActs
    from planner.drawing.looks import Look


class SleeveBox(QWidget):
    """Say which joints want a sleeve or a dab."""

    def __init__(self, acts: "FitActs", actions: "Actions", look: "Look") -> None:
        super().__init__()
        self._acts, self._state = acts, acts.state
        self.head = Head("Sleeves", "section")
        self.advice = label("", wrap=True)
        self.take = ActionButton(actions["sleeve_advised"], look, text="Sleeve as advised")
        row = QHBoxLayout()
        row.addWidget(self.take)
        row.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addWidget(self.head)
        column.addWidget(self.advice)
        column.addLayout(row)
        self._state.ready.connect(self.renew)

    def renew(self) -> None:
        """Say what is advised now."""
        fit = self._state.fit
        if fit is not None:
            advice = self._state.slow.sleeves
            self.head.set_note(count_words(fit))
            self.advice.setText("\n".join(sleeve_lines(self._state.plan, fit.end, advice)))
            self.take.setEnabled(bool(advice.sleeves or advice.dabs))

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.take.set_look(look)
