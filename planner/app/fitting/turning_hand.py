"""The hand on a plug or a dial: it turns as the pointer goes round, and is one undo step."""

from typing import TYPE_CHECKING

from planner.app.fitting.pointing import turned_by

if TYPE_CHECKING:
    from planner.app.fitting.state import Fitting
    from planner.drawing.primitives import Point

COARSE_DEG = 15.0


class TurningHand:
    """One drag from press to release; it adds up small steps, so it may go round more than once."""

    def __init__(self, state: "Fitting", centre: "Point", at: "Point") -> None:
        self._state, self._centre, self._last = state, centre, at
        self._turn_deg = state.turn_deg

    def move(self, at: "Point", *, coarse: bool) -> None:
        """Follow the pointer; coarse keeps to steps of 15 degrees."""
        self._turn_deg += turned_by(self._centre, self._last, at)
        self._last = at
        shown = round(self._turn_deg / COARSE_DEG) * COARSE_DEG if coarse else self._turn_deg
        self._state.turn_to(round(shown, 1))

    def release(self) -> None:
        """Put the turn into the plan."""
        self._state.settle()

    def cancel(self) -> None:
        """Leave the plug as it was."""
        self._state.leave_turn()
