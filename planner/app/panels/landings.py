"""The landings: the whole lead as a table that can be built from the keyboard alone."""

from functools import partial

from PySide6.QtCore import QModelIndex, QPoint, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from planner.app.panels.landings_model import LandingsModel
from planner.app.panels.landings_paint import HEAD_HEIGHT, ROW_HEIGHT
from planner.app.panels.landings_table import LandingsTable
from planner.app.panels.landings_typing import ContactEdit, Offer, OfferBox, offers, unknown_contact
from planner.app.panels.verdict import DropLines, drop_verdict
from planner.app.panels.widgets.fields import attempt
from planner.app.panels.widgets.labels import Head, label, line, restyle
from planner.app.panels.widgets.panel import Panel
from planner.app.panels.widgets.styles import panel_qss
from planner.app.workbench import Ghost, Workbench
from planner.drawing.looks import Look
from planner.edits import landings
from planner.model.connector import Contact
from planner.model.place import Place


class LandingsPanel(Panel):
    """Show the table, or what it will be for while there is no cable yet."""

    land_by_signal_requested = Signal()

    def __init__(self, workbench: Workbench, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(workbench, look, parent)
        self.model = LandingsModel(workbench, self)
        self.table = LandingsTable(workbench, self.model, look)
        self._line: ContactEdit | None = None
        self._offers: tuple[Offer, ...] = ()
        self._chosen = -1
        self._box: OfferBox | None = None
        self._empty = self._make_empty()
        self._lay_out()
        self._listen()
        self.set_look(look)
        self._on_plan_changed()

    def set_look(self, look: Look) -> None:
        """Take on a look."""
        super().set_look(look)
        self.table.set_look(look)
        if self._box is not None:
            self._box.set_look(look, panel_qss(look))

    def focus_table(self) -> None:
        """Give the table the keyboard, on a cell."""
        if not self.table.currentIndex().isValid():
            self.table.setCurrentIndex(self.model.index(0, 0))
        self.table.setFocus()

    def detach(self) -> None:
        """End the connections, and take the box of offers down."""
        super().detach()
        if self._box is not None:
            self._box.deleteLater()
            self._box = None

    # -- made -------------------------------------------------------------------------------

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.table)
        column.addWidget(self._empty)
        self.setFocusProxy(self.table)
        self.setAccessibleName("Landings")

    def _make_empty(self) -> QWidget:
        made = QWidget()
        column = QVBoxLayout(made)
        column.setContentsMargins(16, 0, 16, 0)
        column.setSpacing(0)
        head = Head("Landings")
        head.setFixedHeight(HEAD_HEIGHT)
        column.addWidget(head)
        for text in (
            "One row for each core, once there is a cable.",
            "Pick a core, type its contact, Enter: the whole lead can be landed from the keyboard.",
            "",
            "",
        ):
            column.addWidget(line())
            words = label(text, "second")
            words.setFixedHeight(ROW_HEIGHT - 1)
            column.addWidget(words)
        column.addStretch(1)
        return made

    def _listen(self) -> None:
        bench = self.workbench
        self.attach(bench.plan_changed, self._on_plan_changed)
        self.attach(bench.findings_changed, self._on_plan_changed)
        self.attach(bench.hand_changed, self._on_plan_changed)
        self.attach(bench.selection_changed, self._on_selection_changed)
        self.attach(bench.lit_changed, self.table.repaint_all)
        self.attach(self.table.act_wanted, self._on_act)
        self.attach(self.table.moved, self._on_moved)
        self.attach(self.table.hovered, self._on_hovered)
        self.attach(self.table.typing_began, self._on_typing_began)
        self.attach(self.table.typing_ended, self._on_typing_ended)

    # -- heard from the workbench -----------------------------------------------------------

    def _on_plan_changed(self, *_changes: object) -> None:
        self.model.refresh()
        some = self.model.rowCount() > 0 and self.model.columnCount() > 0
        self.table.setVisible(some)
        self._empty.setVisible(not some)
        self.table.fit_columns()
        self._on_selection_changed()

    def _on_selection_changed(self) -> None:
        here = self.workbench.selection
        index = self.model.index_of(here.end, here.conductor)
        if index.isValid() and index != self.table.currentIndex():
            self.table.setCurrentIndex(index)
        self.table.repaint_all()

    # -- heard from the table ---------------------------------------------------------------

    def _on_moved(self) -> None:
        index = self.table.currentIndex()
        self._hide_box()
        if index.isValid():
            place = self.model.place(index)
            if (place.end, place.conductor) != self._selected():
                self.workbench.select(place)
            self.workbench.light(place)

    def _selected(self) -> tuple[str, str]:
        return (self.workbench.selection.end, self.workbench.selection.conductor)

    def _on_hovered(self, index: QModelIndex) -> None:
        self.workbench.light(self.model.place(index) if index.isValid() else None)

    def _on_act(self, act: str) -> None:
        if act == "by_signal":
            self.land_by_signal_requested.emit()
        elif act == "put_back":
            self.workbench.put_back()
            self._hide_box()
        elif self.table.currentIndex().isValid():
            self._say(getattr(self, f"_{act}")(self._place()))

    def _place(self) -> Place:
        return self.model.place(self.table.currentIndex())

    def _lift(self, place: Place) -> str:
        edit = partial(landings.lift, end=place.end, conductor=place.conductor)
        return attempt(self.workbench, f"Lift {place.conductor} at {place.end}", edit)

    def _cap(self, place: Place) -> str:
        plan = self.workbench.plan
        capped = any((cap.end, cap.conductor) == (place.end, place.conductor) for cap in plan.caps)
        edit = partial(
            landings.uncap if capped else landings.cap, end=place.end, conductor=place.conductor
        )
        words = "Take the cap off" if capped else "Cap"
        return attempt(self.workbench, f"{words} {place.conductor} at {place.end}", edit)

    def _pick_up(self, place: Place) -> str:
        cell = self.model.cell(self.table.currentIndex().row(), self.table.currentIndex().column())
        if cell.state == "away":
            words = f"{place.conductor} does not come out at {place.end}"
            return f"{words}: type a contact to lead it there."
        self.workbench.pick_up(place.end, place.conductor)
        return ""

    def _exchange(self, place: Place) -> str:
        """Exchange with what is held; with nothing in hand, ask for the contact first."""
        hand = self.workbench.hand
        if hand is None:
            self._exchanging = True
            self.table.edit(self.table.currentIndex())
            return ""
        if hand.end != place.end:
            return f"{hand.conductor} is in hand at {hand.end}: exchange it with a core there."
        landing = self.workbench.plan.landing_at.get((place.end, place.conductor))
        if landing is None or hand.conductor == place.conductor:
            return "Go to a landed core of the same end, then X exchanges it with the one in hand."
        self.workbench.land(hand.end, hand.conductor, landing.contact, exchange=True)
        return ""

    _exchanging = False

    # -- typing -----------------------------------------------------------------------------

    def _on_typing_began(self, edit: ContactEdit) -> None:
        self._line = edit
        edit.textEdited.connect(self._on_typed)
        edit.entered.connect(self._on_entered)
        edit.walked.connect(self._on_walked)
        self._chosen = -1
        self._on_typed("")

    def _on_typing_ended(self) -> None:
        self._line = None
        self._exchanging = False
        self.workbench.hover("")
        self._hide_box()

    def _on_typed(self, text: str) -> None:
        self._chosen = -1
        place = self._place()
        self._offers = offers(self.workbench.plan, self.workbench.wiring, place.end, text)
        if self._line is not None:
            restyle(self._line, "wrong", "")
        self._show_offers()

    def _on_walked(self, step: int) -> None:
        if self._offers:
            self._chosen = (self._chosen + step) % len(self._offers) if self._chosen >= 0 else 0
            self._show_offers()

    def _meant(self) -> Contact | None:
        """Return the contact that Enter would land on."""
        if 0 <= self._chosen < len(self._offers):
            return self._offers[self._chosen].contact
        connector = self.workbench.plan.connector_of(self._place().end)
        typed = self._line.text() if self._line is not None else ""
        if connector is None or not typed.strip():
            return None
        return connector.find(typed) or self._only_offer()

    def _only_offer(self) -> Contact | None:
        return self._offers[0].contact if len(self._offers) == 1 else None

    def _on_entered(self, exchange: bool) -> None:  # noqa: FBT001 - a signal's argument
        self._exchanging = self._exchanging or exchange
        place, contact = self._place(), self._meant()
        typed = self._line.text() if self._line is not None else ""
        if contact is None and not typed.strip():
            self.table.finish_typing()
            return
        wrong = self._refuse(place, typed) if contact is None else self._land(place, contact.id)
        if wrong:
            self._exchanging = False
            self._show_wrong(wrong)
        else:
            self.table.finish_typing()

    def _refuse(self, place: Place, typed: str) -> str:
        if len(self._offers) > 1:
            return f"{typed.strip()!r} may be any of these: type more of it, or choose with Down."
        return unknown_contact(self.workbench.plan.connector_of(place.end), place.end, typed)

    def _land(self, place: Place, contact: str) -> str:
        edit = landings.exchange if self._exchanging else landings.land
        self.workbench.put_back()
        said = attempt(
            self.workbench,
            f"Land {place.conductor} on {place.end} {contact}",
            partial(edit, end=place.end, conductor=place.conductor, contact=contact),
        )
        return said.replace("Hold Shift to exchange", "Shift+Enter exchanges")

    def _preview(self, contact: Contact) -> Ghost:
        place = self._place()
        edit = landings.exchange if self._exchanging else landings.land
        return self.workbench.preview(
            partial(edit, end=place.end, conductor=place.conductor, contact=contact.id)
        )

    # -- the box of offers ------------------------------------------------------------------

    def _show_offers(self) -> None:
        contact = self._meant()
        verdict: DropLines = ()
        if contact is not None:
            place = self._place()
            verdict = drop_verdict(self.workbench, place, contact.id, self._preview(contact))
        self._show_box(self._offers, verdict)

    def _show_wrong(self, wrong: str) -> None:
        if self._line is not None:
            restyle(self._line, "wrong", "true")
        self._show_box(self._offers, (("stop", wrong),))

    def _say(self, wrong: str) -> None:
        if wrong:
            self._show_box((), (("note", wrong),))
        else:
            self._hide_box()

    def _show_box(self, shown: tuple[Offer, ...], verdict: DropLines) -> None:
        if self._box is None:
            self._box = OfferBox(self.window(), self.look)
            self._box.set_look(self.look, panel_qss(self.look))
        self._box.show_offers(shown, self._chosen, verdict)
        rect = self.table.visualRect(self.table.currentIndex())
        self._box.place_by(self.table.viewport(), QPoint(rect.left(), rect.top()), rect.height())

    def _hide_box(self) -> None:
        if self._box is not None:
            self._box.hide()
