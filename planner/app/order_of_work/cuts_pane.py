"""The cut list of one lead and of a run, to copy or to save for a spreadsheet."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QHeaderView,
    QSpinBox,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
)

from planner.app.panels.widgets.labels import button, label
from planner.app.panels.widgets.panel import Panel
from planner.app.printing.desk import MOST_LEADS
from planner.dryfit.cutting import batch
from planner.markup import unmarked
from planner.services.cutting import cut_csv
from planner.sheet.cut_words import cut_words, step_words
from planner.sheet.words import Words
from planner.units import number

if TYPE_CHECKING:
    from collections.abc import Callable

    from planner.app.order_of_work.state import Work
    from planner.drawing.looks import Look

_HEADS = ("Piece", "Cut, mm", "Pieces", "Pieces", "In all, mm")
_ROW_GAP = 8


class CutsPane(Panel):
    """A table, the number of leads, and the order of a run below it."""

    def __init__(self, work: "Work", save: "Callable[[], object]", look: "Look") -> None:
        super().__init__(work.workbench, look)
        self.work = work
        self.table = QTableWidget(0, len(_HEADS))
        self.leads = QSpinBox()
        self.order = label("", "small", wrap=True)
        self.copy = button("Copy", self.copy_list, tip="Copy the cut list for a spreadsheet")
        self.save = button("Save\u2026", save, tip="Save the cut list as CSV")
        self.setAccessibleName("Cut list")
        self._dress()
        self._build()
        self.attach(work.changed, self.renew)
        self.attach(work.leads_changed, self.renew)
        self.set_look(look)

    def _dress(self) -> None:
        table = self.table
        table.setAccessibleName("Cut list")
        for column, words in enumerate(_HEADS):
            title = QTableWidgetItem(words)
            title.setTextAlignment(
                Qt.AlignmentFlag.AlignRight if column else Qt.AlignmentFlag.AlignLeft
            )
            table.setHorizontalHeaderItem(column, title)
        table.verticalHeader().hide()
        table.setShowGrid(False)
        table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        table.setTabKeyNavigation(False)
        table.setWordWrap(True)
        head = table.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        head.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        head.setHighlightSections(False)
        head.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.leads.setRange(1, MOST_LEADS)
        self.leads.setAccessibleName("Leads in the run")
        self.leads.setToolTip("How many leads are built")
        self.leads.lineEdit().setTextMargins(4, 0, 0, 0)
        self.leads.setFixedWidth(72)
        self.leads.valueChanged.connect(self.work.set_leads)

    def _build(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 8, 12, 8)
        column.setSpacing(6)
        row = QHBoxLayout()
        row.setSpacing(8)
        words = label("Leads", "second")
        words.setBuddy(self.leads)
        for part in (words, self.leads):
            row.addWidget(part)
        row.addStretch(1)
        for act in (self.copy, self.save):
            row.addWidget(act)
        column.addLayout(row)
        column.addWidget(self.table, 1)
        column.addWidget(self.order)

    def renew(self) -> None:
        """Show the pieces, and for a run the order in which it is made."""
        plan, leads, words = self.work.plan, self.work.leads, Words()
        lines = self.work.facts.cuts.lines
        self.leads.setValue(leads)
        self.table.setRowCount(len(lines))
        for place, line in enumerate(lines):
            pieces = line.count * leads
            self._fill(
                place,
                unmarked(cut_words(line, plan, words)),
                number(line.length_mm) if line.length_mm else "",
                str(line.count),
                str(pieces),
                number(line.length_mm * pieces) if line.length_mm else "",
            )
        for column, shown in ((2, leads == 1), (3, leads > 1), (4, leads > 1)):
            self.table.setColumnHidden(column, not shown)
        self._space_rows()
        run = batch(plan, leads).steps if leads > 1 and plan.sections else ()
        said = [unmarked(step_words(step, plan, words)) for step in run]
        self.order.setText("\n".join(f"{at}. {text}" for at, text in enumerate(said, start=1)))
        self.order.setVisible(bool(said))

    def _space_rows(self) -> None:
        """Leave more white between pieces than between the lines of one."""
        self.table.resizeRowsToContents()
        for row in range(self.table.rowCount()):
            self.table.setRowHeight(row, self.table.rowHeight(row) + _ROW_GAP)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Break the words anew."""
        super().resizeEvent(event)
        self._space_rows()

    def _fill(self, place: int, *cells: str) -> None:
        for column, text in enumerate(cells):
            item = QTableWidgetItem(text)
            item.setToolTip(text if column == 0 else "")
            if column:
                item.setTextAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            self.table.setItem(place, column, item)

    def copy_list(self) -> None:
        """Put the cut list on the clipboard, as it is saved."""
        bench = self.work.workbench
        text = cut_csv(bench.plan, bench.findings, leads=self.work.leads)
        QGuiApplication.clipboard().setText(text)
        self.work.said.emit("The cut list is copied.")
