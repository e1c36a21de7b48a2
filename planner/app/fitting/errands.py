"""Dear work off the UI thread: one errand at a time, with progress, and called off for good."""

import threading
from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, Signal

Progress = Callable[[float], None]
Cancelled = Callable[[], bool]
Work = Callable[[Progress, Cancelled], Any]
_JOIN_S = 5.0


class _Run(QObject):
    """One run of some work. Its signals cross from the thread to the window's own."""

    progressed = Signal(int, float)
    finished = Signal(int, object)
    failed = Signal(int, object)

    def __init__(self, number: int, work: Work) -> None:
        super().__init__()
        self.number = number
        self._work = work
        self.called_off = threading.Event()
        self.thread_of_work = threading.Thread(target=self._go, daemon=True)

    def _go(self) -> None:
        try:
            made = self._work(self._tell, self.called_off.is_set)
        except Exception as error:  # noqa: BLE001 - told in the window's thread, and raised there
            self.failed.emit(self.number, error)
        else:
            self.finished.emit(self.number, made)

    def _tell(self, share: float) -> None:
        self.progressed.emit(self.number, share)


# A run goes in the UI thread only, as every QObject of that thread must: it is held here until its
# own thread has ended, also where whoever began it is gone before.
_held: list[_Run] = []


def _hold(run: _Run) -> None:
    _held[:] = [it for it in _held if it.thread_of_work.is_alive()]
    _held.append(run)


class Errands(QObject):
    """Run work; a later errand, or `call_off`, drops the one before with all that it says."""

    progressed = Signal(float)
    done = Signal(object)
    busy_changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._count = 0
        self._run: _Run | None = None
        self._left: list[_Run] = []

    @property
    def busy(self) -> bool:
        """Tell whether something is under way."""
        return self._run is not None

    def start(self, work: Work) -> None:
        """Begin an errand; the one under way is called off."""
        self._drop()
        self._count += 1
        run = self._run = _Run(self._count, work)
        run.progressed.connect(self._on_progressed)
        run.finished.connect(self._on_finished)
        run.failed.connect(self._on_failed)
        run.thread_of_work.start()
        _hold(run)
        self.busy_changed.emit()

    def call_off(self) -> None:
        """Call off what is under way; nothing more is heard of it."""
        if self._run is not None:
            self._drop()
            self.busy_changed.emit()

    def let_go(self) -> None:
        """Call off, and wait until no thread is left."""
        self.call_off()
        for run in self._left:
            run.thread_of_work.join(_JOIN_S)
        self._left.clear()

    def _drop(self) -> None:
        if self._run is not None:
            self._run.called_off.set()
            self._left.append(self._run)
            self._run = None
        # One that still runs is held: its signals must have somebody to come from.
        self._left = [run for run in self._left if run.thread_of_work.is_alive()]

    def _is_on(self, number: int) -> bool:
        return self._run is not None and self._run.number == number

    def _on_progressed(self, number: int, share: float) -> None:
        if self._is_on(number):
            self.progressed.emit(share)

    def _on_finished(self, number: int, made: object) -> None:
        if self._is_on(number):
            self._drop()
            self.busy_changed.emit()
            self.done.emit(made)

    def _on_failed(self, number: int, error: Exception) -> None:
        if self._is_on(number):
            self._drop()
            self.busy_changed.emit()
            raise error
