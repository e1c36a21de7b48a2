"""How a unit is finished: passed where it is shown right, else failed or not finished."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from planner.app.panels.widgets.fields import Choice
from planner.app.panels.widgets.labels import button, label, restyle
from planner.app.panels.widgets.text_line import TextLine
from planner.app.proving_view.verdict_words import reason_words
from planner.proving.units import broken_ends, wrong_tones

if TYPE_CHECKING:
    from planner.app.proving_view.state import Proving
    from planner.proving.units import UnitVerdict

_CHOICES = (("passed", "passed"), ("failed", "failed"), ("unfinished", "not finished"))
_NOT_SHOWN = "It is not shown right yet: read what is left, or keep it as failed or not finished."
_DOUBTFUL = "A group that beeped is open pair by pair: read the group again."
STOPPED = (
    "The plan has a stop: a unit that is built to it is wrong all the same. Mend the plan first."
)
_UNSETTLED = "The readings are still being judged: do it again in a moment."
_TRIED_WRONG = "It broke when bent, or did not sound as it should, when last tried: try it again."
_NO_REASON = "Write why it failed: it stands in the record and on the certificate."


class FinishBox(QWidget):
    """Choose a verdict, give a reason, keep the record."""

    keep_wanted = Signal(str, str)  # verdict, reason

    def __init__(self, proving: "Proving") -> None:
        super().__init__()
        self.proving = proving
        self.verdict = Choice("Verdict", _CHOICES, self._on_chosen, 56)
        self.reason = TextLine()
        self.reason.setAccessibleName("Reason")
        self.reason.setMaxLength(1000)
        self.reason.setPlaceholderText("Reason or remark")
        self.keep = button("Keep the record", self.finish, "primary", "Ctrl+Shift+U")
        self.wrong = label("", "error", wrap=True)
        self._own_verdict = self._own_reason = False
        self._build()
        self.reason.textEdited.connect(self._on_typed)
        self.reason.returnPressed.connect(self.finish)

    def _build(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        for part in (self.verdict, self.reason, self.wrong):
            column.addWidget(part)
        row = QHBoxLayout()
        row.addWidget(self.keep)
        row.addStretch(1)
        column.addLayout(row)
        self.wrong.hide()

    def _on_chosen(self, _value: str) -> None:
        self._own_verdict = True
        self.show_wrong("")

    def _on_typed(self, _text: str) -> None:
        self._own_reason = True
        self.show_wrong("")

    def begin_anew(self) -> None:
        """Propose afresh: another unit is under way."""
        self._own_verdict = self._own_reason = False
        self.reason.setText(self.proving.unit.remarks if self.proving.unit is not None else "")
        self.show_wrong("")
        self.propose()

    def propose(self) -> None:
        """Show the verdict that the readings give, and the reason, unless they were chosen."""
        made = self.proving.judge.diagnosis
        if not self._own_verdict:
            sound = made is not None and made.verdict == "sound" and not self.proving.plan_stopped
            faulty = made is not None and made.verdict == "faulty"
            self.verdict.show_value("passed" if sound else "failed" if faulty else "unfinished")
        if not self._own_reason:
            kept = self.proving.unit.remarks if self.proving.unit is not None else ""
            self.reason.setText(kept or reason_words(made))

    def show_wrong(self, text: str) -> None:
        """Say what keeps the record from being kept."""
        restyle(self.reason, "wrong", "true" if text else "")
        self.wrong.setText(text)
        self.wrong.setVisible(bool(text))

    @property
    def chosen(self) -> "UnitVerdict":
        """The verdict that is chosen."""
        value = self.verdict.box.currentData()
        return "passed" if value == "passed" else "failed" if value == "failed" else "unfinished"

    @property
    def _tried_wrong(self) -> bool:
        """Tell whether an end broke or a tone was wrong when it was last tried."""
        unit = self.proving.unit
        return unit is not None and bool(broken_ends(unit.wiggle) or wrong_tones(unit.listening))

    def ask(self) -> None:
        """Ask for the reason."""
        self.reason.setFocus(Qt.FocusReason.OtherFocusReason)
        self.reason.selectAll()

    def finish(self) -> None:
        """Keep the record, unless it claims what was not shown or lacks its reason."""
        made, reason = self.proving.judge.diagnosis, self.reason.text().strip()
        wrong = ""
        if self.proving.unsettled:
            wrong = _UNSETTLED
        elif self.chosen == "passed" and (made is None or made.verdict != "sound"):
            wrong = _NOT_SHOWN
        elif self.chosen == "passed" and self.proving.doubtful:
            wrong = _DOUBTFUL
        elif self.chosen == "passed" and self._tried_wrong:
            wrong = _TRIED_WRONG
        elif self.chosen == "passed" and self.proving.plan_stopped:
            wrong = STOPPED
        elif self.chosen == "failed" and not reason:
            wrong = _NO_REASON
        self.show_wrong(wrong)
        if wrong:
            self.reason.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self.keep_wanted.emit(self.chosen, reason)
