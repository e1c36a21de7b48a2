"""The view of proving: faces at the left, readings in the middle, the verdict at the right."""

from typing import TYPE_CHECKING

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from planner.app.following import FollowingView
from planner.app.pages import PageStrip
from planner.app.proving_view.caution_line import CautionLine
from planner.app.proving_view.faces_pane import FacesPane
from planner.app.proving_view.flex_pane import FlexPane
from planner.app.proving_view.listen_pane import ListenPane
from planner.app.proving_view.readings_pane import ReadingsPane
from planner.app.proving_view.state import Proving
from planner.app.proving_view.units_book import UnitsBook
from planner.app.proving_view.units_pane import UnitsPane
from planner.app.proving_view.verdict_pane import VerdictPane

if TYPE_CHECKING:
    from planner.app.actions import Actions
    from planner.app.session import Session
    from planner.app.workbench import Workbench
    from planner.drawing.looks import Look

PAGES = ("Readings", "Verdict", "Faces", "Units", "Wiggle", "Listen")
# From these widths the readings, then the faces too, have a place of their own, px.
_TWO, _THREE = 700, 980
_SIDE_WIDE, _FACES_WIDE, _ANY_WIDTH = 300, 264, 16_777_215


class ProvingView(FollowingView):
    """Join the state and its panes; with little room they are pages of one."""

    state: Proving

    def __init__(
        self, workbench: "Workbench", session: "Session", actions: "Actions", look: "Look"
    ) -> None:
        super().__init__()
        self.state = Proving(workbench, self)
        self.book = UnitsBook(self.state, session, self)
        self.readings = ReadingsPane(self.state, look)
        self.verdict = VerdictPane(self.state, actions, look)
        self.units = UnitsPane(self.state, self.book, actions, look)
        self.flex = FlexPane(self.state, look)
        self.listen = ListenPane(self.state, actions, look)
        self.faces = FacesPane(self.state, look)
        self.caution = CautionLine(workbench, look)
        self.panels = (
            self.caution,
            self.readings,
            self.verdict,
            self.units,
            self.flex,
            self.listen,
        )
        self.stack = QStackedWidget()
        self.strip = PageStrip(PAGES, look, self.show_page)
        self._columns, self._page = 3, "Verdict"
        self._ground(look)
        self._build()
        self.setAccessibleName("Prove")
        self.setFocusProxy(self.readings)
        self._arrange()

    def _build(self) -> None:
        self._side = QWidget()
        side = QVBoxLayout(self._side)
        side.setContentsMargins(0, 0, 0, 0)
        side.setSpacing(0)
        side.addWidget(self.strip)
        side.addWidget(self.stack, 1)
        for pane in (self.verdict, self.units, self.flex, self.listen):
            self.stack.addWidget(pane)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.caution)
        self._row = QHBoxLayout()
        column.addLayout(self._row, 1)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(0)
        self._row.addWidget(self.faces)
        self._row.addWidget(self.readings, 1)
        self._row.addWidget(self._side)

    # -- pages ------------------------------------------------------------------------------------

    @property
    def _paged(self) -> tuple[str, ...]:
        """The pages that have no place of their own."""
        own = {1: 0, 2: 1, 3: 1}[self._columns]
        return tuple(it for it in PAGES[own:] if it != "Faces" or self._columns < 3)

    def show_page(self, name: str) -> None:
        """Bring a pane up, where it has no place of its own."""
        if name in self._paged:
            self._page = name
            self._arrange()

    def _arrange(self) -> None:
        paged = self._paged
        self._page = self._page if self._page in paged else "Verdict"
        self._place(self.faces, 0, 0, paged="Faces" in paged)
        self._place(self.readings, int(self._columns == 3), 1, paged="Readings" in paged)
        if self._columns == 1:
            self._side.setMinimumWidth(0)
            self._side.setMaximumWidth(_ANY_WIDTH)
        else:
            self._side.setFixedWidth(_SIDE_WIDE)
        self.strip.show_pages(paged, self._page)
        panes: dict[str, QWidget] = {
            "Readings": self.readings,
            "Verdict": self.verdict,
            "Faces": self.faces,
            "Units": self.units,
            "Wiggle": self.flex,
            "Listen": self.listen,
        }
        self.stack.setCurrentWidget(panes[self._page])

    def _place(self, pane: QWidget, at: int, stretch: int, *, paged: bool) -> None:
        """Put a pane among the pages, or at its own place in the row."""
        inside = self.stack.indexOf(pane) >= 0
        if paged and not inside:
            pane.setMinimumWidth(160)
            pane.setMaximumWidth(_ANY_WIDTH)
            self.stack.addWidget(pane)
        elif not paged:
            if inside:
                self.stack.removeWidget(pane)
                self._row.insertWidget(at, pane, stretch)
            if pane is self.faces:
                pane.setFixedWidth(_FACES_WIDE)
            pane.show()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Put the panes side by side where there is room."""
        super().resizeEvent(event)
        columns = 3 if self.width() >= _THREE else 2 if self.width() >= _TWO else 1
        if columns != self._columns:
            self._columns = columns
            self._page = "Readings" if columns == 1 else self._page
            self._arrange()

    # -- look and life ----------------------------------------------------------------------------

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self._ground(look)
        for pane in (*self.panels, self.faces):
            pane.set_look(look)

    def let_go(self) -> None:
        """Stop what is under way, and listen no more."""
        self.book.let_go()
        self.state.let_go()
        for pane in self.panels:
            pane.detach()
        self.readings.grid.detach()
