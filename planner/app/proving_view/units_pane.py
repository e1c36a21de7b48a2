"""The units of the plan: what became of each, by whom, as of which revision."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout

from planner.app.buttons import ActionButton
from planner.app.order_of_work.plain_list import PlainList
from planner.app.panels.widgets.labels import button, label
from planner.app.panels.widgets.panel import Panel

if TYPE_CHECKING:
    from planner.app.actions import Actions
    from planner.app.proving_view.state import Proving
    from planner.app.proving_view.units_book import UnitsBook
    from planner.drawing.looks import Look
    from planner.proving.units import UnitRecord

_NONE = (
    "No unit of this plan is recorded yet. Begin one with Ctrl+U; when it is finished its record "
    "is kept in a file beside the plan."
)


class UnitsPane(Panel):
    """A list of units, the latest state of each, and the acts on the chosen one."""

    rework_wanted = Signal(object)  # UnitRecord

    def __init__(
        self, proving: "Proving", book: "UnitsBook", actions: "Actions", look: "Look"
    ) -> None:
        super().__init__(proving.workbench, look)
        self.proving, self.book = proving, book
        self.records: tuple[UnitRecord, ...] = ()
        self.list = PlainList("Units", look, "fault")
        self.facts = label("", "small", wrap=True)
        self.again = button(
            "Take up again", self._on_again, tip="Go on with the chosen unit: rework it, read again"
        )
        self.acts = [
            ActionButton(actions[name], look, text=text)
            for name, text in (
                ("attach", "Attach\u2026"),
                ("certificate", "Certificate\u2026"),
                ("unit_summary", "Summary\u2026"),
            )
        ]
        self.setAccessibleName("Units")
        self.setFocusProxy(self.list)
        self._build()
        self.list.chosen.connect(self.choose)
        self.attach(book.changed, self.renew)
        self.attach(proving.workbench.plan_changed, self._on_plan_changed)
        self.set_look(look)
        self.renew()

    def _build(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 8, 12, 8)
        column.setSpacing(6)
        column.addWidget(self.list, 1)
        column.addWidget(self.facts)
        for row in ((self.again, self.acts[0]), (self.acts[1], self.acts[2])):
            line = QHBoxLayout()
            for part in row:
                line.addWidget(part)
            line.addStretch(1)
            column.addLayout(line)
        column.addStretch(0)

    @property
    def chosen(self) -> "UnitRecord | None":
        """The unit that is chosen."""
        at = self.list.marked
        return self.records[at] if 0 <= at < len(self.records) else None

    def _on_plan_changed(self, _changes: object) -> None:
        """Say anew which units are as of another plan, if somebody looks: an edit must not wait."""
        if self.proving.awake:
            self.renew()

    def showEvent(self, event: QShowEvent) -> None:
        """Show the units as they stand to the plan now."""
        super().showEvent(event)
        self.renew()

    def renew(self) -> None:
        """Show the units as they stand; the chosen one stays chosen."""
        before = self.chosen
        self.records = tuple(reversed(self.book.units.latest.values()))
        self.list.show_rows([self._row(it) for it in self.records])
        numbers = [it.number for it in self.records]
        kept = numbers.index(before.number) if before and before.number in numbers else -1
        self.choose(kept if kept >= 0 else 0 if self.records else -1)

    def _row(self, record: "UnitRecord") -> tuple[str, str, bool]:
        words = {"unfinished": "not finished"}.get(record.verdict, record.verdict)
        by = f" by {record.who}" if record.who else ""
        small = f"{record.at[:10]} {record.at[11:16]}{by}{self._stale(record)}"
        return (f"Unit {record.number}  {words}", small, record.verdict == "failed")

    def _stale(self, record: "UnitRecord") -> str:
        """Say where the plan has changed since."""
        if not self.book.is_stale(record):
            return ""
        if record.plan_revision == self.proving.plan.revision:
            return "; the plan was changed since"
        return f"; as of revision {record.plan_revision}"

    def choose(self, place: int) -> None:
        """Choose a unit, and show what is kept of it."""
        self.list.mark(place)
        record = self.chosen
        self.again.setEnabled(record is not None)
        self.list.setVisible(bool(self.records))
        self.facts.setText(_NONE if record is None else self._facts(record))

    def _facts(self, record: "UnitRecord") -> str:
        states = len(self.book.units.history(record.number))
        parts = [
            f"{len(record.readings.readings)} readings, meter {record.meter.name or 'not named'}",
            f"{states} states are kept" if states > 1 else "",
            record.remarks,
            *(f"Reworked: {it.done}" for it in record.rework),
            *(f"Attached: {it.name}" for it in record.attachments),
        ]
        return "\n".join(part for part in parts if part)

    def _on_again(self) -> None:
        if self.chosen is not None:
            self.rework_wanted.emit(self.chosen)

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        super().set_look(look)
        self.list.set_look(look)
        for act in self.acts:
            act.set_look(look)
