"""The findings beside the bench: what is wrong, why, how to mend it; and what is still to land."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QScrollArea, QVBoxLayout, QWidget

from planner.app.panels.finding_card import FindingCard
from planner.app.panels.still_to_land import StillToLand
from planner.app.panels.verdict_states import ClearState, EmptyState
from planner.app.panels.widgets.labels import Head
from planner.app.panels.widgets.panel import Panel
from planner.app.standing import is_new
from planner.app.workbench import Workbench
from planner.checks.acceptance import acceptance_of
from planner.checks.finding import Finding
from planner.drawing.looks import Look
from planner.edits import texts
from planner.edits.progress import left_to_land
from planner.model.place import Place


class FindingsPanel(Panel):
    """Show findings as cards, heaviest first; accepted ones and unlanded cores apart."""

    looked_up = Signal(object)  # a finding about a pinout record, to be looked at in the library

    def __init__(self, workbench: Workbench, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(workbench, look, parent)
        self.builder = ""
        self.head = Head("Findings")
        self.empty = EmptyState(look)
        self.clear = ClearState(look)
        self.to_land = StillToLand(workbench, look)
        self.accepted_head = Head("Accepted, with a reason", "section")
        self._open: list[FindingCard] = []
        self._accepted: list[FindingCard] = []
        self._current: Finding | None = None
        self._cards = QVBoxLayout()
        self._accepted_cards = QVBoxLayout()
        self._lay_out()
        self._listen()
        self.set_look(look)
        self.refresh()

    # -- asked by the window ----------------------------------------------------------------

    @property
    def shown(self) -> tuple[Finding, ...]:
        """The findings that stand open, in their order."""
        return tuple(card.finding for card in self._open_cards() if card.finding)

    @property
    def current(self) -> Finding | None:
        """The finding that Enter and Ctrl+Enter are about."""
        return self._current if self._current in self.shown else None

    def next_finding(self) -> None:
        """Go to the next finding."""
        self._step(1)

    def previous_finding(self) -> None:
        """Go to the finding before."""
        self._step(-1)

    def go(self) -> None:
        """Show the place of the current finding on the bench."""
        found = self.current or next(iter(self.shown), None)
        if found is not None:
            self._go_to(found)

    def mend(self) -> None:
        """Mend the current finding, where the mend is certain."""
        found = self.current or next(iter(self.shown), None)
        if found is not None:
            self._on_mend(found)

    # -- made -------------------------------------------------------------------------------

    def _lay_out(self) -> None:
        inside = QWidget()
        inside.setProperty("surface", "clear")
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, 0, 0, 12)
        column.setSpacing(0)
        self._cards.setSpacing(0)
        self._accepted_cards.setSpacing(0)
        self.accepted_head.setContentsMargins(16, 12, 16, 4)
        for part in (self.empty, self.clear):
            column.addWidget(part)
        column.addLayout(self._cards)
        column.addWidget(self.to_land)
        column.addWidget(self.accepted_head)
        column.addLayout(self._accepted_cards)
        column.addStretch(1)
        self._scroll = QScrollArea()
        self._scroll.setWidgetResizable(True)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setWidget(inside)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.head.setContentsMargins(16, 8, 16, 4)
        self.head.setFixedHeight(42)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self.head)
        whole.addWidget(self._scroll, 1)
        self.setAccessibleName("Findings")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def _listen(self) -> None:
        bench = self.workbench
        self.attach(bench.findings_changed, self.refresh)
        self.attach(bench.plan_changed, self._on_plan_changed)
        self.attach(bench.hand_changed, self.to_land.refresh)
        self.attach(self.to_land.chosen, self._on_place_chosen)

    def _on_plan_changed(self, *_changes: object) -> None:
        self.refresh()

    # -- shown ------------------------------------------------------------------------------

    def refresh(self) -> None:
        """Read the findings again; cards are kept and given what they show now."""
        plan = self.workbench.plan
        left = left_to_land(plan, self.workbench.wiring)
        # Before there is a lead, that it is not there yet is no finding worth a card.
        known = () if is_new(plan) else self.workbench.findings
        told = [it for it in known if not (it.unfinished and left)]
        accepted = [it for it in told if acceptance_of(plan, it)]
        still = [it for it in told if it not in accepted]
        self._fill(self._open, self._cards, still)
        self._fill(self._accepted, self._accepted_cards, accepted)
        self.accepted_head.setVisible(bool(accepted))
        self.accepted_head.set_note(str(len(accepted)))
        self.head.set_note(str(len(still)))
        self.to_land.show_left(left)
        self._show_state(still, left)
        self._mark_current()

    def _show_state(self, still: Sequence[Finding], left: Sequence[object]) -> None:
        begun = not is_new(self.workbench.plan)
        self.empty.setVisible(not begun)
        heavy = any(found.weight in {"stop", "caution"} for found in still)
        self.clear.setVisible(begun and not heavy)
        self.clear.show_state(done=not left, notes=len(still))

    def _fill(
        self, cards: list[FindingCard], layout: QVBoxLayout, findings: Sequence[Finding]
    ) -> None:
        plan = self.workbench.plan
        while len(cards) < len(findings):
            cards.append(self._new_card())
            layout.addWidget(cards[-1])
        for at, card in enumerate(cards):
            shown = at < len(findings)
            card.setVisible(shown)
            if shown:
                card.show_finding(plan, findings[at], acceptance_of(plan, findings[at]))

    def _new_card(self) -> FindingCard:
        card = FindingCard(self.look)
        card.chosen.connect(self._on_chosen)
        card.mend_wanted.connect(self._on_mend)
        card.accept_wanted.connect(self._on_accept)
        card.withdraw_wanted.connect(self._on_withdraw)
        card.library_wanted.connect(self.looked_up)
        return card

    def _open_cards(self) -> list[FindingCard]:
        return [card for card in self._open if not card.isHidden()]

    def _mark_current(self) -> None:
        for card in self._open_cards():
            mine = card.finding == self.current and self.current is not None
            card.set_current(current=mine or card.hasFocus())

    # -- acts -------------------------------------------------------------------------------

    def _step(self, by: int) -> None:
        shown = self.shown
        if not shown:
            return
        at = shown.index(self._current) + by if self._current in shown else min(by, 0)
        self._go_to(shown[at % len(shown)])

    def _go_to(self, finding: Finding) -> None:
        self._current = finding
        self._mark_current()
        for card in self._open_cards():
            if card.finding == finding:
                QTimer.singleShot(0, partial(self._reveal, card))
        if finding.where:
            self._on_place_chosen(finding.where[0])

    def _reveal(self, card: FindingCard) -> None:
        if not card.isHidden():
            self._scroll.ensureWidgetVisible(card, 0, 8)

    def _on_chosen(self, finding: Finding) -> None:
        self._go_to(finding)

    def _on_place_chosen(self, place: Place) -> None:
        if place.end or place.conductor:
            self.workbench.select(place)
            self.workbench.go_to.emit(place)
            if place.contact or place.conductor:
                self.workbench.light(place)

    def _on_mend(self, finding: Finding) -> None:
        if finding.remedy is None:
            self.workbench.refused.emit("This one has no certain mend", finding.mend)
            return
        self.workbench.do(finding.remedy.label, finding.remedy.edit)

    def _on_accept(self, finding: Finding, reason: str) -> None:
        edit = partial(
            texts.accept,
            finding_code=finding.code,
            places=finding.place_keys,
            reason=reason,
            by=self.builder,
            weight=finding.weight,
        )
        self.workbench.do(f"Accept {finding.title or finding.code}", edit)

    def _on_withdraw(self, finding: Finding) -> None:
        edit = partial(texts.withdraw, finding_code=finding.code, places=finding.place_keys)
        self.workbench.do(f"Take back {finding.title or finding.code}", edit)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """N and Shift+N step, Enter goes, Ctrl+Enter mends."""
        control = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
        if event.key() == Qt.Key.Key_N and not control:
            shift = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            self._step(-1 if shift else 1)
        elif event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.mend() if control else self.go()
        else:
            super().keyPressEvent(event)
