"""The narrow bars that stand for what is folded: shelf rail, landings head, bottom bar."""

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from planner.app.actions import Actions
from planner.app.arrangement import PANELS
from planner.app.buttons import ActionButton, fold_button
from planner.app.fonts import BODY, HEAD, font
from planner.app.icons import icon
from planner.app.labels import label
from planner.drawing.looks import Look

_SHEETS = {
    "canvas": "Lead",
    "shelf": "Shelf",
    "landings": "Landings",
    "findings": "Findings",
    "in_hand": "In hand",
}
_ICONS = {
    "canvas": "lead",
    "shelf": "shelf",
    "landings": "landings",
    "findings": "findings",
    "in_hand": "in-hand",
}


class Rail(QWidget):
    """The folded shelf: open it, or search it."""

    def __init__(self, actions: Actions, look: Look) -> None:
        super().__init__()
        self._buttons = [
            ActionButton(actions["shelf"], look, icon_name="unfold-right"),
            ActionButton(actions["search"], look, icon_name="search"),
        ]
        column = QVBoxLayout(self)
        column.setContentsMargins(7, 6, 7, 8)
        column.setSpacing(8)
        for button in self._buttons:
            button.setProperty("role", "tool")
            button.setCheckable(False)
            button.setFixedSize(32, 32)
            column.addWidget(button)
        column.addStretch(1)

    def set_look(self, look: Look) -> None:
        """Draw in another look."""
        for button in self._buttons:
            button.set_look(look)


class LandingsHead(QWidget):
    """The folded landings: their name, how many are landed, and what opens them."""

    def __init__(self, actions: Actions, look: Look) -> None:
        super().__init__()
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 0, 8, 0)
        row.addWidget(label("Landings", HEAD, bold=True))
        self.count = label("", BODY, role="second")
        row.addWidget(self.count)
        row.addStretch(1)
        self._open = fold_button(actions["landings"], look, "unfold-up")
        row.addWidget(self._open)

    def set_look(self, look: Look) -> None:
        """Draw in another look."""
        self._open.set_look(look)


class BottomBar(QWidget):
    """In one column: which panel is shown, full height."""

    chosen = Signal(str)

    def __init__(self, look: Look) -> None:
        super().__init__()
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        self._group = QButtonGroup(self)
        self._buttons: dict[str, QPushButton] = {}
        for name in ("canvas", *(panel for panel in PANELS if panel != "canvas")):
            button = QPushButton(_SHEETS[name])
            button.setProperty("role", "sheet")
            button.setCheckable(True)
            button.setFont(font(BODY))
            button.setIconSize(QSize(16, 16))
            button.setToolTip(f"Show the {_SHEETS[name].lower()}")
            button.setAccessibleName(_SHEETS[name])
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            button.clicked.connect(lambda _checked=False, panel=name: self.chosen.emit(panel))
            self._group.addButton(button)
            self._buttons[name] = button
            row.addWidget(button)
        self._look = look
        self._buttons["canvas"].setChecked(True)

    def show_panel(self, name: str) -> None:
        """Mark the panel that is shown."""
        self._buttons[name].setChecked(True)
        self._draw_icons()

    def showEvent(self, event: QShowEvent) -> None:
        """Draw the icons when they are seen, not before."""
        self._draw_icons()
        super().showEvent(event)

    def show_findings(self, count: int) -> None:
        """Tell how many findings there are."""
        self._buttons["findings"].setText(f"Findings {count}" if count else "Findings")

    def set_look(self, look: Look) -> None:
        """Draw in another look."""
        self._look = look
        if self.isVisible():
            self._draw_icons()

    def _draw_icons(self) -> None:
        look = self._look
        for name, button in self._buttons.items():
            colour = look.on_accent if button.isChecked() else look.ink
            button.setIcon(icon(_ICONS[name], look, colour=colour))
