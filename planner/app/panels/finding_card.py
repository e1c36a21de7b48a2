"""One finding as a card: mark, title, place, what and why, how to mend it, what can be done."""

from html import escape

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QLineEdit, QVBoxLayout, QWidget

from planner.app.panels.widgets.drawn import MarkLabel
from planner.app.panels.widgets.labels import button, label, restyle
from planner.app.panels.words import places_text
from planner.checks.finding import Finding
from planner.drawing.looks import Look
from planner.model.plan import Acceptance, Plan

GUTTER = 52
_ABOUT_RECORDS = {"pinout-conflict", "pinout-unconfirmed"}
NO_REASON = "Write a reason: it prints on the bench sheet beside the caution."


class FindingCard(QFrame):
    """Show one finding; tell what is asked of it. The panel gives it another one to show."""

    chosen = Signal(object)
    mend_wanted = Signal(object)
    accept_wanted = Signal(object, str)
    withdraw_wanted = Signal(object)
    library_wanted = Signal(object)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.finding: Finding | None = None
        self.mark = MarkLabel("note", 12, look)
        self.title = label("", "head", wrap=True)
        self.place = label("", "accent", wrap=True)
        self.body = label("", wrap=True)
        self.mend = _mend_label()
        self.mend_button = button("", lambda: self.mend_wanted.emit(self.finding), "primary")
        self.accept_button = button("Accept, say why\u2026", self.ask_reason)
        self.withdraw_button = button("Take back", lambda: self.withdraw_wanted.emit(self.finding))
        self.library_button = button(
            "Open in the library", lambda: self.library_wanted.emit(self.finding)
        )
        self.library_button.setToolTip("See its source, confirm it on a sample, retire it")
        self.reason = ReasonAsk()
        self.setProperty("card", "true")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._lay_out()
        self.reason.given.connect(lambda text: self.accept_wanted.emit(self.finding, text))
        self.reason.left.connect(self._on_reason_left)

    def _lay_out(self) -> None:
        text = QVBoxLayout()
        text.setSpacing(3)
        for part in (self.title, self.place, self.body, self.mend):
            text.addWidget(part)
        acts = QHBoxLayout()
        acts.setSpacing(8)
        acts.setContentsMargins(0, 6, 0, 0)
        for act in (self.mend_button, self.accept_button, self.withdraw_button):
            acts.addWidget(act)
        acts.addStretch(1)
        text.addLayout(acts)
        text.addWidget(self.library_button, 0, Qt.AlignmentFlag.AlignLeft)
        text.addWidget(self.reason)
        row = QHBoxLayout(self)
        row.setContentsMargins(14, 8, 12, 12)
        row.setSpacing(0)
        row.addWidget(self.mark, 0, Qt.AlignmentFlag.AlignTop)
        row.addSpacing(GUTTER - 14 - 2 - self.mark.width())
        row.addLayout(text, 1)

    def show_finding(self, plan: Plan, finding: Finding, accepted: Acceptance | None) -> None:
        """Show a finding, or how it was accepted."""
        if finding != self.finding:
            self.reason.hide()
        self.finding = finding
        self.mark.set_kind(finding.weight, finding.weight)
        self.title.setText(finding.title or finding.what)
        self._set(self.place, places_text(plan, finding.where))
        told = (finding.what if finding.title else "", finding.why)
        self.body.setText(" ".join(part for part in told if part))
        if accepted is None:
            self.mend.setText(_headed("Mend", finding.mend))
        else:
            by = f" ({accepted.by})" if accepted.by else ""
            self.mend.setText(_headed("Accepted", accepted.reason + by))
        self.mend.setVisible(bool(finding.mend or accepted))
        self._show_acts(finding, accepted)
        restyle(self, "weight", finding.weight if accepted is None else "")
        self.setAccessibleName(f"{finding.weight}: {self.title.text()}. {self.place.text()}")
        self.setAccessibleDescription(f"{self.body.text()} Mend: {finding.mend}")

    def _show_acts(self, finding: Finding, accepted: Acceptance | None) -> None:
        remedy = finding.remedy if accepted is None else None
        self.mend_button.setVisible(remedy is not None)
        if remedy is not None:
            self.mend_button.setText(remedy.label)
            self.mend_button.setAccessibleName(remedy.label)
            self.mend_button.setToolTip("Ctrl+Enter does it; it is one step of undo")
        asks = finding.weight == "caution" and accepted is None
        self.accept_button.setVisible(asks and not self.reason.isVisibleTo(self))
        self.accept_button.setToolTip("The reason prints on the bench sheet")
        self.withdraw_button.setVisible(accepted is not None)
        self.library_button.setVisible(finding.code in _ABOUT_RECORDS)

    @staticmethod
    def _set(words: QLabel, text: str) -> None:
        words.setText(text)
        words.setVisible(bool(text))

    def set_current(self, *, current: bool) -> None:
        """Frame the card that the keys are about."""
        restyle(self, "current", "true" if current else "")

    def ask_reason(self) -> None:
        """Ask for the reason to accept a caution, inside the card."""
        self.accept_button.hide()
        self.reason.ask()

    def _on_reason_left(self) -> None:
        self.accept_button.setVisible(self.finding is not None and self.finding.weight == "caution")
        self.setFocus()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Go to the place."""
        super().mousePressEvent(event)
        if self.finding is not None:
            self.chosen.emit(self.finding)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter goes to the place, Ctrl+Enter mends."""
        if event.key() not in {Qt.Key.Key_Return, Qt.Key.Key_Enter} or self.finding is None:
            super().keyPressEvent(event)
        elif event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.mend_wanted.emit(self.finding)
        else:
            self.chosen.emit(self.finding)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Frame the card that has the keys."""
        super().focusInEvent(event)
        self.set_current(current=True)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Take the frame away."""
        super().focusOutEvent(event)
        self.set_current(current=False)


