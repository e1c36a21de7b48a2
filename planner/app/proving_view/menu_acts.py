"""The actions of the menu Prove: from any view, they show it first."""

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt

if TYPE_CHECKING:
    from planner.app.actions import Actions
    from planner.app.proving_view.prove_acts import ProveActs
    from planner.app.view_acts import ViewActs

_UNIT, _ROWS = ("finish_unit",), ("next_unit", "import_readings", "empty_form", "wiggle", "listen")


class ProveMenu(QObject):
    """Handle the actions, and keep those enabled that can be done."""

    def __init__(self, acts: "ProveActs", view_acts: "ViewActs", actions: "Actions") -> None:
        super().__init__(acts)
        self._acts, self._view_acts, self._actions = acts, view_acts, actions
        self._view = acts.view
        for name, act in (
            ("next_unit", acts.begin),
            ("finish_unit", acts.finish),
            ("import_readings", acts.import_readings),
            ("empty_form", acts.empty_form),
            ("attach", acts.attach),
            ("certificate", acts.certificate),
            ("unit_summary", acts.summary),
            ("next_unread", self._next_unread),
            ("next_advised", self._next_advised),
            ("wiggle", self._wiggle),
            ("listen", self._listen),
            ("test_tones", acts.test_tones),
        ):
            actions.handle(name, partial(self._in_prove, act))
        actions.scope_to(self._view, "prove", "walk")
        state = self._view.state
        for signal in (state.unit_changed, state.rows_changed, state.judge.changed):
            signal.connect(self.renew)
        state.workbench.plan_changed.connect(self.renew)
        acts.book.changed.connect(self.renew)
        self.renew()

    def _in_prove(self, act: Callable[[], None]) -> None:
        if self._view_acts.view != "prove":
            self._view_acts.choose_view("prove")
        act()

    def _next_unread(self) -> None:
        self._view.show_page("Readings")
        self._view.readings.grid.go_on()
        self._view.readings.grid.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _next_advised(self) -> None:
        self._view.state.ask_for_advised()
        self._view.show_page("Readings")
        self._view.readings.grid.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _wiggle(self) -> None:
        self._view.show_page("Wiggle")
        self._view.flex.box.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _listen(self) -> None:
        self._view.show_page("Listen")
        self._view.listen.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def renew(self, *_what: object) -> None:
        """Enable what can be done now."""
        state, book = self._view.state, self._acts.book
        made, landed = state.judge.diagnosis, bool(state.plan.landings)
        recorded = bool(book.units.records)
        advised = made is not None and made.next_probe is not None
        for name, can in (
            *((name, landed) for name in _ROWS),
            *((name, state.unit is not None) for name in _UNIT),
            ("next_unread", state.unit is not None),
            ("next_advised", advised),
            ("attach", state.unit is not None or recorded),
            ("certificate", recorded),
            ("unit_summary", recorded),
        ):
            self._actions[name].setEnabled(can)
