"""Place contacts by rule: on a ring, or in rows."""

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from planner.app.buttons import segment
from planner.app.intake.figures import NAMES
from planner.app.panels.widgets.fields import Field, check
from planner.app.panels.widgets.labels import button, label
from planner.geometry.placing import Grid, Ring
from planner.units import parse_figure

if TYPE_CHECKING:
    from planner.drawing.looks import Look

_RING = (
    ("count", "Contacts", "5", "How many"),
    ("circle", "Circle, mm", "7", "Diameter of the circle through their middles"),
    ("start", "First at, \u00b0", "90", "Counter-clockwise from the right; 90 is up"),
    ("step", "Step, \u00b0", "", "From one to the next; empty: shared out evenly"),
)
_ROWS = (
    ("counts", "In each row", "13 12", "Contacts of each row, the top one first"),
    ("pitch", "Pitch, mm", "2.77", "From one to the next along a row"),
    ("row", "Rows apart, mm", "2.84", "From row to row"),
    ("stagger", "Moved by, mm", "", "Every second row; empty: each row centred"),
)


class RuleBox(QWidget):
    """Two pages of fields; `place` gets the rule and the numbers."""

    def __init__(self, look: "Look", place: Callable[[Ring | Grid, Sequence[str]], str]) -> None:
        super().__init__()
        self._place = place
        self.fields: dict[str, Field] = {}
        self.clockwise = check("Clockwise", lambda _on: None)
        self.leftwards = check("From right to left", lambda _on: None)
        self.numbers = Field("Numbers", lambda _text: "", "1 4 2 5 3; empty: 1, 2, 3 \u2026", NAMES)
        self.error = label("", "error", wrap=True)
        self.error.hide()
        self.button = button("Place them", self.place)
        self.button.setToolTip("Those that are there move; the others are made")
        self.pages = QStackedWidget()
        self.pages.addWidget(self._page(_RING, self.clockwise))
        self.pages.addWidget(self._page(_ROWS, self.leftwards))
        self.tabs = [segment("Ring", "first", look), segment("Rows", "last", look)]
        self._lay_out()

    def _page(self, fields: Sequence[tuple[str, str, str, str]], last: QWidget) -> QWidget:
        page = QWidget()
        column = QVBoxLayout(page)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        for name, words, usual, tip in fields:
            field = Field(words, lambda _text: "", tip, NAMES)
            field.line.setText(usual)
            field.line.returnPressed.connect(self.place)
            self.fields[name] = field
            column.addWidget(field)
        column.addWidget(last)
        return page

    def _lay_out(self) -> None:
        group, row = QButtonGroup(self), QHBoxLayout()
        row.setSpacing(0)
        for at, tab in enumerate(self.tabs):
            tab.clicked.connect(lambda _on=False, page=at: self.show_page(page))
            group.addButton(tab)
            row.addWidget(tab)
        row.addStretch(1)
        self.tabs[0].setChecked(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(5)
        column.addLayout(row)
        foot = QHBoxLayout()
        foot.addWidget(self.button)
        foot.addStretch(1)
        for part in (self.pages, self.numbers, self.error):
            column.addWidget(part)
        column.addLayout(foot)

    def show_page(self, page: int) -> None:
        """Show the fields of a ring (0) or of rows (1)."""
        self.tabs[page].setChecked(True)
        self.pages.setCurrentIndex(page)

    def place(self) -> None:
        """Place contacts by what the fields say."""
        try:
            wrong = self._place(self._rule(), self.numbers.line.text().replace(",", " ").split())
        except ValueError as error:
            wrong = f"{error}."
        self.error.setText(wrong)
        self.error.setVisible(bool(wrong))

    def _rule(self) -> Ring | Grid:
        if self.pages.currentIndex() == 0:
            return Ring(
                int(self._figure("count")),
                self._figure("circle"),
                self._figure("start"),
                self._figure("step", 0.0),
                clockwise=self.clockwise.isChecked(),
            )
        stagger = self.fields["stagger"].line.text().strip()
        return Grid(
            tuple(int(parse_figure(it)) for it in self._text("counts").split()),
            self._figure("pitch"),
            self._figure("row"),
            self._figure("stagger") if stagger else None,
            leftwards=self.leftwards.isChecked(),
        )

    def _text(self, name: str) -> str:
        return self.fields[name].line.text().replace(",", " " if name == "counts" else ".")

    def _figure(self, name: str, empty: float | None = None) -> float:
        text = self._text(name).strip()
        if not text and empty is not None:
            return empty
        return parse_figure(text, "mm", "\u00b0")
