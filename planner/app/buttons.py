"""Buttons that stand for an action: same words, keys, tip and state, and never under 24 px."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QAction, QIcon, QShowEvent
from PySide6.QtWidgets import QPushButton

from planner.app.fonts import BODY, font
from planner.app.icons import icon
from planner.drawing.looks import Look

LEAST = 24
_GAP = "\u2002"


class ActionButton(QPushButton):
    """A push button that follows a QAction; with `icon_name`, the icon is drawn in the look."""

    def __init__(self, action: QAction, look: Look, *, text: str = "", icon_name: str = "") -> None:
        super().__init__()
        self._action = action
        self._icon_name = icon_name
        self.show_words(text)
        self.setFont(font(BODY, bold=True))
        self.setCheckable(action.isCheckable())
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.clicked.connect(self._on_clicked)
        action.changed.connect(self._on_action_changed)
        self.set_look(look)
        self._on_action_changed()

    def show_words(self, text: str) -> None:
        """Show words, at a little distance from the icon."""
        self.setText(f"{_GAP}{text}" if text and self._icon_name else text)

    def show_icon(self, name: str) -> None:
        """Show an icon, or none for an empty name."""
        self._icon_name = name
        if name and self.isVisible():
            self._draw_icon()
        elif not name:
            self.setIcon(QIcon())

    def minimumSizeHint(self) -> QSize:
        """Keep room for all words: a layout with too little takes it from what can be cut."""
        return self.sizeHint().expandedTo(QSize(LEAST, LEAST))

    def set_look(self, look: Look) -> None:
        """Draw the icon in a look; one that is not seen yet is drawn when it is shown first."""
        self._look = look
        if self.isVisible():
            self._draw_icon()

    def showEvent(self, event: QShowEvent) -> None:
        """Draw the icon in the look that is on."""
        self._draw_icon()
        super().showEvent(event)

    def _draw_icon(self) -> None:
        look = self._look
        if self._icon_name:
            colour = look.on_accent if self.property("role") == "primary" else look.ink
            self.setIcon(icon(self._icon_name, look, colour=colour, rests=True))
            self.setIconSize(QSize(16, 16))

    def _on_clicked(self) -> None:
        self._action.trigger()
        self.setChecked(self._action.isChecked())

    def _on_action_changed(self) -> None:
        self.setEnabled(self._action.isEnabled())
        self.setChecked(self._action.isChecked())
        self.setToolTip(self._action.toolTip())
        self.setAccessibleName(self._action.text().replace("&", "").rstrip("\u2026"))
        self.setAccessibleDescription(self._action.statusTip())


def set_tight(button: QPushButton, *, tight: bool) -> None:
    """Leave less room beside a button's icon or words; the style sheet says how much."""
    if button.property("tight") != tight:
        button.setProperty("tight", tight)
        button.style().unpolish(button)
        button.style().polish(button)
        button.updateGeometry()


def fold_button(action: QAction, look: Look, icon_name: str) -> ActionButton:
    """Return the small button in a panel's corner that folds it away."""
    made = ActionButton(action, look, icon_name=icon_name)
    made.setProperty("role", "fold")
    made.setCheckable(False)
    made.setFixedSize(28, 28)
    return made


def segment(
    text: str, at: str, look: Look, *, action: QAction | None = None, icon_name: str = ""
) -> QPushButton:
    """Return one button of a strip; `at` is first, middle, last or only."""
    if action is not None:
        made: QPushButton = ActionButton(action, look, text=text, icon_name=icon_name)
    else:
        made = QPushButton(text)
        made.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        made.setCheckable(True)
    made.setProperty("role", "segment")
    made.setProperty("at", at)
    made.setFont(font(BODY))
    return made
