"""Title, order, revision and remarks of the plan."""

from dataclasses import dataclass

from PySide6.QtWidgets import QDialog, QPlainTextEdit, QSpinBox, QVBoxLayout, QWidget

from planner.app.dialogs.framed import answer_row
from planner.app.dialogs.message import Choice
from planner.app.fonts import BODY, GUIDE
from planner.app.labels import label
from planner.app.panels.widgets.text_line import TextLine
from planner.model.plan import Plan

_LONGEST = 200


@dataclass(frozen=True, slots=True)
class Details:
    """What the builder wrote."""

    title: str
    order: str
    revision: int
    remarks: str


class DetailsDialog(QDialog):
    """Four fields; Esc leaves everything as it was."""

    def __init__(self, parent: QWidget | None, plan: Plan) -> None:
        super().__init__(parent)
        self.setWindowTitle("Title and order")
        self.setMinimumWidth(480)
        self.title, self.order = TextLine(), TextLine()
        self.revision = QSpinBox()
        self.revision.setRange(1, 9999)
        self.revision.setValue(plan.revision)
        self.remarks = QPlainTextEdit(plan.remarks)
        self.remarks.setTabChangesFocus(True)
        self.remarks.setMinimumHeight(96)
        for line, text in ((self.title, plan.title), (self.order, plan.order)):
            line.setMaxLength(_LONGEST)
            line.setText(text)
        self.title.selectAll()  # what is typed replaces it, as after Tab
        self._build()

    def _build(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 20, 24, 20)
        column.setSpacing(4)
        column.addWidget(label("Title and order", GUIDE, bold=True))
        column.addSpacing(8)
        for words, field in (
            ("Title", self.title),
            ("Order", self.order),
            ("Revision", self.revision),
            ("Remarks, printed on the sheet", self.remarks),
        ):
            name = label(words, BODY, role="second")
            name.setBuddy(field)
            field.setAccessibleName(words)
            column.addWidget(name)
            column.addWidget(field)
            column.addSpacing(8)
        ok = Choice("ok", "OK", primary=True)
        row, *_ = answer_row(self, ok, Choice("cancel", "Cancel", escape=True))
        column.addLayout(row)

    def ask(self) -> Details | None:
        """Show, wait, and return what was written; None where it was left."""
        if not self.exec():
            return None
        return Details(
            self.title.text().strip(),
            self.order.text().strip(),
            self.revision.value(),
            self.remarks.toPlainText().strip(),
        )
