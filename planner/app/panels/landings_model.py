"""The landings as a table: a row for each conductor, a column for each end."""

from dataclasses import dataclass
from typing import Literal

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from planner.app.panels.words import (
    carried,
    contact_words,
    end_title,
    wire_at,
    wire_code,
    wire_words,
    worst_at,
)
from planner.app.workbench import Workbench
from planner.checks.acceptance import acceptance_of
from planner.checks.finding import Finding
from planner.model.cable import Core, Shield
from planner.model.place import Place
from planner.model.plan import Conductor, End
from planner.model.signals import signals_text

Index = QModelIndex | QPersistentModelIndex
State = Literal["away", "loose", "landed", "hand", "capped", "stop", "caution"]
CELL = Qt.ItemDataRole.UserRole + 1
HORIZONTAL = Qt.Orientation.Horizontal


@dataclass(frozen=True, slots=True)
class Cell:
    """What stands where a conductor meets an end: its state, its words, the contact if any."""

    end: str
    conductor: str
    state: State
    words: str = ""
    contact: str = ""

    @property
    def is_loose(self) -> bool:
        """Whether the core comes out here and is neither landed, capped nor in hand."""
        return not self.contact and self.state in {"loose", "caution"}


@dataclass(frozen=True, slots=True)
class RowHead:
    """What stands before a row."""

    conductor: str
    code: str
    words: str
    carries: str
    wire: Core | Shield | None


