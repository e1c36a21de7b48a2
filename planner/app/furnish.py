"""Furnish the shown window: library, workbench, panels and canvas. The heavy imports are here."""

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtGui import QUndoStack
from PySide6.QtWidgets import QStackedWidget, QWidget

from planner.app.autosave import Autosave
from planner.app.buttons import fold_button
from planner.app.canvas.view import BenchView
from planner.app.dialogs.ask import Ask
from planner.app.fitting.menu_acts import FitMenu
from planner.app.fitting.view import FitView
from planner.app.focus_ring import FocusKeeper
from planner.app.lead_acts import LeadActs
from planner.app.library_acts import LibraryActs
from planner.app.mishap import MishapHook
from planner.app.newer_acts import NewerActs
from planner.app.order_of_work.menu_acts import WorkMenu
from planner.app.order_of_work.view import WorkView
from planner.app.panels.findings import FindingsPanel
from planner.app.panels.guide import GuidePanel
from planner.app.panels.in_hand import InHandPanel
from planner.app.panels.landings import LandingsPanel
from planner.app.panels.shelf import ShelfPanel
from planner.app.plan_acts import PlanActs
from planner.app.proving_view.menu_acts import ProveMenu
from planner.app.proving_view.prove_acts import ProveActs
from planner.app.proving_view.view import ProvingView
from planner.app.session import Session
from planner.app.standing import standing
from planner.app.taken import taken_in
from planner.app.view_acts import ViewActs
from planner.app.workbench import Workbench
from planner.drawing.looks import Look
from planner.library.loading import load_library

if TYPE_CHECKING:
    from planner.app.shell import Shell


