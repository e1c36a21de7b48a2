"""The base of the in-hand pages: a column of facts and fields about one selected thing."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from planner.app.panels.facts.units import ShownUnits
from planner.app.panels.widgets.fields import attempt
from planner.app.panels.widgets.rows import Fact
from planner.app.workbench import Edit, Workbench
from planner.drawing.looks import Look


class Page(QWidget):
    """A page reads what it shows from the workbench; the panel says when."""

    word = ""

    def __init__(self, workbench: Workbench, look: Look, units: ShownUnits) -> None:
        super().__init__()
        self.workbench = workbench
        self.look = look
        self.units = units
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(16, 4, 16, 12)
        self.column.setSpacing(4)
        self._facts: dict[str, Fact] = {}

    def refresh(self) -> None:
        """Show what is selected now."""
        raise NotImplementedError

    def add_facts(self, *names: str) -> None:
        """Add empty rows for facts."""
        for name in names:
            self._facts[name] = Fact(name)
            self.column.addWidget(self._facts[name])

    def fact(self, name: str) -> str:
        """Return what a fact says now."""
        return self._facts[name].value.text()

    def show_fact(self, name: str, text: str) -> None:
        """Show a fact; an empty one takes no room."""
        self._facts[name].show_value(text)

    def do(self, text: str, edit: Edit) -> str:
        """Do an edit as one undo step; return why not, or nothing."""
        return attempt(self.workbench, text, edit)
