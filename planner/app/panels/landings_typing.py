"""Typing a contact into a cell: what fits, what it would do, what is wrong with it."""

from dataclasses import dataclass

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QLineEdit, QVBoxLayout, QWidget

from planner.app.panels.widgets.labels import label
from planner.app.panels.widgets.rows import MarkedLine, emptied
from planner.app.panels.words import wire_code
from planner.drawing.looks import Look
from planner.drawing.marks import MarkKind
from planner.model.connector import Connector, Contact
from planner.model.plan import Plan
from planner.model.signals import signals_text
from planner.problem import did_you_mean
from planner.wiring.graph import Wiring

MOST_SHOWN = 8


@dataclass(frozen=True, slots=True)
class Offer:
    """A contact that what was typed may mean, with the signal it carries and what is on it."""

    contact: Contact
    signals: str
    taken_by: str

    @property
    def text(self) -> str:
        """One line: `R1  ring 1, L−, has WH`."""
        parts = [self.contact.spoken, self.signals]
        if self.taken_by:
            parts.append(f"has {self.taken_by}")
        return f"{self.contact.id}   {', '.join(filter(None, parts))}"


def offers(plan: Plan, wiring: Wiring, end: str, typed: str) -> tuple[Offer, ...]:
    """Return the contacts of an end that begin with what was typed; all for nothing typed."""
    connector = plan.connector_of(end)
    if connector is None:
        return ()
    wanted = typed.strip().lower()
    fitting = [contact for contact in connector.contacts if _begins(contact, wanted)]
    return tuple(
        Offer(
            contact,
            signals_text(wiring.signals_at(end, contact.id)),
            _taken_by(plan, end, contact.id),
        )
        for contact in fitting
    )


def _begins(contact: Contact, wanted: str) -> bool:
    names = (contact.id, contact.moulded, contact.name, contact.name.replace(" ", ""))
    return any(name.lower().startswith(wanted) for name in names if name)


def _taken_by(plan: Plan, end: str, contact: str) -> str:
    codes = [
        wire_code(plan, plan.conductor_by_id[landing.conductor], end)
        for landing in plan.landings
        if (landing.end, landing.contact) == (end, contact)
        and landing.conductor in plan.conductor_by_id
    ]
    return " ".join(codes)


def unknown_contact(connector: Connector | None, end: str, typed: str) -> str:
    """Say that there is no such contact, and which may have been meant."""
    if connector is None:
        return f"No connector is chosen for {end}: choose one from the shelf first."
    known = [contact.id for contact in connector.contacts]
    known += [contact.name for contact in connector.contacts if contact.name]
    guess = did_you_mean(typed.strip().lower(), known)
    return f"{end} has no contact {typed.strip()!r}. {guess}"


class ContactEdit(QLineEdit):
    """The line in a cell. Enter asks to land, Shift+Enter to exchange; Up and Down walk the offers.

    Esc is the view's.
    """

    entered = Signal(bool)  # whether to exchange
    walked = Signal(int)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setPlaceholderText("contact")
        self.setAccessibleName("Contact to land on")
        self.setFrame(False)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Turn Enter and the arrows into what they mean here."""
        step = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}.get(Qt.Key(event.key()))
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.entered.emit(bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier))
        elif step is not None:
            self.walked.emit(step)
        else:
            super().keyPressEvent(event)


class OfferBox(QFrame):
    """The offers under the cell that is typed into, and a sentence about what Enter would do."""

    def __init__(self, window: QWidget, look: Look) -> None:
        super().__init__(window)
        self._look = look
        self._window = window
        self.setProperty("float", "true")
        self.setMinimumWidth(260)
        self._rows = QVBoxLayout(self)
        self._rows.setContentsMargins(10, 6, 10, 6)
        self._rows.setSpacing(2)
        self.hide()

    def set_look(self, look: Look, sheet: str) -> None:
        """Take on a look."""
        self._look = look
        self.setStyleSheet(sheet)

    def show_offers(
        self, shown: tuple[Offer, ...], chosen: int, verdict: tuple[tuple[MarkKind, str], ...]
    ) -> None:
        """Show offers with the chosen one bold, and marked sentences below."""
        emptied(self._rows)
        for at, offer in enumerate(shown[:MOST_SHOWN]):
            arrow = "\u203a " if at == chosen else "   "
            self._add(label(arrow + offer.text, "bold" if at == chosen else "second"))
        if len(shown) > MOST_SHOWN:
            self._add(label(f"   and {len(shown) - MOST_SHOWN} more", "small"))
        for kind, sentence in verdict:
            self._add(MarkedLine(kind, sentence, self._look))

    def _add(self, row: QWidget) -> None:
        """Add a row, and show it at once: the box takes its size before Qt would do so."""
        self._rows.addWidget(row)
        row.show()

    def place_by(self, cell: QWidget, corner: QPoint, height: int) -> None:
        """Stand under a cell, or over it where there is no room below."""
        self.adjustSize()
        at = self._window.mapFromGlobal(cell.mapToGlobal(corner))
        below = at.y() + height + 2
        if below + self.height() > self._window.height():
            below = max(at.y() - self.height() - 2, 0)
        left = min(at.x(), self._window.width() - self.width())
        self.move(max(left, 0), below)
        self.show()
        self.raise_()
