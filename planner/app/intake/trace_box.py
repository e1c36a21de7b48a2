"""Trace over a picture: two points of known distance, a level, the axis; then click contacts."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from planner.app.intake.attempts import tried
from planner.app.intake.figures import NAMES
from planner.app.panels.widgets.fields import Field
from planner.app.panels.widgets.labels import button, label
from planner.intake.tracing import centred, levelled, scaled
from planner.units import parse_length_mm

if TYPE_CHECKING:
    from planner.app.intake.drafting import Drafting
    from planner.intake.connector_draft import ConnectorDraft

Point = tuple[float, float]
_ASKS = {
    "axis": (1, "Click where the plug\u2019s axis goes through the picture."),
    "scale": (2, "Click two points whose distance you know, then write it."),
    "level": (2, "Click two points that lie level, the left one first."),
}
_FIRST = "A scan or photo can lie under the drawing; it is kept with the connector."
_NEXT = "Double click on each contact to place it."


class Pointing(QObject):
    """Gather the points that are wanted, in pixels of the picture."""

    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.what = ""
        self.points: tuple[Point, ...] = ()

    @property
    def wanted(self) -> int:
        """How many more are wanted."""
        return _ASKS[self.what][0] - len(self.points) if self.what else 0

    def ask(self, what: str) -> None:
        """Want the points of `axis`, `scale` or `level`; empty wants none."""
        self.what, self.points = what, ()
        self.changed.emit()

    def take(self, px: Point) -> None:
        """Take one."""
        self.points = (*self.points, px)
        self.changed.emit()


class TraceBox(QWidget):
    """Buttons for the picture; `attach` asks for one and keeps it with the library."""

    def __init__(self, drafting: "Drafting[ConnectorDraft]", attach: Callable[[], object]) -> None:
        super().__init__()
        self.drafting = drafting
        self.pointing = Pointing()
        self.picture = button("Picture\u2026", attach)
        self.axis = button("Axis", lambda: self.pointing.ask("axis"))
        self.scale = button("Scale", lambda: self.pointing.ask("scale"))
        self.level = button("Level", lambda: self.pointing.ask("level"))
        self.away = button("Take away", self._take_away)
        self.said = label(_FIRST, "second", wrap=True)
        self.apart = Field("Distance, mm", self._set_scale, "12.5, or 0.5 in", NAMES)
        row = QHBoxLayout()
        row.setSpacing(6)
        for made in (self.picture, self.axis, self.scale, self.level, self.away):
            row.addWidget(made)
        row.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addLayout(row)
        column.addWidget(self.said)
        column.addWidget(self.apart)
        self.pointing.changed.connect(self._on_points)
        drafting.changed.connect(self.show_draft)
        self.show_draft()

    def show_draft(self) -> None:
        """Offer what can be done to the picture."""
        there = self.drafting.draft.tracing is not None
        for made in (self.axis, self.scale, self.level, self.away):
            made.setVisible(there)
        measuring = self.pointing.what == "scale" and not self.pointing.wanted
        self.apart.setVisible(there and measuring)
        if not self.pointing.what:
            self.said.setText(_NEXT if there else _FIRST)

    def _on_points(self) -> None:
        what, points = self.pointing.what, self.pointing.points
        if what:
            self.said.setText(_ASKS[what][1])
        if what == "axis" and points:
            self._edit("Axis of the picture", lambda it: centred(it, points[0]))
        if what == "level" and len(points) == 2:
            self._edit("Level of the picture", lambda it: levelled(it, *points))
        self.show_draft()
        if what == "scale" and len(points) == 2:
            self.apart.line.setFocus()

    def _set_scale(self, typed: str) -> str:
        try:
            apart_mm = parse_length_mm(typed)
        except ValueError as error:
            return f"{error}."
        one, other = self.pointing.points
        return self._edit("Scale of the picture", lambda it: scaled(it, one, other, apart_mm))

    def _edit(self, text: str, change: Callable) -> str:
        def edit(draft: "ConnectorDraft") -> "ConnectorDraft":
            assert draft.tracing is not None
            return draft.evolve(tracing=change(draft.tracing))

        wrong = tried(self.drafting, text, edit)
        self.pointing.ask("")
        if wrong:
            self.said.setText(wrong)
        return wrong

    def _take_away(self) -> None:
        self.drafting.do("Take the picture away", lambda draft: draft.evolve(tracing=None))
