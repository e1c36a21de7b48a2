"""One end at a time: which end the bench shows, by step, by key, and by what is chosen."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from planner.app.arrangement import Form
from planner.app.ends_strip import EndsStrip, Weight
from planner.app.window import Window
from planner.checks.acceptance import acceptance_of
from planner.drawing.bench.tree import tree_of

if TYPE_CHECKING:
    from planner.app.canvas.view import BenchView
    from planner.app.fitting.view import FitView
    from planner.app.workbench import Workbench
    from planner.model.plan import Plan


def end_words(plan: "Plan") -> dict[str, str]:
    """Return what each end is called: its own name, else its connector."""
    found = {}
    for end in plan.ends:
        connector = plan.connector_of(end.id)
        title = connector.title if connector is not None else ""
        found[end.id] = ", ".join(part for part in (title, end.name) if part)
    return found


def end_weights(workbench: "Workbench") -> dict[str, Weight]:
    """Return the heaviest finding at each end; what is unfinished or accepted is quiet."""
    found: dict[str, Weight] = {}
    for finding in workbench.findings:
        quiet = finding.unfinished or finding.weight == "note"
        if quiet or acceptance_of(workbench.plan, finding):
            continue
        for place in finding.where:
            if place.end and found.get(place.end) != "stop":
                found[place.end] = finding.weight  # type: ignore[assignment] # a note never is
    return found


class EndSteps(QObject):
    """Join the strip, the bench and the actions. In one column the bench shows one end at first.

    The dry fit always shows one end, the order of work the whole lead; neither changes how much
    the bench shows.
    """

    def __init__(self, window: Window, canvas: "BenchView", fitting: "FitView") -> None:
        super().__init__(window)
        self._window, self._canvas, self._workbench = window, canvas, canvas.workbench
        self._fitting, self._view = fitting, "wire"
        self._on = {Form.WIDE: False, Form.COMPACT: False, Form.COLUMN: True}
        self._end = ""
        self.strip = EndsStrip(window.look)
        window.regions.holders["ends"].hold(self.strip)

    def connect_to_actions(self) -> None:
        """Take on the actions, and follow the plan and what is chosen."""
        acts, bench = self._window.acts, self._workbench
        acts.handle("one_end", self._on_one_end)
        acts.handle("next_end", lambda: self.step(1))
        acts.handle("previous_end", lambda: self.step(-1))
        self.strip.chosen.connect(self.show_end)
        self._window.regions.arranged.connect(lambda _made: self.renew())
        self._canvas.end_shown.connect(self._on_end_shown)
        bench.plan_changed.connect(lambda _changes: self.renew())
        bench.findings_changed.connect(self._show_weights)
        bench.selection_changed.connect(lambda: self._follow(bench.selection.end))
        self.renew()

    @property
    def on(self) -> bool:
        """Tell whether one end at a time is shown: by the dry fit, or in the form that is on."""
        if self._view != "wire":
            return self._in_fit
        return self._on[self._window.regions.form]

    @property
    def _in_fit(self) -> bool:
        return self._view == "dry_fit"

    def enter(self, view: str) -> None:
        """Show the chosen end in the dry fit, no end in the order of work, or go to the bench."""
        if view == "dry_fit" and not self._in_fit:
            self._end = self._chosen_first()
        self._view = view
        self.renew()

    def renew(self) -> None:
        """Show the ends of the plan that is, and the one that is chosen."""
        plan, ends = self._workbench.plan, self.strip
        if self._end not in plan.end_by_id:
            self._end = ""
        ends.show_ends(tree_of(plan), end_words(plan))
        if not self._end:
            self._end = ends.next_to("", 0)
        one = self.on and bool(plan.ends)
        for name in ("next_end", "previous_end"):
            self._window.acts[name].setEnabled(
                bool(plan.ends) and self._view in {"wire", "dry_fit"}
            )
        self._window.acts["one_end"].setEnabled(bool(plan.ends) and self._view == "wire")
        self._window.acts["one_end"].setChecked(one)
        self._window.regions.show_ends(shown=one)
        ends.show_current(self._end)
        self._show_weights()
        if self._in_fit:
            self._fitting.show_end(self._end)
        elif self._view == "wire":
            self._canvas.show_end(self._end if one else None)

    def show_end(self, end: str) -> None:
        """Show one end."""
        self._end = end
        if self._view == "wire":
            self._on[self._window.regions.form] = True
        self.renew()

    def step(self, by: int) -> None:
        """Show the next end, or begin with the chosen one where the whole lead is shown."""
        end = self.strip.next_to(self._end, by) if self.on else self._chosen_first()
        if end:
            self.show_end(end)

    def _chosen_first(self) -> str:
        chosen = self._workbench.selection.end
        return chosen if chosen in self.strip.steps else self._end

    def _follow(self, end: str) -> None:
        """Show the end that is chosen in another panel, where it is hidden."""
        if self.on and end and end != self._end and end in self.strip.steps:
            self.show_end(end)

    def _on_end_shown(self, end: str) -> None:
        if end and end != self._end and self._view == "wire":
            self.show_end(end)

    def _on_one_end(self) -> None:
        turned_on = self._window.acts["one_end"].isChecked()
        if turned_on:
            self._end = self._chosen_first()
        self._on[self._window.regions.form] = turned_on
        self.renew()

    def _show_weights(self) -> None:
        self.strip.show_weights(end_weights(self._workbench))
