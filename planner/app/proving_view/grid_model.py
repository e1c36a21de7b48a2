"""The readings as a table: a row for each probe, heads between them."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from planner.app.proving_view.rows import (
    STANDINGS,
    ProbeRow,
    Section,
    contacts_words,
    expected_words,
    limit_words,
    reading_words,
)
from planner.units import number

if TYPE_CHECKING:
    from collections.abc import Callable

    from planner.app.proving_view.state import Proving

Index = QModelIndex | QPersistentModelIndex
ROW, STANDING = Qt.ItemDataRole.UserRole + 1, Qt.ItemDataRole.UserRole + 2
HEADS = ("From", "To", "Expected", "Limit", "Reading", "Verdict")
FROM, TO, EXPECTED, LIMIT, READING, VERDICT = range(len(HEADS))
_SAID = {Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole}
_WORDS: "dict[int, Callable[[ProbeRow], str]]" = {
    FROM: lambda row: contacts_words(row.ones),
    TO: lambda row: contacts_words(row.others),
    EXPECTED: expected_words,
    LIMIT: limit_words,
}


class GridModel(QAbstractTableModel):
    """Show the state's rows."""

    def __init__(self, state: "Proving", parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.state = state
        state.rows_changed.connect(self._on_rows)
        state.unit_changed.connect(self._on_unit)

    def _on_rows(self) -> None:
        self.beginResetModel()
        self.endResetModel()

    def _on_unit(self) -> None:
        if self.state.rows:
            last = self.index(len(self.state.rows) - 1, len(HEADS) - 1)
            self.dataChanged.emit(self.index(0, 0), last)

    def rowCount(self, parent: Index | None = None) -> int:
        """Return how many rows there are, heads too."""
        return 0 if parent is not None and parent.isValid() else len(self.state.rows)

    def columnCount(self, parent: Index | None = None) -> int:
        """Return how many columns there are."""
        return 0 if parent is not None and parent.isValid() else len(HEADS)

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Let the readings be typed, and the heads be passed over."""
        if not index.isValid() or isinstance(self.state.rows[index.row()], Section):
            return Qt.ItemFlag.NoItemFlags
        usual = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        typed = index.column() == READING and self.state.unit is not None
        return usual | Qt.ItemFlag.ItemIsEditable if typed else usual

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> object:
        """Return the words over a column."""
        if orientation == Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return HEADS[section]
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Return a cell's words, its row, how it stands, or the row as it is read aloud."""
        if not index.isValid():
            return None
        row = self.state.rows[index.row()]
        if role == ROW:
            return row
        if role == STANDING:
            return self.state.standing(index.row())
        if role == Qt.ItemDataRole.DisplayRole:
            return self._words(index.row(), index.column())
        return self.spoken(index.row()) if role in _SAID else None

    def _words(self, place: int, column: int) -> str:
        row = self.state.rows[place]
        if isinstance(row, Section):
            return f"{row.title}   {row.note}" if column == FROM else ""
        return _WORDS[column](row) if column in _WORDS else self._read(place, row, column)

    def _read(self, place: int, row: ProbeRow, column: int) -> str:
        unit = self.state.unit
        if unit is None:
            return ""
        if column == READING:
            return reading_words(row, unit.readings, unit.heard_groups)
        return self._verdict(place)

    def spoken(self, place: int) -> str:
        """Say a row in full: `A T to L T, expected 0.22 ohm, reading 0.3 ohm, good`."""
        row = self.state.rows[place]
        if isinstance(row, Section):
            return f"{row.title}, {row.note}"
        ends = " and ".join(f"{end} {contact}" for end, contact in row.others)
        ones = " and ".join(f"{end} {contact}" for end, contact in row.ones)
        said = [f"{ones} to {ends}", f"expected {expected_words(row)}"]
        said += [f"limit {limit_words(row)}"] if row.path is not None else []
        said += [f"{number(row.gap_mm)} mm apart"] if row.gap_mm is not None else []
        read = self._words(place, READING)
        return ", ".join((*said, f"reading {read}" if read else "not read", self._verdict(place)))

    def _verdict(self, place: int) -> str:
        return STANDINGS[self.state.standing(place)][1]
