"""The view of proving: faces at the left, readings in the middle, the verdict at the right."""

from typing import TYPE_CHECKING

from PySide6.QtGui import QHideEvent, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from planner.app.canvas.paint import colour
from planner.app.proving_view.readings_pane import ReadingsPane
from planner.app.proving_view.state import Proving

if TYPE_CHECKING:
    from planner.app.actions import Actions
    from planner.app.workbench import Workbench
    from planner.drawing.looks import Look


class ProvingView(QWidget):
    """Join the state and its panes."""

    def __init__(self, workbench: "Workbench", actions: "Actions", look: "Look") -> None:
        super().__init__()
        self.state = Proving(workbench, self)
        self.readings = ReadingsPane(self.state, look)
        self.panes = (self.readings,)
        self._ground(look)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(self.readings, 1)
        self.setAccessibleName("Prove")
        self.setFocusProxy(self.readings)
        self.readings.begin_wanted.connect(self.begin)

    def begin(self) -> None:
        """Begin the next unit, and ask for the meter's zero."""
        self.state.begin()
        self.readings.ask_zero()

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self._ground(look)
        for pane in self.panes:
            pane.set_look(look)

    def _ground(self, look: "Look") -> None:
        ground = self.palette()
        ground.setColor(self.backgroundRole(), colour(look.panel))
        self.setPalette(ground)
        self.setAutoFillBackground(True)

    def let_go(self) -> None:
        """Stop what is under way, and listen no more."""
        self.state.let_go()
        for pane in self.panes:
            pane.detach()
        self.readings.grid.detach()

    def showEvent(self, event: QShowEvent) -> None:
        """Compute while the view is looked at."""
        super().showEvent(event)
        self.state.wake(awake=True)

    def hideEvent(self, event: QHideEvent) -> None:
        """Rest."""
        super().hideEvent(event)
        self.state.wake(awake=False)
