"""The dry fit's view: one end, large, with its figures in a column beside it."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtGui import QHideEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout

from planner.app.fitting.column import FitColumn
from planner.app.fitting.empty import wanting
from planner.app.fitting.face_canvas import FaceCanvas
from planner.app.fitting.fit_acts import FitActs
from planner.app.fitting.keys import FitKeys
from planner.app.fitting.state import Fitting
from planner.app.following import FollowingView
from planner.model.place import Place

if TYPE_CHECKING:
    from planner.app.actions import Actions
    from planner.app.workbench import Workbench
    from planner.drawing.looks import Look

# (least width of the view, width of its column, side of the dial), the widest first.
_WIDTHS = ((860, 308, 156), (660, 272, 140), (0, 252, 124))


class FitView(FollowingView):
    """Join the state, the face, the column and the acts."""

    state: Fitting
    zoom_changed = Signal(float)

    def __init__(self, workbench: "Workbench", actions: "Actions", look: "Look") -> None:
        super().__init__()
        self.state = Fitting(workbench, self)
        self.acts = FitActs(self.state)
        self.face = FaceCanvas(self.state, look)
        self.column = FitColumn(self.acts, actions, look)
        keys = FitKeys(self.state, self.acts)
        self.face.keys = self.column.order.keys = keys
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(self.face, 1)
        row.addWidget(self.column)
        self.setFocusProxy(self.face)
        self.setAccessibleName("Dry fit")
        self.face.zoom_changed.connect(self.zoom_changed)
        self.state.changed.connect(self._on_changed)

    @property
    def end(self) -> str:
        """The end that is shown."""
        return self.state.end

    @property
    def zoom(self) -> float:
        """The zoom of the face; 1 shows all of it."""
        return self.face.zoom

    def show_end(self, end: str) -> None:
        """Show another end, whole, and select it."""
        if end != self.state.end:
            self.face.call_off()
            self.acts.call_off()
            self.state.look_at(end)
            self.face.fit()
        if end and self.state.workbench.selection.end != end:
            self.state.workbench.select(Place(end=end))

    def show_place(self, place: Place) -> None:
        """Show the place of a finding: its end, and its contact."""
        if self.isVisible() and place.end in self.state.plan.end_by_id:
            landing = self.state.plan.landing_at.get((place.end, place.conductor))
            contact = place.contact or (landing.contact if landing is not None else "")
            self.state.workbench.select(Place(end=place.end, contact=contact))

    def fit(self) -> None:
        """Show the whole end."""
        self.face.fit()

    def zoom_in(self) -> None:
        """Draw one step larger."""
        self.face.zoom_in()

    def zoom_out(self) -> None:
        """Draw one step smaller."""
        self.face.zoom_out()

    def zoom_reset(self) -> None:
        """Draw at 100 %: the whole end."""
        self.face.fit()

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.face.set_look(look)
        self.column.set_look(look)

    def let_go(self) -> None:
        """Stop what is under way, and listen no more."""
        self.acts.let_go()
        self.face.let_go()
        self.state.let_go()
        self.column.detach()

    def _on_changed(self) -> None:
        """Keep the column away while there is nothing to tell."""
        plan, end = self.state.plan, self.state.end
        missing = wanting(plan, end)
        self.column.setVisible(missing is None)
        said = f"{missing.what}. {missing.do}" if missing is not None else ""
        self.face.setAccessibleDescription(said or f"End {end}; arrows turn the plug")

    def hideEvent(self, event: QHideEvent) -> None:
        """Rest."""
        self.face.call_off()
        self.acts.call_off()
        super().hideEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give the column what the width allows."""
        super().resizeEvent(event)
        _, wide, dial = next(it for it in _WIDTHS if self.width() >= it[0])
        self.column.setFixedWidth(wide)
        self.column.turn.dial.set_side(dial)
