"""The source card: on whose word the pinout rests, with the papers that show it."""

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from planner.app.intake.statement_box import StatementBox
from planner.app.panels.widgets.fields import Choice, Field
from planner.app.panels.widgets.labels import Head, button, label

if TYPE_CHECKING:
    from planner.app.intake.drafting import Drafting
    from planner.intake.pinout_draft import PinoutDraft
    from planner.model.connector import Connector

KINDS = (  # each begins with a letter of its own, so that a key chooses it
    ("", "choose"),
    ("standard", "standard"),
    ("drawing", "drawing of the maker"),
    ("letter", "letter or mail"),
    ("measured", "measured on a sample"),
    ("practice", "common practice of the trade"),
    ("hearsay", "hearsay"),
    ("memory", "from memory"),
)
_FIELDS = (
    (
        "reference",
        "Reference",
        "What it is called and where it stands: title, page, drawing number",
    ),
    ("date", "Date", "Of the paper, or of the day it was said or measured"),
    ("recorded_by", "Recorded by", "Who took it in at this bench"),
)


class SourceCard(QWidget):
    """Edit the source of a pinout draft; `attach` asks for a file and keeps it."""

    def __init__(
        self,
        drafting: "Drafting[PinoutDraft]",
        attach: Callable[[], object],
        connector: "Callable[[], Connector | None]",
        name_width: int = 104,
    ) -> None:
        super().__init__()
        self.drafting = drafting
        self.kind = Choice("On whose word", KINDS, partial(self._set, "source_kind"), name_width)
        self.fields = {
            name: Field(words, partial(self._set, name), tip, name_width)
            for name, words, tip in _FIELDS
        }
        self.papers = label("", "small", wrap=True)
        self.statements = StatementBox(drafting, connector, KINDS, name_width)
        self.add = button("Attach a paper or picture\u2026", attach)
        self.add.setToolTip("A copy is kept with the library, found by its digest")
        row = QHBoxLayout()
        row.addWidget(self.add)
        row.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        for part in (Head("Source card"), self.kind, *self.fields.values(), self.papers):
            column.addWidget(part)
        column.addLayout(row)
        column.addWidget(self.statements)
        drafting.changed.connect(self.show_draft)
        self.show_draft()

    def _set(self, name: str, value: str) -> str:
        self.drafting.do(f"Source: {name}", lambda draft: draft.evolve(**{name: value}))
        return ""

    def show_draft(self) -> None:
        """Show what is said so far."""
        draft = self.drafting.draft
        self.kind.show_value(draft.source_kind)
        for name, field in self.fields.items():
            field.show_text(getattr(draft, name))
        names = [document.name for document in draft.documents]
        self.papers.setText("Kept with it: " + ", ".join(names) if names else "No paper is kept.")
