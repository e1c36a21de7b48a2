"""What the view of proving looks at: the probes of the plan, the unit under way, its readings."""

from datetime import datetime
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoCommand, QUndoStack

from planner.app.following import Follower
from planner.app.proving_view.facts import (
    ProofFacts,
    covered,
    proof_facts,
    rows_of,
)
from planner.app.proving_view.judging import Judge
from planner.app.proving_view.rows import (
    READ,
    ProbeRow,
    Row,
    Standing,
    contacts_words,
    readings_of,
    standing_of,
)
from planner.app.proving_view.under_way import UnderWay
from planner.app.proving_view.unit_facts import Noting
from planner.files.plans import plan_digest
from planner.proving.entries import EntryError, parse_entry
from planner.proving.reading import Contact, Meter, Pair, Readings
from planner.proving.units import MOST_READINGS

if TYPE_CHECKING:
    from collections.abc import Callable

    from planner.app.fitting.errands import Work
    from planner.app.workbench import Workbench
    from planner.model.plan import Plan
    from planner.proving.units import IsolationMethod


class UnitCommand(QUndoCommand):
    """One undo step: the unit before and after. Records are shared, so this costs little."""

    def __init__(self, state: "Proving", text: str, after: UnderWay) -> None:
        super().__init__(text)
        self._state, self._after = state, after
        self._before, self._at = state.unit, state.at

    def redo(self) -> None:
        """Put the later unit in place."""
        self._state.put_unit(self._after)

    def undo(self) -> None:
        """Put the earlier unit in place, and go where it was changed."""
        self._state.put_unit(self._before)
        self._state.go_to(self._at)


