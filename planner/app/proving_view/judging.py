"""What is wrong with the unit under way, worked out off the UI thread; which fault is looked at."""

import logging
from dataclasses import dataclass
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from planner.app.fitting.errands import Errands
from planner.app.proving_view.facts import known_readings
from planner.proving.diagnosing import CancelledError, diagnose

if TYPE_CHECKING:
    from planner.app.fitting.errands import Cancelled, Progress
    from planner.app.workbench import Workbench
    from planner.model.plan import Plan
    from planner.proving.diagnosing import Diagnosis, Fault
    from planner.proving.expected import Sweep
    from planner.proving.probing import IsolationPlan
    from planner.proving.reading import Readings
    from planner.wiring.graph import Wiring

Case = tuple["Sweep", "IsolationPlan", "Readings"]
log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True)
class Failure:
    """A fault of the diagnosis itself, in place of what it finds."""

    error: Exception


class Judge(QObject):
    """Keep the diagnosis of the readings. A later case drops the one under way."""

    changed = Signal()
    marks_changed = Signal()  # other contacts are marked as faulty

    def __init__(self, workbench: "Workbench", parent: QObject) -> None:
        super().__init__(parent)
        self._workbench = workbench
        self.diagnosis: Diagnosis | None = None
        self.failed = False  # the diagnosis itself, of these readings
        self.explanation, self._pointed = 0, -1
        self._errands = Errands(self)
        self._errands.done.connect(self._on_done)
        self._case: Case | None = None

    @property
    def busy(self) -> bool:
        """Tell whether the diagnosis is still being worked out."""
        return self._errands.busy

    def judge(self, case: Case | None) -> None:
        """Work out what is wrong; a case that is the same as before is left alone."""
        before, self._case = self._case, case
        if case is None:
            self._errands.call_off()
            self._on_done(None)
        elif before is None or any(it is not was for it, was in zip(case, before, strict=True)):
            plan, wiring = self._workbench.plan, self._workbench.wiring
            self._errands.start(partial(_diagnose, plan, wiring, case))

    def _on_done(self, made: "Diagnosis | Failure | None") -> None:
        failure = made if isinstance(made, Failure) else None
        if failure is not None and not self.failed:
            log.error("the diagnosis failed", exc_info=failure.error)
        self.failed = failure is not None
        self.diagnosis = None if isinstance(made, Failure) else made
        self.explanation, self._pointed = 0, -1
        self.changed.emit()
        self.marks_changed.emit()

    def let_go(self) -> None:
        """Stop what is under way."""
        self._errands.let_go()

    # -- what is looked at ------------------------------------------------------------------------

    def choose(self, place: int) -> None:
        """Look at one explanation, or at a high joint after them."""
        if place != self.explanation:
            self.explanation = place
            self.marks_changed.emit()

    def point_at(self, place: int) -> None:
        """Look at an explanation for as long as the pointer is over it; -1 for none."""
        if place != self._pointed:
            self._pointed = place
            self.marks_changed.emit()

    @property
    def faults(self) -> "tuple[Fault, ...]":
        """The faults that are looked at."""
        made = self.diagnosis
        if made is None:
            return ()
        high = ((joint.fault,) for joint in made.high_joints)
        groups = [*(found.faults for found in made.explanations), *high]
        place = self._pointed if self._pointed >= 0 else self.explanation
        return groups[place] if place < len(groups) else ()


def _diagnose(
    plan: "Plan", wiring: "Wiring", case: Case, progress: "Progress", off: "Cancelled"
) -> "Diagnosis | Failure":
    sweep, isolation, readings = case
    known, asked = known_readings(readings, sweep), isolation.pairs
    try:
        return diagnose(plan, wiring, known, asked=asked, progress=progress, cancelled=off)
    except CancelledError:
        raise
    except Exception as error:  # noqa: BLE001 - readings go on whatever is wrong with the diagnosis
        return Failure(error)