class ReasonAsk(QWidget):
    """Ask for a written reason; without one nothing is accepted."""

    given = Signal(str)
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.line = QLineEdit()
        self.line.setAccessibleName("Why is it acceptable?")
        self.line.setPlaceholderText("such as: measured on a part")
        self.line.setMaxLength(200)
        self.error = label("", "error", wrap=True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 4, 0, 0)
        column.setSpacing(6)
        column.addWidget(label("Why is it acceptable?", "bold"))
        column.addWidget(self.line)
        column.addWidget(self.error)
        acts = QHBoxLayout()
        acts.addWidget(button("Accept", self._on_accept, "primary"))
        acts.addWidget(button("Leave it", self._on_leave))
        acts.addStretch(1)
        column.addLayout(acts)
        self.line.returnPressed.connect(self._on_accept)
        self.hide()

    def ask(self) -> None:
        """Show the empty line and give it the keyboard."""
        self.line.clear()
        self.error.hide()
        self.show()
        self.line.setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc leaves it; Enter was taken by the line and goes no further."""
        if event.key() == Qt.Key.Key_Escape:
            self._on_leave()

    def _on_accept(self) -> None:
        reason = self.line.text().strip()
        restyle(self.line, "wrong", "" if reason else "true")
        if not reason:
            self.error.setText(NO_REASON)
            self.error.show()
            self.line.setFocus()
            return
        self.hide()
        self.given.emit(reason)

    def _on_leave(self) -> None:
        self.hide()
        self.left.emit()


def _mend_label() -> QLabel:
    made = QLabel()
    made.setTextFormat(Qt.TextFormat.RichText)
    made.setWordWrap(True)
    return made


def _headed(head: str, text: str) -> str:
    """Return rich text with a bold head; the text itself is escaped, never read as markup."""
    return f"<b>{head}</b>&nbsp; {escape(text)}"
