"""The rows of the shelf: sections, definitions, what could not be read; as a list model."""

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from PySide6.QtCore import (
    QAbstractListModel,
    QMimeData,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
)

from planner.app.panels.mime import make_mime
from planner.app.panels.words import SOURCE_WORDS, TRUST_WORDS
from planner.library.collection import Library
from planner.model.cable import Cable
from planner.model.connector import Connector
from planner.model.definition import Definition, DefinitionKind, is_retired
from planner.model.pinout import PinoutRecord
from planner.model.plan import Plan
from planner.units import number

Index = QModelIndex | QPersistentModelIndex
ROW = Qt.ItemDataRole.UserRole + 1
Sort = Literal["head", "item", "more", "broken", "none"]
KINDS: tuple[tuple[DefinitionKind, str], ...] = (
    ("connector", "Connectors"),
    ("pinout", "Pinouts"),
    ("cable", "Cable"),
)
_NO_PLAN = Plan()
# How many of a section are shown at first, so that all three sections are in sight.
SHOWN = {"connector": 6, "pinout": 3, "cable": 3}


@dataclass(frozen=True, slots=True)
class ShelfRow:
    """One row. `used` are the ends where it is in use; `why_not` why it can't be chosen now."""

    sort: Sort
    title: str
    second: str = ""
    kind: DefinitionKind | None = None
    record: Definition | None = None
    used: tuple[str, ...] = ()
    why_not: str = ""
    tip: str = ""

    @property
    def spoken(self) -> str:
        """The row in words."""
        used = f"in use at {', '.join(self.used)}" if self.used else ""
        why_not = f"not for here: {self.why_not}" if self.why_not else ""
        return ", ".join(filter(None, (self.title, self.second, used, why_not)))


