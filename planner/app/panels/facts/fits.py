"""In hand: what goes into what at an end, a row each, and the picture of one of them."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from planner.app.panels.widgets.drawn import Drawn, MarkLabel
from planner.app.panels.widgets.labels import Head, label, restyle
from planner.app.panels.words import wire_at
from planner.app.workbench import Workbench
from planner.drawing.looks import Look
from planner.drawing.marks import MarkKind
from planner.drawing.packing import Parts, fit_picture
from planner.drawing.primitives import DrawList
from planner.dryfit.fit import fit_end
from planner.dryfit.fit_words import (
    Gravity,
    figure_words,
    fit_words,
    gravity,
    head_words,
    verdict_words,
)
from planner.dryfit.wires import FitLine, end_fits

PICTURE = (222, 128)  # as wide as the narrowest margin gives
# Of more of a kind than this, those that fit share one row.
MOST = 6
_MARKS: dict[Gravity, MarkKind] = {
    "stop": "stop", "caution": "caution", "note": "note", "clear": "tick",
}  # fmt: skip
_GRAVEST: tuple[Gravity, ...] = ("stop", "caution", "note", "clear")


class FitRow(QWidget):
    """One fit in words; a click, Enter or Space shows its picture."""

    chosen = Signal(object)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.line: FitLine | None = None
        self.mark = MarkLabel("tick", 8, look)
        self.words = label("", wrap=True)
        self.figures = label("", "small", wrap=True)
        text = QVBoxLayout()
        text.setSpacing(0)
        text.addWidget(self.words)
        text.addWidget(self.figures)
        row = QHBoxLayout(self)
        row.setContentsMargins(2, 2, 2, 2)
        row.setSpacing(8)
        row.addWidget(self.mark, 0, Qt.AlignmentFlag.AlignTop)
        row.addLayout(text, 1)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def show_line(self, line: FitLine, more: int) -> None:
        """Show a fit; `more` is how many others like it fit more easily."""
        self.line = line
        self.mark.set_kind(_MARKS[gravity(line)])
        besides = f"; {more} others have more room" if more else ""
        self.words.setText(head_words(line) + besides)
        doubt = () if line.fit.answer == "fits" else (verdict_words(line),)
        self.figures.setText(", ".join((*doubt, *figure_words(line))))
        self.setAccessibleName(f"{fit_words(line)}{besides}")

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Show the picture."""
        self.chosen.emit(self.line)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter and Space show the picture."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space}:
            self.chosen.emit(self.line)
        else:
            super().keyPressEvent(event)


class Fits(QWidget):
    """The rows, and the picture of the row chosen last, else of the worst."""

    def __init__(self, workbench: Workbench, look: Look) -> None:
        super().__init__()
        self._workbench = workbench
        self._look = look
        self._rows: list[FitRow] = []
        self._chosen = ""
        self.head = Head("Fits", "section")
        self.picture = Drawn(PICTURE, look)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.head)
        self._list = QVBoxLayout()
        self._list.setSpacing(0)
        column.addWidget(self.picture)
        column.addLayout(self._list)

    def show_end(self, end: str) -> None:
        """Show the fits of an end; nothing while nothing is landed there."""
        plan = self._workbench.plan
        fit = fit_end(plan, self._workbench.wiring, end)
        shown = grouped(end_fits(plan, fit)) if fit is not None else []
        self.setVisible(bool(shown))
        while len(self._rows) < len(shown):
            self._rows.append(FitRow(self._look))
            self._rows[-1].chosen.connect(self._on_chosen)
            self._list.addWidget(self._rows[-1])
        for row, (line, more) in zip(self._rows, shown, strict=False):
            row.show_line(line, more)
        for at, row in enumerate(self._rows):
            row.setVisible(at < len(shown))
        if shown:
            self._show_picture([line for line, _ in shown])

    def _show_picture(self, lines: Sequence[FitLine]) -> None:
        line = next((it for it in lines if _key(it) == self._chosen), None) or worst(lines)
        left = sum(it.fit.answer != "fits" for it in lines)
        self.head.set_note(f"{left} in doubt" if left else "all proved")
        for row in self._rows:
            restyle(row, "picked", "true" if row.line is line else "false")
        parts = self._parts(line)

        def drawing(look: Look) -> DrawList:
            width, height = PICTURE
            corner = (0.0, 0.0)
            return fit_picture(
                line, parts, corner=corner, width=width, height=height, size=13.0, look=look
            )

        self.picture.show_drawing(drawing)
        self.picture.setAccessibleName(fit_words(line))

    def _parts(self, line: FitLine) -> Parts:
        plan = self._workbench.plan
        found = {it: wire_at(plan, plan.conductor_by_id[it], line.where.end) for it in line.wires}
        return {name: part for name, part in found.items() if part is not None}

    def _on_chosen(self, line: FitLine) -> None:
        self._chosen = _key(line)
        self._show_picture([row.line for row in self._rows if row.line and not row.isHidden()])


def grouped(lines: Sequence[FitLine]) -> list[tuple[FitLine, int]]:
    """Return the lines to show with how many others stand for each: of many alike, the worst."""
    shown = [(line, 0) for line in lines]
    for what in ("strands", "sleeve"):
        easy = [line for line in lines if line.what == what and line.fit.answer == "fits"]
        if len(easy) > MOST:
            least = worst(easy)
            others = len(easy) - 1
            shown = [(it, others if it is least else more) for it, more in shown]
            shown = [each for each in shown if each[0] is least or each[0] not in easy]
    return shown


def worst(lines: Sequence[FitLine]) -> FitLine:
    """Return the gravest line; of equally grave ones, one with several wires and the least room."""

    def rank(line: FitLine) -> tuple[int, bool, float]:
        fit = line.fit
        room = fit.has_mm / fit.needs_mm if fit.needs_mm else 0.0
        return _GRAVEST.index(gravity(line)), len(line.wires) < 2, room

    return min(lines, key=rank)


def _key(line: FitLine) -> str:
    return f"{line.what}/{line.where.key}"
