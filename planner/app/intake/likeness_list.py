"""The known records that a draft is held against, the usual one first; one is on the face."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from planner.app.panels.widgets.labels import Head, label
from planner.intake.likeness import usual_first

if TYPE_CHECKING:
    from collections.abc import Sequence

    from planner.intake.likeness import Likeness

_MOST = 12
_ROW = 44
_NONE = "No record of this connector is known yet."
_KINDS = {"standard": "the standard", "practice": "common practice"}
_BEFORE = "Write what a contact carries, and the known records are compared."


class LikenessList(QWidget):
    """List comparisons; tell which one is chosen."""

    chosen = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.found: Sequence[Likeness] = ()
        self._picked = ""
        self.head = Head("Held against known records")
        self.list = QListWidget()
        self.list.setAccessibleName("Known records: the usual one, then the nearest first")
        self.list.setWordWrap(True)
        self.list.setMinimumHeight(_ROW)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.currentRowChanged.connect(self._on_picked)
        self.none = label(_BEFORE, "second", wrap=True)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 6, 12, 8)
        column.setSpacing(4)
        for part in (self.head, self.none, self.list):
            column.addWidget(part)

    @property
    def shown(self) -> "Likeness | None":
        """The comparison that is chosen."""
        at = self.list.currentRow()
        return self.found[at] if 0 <= at < len(self.found) else None

    def begin(self) -> None:
        """Forget what was picked for an earlier draft."""
        self._picked = ""

    def _on_picked(self) -> None:
        if self.shown is not None:
            self._picked = self.shown.record.id
        self.chosen.emit()

    def show_found(self, found: "Sequence[Likeness]", *, begun: bool) -> None:
        """Show comparisons, given the nearest first; choose the picked one, else the nearest."""
        nearest = found[0].record.id if found else ""
        self.found = usual_first(found)[:_MOST] if begun else ()
        self.list.blockSignals(True)
        self.list.clear()
        for each in self.found:
            item = QListWidgetItem(_words(each))
            item.setToolTip(each.told)
            item.setSizeHint(QSize(100, _ROW))
            self.list.addItem(item)
        ids = [each.record.id for each in self.found]
        self.list.setCurrentRow(
            ids.index(self._picked if self._picked in ids else nearest) if ids else -1
        )
        self.list.blockSignals(False)
        self.list.setVisible(bool(ids))
        self.none.setVisible(not ids)
        self.none.setText(_NONE if begun else _BEFORE)
        self.chosen.emit()


def _words(each: "Likeness") -> str:
    kind = _KINDS.get(each.record.source.kind, each.record.trust)
    told = each.told if len(each.words) < 4 else f"{len(each.differs)} contacts differ"
    sign = "=" if each.kind == "same" else "\u2260"
    return f"{sign} {each.record.title} ({kind.replace('-', ' ')})\n{told[:1].upper()}{told[1:]}"
