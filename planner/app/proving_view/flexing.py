"""The wiggle test as it goes on: which end is flexed, for how long, and when the beep broke."""

import time
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from planner.app.proving_view.state import Proving
from planner.proving.units import Wiggle
from planner.units import number

if TYPE_CHECKING:
    from collections.abc import Callable

_TICK_MS = 100


class Flexing(QObject):
    """Time one end after the other. Nothing is noted until it is stopped."""

    changed = Signal()

    def __init__(self, proving: Proving, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._proving = proving
        self.end = ""
        self.running = False
        self.breaks: tuple[float, ...] = ()
        self.seconds: Callable[[], float] = time.monotonic
        self._began_s = 0.0
        self._timer = QTimer(self)
        self._timer.setInterval(_TICK_MS)
        self._timer.timeout.connect(self.changed)
        proving.taken_up.connect(self._on_taken_up)

    @property
    def ends(self) -> tuple[str, ...]:
        """The ends of the lead."""
        return tuple(self._proving.plan.end_by_id)

    @property
    def elapsed_s(self) -> float:
        """How long the end has been flexed, s."""
        return self.seconds() - self._began_s if self.running else 0.0

    def choose(self, end: str) -> None:
        """Choose the end to flex, while none is flexed."""
        if not self.running and end in self.ends:
            self.end = end
            self.changed.emit()

    def step(self, by: int) -> None:
        """Choose the next end or the one before."""
        ends = self.ends
        if ends:
            here = ends.index(self.end) if self.end in ends else -1 if by > 0 else 0
            self.choose(ends[(here + by) % len(ends)])

    def start(self) -> None:
        """Begin to flex the chosen end, or the first."""
        if self.end not in self.ends:
            self.end = next(iter(self.ends), "")
        if self.end and self._proving.unit is not None and not self.running:
            self.running, self.breaks = True, ()
            self._began_s = self.seconds()
            self._timer.start()
            self.changed.emit()

    def break_now(self) -> None:
        """Note that the beep broke just now."""
        if self.running:
            self.breaks = (*self.breaks, self.elapsed_s)
            self.changed.emit()

    def stop(self) -> None:
        """Note the end as steady or broken, and go to the next end."""
        if not self.running or self._proving.unit is None:
            return
        lasted_s = self.elapsed_s
        entry = Wiggle(
            end=self.end,
            state="broken" if self.breaks else "steady",
            at=self._proving.now(),
            note=flexed_words(lasted_s, self.breaks),
        )
        self._rest()
        self._proving.noting.add(f"Flexed {self.end}", "wiggle", entry)
        self.step(1)

    def call_off(self) -> None:
        """Stop without noting anything."""
        self._rest()
        self.changed.emit()

    def _on_taken_up(self) -> None:
        self.end = ""
        self.call_off()

    def _rest(self) -> None:
        self.running = False
        self._timer.stop()


def flexed_words(lasted_s: float, breaks: tuple[float, ...]) -> str:
    """Say for how long an end was flexed and when it broke; many breaks are counted."""
    lasted = f"flexed for {number(lasted_s, 1)} s"
    if not breaks:
        return lasted
    shown = ", ".join(number(at_s, 1) for at_s in breaks[:8])
    more = f" and {len(breaks) - 8} times more" if len(breaks) > 8 else ""
    return f"{lasted}, broke at {shown} s{more}"
