"""The turn of the plug: the dial, the angle as a figure, Best turn and what it may change."""

import re
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from planner.app.buttons import ActionButton
from planner.app.fitting.dial_face import DialFace
from planner.app.fitting.progress_bar import ProgressRow
from planner.app.fitting.words import best_said, degrees
from planner.app.panels.widgets.fields import Line, check
from planner.app.panels.widgets.labels import label

if TYPE_CHECKING:
    from planner.app.actions import Actions
    from planner.app.fitting.fit_acts import FitActs
    from planner.drawing.looks import Look

FREE = "Any core of the same make"
FREE_SAID = "Even of another colour."
_ANGLE = re.compile(r"[-+\u2212]?\d+(?:[.,]\d+)?")


def angle_of(text: str) -> float | None:
    """Read an angle as typed: `-12.5`, `30\u00b0`, with a comma or a true minus; None if none."""
    plain = text.strip().removesuffix("\u00b0").strip()
    if not _ANGLE.fullmatch(plain):
        return None
    return float(plain.replace("\u2212", "-").replace(",", "."))


class TurnBox(QWidget):
    """Show and change the turn."""

    def __init__(self, acts: "FitActs", actions: "Actions", look: "Look") -> None:
        super().__init__()
        self._acts, self._state = acts, acts.state
        self.dial = DialFace(acts.state, look)
        self.error = label("", "error", wrap=True)
        self.error.hide()
        self.angle = Line("Turn in degrees, counter-clockwise", self._commit, self.error)
        self.angle.setToolTip("The plug\u2019s turn in degrees, counter-clockwise")
        self.best = ActionButton(actions["best_turn"], look, text="Best turn")
        self.best.setProperty("role", "primary")
        self.free = check(FREE, self._on_free, FREE_SAID)
        self.free_said = label(FREE_SAID, "small", wrap=True)
        self.best_said = label("", "small", wrap=True)
        self.progress = ProgressRow(acts.seeker, acts.call_off, look)
        self._build()
        self._state.changed.connect(self.renew)
        self._state.turned.connect(self.renew)
        self._state.dial_changed.connect(self._on_dial_changed)
        acts.seeker.shown_changed.connect(self._on_seeking)

    def _build(self) -> None:
        field = QHBoxLayout()
        field.setSpacing(4)
        field.addWidget(self.angle, 1)
        field.addWidget(label("\u00b0"))
        side = QVBoxLayout()
        side.setSpacing(6)
        side.addStretch(1)
        side.addWidget(label("Turn", "second"))
        side.addLayout(field)
        side.addWidget(self.error)
        side.addSpacing(4)
        side.addWidget(self.best)
        side.addStretch(1)
        top = QHBoxLayout()
        top.setSpacing(8)
        top.addWidget(self.dial)
        top.addLayout(side, 1)
        column = QGridLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setVerticalSpacing(4)
        column.addLayout(top, 0, 0)
        for row, part in enumerate((self.best_said, self.progress, self.free, self.free_said), 1):
            column.addWidget(part, row, 0)
        self.free_said.setContentsMargins(26, 0, 0, 0)

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        for part in (self.dial, self.best, self.progress):
            part.set_look(look)

    def renew(self) -> None:
        """Show the turn that the plug has now."""
        self.angle.show_text(degrees(self._state.turn_deg))

    def _commit(self, text: str) -> str:
        turn_deg = angle_of(text)
        if turn_deg is None:
            return "Type an angle, such as 12.5."
        self._acts.set_turn(turn_deg)
        self.renew()
        return ""

    def _on_dial_changed(self) -> None:
        dial = self._state.dial
        self.best_said.setText(best_said(dial) if dial is not None else "")

    def _on_free(self, free: bool) -> None:  # noqa: FBT001 - a slot of Qt's
        self._acts.free = free

    def _on_seeking(self) -> None:
        self.best.setEnabled(not self._acts.seeker.shown)
