"""The application round one window: style, look, settings; furnished after the first show."""

from pathlib import Path
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QApplication

from planner.app.fonts import load_fonts
from planner.app.icons import app_icon
from planner.app.settings import Settings
from planner.app.theme import Theme
from planner.app.window import FIRST_SIZE, NAME, Window
from planner.drawing.looks import Look

if TYPE_CHECKING:
    from planner.app.dialogs.ask import Ask
    from planner.app.furnish import Bench

# Room for the title bar and edges that a window manager adds; how much is not known before.
_FRAME = (8, 40)


class Shell(QObject):
    """Hold what lives as long as the window. Imports nothing heavy until it is furnished."""

    def __init__(self, app: QApplication, settings: Settings, ask: "Ask | None" = None) -> None:
        super().__init__()
        self.ask = ask
        self.app = app
        self.settings = settings
        load_fonts()
        self.theme = Theme(settings, self)
        self.theme.dress()
        self.window = Window(self.theme.look)
        self.window.show_bench_name(settings.bench_name)
        self.bench: Bench | None = None
        self.theme.changed.connect(self._on_look_changed)
        settings.changed.connect(self._on_settings_changed)
        self.window.closing.connect(self._on_closing)
        self.window.acts.handle("quit", self.window.close)

    @classmethod
    def start(cls) -> "Shell":
        """Make the application and its shell."""
        # Fusion is the same on every system. Named here no other style is made first.
        app = cast(
            "QApplication", QApplication.instance() or QApplication([NAME, "-style", "Fusion"])
        )
        app.setApplicationName(NAME)
        app.setDesktopFileName("cupwright")
        return cls(app, Settings())

    def show(self) -> None:
        """Show the window at once, still empty, at the size it had last."""
        self.window.resize(*self._first_size())
        self.window.show()

    def _first_size(self) -> tuple[int, int]:
        width, _, height = self.settings.geometry.partition("x")
        if not (width.isdigit() and height.isdigit()):
            return self._fitting(FIRST_SIZE)
        return self._fitting((int(width), int(height)))

    def _fitting(self, size: tuple[int, int]) -> tuple[int, int]:
        room = self.app.primaryScreen().availableGeometry()
        return (min(size[0], room.width() - _FRAME[0]), min(size[1], room.height() - _FRAME[1]))

    def furnish_soon(self, plan: Path | None = None, *, demo: bool = False) -> None:
        """Furnish as soon as the window has been shown."""
        QTimer.singleShot(0, self, lambda: self.furnish(plan, demo=demo))

    def furnish(self, plan: Path | None = None, *, demo: bool = False) -> "Bench":
        """Bring in the workbench, the panels and the canvas; then open what was asked for."""
        from planner.app.furnish import Bench  # noqa: PLC0415 - the heavy part, after the show

        self.window.setWindowIcon(app_icon())
        self.bench = Bench(self)
        self.bench.begin(plan, demo=demo)
        return self.bench

    def take_down(self) -> None:
        """Close without a question, and let go of everything."""
        if self.bench is not None:
            self.bench.let_go()
        self.window.may_close = lambda: True
        self.window.close()
        self.window.deleteLater()
        self.deleteLater()

    def exec(self) -> int:
        """Run until the window is closed."""
        return int(self.app.exec())

    def _on_look_changed(self, look: Look) -> None:
        self.window.set_look(look)

    def _on_settings_changed(self, key: str) -> None:
        if key == "bench_name":
            self.window.show_bench_name(self.settings.bench_name)

    def _on_closing(self) -> None:
        size = self.window.size()
        self.settings.geometry = f"{size.width()}x{size.height()}"
        self.settings.flush()
