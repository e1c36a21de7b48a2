"""What surrounds the contacts: shell, barrel, clamp; and what the figures rest on."""

from functools import partial
from typing import TYPE_CHECKING

from pydantic import ValidationError
from PySide6.QtWidgets import QVBoxLayout, QWidget

from planner.app.intake.attempts import tried
from planner.app.intake.figures import NAMES, FigureField
from planner.app.panels.widgets.fields import Choice, Field
from planner.app.panels.widgets.labels import label
from planner.intake.connector_draft import FIGURE_GROUPS
from planner.model.connector import FigureBasis, Shell
from planner.problem import EditRefused

if TYPE_CHECKING:
    from planner.app.intake.drafting import Drafting
    from planner.intake.connector_draft import ConnectorDraft

_FIGURES = (
    ("shell", "bore_mm", "Inside bore", "Of a round shell, where the terminals are"),
    ("shell", "width_mm", "Inside width", "Of a D or oblong shell"),
    ("shell", "height_mm", "Inside height", "Of a D or oblong shell"),
    ("barrel", "outside_mm", "Barrel outside", "The largest diameter that a part must pass"),
    ("barrel", "bore_mm", "Barrel bore", "What the cores pass through"),
    ("barrel", "length_mm", "Barrel length", ""),
    ("clamp", "min_mm", "Clamp from", "The thinnest jacket that it grips"),
    ("clamp", "max_mm", "Clamp to", "The thickest jacket that it grips"),
)
_SHAPES = (("round", "round"), ("d", "D or oblong"))
_MATING = (("through", "contacts go straight through"), ("concentric", "rings on one axis: a jack"))
_BASIS = (
    ("memory", "from memory: to be measured"),
    ("measured", "measured on a part"),
    ("standard", "a standard"),
    ("computed", "computed"),
)


class HullBox(QWidget):
    """Fields of shell, barrel, clamp and mating."""

    def __init__(self, drafting: "Drafting[ConnectorDraft]") -> None:
        super().__init__()
        self.drafting = drafting
        self.shape = Choice("Shell", _SHAPES, self._set_shape, NAMES)
        self.mating = Choice("Mating", _MATING, self._set_mating, NAMES)
        self.fields = {
            (group, name): FigureField(words, partial(self._set, group, name), tip=tip)
            for group, name, words, tip in _FIGURES
        }
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        for part in (self.shape, *self.fields.values(), self.mating):
            column.addWidget(part)
        drafting.changed.connect(self.show_draft)

    def show_draft(self) -> None:
        """Show the figures."""
        draft = self.drafting.draft
        self.shape.show_value(draft.shell.shape)
        self.mating.show_value(draft.mating)
        for (group, name), field in self.fields.items():
            field.show_figure(getattr(getattr(draft, group), name))
            if group == "shell":
                field.setVisible((name == "bore_mm") == (draft.shell.shape == "round"))

    def _set(self, group: str, name: str, value: float) -> str:
        def edit(draft: "ConnectorDraft") -> "ConnectorDraft":
            try:
                return draft.evolve(**{group: getattr(draft, group).evolve(**{name: value})})
            except ValidationError as error:
                said = error.errors()[0]["msg"].removeprefix("Value error, ")
                raise EditRefused(said, "Correct the figure") from None

        return tried(self.drafting, "Figure", edit)

    def _set_shape(self, shape: str) -> None:
        def edit(draft: "ConnectorDraft") -> "ConnectorDraft":
            across = draft.shell.narrowest_mm
            if shape == "round":
                return draft.evolve(shell=Shell(bore_mm=across))
            shell = Shell(shape="d", width_mm=draft.shell.width_mm or 2 * across, height_mm=across)
            return draft.evolve(shell=shell)

        self.drafting.do("Shape of the shell", edit)

    def _set_mating(self, mating: str) -> None:
        self.drafting.do("Mating", lambda draft: draft.evolve(mating=mating))


class BasisBox(QWidget):
    """What each group of figures rests on: memory means to be measured on the part."""

    def __init__(self, drafting: "Drafting[ConnectorDraft]") -> None:
        super().__init__()
        self.drafting = drafting
        self.kinds: dict[str, Choice] = {}
        self.references: dict[str, Field] = {}
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        for group in FIGURE_GROUPS:
            kind = Choice(group.capitalize(), _BASIS, partial(self._set, group, "kind"), NAMES)
            words = partial(self._set, group, "reference")
            reference = Field("", words, f"Where the {group} stand: title, page", NAMES)
            reference.line.setAccessibleName(f"Reference for the {group}")
            self.kinds[group], self.references[group] = kind, reference
            column.addWidget(kind)
            column.addWidget(reference)
        column.addWidget(label("What is from memory is to be measured on the part.", "small"))
        drafting.changed.connect(self.show_draft)

    def _of(self, group: str) -> FigureBasis:
        found = (it for it in self.drafting.draft.basis if it.figures == group)
        return next(found, FigureBasis(figures=group, kind="memory"))

    def _set(self, group: str, name: str, value: str) -> str:
        changed = self._of(group).evolve(**{name: value})

        def edit(draft: "ConnectorDraft") -> "ConnectorDraft":
            others = [it for it in draft.basis if it.figures != group]
            basis = sorted((*others, changed), key=lambda it: FIGURE_GROUPS.index(it.figures))
            return draft.evolve(basis=tuple(basis))

        return tried(self.drafting, "What figures rest on", edit)

    def show_draft(self) -> None:
        """Show what each rests on."""
        for group, kind in self.kinds.items():
            basis = self._of(group)
            kind.show_value(basis.kind)
            self.references[group].show_text(basis.reference)
            self.references[group].setVisible(basis.kind != "memory")