class Bench(QObject):
    """What stands in the window once it is furnished, and what joins its parts."""

    def __init__(self, shell: "Shell") -> None:
        super().__init__(shell)
        self.window, self.settings, self.theme = shell.window, shell.settings, shell.theme
        self.ask = shell.ask or Ask(self.window, self.settings)
        self.workbench = Workbench(load_library(self.settings.folders), self)
        self.session = Session(self.workbench, self.settings, self.ask, self)
        self.autosave = Autosave(self.workbench, self.session, self.settings, self)
        self.mishaps = MishapHook(self._on_mishap)
        self.focus = FocusKeeper(shell.app, self.theme.look)
        self._build_panels(self.theme.look)
        self._build_acts()
        self._listen()
        self.mishaps.install()

    # -- made -------------------------------------------------------------------------------

    def _build_panels(self, look: Look) -> None:
        bench, holders = self.workbench, self.window.regions.holders
        self.shelf = ShelfPanel(bench, look)
        self.findings = FindingsPanel(bench, look)
        self.in_hand = InHandPanel(bench, look)
        self.landings = LandingsPanel(bench, look)
        self.guide = GuidePanel(bench, look)
        self.canvas = BenchView(bench, look)
        self.fitting = FitView(bench, self.window.acts, look)
        self.work = WorkView(bench, self.window.acts, self._save_cuts, look)
        self.proving = ProvingView(bench, self.session, self.window.acts, look)
        self.stack = QStackedWidget()
        for page in (self.canvas, self.fitting, self.work, self.proving, self.guide):
            self.stack.addWidget(page)
        self._add_fold_buttons(look)
        for name, panel in (
            ("shelf", self.shelf),
            ("findings", self.findings),
            ("in_hand", self.in_hand),
            ("landings", self.landings),
            ("canvas", self.stack),
        ):
            holders[name].hold(panel)

    def _add_fold_buttons(self, look: Look) -> None:
        acts = self.window.acts
        self.folds = (
            fold_button(acts["shelf"], look, "fold-left"),
            fold_button(acts["landings"], look, "fold-down"),
        )
        layout = self.shelf.head.layout()
        if layout is not None:
            layout.addWidget(self.folds[0])
        self.window.regions.holders["landings"].set_corner(self.folds[1])

    def _build_acts(self) -> None:
        window, notice = self.window, self.window.notice
        notice.taken = lambda: taken_in(self.stack.currentWidget())
        self.lead_acts = LeadActs(self.workbench, self.findings, notice, self)
        self.plan_acts = PlanActs(
            self.workbench, self.session, self.settings, self.ask, notice, self
        )
        self.plan_acts.connect_to(window.acts)
        self.lead_acts.connect_to(window.acts)
        self.plan_acts.fill_recent(window.menus["Recent"])
        self.plan_acts.fill_demos(window.menus["Demos"])
        self.view_acts = ViewActs(window, self.canvas, self.fitting, self.shelf, self.settings)
        self.view_acts.connect_to_actions()
        self.fit_menu = FitMenu(self.fitting, self.view_acts, self.ask)
        self.fit_menu.connect_to(window.acts)
        self.work_menu = WorkMenu(self.work, self.view_acts, window.acts)
        self.prove_acts = ProveActs(
            self.proving, self.proving.book, self.session, self.settings, self.ask, notice
        )
        self.prove_menu = ProveMenu(self.prove_acts, self.view_acts, window.acts)
        self.lead_acts.stack = self._undo_stack
        self.proving.state.undo_stack.indexChanged.connect(self.lead_acts.renew)
        self.plan_acts.leads = lambda: self.work.state.leads
        self.library = LibraryActs(self)
        self.newer = NewerActs(self.workbench, notice, self.ask.newer, self)
        self.newer.connect_to(window.acts)
        window.acts.scope_to(self.canvas, "bench", "walk")
        for panel in (self.landings, self.findings):
            window.acts.scope_to(panel, "walk")
        for part in (self.shelf, self.in_hand, window.band):
            part.addAction(window.acts["search"])

    def _listen(self) -> None:
        bench, window = self.workbench, self.window
        for signal in (bench.plan_changed, bench.findings_changed, bench.hand_changed):
            signal.connect(self._on_plan_changed)
        for signal in (bench.plan_changed, self.session.opened):
            signal.connect(self._put_notice_away)
        bench.plan_changed.connect(self._show_title)
        bench.hand_changed.connect(self._on_hand_changed)
        bench.refused.connect(self._on_refused)
        self.landings.land_by_signal_requested.connect(window.acts["land_by_signal"].trigger)
        self.session.changed.connect(self._on_session_changed)
        self.session.opened.connect(self._on_opened)
        window.regions.panel_entered.connect(self._on_panel_entered)
        self.autosave.told.connect(window.hints.show_state)
        self.theme.changed.connect(self._on_look_changed)
        self.settings.changed.connect(self._on_settings_changed)
        window.may_close = self.session.may_leave
        window.closing.connect(self.let_go)
        window.dropped.connect(self.session.open)
        self.shelf.offered.connect(self.guide.offer)
        self.guide.started.connect(self._on_started)
        self.view_acts.view_chosen.connect(self._show_page)
        self.canvas.file_dropped.connect(lambda name: self.session.open(Path(name)))
        window.lately.chosen.connect(self.session.open)

    def _undo_stack(self) -> QUndoStack:
        """Return what undo acts on: the readings while they are looked at, else the plan."""
        proving = self.view_acts.view == "prove" and bool(self.workbench.plan.ends)
        return self.proving.state.undo_stack if proving else self.workbench.undo_stack

    def _save_cuts(self) -> None:
        self.plan_acts.save_cuts()

    # -- begun ------------------------------------------------------------------------------

    def begin(self, plan: Path | None, *, demo: bool) -> None:
        """Open what was asked for, else offer what a kill left, else begin a new plan."""
        self._take_settings()
        self._on_plan_changed()
        self._on_opened()
        self._on_session_changed()
        if plan is not None:
            self.session.open(plan)
        elif demo:
            self.session.open_demo()
        else:
            self.autosave.offer_recovery(self.ask)
        self.plan_acts.tell_problems(self.window.acts)
        self.focus.wake()

    # -- heard ------------------------------------------------------------------------------

    def _on_plan_changed(self, *_what: object) -> None:
        answer, plan = standing(self.workbench), self.workbench.plan
        self.window.band.show_answer(answer, in_hand=self.workbench.hand is not None)
        self.window.show_plan(plan.title, plan.order, plan.revision)
        total = answer.landed + answer.to_land
        self.window.landings_head.count.setText(answer.landed_words if total else "")
        self.window.bar.show_findings(len(self.findings.shown))
        if (self.stack.currentWidget() is self.guide) is bool(plan.ends):
            self._show_page()
        self._show_hints()

    def _on_panel_entered(self, _name: str) -> None:
        self._show_hints()

    def _show_hints(self) -> None:
        panel = self.window.regions.panel or "canvas"
        if self.workbench.hand is not None and panel in {"canvas", "landings"}:
            panel = "hand"
        elif panel == "canvas" and self.stack.currentWidget() is self.guide:
            panel = "guide"
        elif panel == "canvas":
            views = (
                (self.fitting, "fitting"), (self.work, "work"), (self.proving, "proving"),
            )  # fmt: skip
            panel = next((it for page, it in views if page is self.stack.currentWidget()), panel)
        if panel == "proving" and self.proving.flex.box.hasFocus():
            panel = "wiggle"
        self.window.hints.show_hints(panel)

    def _on_opened(self) -> None:
        self.guide.begin_anew()
        self._show_page()
        if self.workbench.plan.ends:
            self.canvas.fit()
        self.window.regions.enter("canvas")
        self.newer.tell()

    def _on_started(self) -> None:
        self._show_page()
        self.canvas.fit()
        self.window.regions.enter("canvas")

    def _show_page(self) -> None:
        """Show the view that is on; the guide, and the plans of late, while there are no ends."""
        new = not self.workbench.plan.ends
        views: dict[str, QWidget] = {
            "wire": self.canvas,
            "dry_fit": self.fitting,
            "work": self.work,
            "prove": self.proving,
        }
        self.stack.setCurrentWidget(self.guide if new else views[self.view_acts.view])
        self.window.lately.show_plans(self.settings.recent, datetime.now().astimezone())
        self.window.regions.show_lately(shown=new)
        self.window.regions.set_aside(aside=not new and self.view_acts.view == "prove")
        self.view_acts.allow(bench=not new)
        self.lead_acts.renew()
        self._show_hints()

    def _on_session_changed(self) -> None:
        self._show_title()
        self.window.hints.show_state(self.autosave.words())

    def _show_title(self, *_what: object) -> None:
        self.window.setWindowModified(self.session.dirty)
        self.window.setWindowTitle(f"{self.session.name}[*] \u2013 Cupwright")

    def _on_refused(self, reason: str, mend: str) -> None:
        told = reason if reason.endswith(".") else f"{reason}."
        self.window.notice.say(f"{told} {mend}".strip(), tone="caution")

    def _put_notice_away(self, *_what: object) -> None:
        self.window.notice.hide()

    def _on_hand_changed(self) -> None:
        self.window.notice.take_escape(taken=self.workbench.hand is None)

    def _on_look_changed(self, look: Look) -> None:
        for part in (self.shelf, self.findings, self.in_hand, self.landings, self.guide):
            part.set_look(look)
        self.focus.set_look(look)
        for button in self.folds:
            button.set_look(look)
        self.canvas.set_look(look)
        self.fitting.set_look(look)
        self.work.set_look(look)
        self.proving.set_look(look)

    def _on_settings_changed(self, key: str) -> None:
        if key == "recent":
            self.window.lately.show_plans(self.settings.recent, datetime.now().astimezone())
        if key in {"gauge", "units", "bench_name"}:
            self._take_settings()
        if key == "folders":
            self.workbench.library = load_library(self.settings.folders)
            self.workbench.library_changed.emit()
            self.plan_acts.tell_problems(self.window.acts)

    def _take_settings(self) -> None:
        self.in_hand.set_units(self.settings.choice("gauge"), self.settings.choice("units"))
        self.findings.builder = self.settings.bench_name

    def _on_mishap(self, sentence: str) -> None:
        self.autosave.keep()
        if self.ask.mishap(sentence):
            self.session.save_copy()

    def let_go(self) -> None:
        """Stop listening to what outlives the window."""
        self.autosave.drop()
        self.mishaps.remove()
        self.focus.let_go()
        self.fitting.let_go()
        self.work.let_go()
        self.proving.let_go()
        self.library.let_go()
        self.workbench.undo_stack.blockSignals(True)  # it signals once more while it is destroyed
        for part in (self.shelf, self.findings, self.in_hand, self.landings, self.guide):
            part.detach()
