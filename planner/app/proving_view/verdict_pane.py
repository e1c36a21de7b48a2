"""The unit under way and its verdict: what went wrong, where to look, what to read next."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from planner.app.buttons import ActionButton
from planner.app.panels.widgets.drawn import MarkLabel
from planner.app.panels.widgets.fields import Field
from planner.app.panels.widgets.labels import button, label, line
from planner.app.panels.widgets.panel import Panel
from planner.app.panels.widgets.rows import MarkedLine, emptied
from planner.app.panels.widgets.scrolled import scrolled
from planner.app.proving_view.explanation_card import ExplanationCard
from planner.app.proving_view.finish_box import STOPPED, FinishBox
from planner.app.proving_view.unit_facts import error_words
from planner.app.proving_view.verdict_words import explanation_head, verdict_words
from planner.model.place import Place

if TYPE_CHECKING:
    from planner.app.actions import Actions
    from planner.app.proving_view.state import Proving
    from planner.drawing.looks import Look
    from planner.proving.diagnosing import Diagnosis

MOST_CARDS = 5
_CHANGED = "The plan was changed since this unit was begun: it is held against the plan as it is."
_FAILED = (
    "The diagnosis failed: that is a fault of this program, not of the lead. Readings go on and "
    "are kept; till it works again the unit can be recorded as failed or not finished."
)
_NO_UNIT = "Begin a unit to prove it."


class VerdictPane(Panel):
    """A head with the unit, the verdict, the explanations as cards, and how it is finished."""

    rework_wanted = Signal(str)

    def __init__(self, proving: "Proving", actions: "Actions", look: "Look") -> None:
        super().__init__(proving.workbench, look)
        self.proving = proving
        self.number = Field("Unit", proving.noting.set_number, "The number of this unit", 32)
        self.begun = label("", "small")
        self.changed = label(_CHANGED, "small", wrap=True)
        self.stopped = label(STOPPED, "error", wrap=True)
        self.count = label("", "second")
        self.who = Field("Who", proving.noting.set_who, "Who holds the meter", 44)
        self.meter = Field("Meter", proving.noting.set_meter, "Which meter it is read with", 44)
        self.error = Field(
            "Error",
            proving.noting.set_error,
            "How far off it may be, from its own sheet",
            44,
        )
        self.mark = MarkLabel("nothing", 12, look)
        self.verdict = label("", "question")
        self.told = label("", wrap=True)
        self.next_words = label("", "second", wrap=True)
        self.next = ActionButton(actions["next_advised"], look, text="Read next")
        self.unseen = label("", "small", wrap=True)
        self.rework = Field("Reworked", self._on_rework, "What was done to mend it", 64)
        self.finish = FinishBox(proving)
        self.cards: list[ExplanationCard] = []
        for field in (self.number, self.who, self.meter, self.error, self.rework):
            field.line.setMaxLength(200)
        self._inside = QWidget()
        self.setAccessibleName("Verdict")
        self._build()
        self.attach(proving.unit_changed, self.renew)
        self.attach(proving.rows_changed, self.renew)
        self.attach(proving.judge.changed, self._show_diagnosis)
        self.attach(proving.workbench.findings_changed, self._show_stopped)
        self.attach(proving.taken_up, self.finish.begin_anew)
        self.set_look(look)
        self.renew()
        self._show_diagnosis()
        self._show_stopped()

    def _build(self) -> None:
        column = QVBoxLayout(self._inside)
        column.setContentsMargins(12, 10, 12, 12)
        column.setSpacing(6)
        head = QHBoxLayout()
        self.number.setFixedWidth(104)
        head.addWidget(self.number)
        head.addStretch(1)
        head.addWidget(self.count)
        column.addLayout(head)
        self._add_all(column, self._verdict_row(), self.stopped, self.changed, self.told)
        self._list = QVBoxLayout()
        self._list.setSpacing(4)
        column.addLayout(self._list)
        column.addWidget(self.next_words)
        row = QHBoxLayout()
        row.addWidget(self.next)
        row.addStretch(1)
        column.addLayout(row)
        self._add_all(column, line(), self.rework, self.finish, line())
        self._add_all(column, self.who, self.meter, self.error, self.begun, self.unseen)
        column.addStretch(1)
        self._inside.setProperty("surface", "clear")
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(scrolled(self._inside, "Verdict"))

    @staticmethod
    def _add_all(column: QVBoxLayout, *parts: QWidget) -> None:
        for part in parts:
            column.addWidget(part)

    def _verdict_row(self) -> QWidget:
        made = QWidget()
        row = QHBoxLayout(made)
        row.setContentsMargins(0, 4, 0, 0)
        row.setSpacing(10)
        row.addWidget(self.mark)
        row.addWidget(self.verdict)
        row.addStretch(1)
        return made

    # -- shown ------------------------------------------------------------------------------------

    def renew(self) -> None:
        """Show the unit, and how much of it was read."""
        unit = self.proving.unit
        self._inside.setEnabled(unit is not None)
        self.number.show_text(str(unit.number) if unit is not None else "")
        self.begun.setText(_begun(unit.begun) if unit is not None else "")
        read, there = self.proving.count()
        self.count.setText(f"{read} of {there} read" if unit is not None else "")
        self.who.show_text(unit.who if unit is not None else "")
        self.meter.show_text(self.proving.meter.name)
        self.error.show_text(error_words(self.proving.meter))
        for part in (self.number, self.begun, self.who, self.meter, self.error, self.finish):
            part.setVisible(unit is not None)
        digest = unit.plan_digest if unit is not None else ""
        self.changed.setVisible(bool(digest) and digest != self.proving.digest)

    def _show_stopped(self) -> None:
        self.stopped.setVisible(self.proving.plan_stopped)
        self.finish.propose()

    def _show_diagnosis(self) -> None:
        made = self.proving.judge.diagnosis
        emptied(self._list)
        self.cards = []
        self.proving.judge.choose(0)
        if made is None:
            self._show_none()
        else:
            kind, verdict, told = verdict_words(made)
            self.mark.set_kind(kind, verdict)
            self.verdict.setText(verdict)
            self.told.setText(told)
            self._show_faults(made)
        self._show_next(made)
        self.rework.setVisible(made is not None and made.verdict == "faulty")
        self.finish.propose()

    def _show_none(self) -> None:
        none = self.proving.unit is None
        if self.proving.judge.failed:
            self.mark.set_kind("caution", "Not judged")
            self.verdict.setText("Not judged")
            self.told.setText(_FAILED)
            return
        self.mark.set_kind("nothing", "nothing yet")
        self.verdict.setText("" if none else "Judging\u2026")
        self.told.setText(_NO_UNIT if none else "")

    def _show_faults(self, made: "Diagnosis") -> None:
        for clash in made.contradictions:
            self._list.addWidget(MarkedLine("caution", clash.words, self.look))
            ask = partial(self.proving.ask_for, frozenset(clash.repeat))
            self._list.addWidget(button("Read it again", ask))
        for place, found in enumerate(made.explanations[:MOST_CARDS]):
            self._add(ExplanationCard(place, explanation_head(made, place), found.faults))
        for place, joint in enumerate(made.high_joints, start=len(made.explanations)):
            self._add(ExplanationCard(place, "High joint", (joint.fault,)))
        more = made.more + max(len(made.explanations) - MOST_CARDS, 0)
        if more:
            told = f"and {more}{'' if made.counted else ' or more'} besides, none of them likelier"
            self._list.addWidget(label(told, "small", wrap=True))
        self._mark_current()

    def _add(self, card: ExplanationCard) -> None:
        card.chosen.connect(self._on_chosen)
        card.pointed.connect(self.proving.judge.point_at)
        self.cards.append(card)
        self._list.addWidget(card)

    def _on_chosen(self, place: int) -> None:
        self.proving.judge.choose(place)
        self._mark_current()
        spots = [it for fault in self.proving.judge.faults for it in fault.contacts]
        if spots:
            end, contact = spots[0]
            self.workbench.select(Place(end=end, contact=contact))

    def _mark_current(self) -> None:
        for card in self.cards:
            card.set_current(current=card.place == self.proving.judge.explanation)

    def _show_next(self, made: "Diagnosis | None") -> None:
        probe = made.next_probe if made is not None else None
        words = probe.words if probe is not None else _look(made)
        self.next_words.setText(words)
        self.next_words.setVisible(bool(words))
        self.next.setVisible(probe is not None)
        said = (*made.remarks, *made.unseen) if made is not None else ()
        self.unseen.setText("\n".join(said))
        self.unseen.setVisible(bool(said))

    def _on_rework(self, done: str) -> str:
        if done:
            self.rework_wanted.emit(done)
            self.rework.line.clear()
        return ""

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        super().set_look(look)
        self.next.set_look(look)


def _begun(moment: str) -> str:
    return f"begun {moment[:10]} {moment[11:16]}" if moment else ""


def _look(made: "Diagnosis | None") -> str:
    """Say what to look at where no reading tells more, unless a card says it already."""
    if made is None or made.look in {fault.look for fault in made.faults}:
        return ""
    return made.look
