"""A copy of the plan for recovery, a moment after each edit; dropped when the plan is safe."""

import logging
from datetime import datetime
from pathlib import Path

from PySide6.QtCore import QObject, QTimer, Signal

from planner.app.dialogs.ask import Ask
from planner.app.session import Session
from planner.app.settings import Settings
from planner.app.workbench import Workbench
from planner.files.recovery import Keeper, Snapshot, left_behind
from planner.problem import InputError

DELAY_MS = 2000
log = logging.getLogger(__name__)


class Autosave(QObject):
    """Keep one copy while there is something that no file holds. `told` says how it stands."""

    told = Signal(str)

    def __init__(
        self, workbench: Workbench, session: Session, settings: Settings, parent: QObject
    ) -> None:
        super().__init__(parent)
        self._workbench = workbench
        self._session = session
        self._settings = settings
        self._keeper = Keeper()
        self._kept_at: datetime | None = None
        self.timer = QTimer(self)
        self.timer.setSingleShot(True)
        self.timer.setInterval(DELAY_MS)
        self.timer.timeout.connect(self.keep)
        # The stack still counts as clean while the first edit's own change is told.
        workbench.undo_stack.indexChanged.connect(self._on_plan_changed)
        workbench.plan_changed.connect(self._on_plan_changed)
        session.changed.connect(self._on_session_changed)

    def _on_plan_changed(self, _what: object) -> None:
        if self._session.dirty and self._settings.autosave:
            self.timer.start()
        self._tell()

    def _on_session_changed(self) -> None:
        if not self._session.dirty:
            self.drop()
        self._tell()

    def keep(self) -> None:
        """Keep a copy now, if there is something to keep."""
        self.timer.stop()
        if not (self._session.dirty and self._settings.autosave):
            return
        try:
            self._keeper.keep(self._workbench.plan, self._session.path)
        except InputError as error:
            log.info("no copy was kept: %s", error)
            self.told.emit(f"No copy is kept: {error.problems[0].what}")
            return
        self._kept_at = datetime.now().astimezone()
        self._tell()

    def drop(self) -> None:
        """Drop the copy: the plan is saved, or left on purpose."""
        self.timer.stop()
        self._kept_at = None
        self._keeper.drop()

    def offer_recovery(self, ask: Ask) -> bool:
        """Ask about copies that a killed process left; True where one was opened.

        A copy that can't be read is told and kept. What is opened counts as not saved, and the
        older copy goes only when a newer one is kept.
        """
        copies = left_behind()
        if not copies:
            return False
        answer = ask.recover([_named(copy) for copy in copies])
        if answer == "discard":
            for copy in copies:
                copy.discard()
        return answer == "open" and self._take_up(copies[0], ask)

    def _take_up(self, copy: Snapshot, ask: Ask) -> bool:
        try:
            plan = copy.plan()
        except InputError as error:
            ask.trouble("The copy can\u2019t be read", error.problems)
            return False
        self._session.take_up(plan, _still_there(copy.original))
        self._keeper.keep(plan, self._session.path)
        copy.discard()
        return True

    def _tell(self) -> None:
        self.told.emit(self.words())

    def words(self) -> str:
        """Say in a few words what is saved."""
        if not self._session.dirty:
            return "Saved" if self._session.path else "Not saved yet"
        if self._kept_at is not None:
            return f"Autosaved {self._kept_at:%H:%M}"
        return "Changed, not saved" if self._session.path else "Not saved yet"


def _named(copy: Snapshot) -> str:
    name = copy.original.name if copy.original else copy.title or "a plan without a name"
    return f"{name}, {copy.kept_at.astimezone():%d %B %H:%M}"


def _still_there(path: Path | None) -> Path | None:
    return path if path is not None and path.is_file() else None
