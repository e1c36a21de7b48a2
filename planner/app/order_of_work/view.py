"""The view of the order of work: steps at the right, threading or cut list at the left."""

from typing import TYPE_CHECKING

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout

from planner.app.buttons import ActionButton
from planner.app.following import FollowingView
from planner.app.order_of_work.cuts_pane import CutsPane
from planner.app.order_of_work.parts_pane import PartsPane
from planner.app.order_of_work.state import Work
from planner.app.order_of_work.step_list import StepList
from planner.app.pages import PageStrip
from planner.app.panels.widgets.labels import label
from planner.app.panels.widgets.panel import Panel

if TYPE_CHECKING:
    from collections.abc import Callable

    from planner.app.actions import Actions
    from planner.app.workbench import Workbench
    from planner.drawing.looks import Look

# From this width there is room for two panes side by side, px.
_TWO = 760
_PAGES = ("Steps", "Threading", "Cut list")


class WorkView(FollowingView):
    """Join the state and its three panes; with little room they are pages of one."""

    state: Work

    def __init__(
        self,
        workbench: "Workbench",
        actions: "Actions",
        save_cuts: "Callable[[], object]",
        look: "Look",
    ) -> None:
        super().__init__()
        self.state = Work(workbench, self)
        self.steps = StepsPane(self.state, actions, look)
        self.parts = PartsPane(self.state, actions, look)
        self.cuts = CutsPane(self.state, save_cuts, look)
        self.stack = QStackedWidget()
        self.strip = PageStrip(_PAGES, look, self.show_page)
        self.tabs = self.strip.tabs
        self._ground(look)
        self._two = True
        self._page = "Threading"
        self._build()
        self.setAccessibleName("Order of work")
        self.setFocusProxy(self.steps.list)
        self._arrange()

    def _build(self) -> None:
        for pane in (self.parts, self.cuts):
            self.stack.addWidget(pane)
        left = QVBoxLayout()
        left.setContentsMargins(0, 0, 0, 0)
        left.setSpacing(0)
        left.addWidget(self.strip)
        left.addWidget(self.stack, 1)
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(0)
        self._row.addLayout(left, 4)
        self._row.addWidget(self.steps, 5)

    def show_page(self, name: str) -> None:
        """Show another pane."""
        self._page = name
        self._arrange()

    def _arrange(self) -> None:
        if self._two:
            if self.stack.indexOf(self.steps) >= 0:
                self.stack.removeWidget(self.steps)
                self._row.addWidget(self.steps, 5)
            self._page = "Threading" if self._page == "Steps" else self._page
        elif self.stack.indexOf(self.steps) < 0:
            self.stack.addWidget(self.steps)
        self.steps.show()
        self.strip.show_pages(_PAGES[1:] if self._two else _PAGES, self._page)
        panes = {"Steps": self.steps, "Threading": self.parts, "Cut list": self.cuts}
        self.stack.setCurrentWidget(panes[self._page])

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self._ground(look)
        for pane in (self.steps, self.parts, self.cuts):
            pane.set_look(look)

    def let_go(self) -> None:
        """Stop what is under way, and listen no more."""
        self.state.let_go()
        for pane in (self.steps, self.parts, self.cuts):
            pane.detach()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Put the panes side by side where there is room."""
        super().resizeEvent(event)
        two = self.width() >= _TWO
        if two != self._two:
            self._two = two
            self._page = self._page if two else "Steps"
            self._arrange()


class StepsPane(Panel):
    """The list of steps, with its head and the way back to the computed order."""

    def __init__(self, work: Work, actions: "Actions", look: "Look") -> None:
        super().__init__(work.workbench, look)
        self.work = work
        self.list = StepList(work, look)
        self.title = label("Order of work", "head")
        self.note = label("", "second")
        self.reset = ActionButton(actions["computed_order"], look, text="Computed order")
        row = QHBoxLayout()
        row.setContentsMargins(12, 6, 12, 4)
        row.setSpacing(12)
        for part in (self.title, self.note):
            row.addWidget(part)
        row.addStretch(1)
        row.addWidget(self.reset)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(row)
        column.addWidget(self.list, 1)
        self.attach(work.changed, self._show_note)
        self.attach(work.busy_changed, self._show_note)
        self.set_look(look)

    def _show_note(self) -> None:
        count = len(self.work.facts.steps)
        own = ", your own order" if self.work.plan.step_order else ""
        none = "land cores first (G)"
        told = f"{count} steps{own}" if count else none
        self.note.setText("working it out\u2026" if self.work.busy else told)

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        super().set_look(look)
        self.list.set_look(look)
        self.reset.set_look(look)
