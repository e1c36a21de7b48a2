"""The plan's file: new, open, save, save as; what is not saved is never lost without a question."""

from datetime import datetime
from pathlib import Path

from PySide6.QtCore import QObject, Signal

from planner.app.dialogs.ask import Ask
from planner.app.recent import RecentPlan
from planner.app.settings import Settings
from planner.app.standing import standing
from planner.app.workbench import Workbench
from planner.data import data_dir
from planner.model.plan import Plan
from planner.problem import InputError, Problem
from planner.services.opening import open_plan, save_plan

DEMO = "cue-desk-headphone-lead.json"
UNTITLED = "Untitled plan"


def demo_files() -> tuple[Path, ...]:
    """Return the demo plans that ship, by name."""
    folder = data_dir("resources") / "demo"
    return tuple(sorted(folder.glob("*.json")))


def file_name_for(plan: Plan) -> str:
    """Suggest a file name from the order and the title: `SP-0417 cue desk headphone lead`."""
    text = " ".join(part for part in (plan.order, plan.title) if part) or "lead"
    kept = "".join(mark if mark.isalnum() or mark in " -_" else " " for mark in text)
    return " ".join(kept.split())[:80] or "lead"


class Session(QObject):
    """Hold which file the plan is in. `changed` says that its name or its saved state changed."""

    changed = Signal()
    opened = Signal()

    def __init__(
        self, workbench: Workbench, settings: Settings, ask: Ask, parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self._workbench = workbench
        self._settings = settings
        self._ask = ask
        self.path: Path | None = None
        self._recovered = False
        workbench.undo_stack.cleanChanged.connect(self._on_clean_changed)

    # -- what is said -----------------------------------------------------------------------

    @property
    def dirty(self) -> bool:
        """Whether there is something that no file holds."""
        return self._recovered or not self._workbench.undo_stack.isClean()

    @property
    def name(self) -> str:
        """The file's name, or the plan's title while there is no file."""
        if self.path is not None:
            return self.path.name
        return self._workbench.plan.title or UNTITLED

    def _on_clean_changed(self, _clean: object) -> None:
        self.changed.emit()

    # -- beginning --------------------------------------------------------------------------

    def _begin(self, plan: Plan, path: Path | None, *, recovered: bool = False) -> None:
        self._workbench.open_plan(plan)  # tells that the plan before is clean, under its own path
        self.path, self._recovered = path, recovered
        self.opened.emit()
        self.changed.emit()

    def new(self) -> bool:
        """Begin a new plan."""
        if not self.may_leave():
            return False
        self._begin(Plan(), None)
        return True

    def open(self, path: Path | None = None) -> bool:
        """Open a plan file; ask for it where none is named. False where nothing was opened."""
        if not self.may_leave():
            return False
        path = path or self._ask.plan_to_open()
        return path is not None and self._open(path.absolute())

    def _open(self, path: Path) -> bool:
        try:
            plan = open_plan(path)
        except InputError as error:
            self._settings.forget(path)
            self._ask.trouble(f"{path.name} can\u2019t be opened", error.problems)
            return False
        self._begin(plan, path)
        self._remember(path)
        return True

    def _remember(self, path: Path) -> None:
        plan, now = self._workbench.plan, datetime.now().astimezone()
        stands = standing(self._workbench).kind
        at = now.isoformat(timespec="seconds")
        self._settings.remember(RecentPlan(path, plan.title, plan.order, stands, at))

    def open_copy(self, path: Path) -> bool:
        """Open a shipped plan as a plan without a file, so that saving asks where to."""
        if not self.may_leave():
            return False
        try:
            plan = open_plan(path)
        except InputError as error:
            self._ask.trouble(f"{path.name} can\u2019t be opened", error.problems)
            return False
        self._begin(plan, None)
        return True

    def open_demo(self) -> bool:
        """Open the demo plan."""
        shipped = demo_files()
        wanted = next(
            (path for path in shipped if path.name == DEMO), shipped[0] if shipped else None
        )
        if wanted is None:
            where = str(data_dir("resources") / "demo")
            lost = Problem("no demo plan is shipped", where, "Install Cupwright again.")
            self._ask.trouble("There is no demo plan", (lost,))
            return False
        return self.open_copy(wanted)

    def take_up(self, plan: Plan, path: Path | None) -> None:
        """Go on with work that was recovered; it counts as not saved."""
        self._begin(plan, path, recovered=True)

    # -- saving -----------------------------------------------------------------------------

    def save(self) -> bool:
        """Save the plan in its file; ask for one where there is none."""
        return self.save_as() if self.path is None else self._save(self.path)

    def save_as(self) -> bool:
        """Ask for a file and save the plan there."""
        suggested = self.path.name if self.path else f"{file_name_for(self._workbench.plan)}.json"
        path = self._ask.where_to_save(suggested)
        return path is not None and self._save(path.absolute())

    def _save(self, path: Path) -> bool:
        try:
            save_plan(path, self._workbench.plan)
        except InputError as error:
            self._ask.trouble(f"{path.name} can\u2019t be saved", error.problems)
            return False
        self.path, self._recovered = path, False
        self._remember(path)
        self._workbench.undo_stack.setClean()
        self.changed.emit()
        return True

    def save_copy(self) -> bool:
        """Save a copy elsewhere, and stay with the file there is."""
        path = self._ask.where_to_save(f"{file_name_for(self._workbench.plan)} copy.json")
        if path is None:
            return False
        try:
            save_plan(path, self._workbench.plan)
        except InputError as error:
            self._ask.trouble(f"{path.name} can\u2019t be saved", error.problems)
            return False
        return True

    def may_leave(self) -> bool:
        """Ask about what is not saved; True where the plan may be left."""
        if not self.dirty:
            return True
        answer = self._ask.unsaved(self.name)
        if answer == "save":
            return self.save()
        return answer == "discard"
