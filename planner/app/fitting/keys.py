"""The dry fit by keyboard: turn, walk the joints, put them in another order, sleeve them."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

if TYPE_CHECKING:
    from planner.app.fitting.fit_acts import FitActs
    from planner.app.fitting.state import Fitting

FINE_DEG, COARSE_DEG = 1.0, 15.0
_TURNS = {Qt.Key.Key_Left: 1.0, Qt.Key.Key_Right: -1.0}
_STEPS = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}


class FitKeys:
    """Handle the keys of the face and of the list; letters work only while one has the focus."""

    def __init__(self, state: "Fitting", acts: "FitActs") -> None:
        self._state, self._acts = state, acts

    def press(self, event: QKeyEvent) -> bool:
        """Handle a key; False for one that means nothing here."""
        key, held = Qt.Key(event.key()), event.modifiers()
        if held & Qt.KeyboardModifier.ControlModifier:
            return False
        if key in _TURNS and not held & Qt.KeyboardModifier.AltModifier:
            coarse = held & Qt.KeyboardModifier.ShiftModifier
            step = COARSE_DEG if coarse else FINE_DEG
            self._state.turn_to(self._state.turn_deg + _TURNS[key] * step)
        elif key in _STEPS:
            self._step(_STEPS[key], moves=bool(held & Qt.KeyboardModifier.AltModifier))
        elif key == Qt.Key.Key_Home:
            self._acts.set_turn(0.0)
        elif key == Qt.Key.Key_S and not held:
            self._acts.toggle_sleeve()
        elif key == Qt.Key.Key_Escape:
            return self._acts.call_off()
        else:
            return False
        return True

    def release(self, event: QKeyEvent) -> bool:
        """Keep the turn once its key is let go of: one undo step, however long it was held."""
        if Qt.Key(event.key()) not in _TURNS:
            return False
        if not event.isAutoRepeat() and self._state.is_turning:
            self._state.settle()
        return True

    def _step(self, by: int, *, moves: bool) -> None:
        if moves:
            self._acts.move_joint(by)
        else:
            self._state.step_joint(by)
