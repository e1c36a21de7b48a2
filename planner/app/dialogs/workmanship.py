"""The rules of workmanship of a plan: what each choice means, and where it comes from."""

from PySide6.QtWidgets import QDialog, QGridLayout, QLabel, QVBoxLayout, QWidget

from planner.app.dialogs.message import Choice, buttons_row
from planner.app.fonts import BODY, GUIDE, SMALL
from planner.app.labels import label
from planner.app.panels.widgets.fields import Combo
from planner.app.panels.widgets.text_line import TextLine
from planner.model.workmanship import Workmanship

_CHOICES = (
    (
        "insulation_gap",
        "Bare strand before the insulation",
        (
            (
                "one-to-two",
                "1 to 2 diameters over the insulation",
                "US Army STP 11-25R13-SM-TG, Appendix A",
            ),
            (
                "below-two",
                "Under 2 diameters of the conductor",
                "NASA-STD-8739.3, 9.1.1 and 9.1.2",
            ),
        ),
    ),
    (
        "sleeve_overlap",
        "Sleeve over the insulation",
        (
            ("five-mm", "5 mm or 2 diameters, the larger", "NASA-STD-8739.3, 9.8"),
            ("six-mm", "6 mm or 2 diameters, the larger", "J-STD-001"),
        ),
    ),
    (
        "shield_joint",
        "Joint of a shield",
        (
            ("free", "Wherever the iron reaches best", "no rule; the order that is computed"),
            ("first", "First of all", "no rule; the builder\u2019s own choice"),
            ("last", "Last of all", "no rule; the builder\u2019s own choice"),
        ),
    ),
)
_FIGURES = (
    (
        "sleeve_share",
        "Gap that wants a sleeve, %",
        "Of the connector\u2019s own smallest bare gap. Common practice, no source",
        100.0,
    ),
    (
        "watch_share",
        "Gap to watch, %",
        "Of the connector\u2019s own smallest bare gap. Common practice, no source",
        100.0,
    ),
    (
        "tolerance_mm",
        "Leads thought thicker by, mm",
        "Leads wander: every lead is taken this much thicker. From memory",
        1.0,
    ),
    (
        "trim_mm",
        "Cut off to square an end, mm",
        "Added to the cut length at each end of a cable. Common practice, no source",
        1.0,
    ),
)


class WorkmanshipDialog(QDialog):
    """Choose; nothing is changed before OK."""

    def __init__(self, parent: QWidget | None, now: Workmanship) -> None:
        super().__init__(parent)
        self.setWindowTitle("Workmanship")
        self.setMinimumWidth(560)
        self._now = now
        self.choices = {name: self._combo(name, rows) for name, _, rows in _CHOICES}
        self.figures = {name: self._line(name, per) for name, _, _, per in _FIGURES}
        self.error = label("", SMALL)
        self.error.setProperty("tone", "stop")
        self._sources: dict[str, QLabel] = {}
        self._build()

    def _combo(self, name: str, rows: tuple[tuple[str, str, str], ...]) -> Combo:
        made = Combo()
        for value, words, source in rows:
            made.addItem(words, (value, source))
        values = [value for value, _, _ in rows]
        made.setCurrentIndex(values.index(getattr(self._now, name)))
        return made

    def _line(self, name: str, per: float) -> TextLine:
        made = TextLine()
        made.setText(f"{getattr(self._now, name) * per:g}")
        return made

    def _build(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 20, 24, 20)
        column.setSpacing(8)
        column.addWidget(label("Workmanship", GUIDE, bold=True))
        said = "How this plan is to be built. Strips, sleeves, gaps and the order follow."
        column.addWidget(label(said, BODY, role="second"))
        column.addSpacing(4)
        column.addLayout(self._fields())
        column.addWidget(self.error)
        row, (ok, cancel) = buttons_row(
            (Choice("ok", "OK", primary=True), Choice("cancel", "Cancel", escape=True))
        )
        ok.clicked.connect(self.accept)
        cancel.clicked.connect(self.reject)
        column.addSpacing(4)
        column.addLayout(row)
        self.error.hide()

    def _fields(self) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(16)
        grid.setVerticalSpacing(4)
        for name, words, _ in _CHOICES:
            combo = self.choices[name]
            self._add(grid, words, combo, "")
            self._sources[name] = self._last_source
            combo.currentIndexChanged.connect(lambda _at, key=name: self._show_source(key))
            self._show_source(name)
        for name, words, source, _ in _FIGURES:
            self._add(grid, words, self.figures[name], source)
        grid.setColumnStretch(1, 1)
        return grid

    def _add(self, grid: QGridLayout, words: str, field: QWidget, source: str) -> None:
        row = grid.rowCount()
        name = label(words, BODY)
        name.setBuddy(field)
        field.setAccessibleName(words)
        grid.addWidget(name, row, 0)
        grid.addWidget(field, row, 1)
        self._last_source = label(source, SMALL, role="second")
        self._last_source.setWordWrap(True)
        grid.addWidget(self._last_source, row + 1, 1)
        grid.setRowMinimumHeight(row + 2, 8)
        grid.addWidget(QWidget(), row + 2, 0)

    def _show_source(self, name: str) -> None:
        _, source = self.choices[name].currentData()
        self._sources[name].setText(f"Source: {source}")
        self.choices[name].setAccessibleDescription(source)

    def chosen(self) -> dict[str, object]:
        """Return every rule by its name; ValueError where a figure is none."""
        found: dict[str, object] = {
            name: combo.currentData()[0] for name, combo in self.choices.items()
        }
        for name, _, _, per in _FIGURES:
            typed = self.figures[name].text().strip().replace(",", ".")
            found[name] = float(typed) / per
        return found

    def accept(self) -> None:
        """Close if every figure can be; else say what is wrong."""
        wrong = self._wrong()
        self.error.setText(wrong)
        self.error.setVisible(bool(wrong))
        if not wrong:
            super().accept()

    def _wrong(self) -> str:
        for name, words, _, per in _FIGURES:
            typed = self.figures[name].text().strip().replace(",", ".")
            try:
                self._now.evolve(**{name: float(typed) / per})
            except ValueError:
                self.figures[name].setFocus()
                return f"{words}: that can\u2019t be {typed or 'empty'}. Type another figure."
        return ""

    def ask(self) -> dict[str, object] | None:
        """Show, wait, and return what was chosen; None where it was left."""
        return self.chosen() if self.exec() else None
