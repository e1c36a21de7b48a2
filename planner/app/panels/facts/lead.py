"""In hand: the plan as a whole, when nothing in it is selected: title, order, remarks."""

from functools import partial

from planner.app.panels.facts.electrical import LeadFigures
from planner.app.panels.facts.page import Page
from planner.app.panels.facts.units import ShownUnits
from planner.app.panels.widgets.fields import Field, Notes
from planner.app.panels.widgets.labels import label
from planner.app.workbench import Workbench
from planner.drawing.looks import Look
from planner.edits import texts


class LeadPage(Page):
    """Show the plan's own words; all of them print on the sheet."""

    word = "the lead"

    def __init__(self, workbench: Workbench, look: Look, units: ShownUnits) -> None:
        super().__init__(workbench, look, units)
        self.title = Field("Title", self._on_title, "What the lead is called on the sheet")
        self.order = Field("Order", self._on_order, "The order reference on the sheet")
        self.revision = Field("Revision", self._on_revision, "A whole number from 1 up")
        self.remarks = Notes("Remarks", self._on_remarks)
        for part in (self.title, self.order, self.revision):
            self.column.addWidget(part)
        self.column.addWidget(label("Remarks", "second"))
        self.column.addWidget(self.remarks)
        self.column.addWidget(
            label("Click an end, a core or a contact: its facts show here.", "small", wrap=True)
        )
        self.figures = LeadFigures(self.do)
        self.column.addWidget(self.figures)
        self.column.addStretch(1)

    def refresh(self) -> None:
        """Show the plan's words."""
        plan = self.workbench.plan
        self.title.show_text(plan.title)
        self.order.show_text(plan.order)
        self.revision.show_text(str(plan.revision))
        self.remarks.show_text(plan.remarks)
        self.figures.show_plan(plan, self.workbench.wiring)

    def _on_title(self, text: str) -> str:
        return self.do("Title", partial(texts.set_title, title=text))

    def _on_order(self, text: str) -> str:
        return self.do("Order reference", partial(texts.set_order, order=text))

    def _on_revision(self, text: str) -> str:
        if not (text.isascii() and text.isdigit() and 0 < int(text) < 10_000):
            return f"{text!r} is not a revision: write a whole number such as 3."
        return self.do("Revision", partial(texts.set_revision, revision=int(text)))

    def _on_remarks(self, text: str) -> None:
        wrong = self.do("Remarks", partial(texts.set_remarks, remarks=text))
        if wrong:
            self.workbench.refused.emit(wrong, "")