class LandingsModel(QAbstractTableModel):
    """Show the workbench's plan; it is read anew at each change and never kept apart from it."""

    def __init__(self, workbench: Workbench, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._workbench = workbench
        self._ends: tuple[End, ...] = ()
        self._conductors: tuple[Conductor, ...] = ()
        self._cells: dict[tuple[int, int], Cell] = {}
        self._heads: dict[int, RowHead] = {}
        self._standing: tuple[Finding, ...] | None = None
        self.refresh()

    def refresh(self) -> None:
        """Read the plan again; rows and columns are only reset when they are others."""
        plan = self._workbench.plan
        self._cells.clear()
        self._heads.clear()
        self._standing = None
        same = tuple(c.id for c in plan.conductors) == tuple(c.id for c in self._conductors)
        if same and tuple(end.id for end in plan.ends) == tuple(end.id for end in self._ends):
            self._ends, self._conductors = plan.ends, plan.conductors
            self._tell_all()
            return
        self.beginResetModel()
        self._ends, self._conductors = plan.ends, plan.conductors
        self.endResetModel()

    def _tell_all(self) -> None:
        rows, columns = len(self._conductors), len(self._ends)
        if rows and columns:
            self.dataChanged.emit(self.index(0, 0), self.index(rows - 1, columns - 1))
            self.headerDataChanged.emit(HORIZONTAL, 0, columns - 1)
            self.headerDataChanged.emit(Qt.Orientation.Vertical, 0, rows - 1)

    # -- what Qt asks -----------------------------------------------------------------------

    def rowCount(self, parent: Index | None = None) -> int:
        """Return how many conductors there are."""
        return 0 if parent is not None and parent.isValid() else len(self._conductors)

    def columnCount(self, parent: Index | None = None) -> int:
        """Return how many ends there are."""
        return 0 if parent is not None and parent.isValid() else len(self._ends)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Return the cell itself, its words, or its accessible name."""
        if not index.isValid():
            return None
        cell = self.cell(index.row(), index.column())
        if role == CELL:
            return cell
        if role in {Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.EditRole}:
            return cell.words
        if role in {Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole}:
            return self.spoken(index.row(), index.column())
        return None

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> object:
        """Return the words of a column's end or a row's conductor."""
        if role not in {
            Qt.ItemDataRole.DisplayRole,
            Qt.ItemDataRole.AccessibleTextRole,
            Qt.ItemDataRole.ToolTipRole,
        }:
            return None
        if orientation == HORIZONTAL:
            end = self._ends[section].id
            return f"{end} {end_title(self._workbench.plan, end)}"
        head = self.head(section)
        carries = f", carries {head.carries}" if head.carries else ""
        return f"{head.code} {head.words}{carries}"

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Let every cell be typed into: a leg may take a core that does not run there yet."""
        usual = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        return usual | Qt.ItemFlag.ItemIsEditable if index.isValid() else usual

    # -- what the panel asks ----------------------------------------------------------------

    def end(self, column: int) -> End:
        """Return the end of a column."""
        return self._ends[column]

    def place(self, index: Index) -> Place:
        """Return the place of a cell: its end and conductor."""
        end, conductor = self._ends[index.column()].id, self._conductors[index.row()].id
        return Place(end=end, conductor=conductor)

    def index_of(self, end: str, conductor: str) -> QModelIndex:
        """Return the cell of an end and a conductor; not valid when there is none."""
        columns = [at for at, known in enumerate(self._ends) if known.id == end]
        rows = [at for at, known in enumerate(self._conductors) if known.id == conductor]
        return self.index(rows[0], columns[0]) if rows and columns else QModelIndex()

    def after(self, index: Index) -> QModelIndex:
        """Return where typing goes on: the next core of the end, then the next end's first loose.

        The same cell comes back where nothing is loose any more.
        """
        row, column = index.row(), index.column()
        rows, ends = range(self.rowCount()), self.columnCount()
        below = (at for at in rows[row + 1 :] if self.cell(at, column).state != "away")
        loose = (
            (at, other % ends)
            for other in range(column + 1, column + ends)
            for at in rows
            if self.cell(at, other % ends).is_loose
        )
        following = next(((at, column) for at in below), None) or next(loose, (row, column))
        return self.index(*following)

    def head(self, row: int) -> RowHead:
        """Return what stands before a row."""
        if row not in self._heads:
            plan, conductor = self._workbench.plan, self._conductors[row]
            self._heads[row] = RowHead(
                conductor.id,
                wire_code(plan, conductor),
                wire_words(plan, conductor),
                carried(plan, self._workbench.wiring, conductor.id),
                wire_at(plan, conductor),
            )
        return self._heads[row]

    def cell(self, row: int, column: int) -> Cell:
        """Return what stands in a cell."""
        if (row, column) not in self._cells:
            self._cells[row, column] = self._make(self._conductors[row], self._ends[column].id)
        return self._cells[row, column]

    def spoken(self, row: int, column: int) -> str:
        """Say a cell in full: `BU blue, end A 4.4 five-pole plug: ring 1, landed`."""
        head, cell = self.head(row), self.cell(row, column)
        finding = self._finding(cell.end, cell.conductor, cell.contact)
        state = {"away": "does not run here", "stop": "stop", "caution": "caution"}.get(
            cell.state, cell.state
        )
        said = (
            f"{head.code} {head.words}, end {cell.end} {end_title(self._workbench.plan, cell.end)}"
        )
        words = f"{cell.words}, {state}" if cell.words and cell.words != state else state
        return f"{said}: {words}" + (f". {finding.title or finding.what}" if finding else "")

    def _make(self, conductor: Conductor, end: str) -> Cell:
        plan, hand = self._workbench.plan, self._workbench.hand
        landing = plan.landing_at.get((end, conductor.id))
        contact = landing.contact if landing else ""
        words = contact_words(plan, end, contact) if contact else ""
        if hand is not None and (hand.end, hand.conductor) == (end, conductor.id):
            held = f"{words}, in hand" if words else "in hand"
            return Cell(end, conductor.id, "hand", held, contact)
        if landing is not None:
            return self._landed(end, conductor.id, contact, words)
        if any(cap.end == end and cap.conductor == conductor.id for cap in plan.caps):
            return Cell(end, conductor.id, "capped", "spare, capped")
        if any(known.id == conductor.id for known, _ in plan.conductors_at.get(end, ())):
            finding = self._finding(end, conductor.id, "")
            state: State = "caution" if finding and finding.weight == "caution" else "loose"
            return Cell(end, conductor.id, state, "loose")
        return Cell(end, conductor.id, "away", self._away(conductor))

    def _away(self, conductor: Conductor) -> str:
        return "ends at the split" if conductor.kind == "shield" else ""

    def _landed(self, end: str, conductor: str, contact: str, words: str) -> Cell:
        finding = self._finding(end, conductor, contact)
        if finding is None:
            return Cell(end, conductor, "landed", words, contact)
        state: State = "stop" if finding.weight == "stop" else "caution"
        wanted = signals_text(self._workbench.wiring.signals_at(end, contact))
        brought = carried(self._workbench.plan, self._workbench.wiring, conductor)
        if wanted and brought and wanted != brought:
            words = f"{words}, wants {wanted}"
        return Cell(end, conductor, state, words, contact)

    def _finding(self, end: str, conductor: str, contact: str) -> Finding | None:
        if self._standing is None:
            plan = self._workbench.plan
            told = self._workbench.findings
            self._standing = tuple(it for it in told if acceptance_of(plan, it) is None)
        return worst_at(self._standing, end, conductor, contact)