class Proving(Follower):
    """Follow the probes of the workbench's plan, and hold the unit under way.

    Readings are no part of the plan: they have an undo stack of their own.
    """

    rows_changed = Signal()  # other rows
    unit_changed = Signal()  # something was read, or another unit is under way
    row_changed = Signal()  # another row is looked at
    taken_up = Signal()  # another unit is under way, or none

    def __init__(self, workbench: "Workbench", parent: QObject | None = None) -> None:
        super().__init__(workbench, parent)
        self.facts = ProofFacts()
        self.unit: UnderWay | None = None
        self.rows: tuple[Row, ...] = ()
        self.at = -1
        self._method: IsolationMethod = "pairs"
        self.number = 1  # of the unit that is begun next
        self.recorded: frozenset[int] = frozenset()
        self.who = ""
        self._meter = Meter()
        self.undo_stack = QUndoStack(self)
        self.clock: Callable[[], datetime] = lambda: datetime.now().astimezone()
        self._asked: tuple[Pair, ...] = ()
        self._wanted: tuple[Pair, ...] = ()
        self._digested: tuple[Plan | None, str] = (None, "")
        self._covered: frozenset[Pair] = frozenset()
        self._standings: dict[int, Standing] = {}
        self.judge = Judge(workbench, self)
        self.noting = Noting(self)

    # -- what is looked at ------------------------------------------------------------------------

    @property
    def digest(self) -> str:
        """The digest of the plan as it is: all of the plan is written for it, so it is kept."""
        if self._digested[0] is not self.plan:
            self._digested = self.plan, plan_digest(self.plan)
        return self._digested[1]

    @property
    def readings(self) -> "Readings | None":
        """What was read of the unit under way."""
        return self.unit.readings if self.unit is not None else None

    @property
    def method(self) -> "IsolationMethod":
        """How isolation is read: as the unit under way was begun, else as was chosen last."""
        return self.unit.method if self.unit is not None else self._method

    @property
    def row(self) -> ProbeRow | None:
        """The row that is looked at."""
        found = self.rows[self.at] if 0 <= self.at < len(self.rows) else None
        return found if isinstance(found, ProbeRow) else None

    def standing(self, place: int) -> Standing:
        """Tell how a row stands."""
        row = self.rows[place]
        if self.unit is None or not isinstance(row, ProbeRow):
            return "unread"
        if place not in self._standings:
            unit = self.unit
            self._standings[place] = standing_of(row, unit.readings, unit.heard_groups)
        return self._standings[place]

    def count(self) -> tuple[int, int]:
        """Return how many rows were read, and how many there are."""
        places = [at for at, row in enumerate(self.rows) if isinstance(row, ProbeRow)]
        return sum(self.standing(at) in READ for at in places), len(places)

    @property
    def doubtful(self) -> bool:
        """Tell whether a group beeped though no pair in it was read as a bridge."""
        unit, sweep = self.unit, self.facts.sweep
        if unit is None or sweep is None:
            return False
        bridges = [
            it.pair for it in unit.readings.readings if it.joined and not sweep.joined(*it.pair)
        ]
        return any(not any(pair <= group for pair in bridges) for group in unit.heard_groups)

    @property
    def unsettled(self) -> bool:
        """Tell whether the verdict may still be of other readings, or of the plan as it was."""
        return self.busy or self.judge.busy

    @property
    def plan_stopped(self) -> bool:
        """Tell whether the plan itself is wrong: nothing that is built to it may go out."""
        return any(finding.weight == "stop" for finding in self.workbench.findings)

    def let_go(self) -> None:
        """Stop what is under way."""
        super().let_go()
        self.judge.let_go()
        self.undo_stack.blockSignals(True)  # it signals once more while it is destroyed

    def _work(self) -> "Work":
        plan, wiring = self.plan, self.workbench.wiring
        return lambda _progress, off: proof_facts(plan, wiring, off)

    def _on_done(self, made: ProofFacts) -> None:
        self.facts = made
        self._make_rows()
        self._judge()

    def _make_rows(self) -> None:
        here = self.row
        heard = self.unit.heard_groups if self.unit is not None else frozenset[Pair]()
        self._standings.clear()
        self._covered = covered(rows_of(self.facts, self.method, heard))
        self._wanted = self._pairs_besides()
        self.rows = rows_of(self.facts, self.method, heard, self._wanted)
        self.at = self.rows.index(here) if here in self.rows else -1
        self.rows_changed.emit()

    def _pairs_besides(self) -> "tuple[Pair, ...]":
        """Return the pairs that were read or asked for and are not in the plan, in their order."""
        sweep = self.facts.sweep
        read = self.unit.readings.by_pair if self.unit is not None else {}
        pairs = dict.fromkeys((*read, *self._asked))
        known = frozenset(sweep.contacts) if sweep is not None else frozenset[Contact]()
        return tuple(it for it in pairs if it not in self._covered and it <= known)

    def place_of(self, pair: "Pair") -> int:
        """Return the row of a pair of contacts; -1 for none."""
        rows = enumerate(self.rows)
        return next((at for at, it in rows if isinstance(it, ProbeRow) and it.key == pair), -1)

    def ask_for(self, pair: "Pair") -> None:
        """Look at the row of a pair; one that the plan does not have is put below it."""
        if self.place_of(pair) < 0:
            self._asked = (*self._asked, pair)
            self._make_rows()
        self.go_to(self.place_of(pair))

    # -- the unit ---------------------------------------------------------------------------------

    def begin(self) -> None:
        """Begin the next unit, with the meter of the one before."""
        unit = UnderWay(
            number=self.number,
            who=self.who,
            begun=self.now(),
            plan_digest=self.digest,
            method=self.method,
            readings=Readings(meter=self.meter),
        )
        self.take_up(unit)

    def now(self) -> str:
        """Return this moment as records have it."""
        return self.clock().isoformat(timespec="seconds")

    def take_up(self, unit: UnderWay | None) -> None:
        """Go on with a unit; the undo history starts anew."""
        self.undo_stack.clear()
        self._asked = ()
        self.put_unit(unit)
        self.go_to(self.next_unread(-1))
        self.taken_up.emit()

    def put_unit(self, unit: UnderWay | None) -> None:
        """Put a unit in place; the undo steps call this, and nothing else does twice."""
        before, self.unit = self.unit, unit
        self._meter = before.readings.meter if before is not None else self._meter
        self._standings.clear()
        if _rows_by(before) != _rows_by(unit) or self._pairs_besides() != self._wanted:
            self._make_rows()
        self._judge()
        self.unit_changed.emit()

    def change(self, text: str, after: UnderWay) -> None:
        """Change the unit under way as one undo step."""
        if len(after.readings.readings) > MOST_READINGS:
            self.said.emit(f"A unit keeps {MOST_READINGS} readings at most: these are not taken.")
        elif self.unit is not None and after != self.unit:
            self.undo_stack.push(UnitCommand(self, text, after))

    @property
    def meter(self) -> Meter:
        """The meter in hand: of the unit under way, else of the one before."""
        return self.unit.readings.meter if self.unit is not None else self._meter

    def set_method(self, method: "IsolationMethod") -> None:
        """Read isolation by another method; what was read stays."""
        self._method = method
        if self.unit is not None:
            self.change("Another way to read isolation", self.unit.evolve(method=method))
        else:
            self._make_rows()

    def _judge(self) -> None:
        unit, sweep = self.unit, self.facts.sweep
        isolation = self.facts.isolation(self.method)
        if unit is None or sweep is None or isolation is None or not self._awake:
            self.judge.judge(None)
        else:
            self.judge.judge((sweep, isolation, unit.readings))

    def ask_for_advised(self) -> None:
        """Look at the row that the diagnosis wants next, else at the next unread one."""
        made = self.judge.diagnosis
        if made is not None and made.next_probe is not None:
            self.ask_for(frozenset(made.next_probe.pair))
        else:
            self.go_to(self.next_unread(self.at))

    # -- readings ---------------------------------------------------------------------------------

    def go_to(self, place: int) -> None:
        """Look at a row."""
        if 0 <= place < len(self.rows) and place != self.at:
            self.at = place
            self.row_changed.emit()

    def next_unread(self, after: int) -> int:
        """Return the next row that is not read, from the one after on and round; -1 for none."""
        count = len(self.rows)
        order = ((after + step) % count for step in range(1, count + 1))
        return next((at for at in order if self._wants_reading(at)), -1)

    def _wants_reading(self, place: int) -> bool:
        return isinstance(self.rows[place], ProbeRow) and self.standing(place) in {"unread", "part"}

    def enter(self, place: int, typed: str) -> EntryError | None:
        """Take what was typed for a row; return what is wrong with it, or None."""
        row = self.rows[place]
        if self.unit is None or not isinstance(row, ProbeRow):
            return None
        try:
            entry = parse_entry(typed)
        except EntryError as error:
            return error
        taken = readings_of(row, entry)
        unit = self.unit.without((), (row.key,))
        after = unit.with_readings(taken) if taken else unit.with_heard(row.key)
        self.change(f"Reading {row_words(row)}", after)
        return None

    def unread(self, place: int) -> None:
        """Take back what was read at a row."""
        row = self.rows[place]
        if self.unit is not None and isinstance(row, ProbeRow):
            pairs = [frozenset(pair) for pair in row.pairs()]
            self.change(f"Unread {row_words(row)}", self.unit.without(pairs, (row.key,)))


def _rows_by(unit: UnderWay | None) -> object:
    """Return what of a unit decides which rows there are."""
    return (unit.method, unit.heard_groups) if unit is not None else None


def row_words(row: ProbeRow) -> str:
    """Name a row shortly: `A T to L T`."""
    return f"{contacts_words(row.ones)} to {contacts_words(row.others)}"
