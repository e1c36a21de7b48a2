"""A view that works out what it shows from the plan, and only while somebody looks at it."""

from typing import TYPE_CHECKING, Any, Protocol

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QHideEvent, QShowEvent
from PySide6.QtWidgets import QWidget

from planner.app.canvas.paint import colour
from planner.app.fitting.errands import Errands

if TYPE_CHECKING:
    from planner.app.fitting.errands import Work
    from planner.app.workbench import Workbench
    from planner.drawing.looks import Look
    from planner.model.plan import Plan


class Follower(QObject):
    """Follow the workbench's plan; nothing is computed while nobody looks."""

    busy_changed = Signal()
    said = Signal(str)

    def __init__(self, workbench: "Workbench", parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.workbench = workbench
        self._awake = False
        self._errands = Errands(self)
        self._errands.done.connect(self._on_done)
        self._errands.busy_changed.connect(self.busy_changed)
        workbench.plan_changed.connect(lambda _changes: self._renew())

    @property
    def plan(self) -> "Plan":
        """The plan as it is."""
        return self.workbench.plan

    @property
    def busy(self) -> bool:
        """Tell whether the facts are still being worked out."""
        return self._errands.busy

    @property
    def awake(self) -> bool:
        """Tell whether somebody looks."""
        return self._awake

    def wake(self, *, awake: bool) -> None:
        """Begin to compute, or rest while the view is not shown."""
        if awake != self._awake:
            self._awake = awake
            self._renew()

    def let_go(self) -> None:
        """Stop what is under way."""
        self._awake = False
        self._errands.let_go()

    def _renew(self) -> None:
        if self._awake:
            self._errands.start(self._work())

    def _work(self) -> "Work":
        """Return what works out the facts of the plan as it is now; it runs off the UI thread."""
        raise NotImplementedError

    def _on_done(self, made: Any) -> None:  # noqa: ANN401 - what the work returns
        """Take the facts."""
        raise NotImplementedError


class Sleeper(Protocol):
    """What can be woken and put to rest."""

    def wake(self, *, awake: bool) -> None:
        """Begin to compute, or rest."""


class FollowingView(QWidget):
    """A view whose `state` computes while the view is looked at."""

    state: Sleeper

    def _ground(self, look: "Look") -> None:
        """Lie on the ground of the panels."""
        ground = self.palette()
        ground.setColor(self.backgroundRole(), colour(look.panel))
        self.setPalette(ground)
        self.setAutoFillBackground(True)

    def showEvent(self, event: QShowEvent) -> None:
        """Compute while the view is looked at."""
        super().showEvent(event)
        self.state.wake(awake=True)

    def hideEvent(self, event: QHideEvent) -> None:
        """Rest."""
        super().hideEvent(event)
        self.state.wake(awake=False)
