"""What the menu Prove does with units: begin, finish, rework, attach, import, write."""

from functools import partial
from typing import TYPE_CHECKING, TypeVar

from PySide6.QtCore import QObject

from planner.app.answer import counted
from planner.app.proving_view.under_way import taken_up
from planner.app.proving_view.verdict_words import reason_words
from planner.app.session import file_name_for
from planner.files.atomic import write_atomic
from planner.problem import InputError
from planner.proving.attachments import attach
from planner.proving.form import form_text
from planner.proving.probing import probe_plan
from planner.proving.reading import Meter
from planner.proving.reading_csv import read_readings
from planner.proving.tones import write_tones
from planner.proving.units import Rework
from planner.services.units import write_certificate, write_summary

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from planner.app.dialogs.ask import Ask
    from planner.app.notice import Notice
    from planner.app.proving_view.units_book import UnitsBook
    from planner.app.proving_view.view import ProvingView
    from planner.app.session import Session
    from planner.app.settings import Settings
    from planner.proving.units import UnitRecord, UnitVerdict

T = TypeVar("T")
_WORDS = {"passed": "passed", "failed": "failed", "unfinished": "not finished"}


class ProveActs(QObject):
    """Do to units what is asked; what goes wrong is told and changes nothing."""

    def __init__(  # noqa: PLR0917 - what the acts work on
        self,
        view: "ProvingView",
        book: "UnitsBook",
        session: "Session",
        settings: "Settings",
        ask: "Ask",
        notice: "Notice",
    ) -> None:
        super().__init__(view)
        self.view, self.state, self.book = view, view.state, book
        self._session, self._settings, self._ask = session, settings, ask
        self._notice = notice
        self._finish_later = False
        self.state.judge.changed.connect(self._on_judged)
        view.verdict.finish.keep_wanted.connect(self.keep_record)
        view.verdict.rework_wanted.connect(self.rework)
        view.units.rework_wanted.connect(self.take_up_again)
        view.readings.begin_wanted.connect(self.begin)
        view.readings.file_dropped.connect(self.take_in)
        book.troubled.connect(self._ask.trouble)
        self.state.said.connect(notice.say)

    # -- begun and finished -----------------------------------------------------------------------

    def begin(self) -> None:
        """Begin the next unit and ask for the meter's zero; one that is under way comes first."""
        if not self._free("before another is begun"):
            return
        self.state.begin()
        self.view.show_page("Readings")
        self.view.readings.ask_zero()

    def _free(self, why: str) -> bool:
        """Tell whether no unit with anything in it is under way; say so otherwise."""
        unit = self.state.unit
        if unit is None or unit.empty:
            return True
        self._notice.say(
            f"Unit {unit.number} is under way: finish it (Ctrl+Shift+U) {why}.", tone="caution"
        )
        return False

    def finish(self) -> None:
        """Keep a unit that is shown right at once; else ask for the reason beside the verdict."""
        self.view.show_page("Verdict")
        self._finish_later = self.state.unsettled
        if self._finish_later:
            return
        box = self.view.verdict.finish
        if box.chosen == "passed":
            box.finish()
        else:
            box.ask()

    def _on_judged(self) -> None:
        if self._finish_later and not self.state.unsettled:
            self.finish()

    def keep_record(self, verdict: "UnitVerdict", reason: str) -> None:
        """Add the unit to the file beside the plan; the plan is saved first."""
        unit = self.state.unit
        if unit is None or not self._saved():
            return
        done = unit.evolve(remarks=reason)
        record = done.record(self.state.plan, self.state.facts, verdict, self.state.now())
        if self._append(record):
            self.state.take_up(None)
            self.book.keep()
            self._notice.say(
                f"Unit {record.number} is recorded as {_WORDS[verdict]}. "
                f"Ctrl+U begins unit {self.state.number}."
            )

    def _saved(self) -> bool:
        """Save the plan where it is not: its units are kept beside it, as of what it says."""
        return self._session.save() if self._session.dirty or self.book.path is None else True

    def _append(self, record: "UnitRecord") -> bool:
        problems = self.book.append(record)
        if problems:
            self._ask.trouble("The record can\u2019t be kept", problems)
        return not problems

    # -- reworked ---------------------------------------------------------------------------------

    def rework(self, done: str) -> None:
        """Note what was mended; what was read there is unread, to be read again."""
        unit, made = self.state.unit, self.state.judge.diagnosis
        if unit is None:
            return
        found = reason_words(made) or "a fault"
        entry = Rework(at=self.state.now(), who=unit.who, found=found, done=done)
        self.state.noting.rework(entry)
        self.view.show_page("Readings")
        self.view.readings.grid.go_on()
        self.view.readings.grid.setFocus()

    def take_up_again(self, record: "UnitRecord") -> None:
        """Go on with a unit that is recorded."""
        if self._free("before this one is taken up"):
            self.state.take_up(taken_up(record, self.state.now(), record.plan_digest))
            self._notice.say(f"Unit {record.number} is under way again.")

    def attach(self) -> None:
        """Keep a copy of a file with the unit under way, else with the chosen one."""
        unit, record = self.state.unit, self.view.units.chosen
        if unit is None and record is None:
            self._notice.say("Begin a unit, or choose one in the list of units, first.")
            return
        holder = unit if unit is not None else record
        kept = holder.attachments if holder is not None else ()
        if not self.state.noting.room_for("attachments", kept):
            return
        if not self._saved() or self.book.path is None:
            return
        file = self._ask.file_to_attach()
        if file is None:
            return
        made = self._tried("The file can\u2019t be kept", partial(attach, self.book.path, file))
        if made is None:
            return
        if unit is not None:
            self.state.noting.add(f"Attach {made.name}", "attachments", made)
        elif record is not None:
            held = (*record.attachments, made)
            self._append(record.evolve(attachments=held, at=self.state.now()))
        self._notice.say(f"{made.name} is kept with the unit.")

    # -- files ------------------------------------------------------------------------------------

    def import_readings(self) -> None:
        """Ask for a file of readings, and take it in."""
        path = self._ask.readings_to_open()
        if path is not None:
            self.take_in(path)

    def take_in(self, path: "Path") -> None:
        """Take readings from a file, as one undo step; all that is wrong in it is told at once."""
        headline = f"{path.name} can\u2019t be taken in"
        read = self._tried(headline, partial(read_readings, path, self.state.plan))
        if read is None:
            return
        if self.state.unit is None:
            self.state.begin()
        unit = self.state.unit
        if unit is not None:
            after = unit.with_readings(read.readings)
            if read.meter != Meter():
                after = after.evolve(
                    readings=after.readings.evolve(meter=read.meter), zero_asked=True
                )
            self.state.change(f"Import {path.name}", after)
            self._notice.say(f"{counted(len(read.readings), 'reading')} taken from {path.name}.")

    def empty_form(self) -> None:
        """Write the readings of the probe plan as a form to fill in."""
        path = self._ask.where_to_write_form(self._named(" readings.csv"))
        if path is None:
            return
        plan, wiring = self.state.plan, self.state.workbench.wiring
        method = self.state.method or "pairs"
        text = form_text(probe_plan(plan, wiring, method), self.state.meter)
        self._write(partial(_written, path, text))

    def certificate(self) -> None:
        """Write the pages of the chosen unit."""
        record, plan_path = self.view.units.chosen, self.book.path
        if record is None or plan_path is None:
            self._notice.say("No unit is recorded yet: finish one first (Ctrl+Shift+U).")
            return
        path = self._ask.where_to_write_certificate(self._named(f" unit {record.number}.pdf"))
        if path is not None:
            write = partial(
                write_certificate, self.state.plan, plan_path, record.number, path,
                paper=self._settings.paper, language=self._settings.language,
            )  # fmt: skip
            self._write(write)

    def summary(self) -> None:
        """Write a row for each unit."""
        if not self.book.units.records:
            self._notice.say("No unit is recorded yet: finish one first (Ctrl+Shift+U).")
            return
        path = self._ask.where_to_write_summary(self._named(" units.csv"))
        if path is not None:
            self._write(partial(write_summary, self.state.plan, self.book.units, path))

    def test_tones(self) -> None:
        """Write the tones at the level that is chosen, to be played from anything."""
        path = self._ask.where_to_write_tones("test tones.wav")
        if path is not None:
            self._write(partial(_tones, path, self.view.listen.level_dbfs))

    def _named(self, ending: str) -> str:
        return f"{file_name_for(self.state.plan)}{ending}"

    def _write(self, write: "Callable[[], tuple[Path, ...]]") -> None:
        written = self._tried("It can\u2019t be written", write)
        if written is not None:
            self._notice.say("Written: " + ", ".join(str(path) for path in written))

    def _tried(self, headline: str, act: "Callable[[], T]") -> "T | None":
        """Return what an act makes; None where it fails, which is told with place and mend."""
        try:
            return act()
        except InputError as error:
            self._ask.trouble(headline, error.problems)
            return None


def _written(path: "Path", text: str) -> "tuple[Path, ...]":
    write_atomic(path, text.encode())
    return (path,)


def _tones(path: "Path", level_dbfs: float) -> "tuple[Path, ...]":
    write_tones(path, level_dbfs=level_dbfs)
    return (path,)
