"""What each contact carries, typed a line a contact: Enter goes on to the next."""

from functools import partial
from itertools import pairwise
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from planner.app.intake.attempts import tried
from planner.app.panels.widgets.fields import Field
from planner.app.panels.widgets.labels import label
from planner.intake.pinout_draft import PinoutDraft, carries
from planner.intake.signal_words import signals_from
from planner.model.signals import signals_text

if TYPE_CHECKING:
    from planner.app.intake.drafting import Drafting
    from planner.model.connector import Connector

TIP = "L+, L\u2212, R+, R\u2212, 1+ to 8\u2212, mic+, return, shield, chassis; empty for nothing"


class SignalTable(QWidget):
    """One field a contact; tells which contact is looked at."""

    looked_at = Signal(str)

    def __init__(self, drafting: "Drafting[PinoutDraft]") -> None:
        super().__init__()
        self.drafting = drafting
        self.fields: dict[str, Field] = {}
        self.after: QWidget | None = None  # what Tab comes from
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(4)
        drafting.changed.connect(self._show)

    def show_contacts(self, connector: "Connector | None") -> None:
        """Have a line for each contact of a connector."""
        while (item := self._column.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.deleteLater()
        self.fields = {}
        if connector is None:
            self._column.addWidget(label("Choose the connector first.", "second"))
            return
        for contact in connector.contacts:
            words = contact.id if contact.spoken == f"pin {contact.id}" else contact.spoken
            field = Field(words, partial(self._carry, contact.id), TIP, 76)
            field.line.setAccessibleName(f"{contact.spoken} carries")
            field.line.setPlaceholderText("nothing")
            field.line.returnPressed.connect(partial(self._go_on, contact.id))
            field.line.installEventFilter(self)
            self.fields[contact.id] = field
            self._column.addWidget(field)
        self._chain()
        self._show()

    def _chain(self) -> None:
        """Let Tab go from line to line: what is made late would come after all else."""
        lines = [it.line for it in self.fields.values()]
        chain = [*filter(None, (self.after,)), *lines]
        for one, other in pairwise(chain):
            QWidget.setTabOrder(one, other)

    def look_at(self, contact: str) -> None:
        """Go to a contact's line."""
        field = self.fields.get(contact)
        if field is not None:
            field.line.setFocus()
            field.line.selectAll()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Tell which line has the focus."""
        if event.type() == QEvent.Type.FocusIn:
            for contact, field in self.fields.items():
                if field.line is watched:
                    self.looked_at.emit(contact)
        return super().eventFilter(watched, event)

    def _carry(self, contact: str, typed: str) -> str:
        return tried(
            self.drafting,
            f"{contact} carries {typed or 'nothing'}",
            lambda draft: carries(draft, contact, signals_from(typed)),
        )

    def _go_on(self, contact: str) -> None:
        names = list(self.fields)
        at = names.index(contact) + 1
        if self.fields[contact].line.settle() and at < len(names):
            self.look_at(names[at])

    def _show(self) -> None:
        for contact, field in self.fields.items():
            field.show_text(signals_text(self.drafting.draft.signals.get(contact, ())))
