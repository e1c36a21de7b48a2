"""How the widgets look: style sheet and palette made from a look, and which look is on."""

from string import Template

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QColor, QGuiApplication, QPalette
from PySide6.QtWidgets import QApplication

from planner.app.fonts import BODY, font
from planner.app.settings import Settings
from planner.data import data_dir
from planner.drawing.looks import DARK, LIGHT, Look

_SHEET = "window.qss"


def qss(look: Look) -> str:
    """Return the style sheet of the window in a look."""
    icons = data_dir("resources") / "icons"
    text = (icons / _SHEET).read_text(encoding="utf-8")
    tokens = {
        name: value for name in Look.__slots__ if isinstance(value := getattr(look, name), str)
    }
    return Template(text).substitute(tokens, icons=icons.as_posix())


def palette(look: Look) -> QPalette:
    """Return the palette of a look, for what the style sheet does not reach."""
    made = QPalette()
    roles = QPalette.ColorRole
    for role, code in (
        (roles.Window, look.panel),
        (roles.WindowText, look.ink),
        (roles.Base, look.field),
        (roles.AlternateBase, look.panel),
        (roles.Text, look.ink),
        (roles.Button, look.field),
        (roles.ButtonText, look.ink),
        (roles.Highlight, look.accent),
        (roles.HighlightedText, look.on_accent),
        (roles.ToolTipBase, look.ink),
        (roles.ToolTipText, look.paper),
        (roles.PlaceholderText, look.ink2),
        (roles.Link, look.accent),
        (roles.Mid, look.edge),
        (roles.Light, look.paper),
        (roles.Dark, look.edge),
        (roles.Shadow, look.ink),
    ):
        made.setColor(role, QColor(code))
    for role in (roles.WindowText, roles.Text, roles.ButtonText):
        made.setColor(QPalette.ColorGroup.Disabled, role, QColor(look.ink2))
    return made


class Theme(QObject):
    """Keep the look that is on: the builder's choice, or the system's; dress the application."""

    changed = Signal(object)  # Look

    def __init__(self, settings: Settings, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._settings = settings
        self.look = self._wanted()
        settings.changed.connect(self._on_settings_changed)
        QGuiApplication.styleHints().colorSchemeChanged.connect(self._on_system_changed)

    def _wanted(self) -> Look:
        chosen = self._settings.theme
        if chosen != "system":
            return DARK if chosen == "dark" else LIGHT
        scheme = QGuiApplication.styleHints().colorScheme()
        return DARK if scheme == Qt.ColorScheme.Dark else LIGHT

    def dress(self) -> None:
        """Give the application its style, face, palette and sheet."""
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.setFont(font(BODY))
            app.setPalette(palette(self.look))
            app.setStyleSheet(qss(self.look))

    def _renew(self) -> None:
        if self._wanted() is not self.look:
            self.look = self._wanted()
            self.dress()
            self.changed.emit(self.look)

    def _on_settings_changed(self, key: str) -> None:
        if key == "theme":
            self._renew()

    def _on_system_changed(self, _scheme: object) -> None:
        self._renew()
