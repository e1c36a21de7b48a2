"""What each statement rests on: for some contacts another word than the record's own source."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from planner.app.intake.attempts import tried
from planner.app.panels.widgets.fields import Choice, Field
from planner.app.panels.widgets.labels import button, label
from planner.app.panels.words import SOURCE_WORDS
from planner.intake.statements import contacts_from, state, unstate
from planner.model.source import Statement
from planner.problem import EditRefused

if TYPE_CHECKING:
    from collections.abc import Callable

    from planner.app.intake.drafting import Drafting
    from planner.intake.pinout_draft import PinoutDraft
    from planner.model.connector import Connector

_TIP = "As moulded or as spoken: R1, R2"


class StatementBox(QWidget):
    """List the statements of a draft, add one, take one away; each is one undo step."""

    def __init__(
        self,
        drafting: "Drafting[PinoutDraft]",
        connector: "Callable[[], Connector | None]",
        kinds: tuple[tuple[str, str], ...],
        name_width: int,
    ) -> None:
        super().__init__()
        self.drafting, self._connector = drafting, connector
        self._written: dict[str, str] = {}
        self._lines = QVBoxLayout()
        self.open = button("Another word for some contacts\u2026", self._open)
        self.open.setToolTip("Where the letter gives some, and a colleague said the rest")
        self.contacts = Field("Contacts", partial(self._write, "contacts"), _TIP, name_width)
        self.kind = Choice("On whose word", kinds, partial(self._write, "kind"), name_width)
        self.reference = Field("Reference", partial(self._write, "reference"), "", name_width)
        self.paper = Choice("Shown by", (), partial(self._write, "document"), name_width)
        self.add = button("Add it", self._add)
        self.error = label("", "error", wrap=True)
        self._lay_out()
        drafting.changed.connect(self.show_draft)
        self._fold(folded=True)
        self.show_draft()

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        self._lines.setSpacing(2)
        column.addLayout(self._lines)
        self.form = QWidget()
        inner = QVBoxLayout(self.form)
        inner.setContentsMargins(0, 0, 0, 0)
        inner.setSpacing(4)
        for part in (self.contacts, self.kind, self.reference, self.paper, self.error):
            inner.addWidget(part)
        column.addWidget(self.form)
        for made in (self.open, self.add):
            row = QHBoxLayout()
            row.addWidget(made)
            row.addStretch(1)
            (column if made is self.open else inner).addLayout(row)

    def _fold(self, *, folded: bool) -> None:
        self.form.setVisible(not folded)
        self.open.setVisible(folded)

    def _open(self) -> None:
        self._written = {}
        for field in (self.contacts, self.reference):
            field.show_text("")
        self.kind.show_value("")
        self.error.hide()
        self._fold(folded=False)
        self.contacts.line.setFocus()

    def _write(self, name: str, value: str) -> str:
        self._written[name] = value
        return ""

    def _add(self) -> None:
        wrong = tried(self.drafting, "State what contacts rest on", self._stated)
        self.error.setText(wrong)
        self.error.setVisible(bool(wrong))
        if not wrong:
            self._fold(folded=True)
            self.open.setFocus()

    def _stated(self, draft: "PinoutDraft") -> "PinoutDraft":
        connector, kind = self._connector(), self._written.get("kind", "")
        if connector is None:
            raise EditRefused("the connector is not chosen yet", "Choose it first.")
        contacts = contacts_from(self._written.get("contacts", ""), connector)
        if not kind:
            raise EditRefused("nobody has said on whose word it rests", "Choose it.")
        return state(
            draft,
            Statement(
                contacts=contacts,
                kind=kind,
                reference=self._written.get("reference", ""),
                document=self._written.get("document", ""),
            ),
        )

    def show_draft(self) -> None:
        """Show what is stated so far."""
        draft = self.drafting.draft
        while (item := self._lines.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.deleteLater()
        papers = {it.digest: it.name for it in draft.documents}
        for each in draft.statements:
            self._lines.addWidget(self._line(each, papers.get(each.document, "")))
        self.paper.set_choices([("", "no paper"), *papers.items()])
        self.paper.show_value(self._written.get("document", ""))
        self.paper.setVisible(bool(papers))

    def _line(self, said: Statement, paper: str) -> QWidget:
        names = ", ".join(said.contacts)
        told = ", ".join(filter(None, (SOURCE_WORDS[said.kind], said.reference, paper)))
        made = QWidget()
        row = QHBoxLayout(made)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(label(f"{names}: {told}", "second", wrap=True), 1)
        away = button("Take away", partial(self._take_away, said.contacts), "plain")
        away.setAccessibleName(f"Take away what {names} rests on")
        row.addWidget(away)
        return made

    def _take_away(self, contacts: tuple[str, ...]) -> None:
        self.drafting.do("Take a statement away", partial(unstate, contacts=contacts))
