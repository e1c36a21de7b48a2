"""What is still to land: a row for each core and end, apart from the findings."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from planner.app.panels.widgets.drawn import MarkLabel
from planner.app.panels.widgets.labels import Head, label, restyle
from planner.app.panels.words import contact_words, wire_code
from planner.app.workbench import Workbench
from planner.drawing.looks import Look
from planner.model.place import Place

MOST = 8


class LeftRow(QWidget):
    """One core that is not landed at one end."""

    chosen = Signal(object)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.place = Place()
        self.mark = MarkLabel("empty", 8, look)
        self.words = label("")
        self.state = label("", "second")
        row = QHBoxLayout(self)
        row.setContentsMargins(18, 2, 16, 2)
        row.addWidget(self.mark)
        row.addSpacing(12)
        row.addWidget(self.words, 1)
        row.addWidget(self.state)
        self.setMinimumHeight(24)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)

    def show_place(self, place: Place, words: str, *, in_hand: bool) -> None:
        """Show a core at an end, loose or in hand."""
        self.place = place
        self.mark.set_kind("hand" if in_hand else "empty", "in hand" if in_hand else "loose")
        self.words.setText(words)
        self.state.setText("in hand" if in_hand else "loose")
        restyle(self.state, "tone", "accent" if in_hand else "second")
        self.setAccessibleName(f"{words}, {self.state.text()}")
        self.setToolTip("Go to it")

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Go to it."""
        self.chosen.emit(self.place)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter and Space go to it."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space}:
            self.chosen.emit(self.place)
        else:
            super().keyPressEvent(event)


class StillToLand(QWidget):
    """The list, at most `MOST` long; the table of landings has all of it."""

    chosen = Signal(object)

    def __init__(self, workbench: Workbench, look: Look) -> None:
        super().__init__()
        self._workbench = workbench
        self._look = look
        self._left: tuple[tuple[str, str], ...] = ()
        self._rows: list[LeftRow] = []
        self.head = Head("Still to land", "section")
        self.head.setContentsMargins(16, 10, 16, 4)
        self.more = label("", "small")
        self.more.setContentsMargins(48, 2, 16, 2)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.head)
        self._list = QVBoxLayout()
        self._list.setSpacing(0)
        column.addLayout(self._list)
        column.addWidget(self.more)

    def show_left(self, left: Sequence[tuple[str, str]]) -> None:
        """Show what is left, as (end, conductor)."""
        self._left = tuple(left)
        self.refresh()

    def refresh(self) -> None:
        """Show the list again: what is in hand comes first."""
        places = [Place(end=end, conductor=conductor) for end, conductor in self._left]
        hand = self._workbench.hand
        places.sort(key=lambda place: place != hand)
        self.setVisible(bool(places))
        self.head.set_note(str(len(places)))
        while len(self._rows) < min(len(places), MOST):
            self._rows.append(LeftRow(self._look))
            self._rows[-1].chosen.connect(self.chosen)
            self._list.addWidget(self._rows[-1])
        for at, row in enumerate(self._rows):
            row.setVisible(at < len(places))
            if at < len(places):
                row.show_place(places[at], self._words(places[at]), in_hand=places[at] == hand)
        self.more.setVisible(len(places) > MOST)
        self.more.setText(f"and {len(places) - MOST} more, in the landings")

    def _words(self, place: Place) -> str:
        plan = self._workbench.plan
        conductor = plan.conductor_by_id.get(place.conductor)
        code = wire_code(plan, conductor, place.end) if conductor else place.conductor
        over = self._workbench.over
        if place == self._workbench.hand and over:
            return f"{code} at {place.end}, {contact_words(plan, place.end, over)}"
        return f"{code} at {place.end}"
