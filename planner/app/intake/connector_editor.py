"""Draw a connector's solder side: the drawing left, its questions and figures right."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtGui import QImage
from PySide6.QtWidgets import QWidget

from planner.app.intake.attempts import tried
from planner.app.intake.contact_box import ContactBox
from planner.app.intake.editor_page import EditorPage, add_keys, form_of, upright
from planner.app.intake.figures import NAMES
from planner.app.intake.hull_box import BasisBox, HullBox
from planner.app.intake.plot_view import PlotView
from planner.app.intake.remark_list import RemarkList
from planner.app.intake.rule_box import RuleBox
from planner.app.intake.side_question import SideQuestion
from planner.app.intake.trace_box import TraceBox
from planner.app.panels.widgets.fields import Choice, Field, Notes
from planner.app.panels.widgets.labels import Head, button, label, line
from planner.app.panels.widgets.scrolled import scrolled
from planner.app.panels.widgets.styles import panel_qss
from planner.drawing.plot import Plot
from planner.intake import shaping
from planner.intake.connector_draft import ConnectorDraft, drawable, family_as_known, finished
from planner.intake.live_checks import remarks
from planner.library.store import NEW
from planner.model.tracing import Tracing
from planner.problem import InputError

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence
    from pathlib import Path

    from planner.app.intake.owner import Owner
    from planner.drawing.looks import Look
    from planner.geometry.placing import Grid, Ring

_GENDERS = (("", "choose"), ("male", "male: a plug"), ("female", "female: a socket"))
_HEAD = (
    ("title", "Title", "As it is listed: Odd five-pole, male"),
    ("id", "Short name", "For files: odd-five-pole-male; never changed later"),
    ("family", "Family", "What it belongs to: xlr, din, jack"),
    ("size", "Size", "As it is asked for: XLR-5"),
    ("maker", "Maker", "Empty where many make it"),
)
_FIRST_SCALE = 0.05  # mm a pixel: about a scan at 500 dots an inch, until two points are given


class ConnectorEditor(EditorPage[ConnectorDraft]):
    """Edit one draft; `done` tells the id of the connector that was saved, or nothing."""

    def __init__(
        self,
        owner: "Owner",
        look: "Look",
        picture_to_trace: "Callable[[], Path | None]",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(owner, look, ConnectorDraft(), parent)
        self._picture_to_trace = picture_to_trace
        self.chosen: tuple[str, ...] = ()
        self._image: tuple[str, QImage] = ("", QImage())
        self._make(look)
        left = upright(self.plot, scrolled(self.remarks, "While you draw"), (560, 150))
        self.lay_out(left, self._form(), self.said, self.save_button)
        add_keys(self, {"Ctrl+A": self._choose_all})
        self.drafting.changed.connect(self._show)
        self.drafting.refused.connect(lambda reason, mend: self.said.setText(f"{reason}. {mend}"))
        self.set_look(look)
        self.begin(ConnectorDraft())

    # -- made ------------------------------------------------------------------------------------

    def _make(self, look: "Look") -> None:
        self.plot = PlotView(look)
        self.plot.chosen.connect(self._on_chosen)
        self.plot.added.connect(self._add)
        self.plot.moved.connect(self._move)
        self.plot.taken_away.connect(self._take_away)
        self.remarks = RemarkList(look, self.choose)
        self.question = SideQuestion(look, self.answer_side)
        self.rule = RuleBox(look, self._place)
        self.contact = ContactBox(self.drafting, self.choose)
        self.hull = HullBox(self.drafting)
        self.basis = BasisBox(self.drafting)
        self.trace = TraceBox(self.drafting, self._attach)
        self.trace.pointing.changed.connect(self._show_plot)
        self.plot.pointed_at.connect(self._on_pointed)
        self.fields = {
            name: Field(words, partial(self.set_text, name), tip, NAMES)
            for name, words, tip in _HEAD
        }
        self.gender = Choice("Gender", _GENDERS, partial(self.set_text, "gender"), NAMES)
        self.notes = Notes("Remarks", partial(self.set_text, "remarks"))
        self.said = label("", "small", wrap=True)
        self.save_button = button("Save the connector", self.save, "primary", "Ctrl+Return")

    def set_text(self, name: str, value: str) -> str:
        """Write one key of the draft; a family that is known, as it is spelled there."""
        if name == "family":
            known = (it.family for it in self.owner.library.connectors())
            value = family_as_known(value, known)
        return super().set_text(name, value)

    def _form(self) -> QWidget:
        return form_of(
            (
                *(self.question, line(), Head("Place by rule"), self.rule, line()),
                *(Head("The chosen contact"), self.contact, line()),
                *(Head("Shell, barrel, clamp"), self.hull, line()),
                *(Head("Trace over a picture"), self.trace, line()),
                *(Head("What it is"), *self.fields.values(), self.gender, line()),
                *(Head("What the figures rest on"), self.basis, label("Remarks", "second")),
                self.notes,
            )
        )

    # -- begun and ended -------------------------------------------------------------------------

    def begin(self, draft: ConnectorDraft, basis: str = NEW) -> None:
        """Begin with a draft; `basis` is the digest of the connector that it is the next of."""
        self.basis_digest = basis
        self.chosen = ()
        self.trace.pointing.ask("")
        self.drafting.begin(draft)
        self.plot.fit()
        self._show()
        (self.question.buttons["solder"] if draft.seen_from == "unstated" else self.plot).setFocus()

    def save(self) -> None:
        """Save the connector, if nothing is missing and nothing is impossible."""
        stops = [it for it in self._remarks() if it.weight == "stop"]
        if stops:
            self.said.setText("Not saved: " + "; ".join(it.what for it in stops) + ".")
            return
        try:
            record = finished(self.drafting.draft)
        except InputError as error:
            self.said.setText("Not saved: " + "; ".join(str(it) for it in error.problems))
            return
        self.finish(self.owner.save(record, self.basis_digest))

    # -- drawn -----------------------------------------------------------------------------------

    def choose(self, names: "tuple[str, ...]") -> None:
        """Choose contacts."""
        self.chosen = tuple(names)
        self.contact.show_names(self.chosen)
        self._show_plot()

    def _choose_all(self) -> None:
        self.choose(tuple(it.id for it in self.drafting.draft.contacts))

    def _on_chosen(self, name: str, adding: bool) -> None:  # noqa: FBT001 - a signal's argument
        if not adding:
            self.choose((name,) if name else ())
        elif name:
            others = tuple(it for it in self.chosen if it != name)
            self.choose(others if name in self.chosen else (*others, name))

    def _add(self, x_mm: float, y_mm: float) -> None:
        number = shaping.next_number(self.drafting.draft)
        place = (round(x_mm, 2), round(y_mm, 2))
        if self.drafting.do("Add a contact", lambda it: shaping.add_contact(it, place, number)):
            self.choose((number,))

    def _move(self, x_mm: float, y_mm: float, drag: int) -> None:
        names = self.chosen
        if names:
            edit = partial(shaping.nudge, names=names, by_mm=(x_mm, y_mm))
            self.drafting.do("Move", edit, gesture=f"drag {drag}")

    def _take_away(self) -> None:
        self.drafting.do("Take away", partial(shaping.take_away, names=self.chosen))
        self.choose(())

    def _place(self, rule: "Ring | Grid", numbers: "Sequence[str]") -> str:
        return tried(
            self.drafting, "Place by rule", lambda it: shaping.place_by_rule(it, rule, numbers)
        )

    # -- answered --------------------------------------------------------------------------------

    def _attach(self) -> None:
        path = self._picture_to_trace()
        document = self.owner.keep(path) if path is not None else None
        if document is None:
            return
        image = QImage(str(path))
        middle = (image.width() / 2, image.height() / 2)
        tracing = Tracing(digest=document.digest, axis_px=middle, mm_per_px=_FIRST_SCALE)

        def edit(draft: ConnectorDraft) -> ConnectorDraft:
            others = tuple(it for it in draft.documents if it.digest != document.digest)
            return draft.evolve(documents=(*others, document), tracing=tracing)

        self.drafting.do("Picture to trace", edit)

    def _on_pointed(self, x_mm: float, y_mm: float) -> None:
        tracing = self.drafting.draft.tracing
        if tracing is not None:
            self.trace.pointing.take(tracing.to_px((x_mm, y_mm)))

    # -- shown -----------------------------------------------------------------------------------

    def _remarks(self) -> tuple:
        draft = self.drafting.draft
        known = [it for it in self.owner.library.connectors() if it.id != draft.id]
        return remarks(draft, known)

    def _show(self) -> None:
        draft = self.drafting.draft
        self.question.show_side(draft.seen_from)
        self.gender.show_value(draft.gender)
        for name, field in self.fields.items():
            field.show_text(getattr(draft, name))
        self.fields["id"].line.setReadOnly(self.basis_digest != NEW)
        self.notes.show_text(draft.remarks)
        self.hull.show_draft()
        self.basis.show_draft()
        self.chosen = tuple(it for it in self.chosen if draft.contact(it) is not None)
        self.contact.show_names(self.chosen)
        self._show_plot()

    def _show_plot(self) -> None:
        draft = self.drafting.draft
        found = self._remarks()
        self.remarks.show_remarks(found)
        odd = {name: it.weight for it in reversed(found) for name in it.contacts}
        points = self.trace.pointing.points if draft.tracing is not None else ()
        dots = tuple(draft.tracing.to_mm(it) for it in points) if draft.tracing is not None else ()
        shown = Plot(drawable(draft), draft.shell, self.chosen, "", odd, dots, draft.seen_from)
        self.plot.points_wanted = self.trace.pointing.wanted
        self.plot.show_plot(shown)
        self.plot.show_picture(self._picture(), draft.tracing)
        self.said.setText(_standing(found))

    def _picture(self) -> QImage:
        tracing = self.drafting.draft.tracing
        digest = tracing.digest if tracing is not None else ""
        if digest != self._image[0]:
            documents = {it.digest: it for it in self.drafting.draft.documents}
            image = QImage()
            if digest in documents:
                try:
                    image.loadFromData(self.owner.store.papers.read(documents[digest]))
                except InputError as error:
                    self.owner.refused.emit(error.problems)
            self._image = (digest, image)
        return self._image[1]

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.look = look
        self.setStyleSheet(panel_qss(look))
        self.plot.set_look(look)
        self.remarks.set_look(look)


def _standing(found: tuple) -> str:
    stops = sum(it.weight == "stop" for it in found)
    if stops:
        return f"{stops} {'thing keeps' if stops == 1 else 'things keep'} it from being saved."
    return "It can be saved: Ctrl+Return."