class ShelfRows(QAbstractListModel):
    """Hold the rows that are shown."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.rows: tuple[ShelfRow, ...] = ()

    def show_rows(self, rows: Sequence[ShelfRow]) -> None:
        """Show other rows; where only their facts differ the view keeps its place."""
        same = [(row.sort, row.kind, row.title) for row in rows] == [
            (row.sort, row.kind, row.title) for row in self.rows
        ]
        if same and rows:
            self.rows = tuple(rows)
            self.dataChanged.emit(self.index(0), self.index(len(rows) - 1))
            return
        self.beginResetModel()
        self.rows = tuple(rows)
        self.endResetModel()

    def rowCount(self, parent: Index | None = None) -> int:
        """Return how many rows there are."""
        return 0 if parent is not None and parent.isValid() else len(self.rows)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Return the row itself, its title, its words, or its tip."""
        if not index.isValid():
            return None
        row = self.rows[index.row()]
        said = {
            int(ROW): row,
            int(Qt.ItemDataRole.DisplayRole): row.title,
            int(Qt.ItemDataRole.AccessibleTextRole): row.spoken,
            int(Qt.ItemDataRole.ToolTipRole): row.tip or row.spoken,
        }
        return said.get(int(role))

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Heads can't be selected; definitions can be dragged."""
        sort = self.rows[index.row()].sort if index.isValid() else "none"
        if sort in {"head", "none"}:
            return Qt.ItemFlag.ItemIsEnabled
        usual = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        return usual | Qt.ItemFlag.ItemIsDragEnabled if sort == "item" else usual

    def mimeTypes(self) -> list[str]:
        """Name what is dragged out."""
        return list(make_mime("cable", "x").formats())

    def mimeData(self, indexes: Sequence[QModelIndex]) -> QMimeData:
        """Pack what is dragged out."""
        for index in indexes:
            row = self.rows[index.row()]
            if row.kind and row.record:
                return make_mime(row.kind, row.record.id)
        return QMimeData()


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is to be shown: the search, the end that pinouts are wanted for, what is unfolded."""

    text: str = ""
    end: str = ""
    unfolded: frozenset[str] = frozenset()


def shelf_rows(library: Library, plan: Plan, wanted: Wanted) -> tuple[ShelfRow, ...]:
    """Return all rows: a section for each kind, then what could not be read."""
    rows: list[ShelfRow] = []
    for kind, title in KINDS:
        items = _items(library, plan, wanted, kind)
        if not items and wanted.text:
            continue
        note = _note(plan, wanted, kind) or str(len(items))
        rows.append(ShelfRow("head", title, note, kind))
        rows += _folded(items, kind, wanted)
    rows += _broken(library)
    if not rows:
        rows.append(ShelfRow("none", f"Nothing on the shelf fits {wanted.text!r}.", _ADVICE))
    return tuple(rows)


_ADVICE = "Try a size, a number of poles, a maker: 3.5 two"


def _note(plan: Plan, wanted: Wanted, kind: DefinitionKind) -> str:
    if kind != "pinout" or not wanted.end or wanted.text:
        return ""
    connector = plan.connector_of(wanted.end)
    return f"for {shown_title(connector).split(',')[0]}" if connector else ""


def _folded(items: list[ShelfRow], kind: DefinitionKind, wanted: Wanted) -> Iterable[ShelfRow]:
    most = SHOWN[kind]
    if wanted.text or kind in wanted.unfolded or len(items) <= most + 1:
        more = len(items) > most + 1 and not wanted.text
        return (*items, ShelfRow("more", "Show fewer", kind=kind)) if more else items
    first = sorted(items, key=lambda row: not row.used)[:most]
    return (*first, ShelfRow("more", f"{len(items) - most} more", kind=kind))


def _items(library: Library, plan: Plan, wanted: Wanted, kind: DefinitionKind) -> list[ShelfRow]:
    listed: dict[DefinitionKind, Callable[[], Sequence[Definition]]] = {
        "connector": library.connectors,
        "pinout": library.pinouts,
        "cable": library.cables,
    }
    records = library.search(wanted.text, kind) if wanted.text.strip() else listed[kind]()
    connector = plan.connector_of(wanted.end) if wanted.end in plan.end_by_id else None
    rows = [item_row(record, plan, connector) for record in records]
    rows = [row for row in rows if row.used or not (row.record and is_retired(row.record))]
    if kind == "pinout" and connector and not wanted.text.strip():
        return [row for row in rows if not row.why_not]
    return rows


def item_row(
    record: Definition, plan: Plan = _NO_PLAN, connector: Connector | None = None
) -> ShelfRow:
    """Return the row of a definition; with a plan it says where that is in use."""
    if isinstance(record, Connector):
        used = tuple(end.id for end in plan.ends if end.connector == record.id)
        second = _connector_words(record)
        return ShelfRow("item", shown_title(record), second, "connector", record, used)
    if isinstance(record, PinoutRecord):
        used = tuple(end.id for end in plan.ends if end.pinout == record.id)
        row = ShelfRow("item", record.title, _pinout_words(record), "pinout", record, used)
        return replace(row, why_not=_why_not(record, connector), tip=_pinout_tip(record))
    assert isinstance(record, Cable)
    used_by = tuple(section.id for section in plan.sections if section.cable == record.id)
    return ShelfRow("item", record.title, _cable_words(record), "cable", record, used_by)


def shown_title(record: Definition) -> str:
    """Return a title as the narrow shelf shows it: the line below says plug or socket."""
    if isinstance(record, Connector):
        return record.title.replace(" plug", "")
    return record.title


def _connector_words(record: Connector) -> str:
    if record.retired:
        return "retired"
    words = "plug" if record.gender == "male" else "socket"
    barrel = f"{number(record.barrel.outside_mm, 1)} mm barrel"
    return f"{words}, {record.maker or barrel}"


def _pinout_words(record: PinoutRecord) -> str:
    if record.retired:
        return "retired"
    if record.confirmed:
        trust = "standard" if record.source.kind == "standard" else "confirmed"
        return ", ".join(filter(None, (trust, record.maker)))
    return f"{record.source.kind}, unconfirmed"


def _pinout_tip(record: PinoutRecord) -> str:
    source = ", ".join(filter(None, (SOURCE_WORDS[record.source.kind], record.source.reference)))
    return f"{record.title}\n{source}\n{TRUST_WORDS[record.trust]}"


def _cable_words(record: Cable) -> str:
    return ", ".join(filter(None, (record.spool, f"{number(record.jacket_mm)} mm")))


def _why_not(record: PinoutRecord, connector: Connector | None) -> str:
    if connector is None or connector.id in record.fits:
        return ""
    return f"is not for {connector.title}"


def _broken(library: Library) -> Iterable[ShelfRow]:
    if not library.problems:
        return ()
    head = ShelfRow("head", "Could not be read", str(len(library.problems)))
    rows = (
        ShelfRow(
            "broken",
            re.split(r"[\\/]", problem.where)[-1],
            f"{problem.what}. {problem.mend}",
            tip=f"{problem.where}\n{problem.what}\n{problem.mend}",
        )
        for problem in library.problems
    )
    return (head, *rows)
