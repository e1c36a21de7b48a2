"""What the Plan and Help menus do."""

from collections.abc import Callable, Sequence
from datetime import date
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu

from planner.app.actions import Actions
from planner.app.answer import counted
from planner.app.dialogs.ask import Ask
from planner.app.notice import Notice
from planner.app.session import Session, demo_files
from planner.app.settings import Settings
from planner.app.workbench import Workbench
from planner.edits.texts import set_order, set_remarks, set_revision, set_title
from planner.model.plan import Plan
from planner.problem import InputError

if TYPE_CHECKING:
    from planner.app.printing.desk import SheetDesk


class PlanActs(QObject):
    """Handle new, open, recent, save, details, sheet, settings, keys."""

    def __init__(  # noqa: PLR0917 - what the acts work on
        self,
        workbench: Workbench,
        session: Session,
        settings: Settings,
        ask: Ask,
        notice: Notice,
        parent: QObject,
    ) -> None:
        super().__init__(parent)
        self._workbench = workbench
        self._session = session
        self._settings = settings
        self._ask = ask
        self._notice = notice
        self.leads: Callable[[], int] = lambda: 1  # in the run that is being looked at

    def connect_to(self, actions: Actions) -> None:
        """Take on the actions."""
        session = self._session
        for name, slot in (
            ("new", session.new),
            ("open", session.open),
            ("demo", session.open_demo),
            ("save", session.save),
            ("save_as", session.save_as),
            ("details", self.edit_details),
            ("sheet", self.show_sheet),
            ("settings", self._ask.settings),
            ("keys", partial(self._ask.show_keys, actions)),
            ("problems", self.show_problems),
            ("about", self._ask.about),
        ):
            actions.handle(name, slot)

    def fill_recent(self, menu: QMenu) -> None:
        """Let a menu list the plans opened lately, anew each time it is shown."""
        menu.aboutToShow.connect(partial(self._list_recent, menu))
        menu.menuAction().setToolTip("Open a plan that was opened lately")

    def _list_recent(self, menu: QMenu) -> None:
        menu.clear()
        for plan in self._settings.recent:
            action = QAction(plan.name.replace("&", "&&"), menu)
            action.setToolTip(str(plan.path))
            action.triggered.connect(partial(self._open, plan.path))
            menu.addAction(action)
        if menu.isEmpty():
            menu.addAction("Nothing was opened yet").setEnabled(False)

    def _open(self, path: Path, _checked: object = None) -> None:
        self._session.open(path)

    def fill_demos(self, menu: QMenu) -> None:
        """List the demo plans that ship."""
        for path in demo_files():
            action = QAction(path.stem.replace("-", " "), menu)
            action.setToolTip(f"Open the demo plan {path.name}")
            action.triggered.connect(partial(self._open_demo, path))
            menu.addAction(action)

    def _open_demo(self, path: Path, _checked: object = None) -> None:
        self._session.open_copy(path)

    def edit_details(self) -> None:
        """Ask for title, order, revision and remarks; one undo step."""
        written = self._ask.details(self._workbench.plan)
        if written is None:
            return

        def edit(plan: Plan) -> Plan:
            plan = set_title(plan, title=written.title)
            plan = set_order(plan, order=written.order)
            plan = set_revision(plan, revision=written.revision)
            return set_remarks(plan, remarks=written.remarks)

        self._workbench.do("Set title and order", edit)

    def tell_problems(self, actions: Actions) -> None:
        """Say that some definition files can't be used; the Help menu shows which."""
        problems = self._workbench.library.problems
        actions["problems"].setEnabled(bool(problems))
        if problems:
            count = counted(len(problems), "problem")
            self._notice.say(f"{count} in the library: Help, Library problems shows them.")

    def show_problems(self) -> None:
        """Show each definition file that can't be used: place, what, mend."""
        said = "All other definitions are on the shelf as usual."
        self._ask.trouble("Problems in the library", self._workbench.library.problems, said)

    def show_sheet(self) -> None:
        """Show the sheet as it prints; afterwards say what was written."""
        desk = self._desk()
        self._ask.sheet(desk)
        if desk.written:
            self._say_written(desk.written)

    def save_cuts(self) -> None:
        """Ask where to, and write the cut list of the run."""
        desk = self._desk()
        path = self._ask.where_to_write_cuts(desk.file_name(" cut list.csv"))
        if path is None:
            return
        try:
            self._say_written(desk.write(path))
        except InputError as error:
            self._ask.trouble("The cut list can\u2019t be written", error.problems)

    def _desk(self) -> "SheetDesk":
        from planner.app.printing.desk import SheetDesk  # noqa: PLC0415 - only when it is wanted

        bench, today = self._workbench, date.today().isoformat()  # noqa: DTZ011 - as it hangs there
        settings, leads = self._settings, self.leads()
        return SheetDesk(bench.plan, bench.findings, settings, date=today, leads=leads)

    def _say_written(self, paths: Sequence[Path]) -> None:
        self._notice.say("Written: " + ", ".join(str(path) for path in paths))
