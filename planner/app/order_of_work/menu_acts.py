"""What the menus do to the order of work: from any view, they show it first."""

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

if TYPE_CHECKING:
    from planner.app.actions import Actions
    from planner.app.order_of_work.view import WorkView
    from planner.app.view_acts import ViewActs


class WorkMenu(QObject):
    """Handle the actions of the order of work, and keep those enabled that can be done."""

    def __init__(self, view: "WorkView", view_acts: "ViewActs", actions: "Actions") -> None:
        super().__init__(view)
        self._view_acts, self._actions, self._state = view_acts, actions, view.state
        for name, act in (
            ("computed_order", self._state.reset_order),
            ("parts_proposed", self._state.take_proposed),
        ):
            actions.handle(name, partial(self._in_work, act))
        actions.scope_to(view, "work", "walk")
        for name in ("land_by_signal", "land_end_by_signal"):
            view.addAction(actions[name])
        self._state.workbench.plan_changed.connect(lambda _changes: self._on_plan_changed())
        self._on_plan_changed()

    def _in_work(self, act: Callable[[], None]) -> None:
        if self._view_acts.view != "work":
            self._view_acts.choose_view("work")
        act()

    def _on_plan_changed(self) -> None:
        plan = self._state.plan
        self._actions["computed_order"].setEnabled(bool(plan.step_order))
        self._actions["parts_proposed"].setEnabled(bool(plan.ends))
