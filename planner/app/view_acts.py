"""What the View menu does: zoom, side, folds, panels, light and dark."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QActionGroup

from planner.app.arrangement import Form
from planner.app.end_steps import EndSteps
from planner.app.settings import Settings
from planner.app.window import Window

if TYPE_CHECKING:
    from planner.app.canvas.view import BenchView
    from planner.app.panels.shelf import ShelfPanel

_THEMES = ("system", "light", "dark")


class ViewActs(QObject):
    """Handle the view's actions on the canvas and the regions."""

    def __init__(
        self, window: Window, canvas: "BenchView", shelf: "ShelfPanel", settings: Settings
    ) -> None:
        super().__init__(window)
        self._window = window
        self._canvas = canvas
        self._shelf = shelf
        self._settings = settings
        self.end_steps = EndSteps(window, canvas)

    def connect_to_actions(self) -> None:
        """Take on the actions."""
        acts, canvas, regions = self._window.acts, self._canvas, self._window.regions
        for name, slot in (
            ("fit", canvas.fit),
            ("zoom_in", canvas.zoom_in),
            ("zoom_out", canvas.zoom_out),
            ("zoom_reset", canvas.zoom_reset),
            ("one_scale", self._on_one_scale),
            ("mating", self._on_mating),
            ("shelf", partial(self._toggle, "shelf")),
            ("landings", partial(self._toggle, "landings")),
            ("next_panel", partial(regions.step, 1)),
            ("previous_panel", partial(regions.step, -1)),
            ("search", self._on_search),
            ("to_landings", partial(regions.enter, "landings")),
        ):
            acts.handle(name, slot)
        canvas.zoom_changed.connect(self._window.head.show_zoom)
        canvas.side_changed.connect(lambda side: acts["mating"].setChecked(side == "mating"))
        canvas.one_scale_changed.connect(acts["one_scale"].setChecked)
        self.end_steps.connect_to_actions()
        self._connect_themes()

    def allow(self, *, bench: bool) -> None:
        """Allow what is done to the bench, or not while the guide lies over it."""
        for name in ("fit", "zoom_in", "zoom_out", "zoom_reset", "one_scale", "mating"):
            self._window.acts[name].setEnabled(bench)

    def _connect_themes(self) -> None:
        group = QActionGroup(self)
        for theme in _THEMES:
            action = self._window.acts[f"theme_{theme}"]
            group.addAction(action)
            action.setChecked(self._settings.theme == theme)
            self._window.acts.handle(
                f"theme_{theme}", partial(self._settings.choose, "theme", theme)
            )
        self._settings.changed.connect(self._on_settings_changed)

    def _on_settings_changed(self, key: str) -> None:
        if key == "theme":
            self._window.acts[f"theme_{self._settings.theme}"].setChecked(True)

    def _on_one_scale(self) -> None:
        self._canvas.set_one_scale(self._window.acts["one_scale"].isChecked())

    def _on_mating(self) -> None:
        mating = self._window.acts["mating"].isChecked()
        self._canvas.set_side("mating" if mating else "solder")

    def _toggle(self, name: str) -> None:
        regions = self._window.regions
        if regions.form is Form.COLUMN:
            regions.enter("canvas" if regions.folds.sheet == name else name)
        elif name in regions.arrangement.boxes:
            regions.fold(**{name: True})
        else:
            regions.enter(name)

    def _on_search(self) -> None:
        self._window.regions.show_panel("shelf")
        self._shelf.focus_search()
        self._shelf.search.setFocus(Qt.FocusReason.ShortcutFocusReason)
