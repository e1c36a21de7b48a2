"""The plug goes round to its new turn before the eyes, where things are wanted to move."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QEasingCurve, QObject, QVariantAnimation

from planner.app.canvas.tools.drag_core import animated
from planner.geometry.views import half_turn_deg

if TYPE_CHECKING:
    from planner.app.fitting.state import Fitting

SHORTEST_MS, LONGEST_MS = 160, 400
_MS_A_DEGREE = 2.5


class Glide(QObject):
    """Show the turns between an old one and the plan's own, the short way round."""

    def __init__(self, state: "Fitting") -> None:
        super().__init__(state)
        self._state = state
        self._from = self._by = 0.0
        self._run = QVariantAnimation(self)
        self._run.setStartValue(0.0)
        self._run.setEndValue(1.0)
        self._run.setEasingCurve(QEasingCurve.Type.InOutCubic)
        self._run.valueChanged.connect(self._on_share)
        self._run.finished.connect(state.leave_turn)
        self._setting = False
        state.changed.connect(self.stop)
        state.turned.connect(self._on_turned)

    @property
    def running(self) -> bool:
        """Tell whether the plug is on its way."""
        return self._run.state() == QVariantAnimation.State.Running

    def go_from(self, turn_deg: float) -> None:
        """Go from an earlier turn to the plan's own."""
        goal = self._state.turn_deg
        self._from = turn_deg
        self._by = half_turn_deg(goal - turn_deg)
        if not animated() or abs(self._by) < 0.5:
            return
        wanted = SHORTEST_MS + _MS_A_DEGREE * abs(self._by)
        self._run.setDuration(round(min(wanted, LONGEST_MS)))
        self._set(turn_deg)
        self._run.start()

    def stop(self) -> None:
        """Stay where the plan is."""
        if self.running:
            self._run.stop()

    def _set(self, turn_deg: float) -> None:
        self._setting = True
        self._state.turn_to(turn_deg)
        self._setting = False

    def _on_share(self, share: float) -> None:
        if self.running and share < 1.0:
            self._set(self._from + self._by * share)

    def _on_turned(self) -> None:
        """Give way to a hand that turns the plug meanwhile."""
        if not self._setting:
            self.stop()
