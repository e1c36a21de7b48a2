"""The contacts that are chosen: number, names, place, terminal; one or several at once."""

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from planner.app.intake.attempts import tried
from planner.app.intake.figures import NAMES, FigureField
from planner.app.panels.widgets.fields import Choice, Field
from planner.app.panels.widgets.labels import button, label
from planner.intake import shaping

if TYPE_CHECKING:
    from planner.app.intake.drafting import Drafting
    from planner.intake.connector_draft import ConnectorDraft
    from planner.model.connector import Contact

_KINDS = (("cup", "cup"), ("lug", "lug"), ("post", "post"))
_NONE = "No contact is chosen: click one, or place them by rule. A double click adds one."
Edit = Callable[["ConnectorDraft"], "ConnectorDraft"]


class ContactBox(QWidget):
    """Fields of the choice; `renamed` tells that a chosen contact has another number."""

    def __init__(
        self, drafting: "Drafting[ConnectorDraft]", choose: Callable[[tuple[str, ...]], object]
    ) -> None:
        super().__init__()
        self.drafting, self._choose = drafting, choose
        self.names: tuple[str, ...] = ()
        self.none = label(_NONE, "second", wrap=True)
        self.number = Field("Number", self._renumber, "As moulded, or T, R1, S for a jack", NAMES)
        self.spoken = Field(
            "Spoken as", self._rename, "Such as: ring 1; empty: pin and number", NAMES
        )
        self.places = {
            axis: FigureField(axis, partial(self._move, axis), tip="From the axis, as looked at")
            for axis in "xy"
        }
        self.kind = Choice("Terminal", _KINDS, lambda kind: self._terminal(kind=kind), NAMES)
        self.across = FigureField("Bore or width", self._set_across)
        self.sizes = {
            name: FigureField(words, partial(self._size, name), unit=unit, tip=tip)
            for name, words, unit, tip in (
                ("depth_mm", "Depth or length", "mm", "Of the cup, or of the lug along its way"),
                ("z_mm", "Height", "mm", "Towards the cable, above the lowest terminal"),
                ("opening_deg", "Faces", "\u00b0", "Where the cup is cut away, or the lug points"),
                ("takes", "Takes cores", "", "How many conductors"),
            )
        }
        self.outwards = button("Face outwards", self._outwards)
        self.exchange = button("Exchange numbers", self._exchange)
        self.away = button("Take away", self._take_away)
        self._lay_out()
        drafting.changed.connect(self.show_choice)

    def _lay_out(self) -> None:
        self.fields = QWidget()
        column = QVBoxLayout(self.fields)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        for part in (
            *(self.number, self.spoken, *self.places.values(), self.kind, self.across),
            *self.sizes.values(),
        ):
            column.addWidget(part)
        row = QHBoxLayout()
        for made in (self.outwards, self.exchange, self.away):
            row.addWidget(made)
        row.addStretch(1)
        column.addLayout(row)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self.none)
        whole.addWidget(self.fields)

    def show_names(self, names: tuple[str, ...]) -> None:
        """Show other contacts."""
        self.names = names
        self.show_choice()

    def show_choice(self) -> None:
        """Show the figures of the choice; where several differ, nothing."""
        found = [it for it in map(self.drafting.draft.contact, self.names) if it is not None]
        self.none.setVisible(not found)
        self.fields.setVisible(bool(found))
        if not found:
            return
        one = len(found) == 1
        self.number.setVisible(one)
        self.spoken.setVisible(one)
        self.exchange.setVisible(len(found) == 2)
        for part in self.places.values():
            part.setVisible(one)
        self._show_figures(found)

    def _show_figures(self, found: "list[Contact]") -> None:
        first = found[0]
        self.number.show_text(first.id)
        self.spoken.show_text(first.name)
        for axis, field in self.places.items():
            field.show_figure(getattr(first.terminal, f"{axis}_mm"))
        kinds = {it.terminal.kind for it in found}
        self.kind.show_value(first.terminal.kind if len(kinds) == 1 else "")
        self.across.show_figure(_shared([it.terminal.across_mm for it in found]))
        for name, field in self.sizes.items():
            field.show_figure(_shared([float(getattr(it.terminal, name)) for it in found]))

    # -- changed ---------------------------------------------------------------------------------

    @property
    def _first(self) -> "Contact | None":
        return self.drafting.draft.contact(self.names[0]) if self.names else None

    def _tried(self, text: str, edit: Edit) -> str:
        return tried(self.drafting, text, edit)

    def _renumber(self, number: str) -> str:
        if not self.names:
            return ""
        name = self.names[0]
        wrong = self._tried("Number", partial(shaping.renumber, name=name, number=number))
        if not wrong:
            self._choose((number,))
        return wrong

    def _rename(self, spoken: str) -> str:
        contact = self._first
        name = contact.id if contact is not None else ""
        moulded = contact.moulded if contact is not None else ""
        edit = partial(shaping.set_names, name=name, spoken=spoken, moulded=moulded)
        return self._tried("Name", edit)

    def _move(self, axis: str, value: float) -> str:
        contact = self._first
        if contact is None:
            return ""
        x, y = contact.terminal.x_mm, contact.terminal.y_mm
        place = (value, y) if axis == "x" else (x, value)
        return self._tried("Place", partial(shaping.move, places={contact.id: place}))

    def _set_across(self, value: float) -> str:
        contact = self._first
        cup = contact is not None and contact.terminal.kind == "cup"
        return self._terminal(**{"bore_mm" if cup else "width_mm": value})

    def _size(self, name: str, value: float) -> str:
        return self._terminal(**{name: round(value) if name == "takes" else value})

    def _terminal(self, **figures: object) -> str:
        names = self.names
        return self._tried("Terminal", lambda draft: shaping.set_terminals(draft, names, **figures))

    def _outwards(self) -> None:
        self._tried("Face outwards", partial(shaping.open_outwards, names=self.names))

    def _exchange(self) -> None:
        one, other = self.names
        edit = partial(shaping.exchange_numbers, one=one, other=other)
        self._tried("Exchange numbers", edit)

    def _take_away(self) -> None:
        self._tried("Take away", partial(shaping.take_away, names=self.names))
        self._choose(())


def _shared(values: list[float]) -> float | None:
    return values[0] if len(set(values)) == 1 else None
