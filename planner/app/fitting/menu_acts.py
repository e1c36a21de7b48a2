"""What the menus do to the dry fit: from any view, they show it first."""

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from planner.edits.working import set_workmanship

if TYPE_CHECKING:
    from planner.app.actions import Actions
    from planner.app.dialogs.ask import Ask
    from planner.app.fitting.view import FitView
    from planner.app.view_acts import ViewActs

_ACTS = ("best_turn", "best_order", "sleeve_advised")


class FitMenu(QObject):
    """Handle the actions of the dry fit, and keep those enabled that can be done."""

    def __init__(self, fitting: "FitView", view_acts: "ViewActs", ask: "Ask") -> None:
        super().__init__(fitting)
        self._fitting, self._view_acts, self._ask = fitting, view_acts, ask
        self._workbench = fitting.state.workbench
        self._actions: Actions | None = None

    def connect_to(self, actions: "Actions") -> None:
        """Take on the actions, and let the letters work in the view."""
        self._actions = actions
        for name in _ACTS:
            actions.handle(name, partial(self._in_fit, getattr(self._fitting.acts, name)))
        actions.handle("workmanship", self.workmanship)
        actions.scope_to(self._fitting, "fit", "walk")
        for name in ("fit", "land_by_signal", "land_end_by_signal"):
            self._fitting.addAction(actions[name])
        self._workbench.plan_changed.connect(lambda _changes: self._on_plan_changed())
        self._workbench.go_to.connect(self._fitting.show_place)
        self._on_plan_changed()

    def workmanship(self) -> None:
        """Let the builder choose the rules of workmanship; one undo step."""
        chosen = self._ask.workmanship(self._workbench.plan)
        if chosen is not None:
            self._workbench.do("Workmanship", lambda plan: set_workmanship(plan, **chosen))

    def _in_fit(self, act: Callable[[], None]) -> None:
        if self._view_acts.view != "dry_fit":
            self._view_acts.choose_view("dry_fit")
        act()

    def _on_plan_changed(self) -> None:
        if self._actions is not None:
            plan = self._workbench.plan
            for name in _ACTS:
                self._actions[name].setEnabled(bool(plan.landings))
            self._actions["workmanship"].setEnabled(bool(plan.ends))
