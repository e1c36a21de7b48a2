"""Take in a pinout for a known connector: face and likenesses at the left, questions right."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from planner.app.intake.editor_page import EditorPage, form_of, upright
from planner.app.intake.face_view import FaceView
from planner.app.intake.fits_box import FitsBox
from planner.app.intake.likeness_list import LikenessList
from planner.app.intake.side_question import SideQuestion
from planner.app.intake.signal_table import SignalTable
from planner.app.intake.source_card import SourceCard
from planner.app.panels.widgets.fields import Choice, Field, Notes
from planner.app.panels.widgets.labels import Head, button, label, line
from planner.app.panels.widgets.styles import panel_qss
from planner.drawing.carried_face import CarriedFace
from planner.intake.likeness import likenesses
from planner.intake.pinout_draft import (
    PinoutDraft,
    carried_signals,
    finished,
    from_the_other_side,
    mates,
    proposed_id,
)
from planner.library.store import NEW
from planner.problem import InputError

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from planner.app.intake.owner import Owner
    from planner.drawing.looks import Look
    from planner.model.connector import Connector

DRIVES = (
    ("", "choose"),
    ("load", "nothing: a headphone, an input"),
    ("single-ended", "single-ended: the minus legs are the common ground"),
    ("driven-balanced", "driven-balanced: the minus legs are amplifier outputs"),
    ("line", "balanced line level"),
)
_NAMES = 104
_AGAIN = "It was confirmed with other signals: once saved it must be confirmed again. Ctrl+Return."


class PinoutEditor(EditorPage[PinoutDraft]):
    """Edit one draft; `done` tells the id of the record that was saved, or nothing."""

    def __init__(
        self,
        owner: "Owner",
        look: "Look",
        file_to_attach: "Callable[[], Path | None]",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(owner, look, PinoutDraft(), parent)
        self._file_to_attach = file_to_attach
        self._chosen = ""
        self._make(look)
        left = upright(self.face, self.likeness, (420, 280))
        self.lay_out(left, self._form(), self.missing, self.save_button)
        self.drafting.changed.connect(self._show)
        self.drafting.refused.connect(lambda reason, mend: self._say(f"{reason}. {mend}"))
        self.set_look(look)
        self.begin(PinoutDraft())

    # -- made ------------------------------------------------------------------------------------

    def _make(self, look: "Look") -> None:
        self.face = FaceView(look)
        self.face.pressed.connect(self._on_pressed)
        self.likeness = LikenessList()
        self.likeness.chosen.connect(self._show_face)
        self.question = SideQuestion(look, self.answer_side)
        self.mirror = button("The drawing showed the other side", self._mirror, "plain")
        self.mirror.setToolTip("Move each signal to the contact at its mirror image")
        self.connector = Choice("Connector", (), self._choose_connector, _NAMES)
        self.fits = FitsBox(self.drafting, lambda: self._mates, self.connector.box)
        self.table = SignalTable(self.drafting)
        self.table.looked_at.connect(self._on_looked_at)
        self.drive = Choice("Driven by", DRIVES, partial(self.set_text, "drive"), _NAMES)
        self.fields = {
            name: Field(words, partial(self.set_text, name), tip, _NAMES)
            for name, words, tip in (
                ("use", "Used for", "Such as: balanced headphone output"),
                ("maker", "Maker", "Of the equipment; empty where it is general"),
                ("title", "Title", "As it is listed; proposed if it is left empty"),
            )
        }
        self.remarks = Notes("Remarks", partial(self.set_text, "remarks"))
        self.source = SourceCard(self.drafting, self._attach, lambda: self._connector, _NAMES)
        self.missing = label("", "small", wrap=True)
        self.save_button = button("Save the record", self.save, "primary", "Ctrl+Return")

    def _form(self) -> QWidget:
        return form_of(
            (
                *(self.question, self.mirror, line(), self.connector, self.fits),
                *(Head("What each contact carries"), self.table, line(), self.drive),
                *(*self.fields.values(), line(), self.source, label("Remarks", "second")),
                self.remarks,
            )
        )

    # -- begun and ended -------------------------------------------------------------------------

    def begin(self, draft: PinoutDraft, basis: str = NEW) -> None:
        """Begin with a draft; `basis` is the digest of the record that it is the next one of."""
        self.basis_digest = basis
        self.likeness.begin()
        self.connector.set_choices(
            [("", "choose"), *((it.id, it.title) for it in self.owner.library.connectors())]
        )
        self.drafting.begin(draft)
        self._show_contacts()
        self._show()
        self.form.verticalScrollBar().setValue(0)
        (self.question.buttons["solder"] if draft.seen_from == "unstated" else self).setFocus()

    def save(self) -> None:
        """Save the record, if nothing is missing."""
        connector, draft = self._connector, self.drafting.draft
        if connector is None:
            self._say("Choose the connector first.")
            return
        if not draft.id:
            taken = frozenset(it.id for it in self.owner.library.pinouts())
            draft = draft.evolve(id=proposed_id(draft, taken))
        try:
            record = finished(draft, connector)
        except InputError as error:
            self._say("Still missing: " + "; ".join(it.what for it in error.problems) + ".")
            return
        self.finish(self.owner.save(record, self.basis_digest, why=draft.reference))

    # -- answered --------------------------------------------------------------------------------

    @property
    def _connector(self) -> "Connector | None":
        return self.owner.library.connector(self.drafting.draft.connector)

    @property
    def _mates(self) -> "tuple[Connector, ...]":
        connector = self._connector
        return mates(connector, self.owner.library.connectors()) if connector is not None else ()

    def _mirror(self) -> None:
        connector = self._connector
        if connector is not None:
            self.drafting.do(
                "From the other side", lambda draft: from_the_other_side(draft, connector)
            )

    def _choose_connector(self, connector: str) -> None:
        self.drafting.do("Connector", lambda draft: draft.evolve(connector=connector, fits_also=()))
        self._show_contacts()

    def _attach(self) -> None:
        path = self._file_to_attach()
        document = self.owner.keep(path) if path is not None else None
        if document is not None:
            self.drafting.do(
                "Attach a paper",
                lambda draft: draft.evolve(documents=(*draft.documents, document)),
            )

    # -- shown -----------------------------------------------------------------------------------

    def _show(self) -> None:
        draft = self.drafting.draft
        self.question.show_side(draft.seen_from)
        self.connector.show_value(draft.connector)
        self.fits.show_draft()
        self.drive.show_value(draft.drive)
        for name, field in self.fields.items():
            field.show_text(getattr(draft, name))
        self.remarks.show_text(draft.remarks)
        has_sides = self._connector is not None and self._connector.mating != "concentric"
        mirrors = bool(draft.signals) and has_sides
        self.mirror.setVisible(mirrors)
        self.question.why.setVisible(not mirrors)  # one in the place of the other: no line moves
        if self._connector is not None and not self.table.fields:
            self._show_contacts()
        self._show_likenesses()
        self._show_missing()

    def _show_contacts(self) -> None:
        self.table.after = self.fits.last
        self.table.show_contacts(self._connector)

    def _show_likenesses(self) -> None:
        connector, draft = self._connector, self.drafting.draft
        if connector is None:
            self.likeness.show_found((), begun=False)
            return
        others = [it for it in self.owner.library.pinouts() if it.id != draft.id]
        found = likenesses(carried_signals(draft), connector, others)
        self.likeness.show_found(found, begun=bool(draft.signals))

    def _show_face(self) -> None:
        connector, draft = self._connector, self.drafting.draft
        if connector is None:
            self.face.show_face(None)
            return
        near = self.likeness.shown
        self.face.show_face(
            CarriedFace(
                connector,
                carried_signals(draft),
                side="mating" if draft.seen_from == "mating" else "solder",
                was={it.contact: it.theirs for it in near.differs} if near is not None else {},
                pairs=near.pairs if near is not None else (),
                chosen=self._chosen,
            )
        )

    def _show_missing(self) -> None:
        connector = self._connector
        if connector is None:
            self._say("Next: answer from which side it is seen, then choose the connector.")
            return
        try:
            finished(self.drafting.draft, connector)
        except InputError as error:
            first, *others = (it.what for it in error.problems)
            more = f"; {len(others)} more" if others else ""
            self._say(f"Still missing: {first}{more}.")
        else:
            draft = self.drafting.draft
            again = draft.carries_another and draft.confirmations
            self._say(_AGAIN if again else "Nothing is missing. Ctrl+Return saves it.")

    def _say(self, text: str) -> None:
        self.missing.setText(text)

    def _on_pressed(self, contact: str) -> None:
        self._on_looked_at(contact)
        self.table.look_at(contact)

    def _on_looked_at(self, contact: str) -> None:
        self._chosen = contact
        self._show_face()

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.look = look
        self.setStyleSheet(panel_qss(look))
        self.face.set_look(look)
