"""A better turn, order or cover for an end, sought off the UI thread; what is stale is dropped."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from planner.app.fitting.errands import Cancelled, Errands, Progress

if TYPE_CHECKING:
    from planner.app.workbench import Workbench
    from planner.model.plan import Plan
    from planner.wiring.graph import Wiring

Search = Callable[["Plan", "Wiring", Progress, Cancelled], object]
Take = Callable[[object], None]
_SHORT_MS = 16


class Seeker(QObject):
    """Run one search at a time on the plan as it is; a change of the plan calls it off."""

    progressed = Signal(float)
    shown_changed = Signal()  # whether it takes so long that progress is worth showing

    def __init__(self, workbench: "Workbench", parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._workbench = workbench
        self._take: Take | None = None
        self._asked: Plan | None = None
        self.what = ""
        self.shown = False
        self._errands = Errands(self)
        self._errands.progressed.connect(self.progressed)
        self._errands.done.connect(self._on_done)
        self._errands.busy_changed.connect(self._on_busy_changed)
        self._long = QTimer(self)
        self._long.setSingleShot(True)
        self._long.setInterval(_SHORT_MS)
        self._long.timeout.connect(lambda: self._show(shown=True))
        workbench.plan_changed.connect(lambda _changes: self.call_off())

    @property
    def busy(self) -> bool:
        """Tell whether something is being sought."""
        return self._errands.busy

    def seek(self, what: str, search: Search, take: Take) -> None:
        """Seek; `take` gets what was found, if the plan is still the one that it was sought for."""
        plan, wiring = self._workbench.plan, self._workbench.wiring
        self.what, self._asked, self._take = what, plan, take
        self._errands.start(lambda progress, off: search(plan, wiring, progress, off))
        self._long.start()

    def call_off(self) -> bool:
        """Call the search off; False where none is under way."""
        was = self.busy
        self._errands.call_off()
        return was

    def let_go(self) -> None:
        """Stop, and wait for the thread."""
        self._errands.let_go()

    def _on_done(self, found: object) -> None:
        take, asked = self._take, self._asked
        self._take = self._asked = None
        if take is not None and asked is self._workbench.plan:
            take(found)

    def _on_busy_changed(self) -> None:
        if not self.busy:
            self._long.stop()
            self._show(shown=False)

    def _show(self, *, shown: bool) -> None:
        if shown != self.shown:
            self.shown = shown
            self.shown_changed.emit()
