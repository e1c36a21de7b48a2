"""The units proved so far, beside the plan's file; the one under way, kept for recovery."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from planner.app.answer import counted
from planner.app.proving_view import keeping
from planner.problem import InputError
from planner.proving.unit_file import Units, append_unit, load_units

if TYPE_CHECKING:
    from collections.abc import Sequence

    from planner.app.proving_view.state import Proving
    from planner.app.proving_view.under_way import UnderWay
    from planner.app.session import Session
    from planner.problem import Problem
    from planner.proving.units import UnitRecord

DELAY_MS = 250


class UnitsBook(QObject):
    """Load and append units; keep the readings of the unit under way a moment after each."""

    changed = Signal()
    troubled = Signal(str, object)  # headline, Sequence[Problem]

    def __init__(self, proving: "Proving", session: "Session", parent: QObject) -> None:
        super().__init__(parent)
        self.proving, self._session = proving, session
        self.units = Units()
        self._key = ""
        self._taking_up = False
        self._found = ""  # to be told once the plan is open
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(DELAY_MS)
        self._timer.timeout.connect(self.keep)
        proving.unit_changed.connect(self._on_unit_changed)
        session.opened.connect(self.open)
        session.changed.connect(self._on_session_changed)

    @property
    def path(self) -> Path | None:
        """The plan's file."""
        return self._session.path

    def open(self) -> None:
        """Load the units of the plan that was opened, and go on with the one under way."""
        if self._timer.isActive():
            self._write()  # of the plan before, still under its own name
        self._load()
        self._key = self._key_now()
        self._taking_up = True
        self.proving.take_up(self._kept())
        self._taking_up = False
        self._found = _goes_on(self.proving.unit)

    def _kept(self) -> "UnderWay | None":
        """Return the unit that was under way, unless a kill came just after its record."""
        unit = keeping.kept(self._key)
        record = self.units.latest.get(unit.number) if unit is not None else None
        if unit is not None and record is not None and record.at >= unit.begun:
            return unit if record.readings != unit.readings else None
        return unit

    def _load(self) -> None:
        self.units = Units()
        if self.path is not None:
            try:
                self.units = load_units(self.path)
            except InputError as error:
                self.troubled.emit("The units can\u2019t be read", error.problems)
        if self.units.dropped:
            self.troubled.emit("Some units could not be read", self.units.dropped)
        self.proving.number = self.units.next_number
        self.proving.recorded = frozenset(self.units.latest)
        self.changed.emit()

    def _key_now(self) -> str:
        return keeping.key_of(self.proving.plan, self.path)

    def _on_session_changed(self) -> None:
        """Follow the plan to another file: what is under way goes along."""
        if self._found:
            told, self._found = self._found, ""
            self.proving.said.emit(told)
        if self.path is not None and self._key != self._key_now():
            before, self._key = self._key, self._key_now()
            self.keep()
            if before:
                keeping.drop(before)
            self._load()

    def _on_unit_changed(self) -> None:
        if not self._taking_up:
            self._timer.start()

    def keep(self) -> None:
        """Keep what is under way now; what has nothing in it is forgotten."""
        if self.path is None:
            self._follow_plan()
        self._write()

    def _write(self) -> None:
        self._timer.stop()
        unit = self.proving.unit
        if unit is None or unit.empty:
            keeping.drop(self._key)
            return
        said = keeping.keep(self._key, unit)
        if said:
            self.proving.said.emit(said)

    def _follow_plan(self) -> None:
        """Keep under another name: a plan without a file is known by what is in it."""
        now = self._key_now()
        if now != self._key:
            keeping.drop(self._key)
            self._key = now

    def append(self, record: "UnitRecord") -> "Sequence[Problem]":
        """Add a record to the file beside the plan; return what is wrong, or nothing."""
        assert self.path is not None, "a plan is saved before its units are"
        try:
            append_unit(self.path, record)
        except InputError as error:
            return error.problems
        self._load()
        return ()

    def is_stale(self, record: "UnitRecord") -> bool:
        """Tell whether the plan was changed since."""
        return record.plan_digest != self.proving.digest

    def let_go(self) -> None:
        """Keep what is under way, and stop."""
        if self._timer.isActive():
            self.keep()


def _goes_on(unit: "UnderWay | None") -> str:
    """Say that a unit was under way when the plan was left."""
    if unit is None:
        return ""
    kept = counted(len(unit.readings.readings), "reading")
    return f"Unit {unit.number} of this plan is under way, {kept} kept: Prove (Alt+4) goes on."
