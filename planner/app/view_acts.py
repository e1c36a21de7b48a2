"""What the View menu does: views, zoom, side, folds, panels, light and dark."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QActionGroup

from planner.app.arrangement import Form
from planner.app.end_steps import EndSteps
from planner.app.settings import Settings
from planner.app.window import Window

if TYPE_CHECKING:
    from planner.app.canvas.view import BenchView
    from planner.app.fitting.view import FitView
    from planner.app.panels.shelf import ShelfPanel

_THEMES = ("system", "light", "dark")
VIEWS = ("wire", "dry_fit", "work", "prove")
_ZOOMS = ("fit", "zoom_in", "zoom_out", "zoom_reset")


class ViewActs(QObject):
    """Handle the view's actions on the canvas, the dry fit and the regions.

    `view` stays what it is for as long as the window is open, whichever plan is.
    """

    view_chosen = Signal()

    def __init__(
        self,
        window: Window,
        canvas: "BenchView",
        fitting: "FitView",
        shelf: "ShelfPanel",
        settings: Settings,
    ) -> None:
        super().__init__(window)
        self._window = window
        self._canvas, self._fitting = canvas, fitting
        self._shelf = shelf
        self._settings = settings
        self.view = "wire"
        self.end_steps = EndSteps(window, canvas, fitting)

    def connect_to_actions(self) -> None:
        """Take on the actions."""
        acts, canvas, regions = self._window.acts, self._canvas, self._window.regions
        for name in VIEWS:
            acts.handle(name, partial(self.choose_view, name))
        for name in _ZOOMS:
            acts.handle(name, partial(self._on_zoom, name))
        for name, slot in (
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
        for view in (canvas, self._fitting):
            view.zoom_changed.connect(self._show_zoom)
        canvas.side_changed.connect(lambda side: acts["mating"].setChecked(side == "mating"))
        canvas.one_scale_changed.connect(acts["one_scale"].setChecked)
        self.end_steps.connect_to_actions()
        self._connect_themes()

    # -- views --------------------------------------------------------------------------------

    def choose_view(self, name: str) -> None:
        """Show the lead to wire, one end as it fits, the work or the proof.

        All but the first know one side.
        """
        if name != "wire":
            self._canvas.workbench.put_back()
            self._canvas.set_side("solder")
        self.view = name
        self.view_chosen.emit()
        self._window.regions.enter("canvas")

    def allow(self, *, bench: bool) -> None:
        """Allow what is done in the view that is on, or nothing while the guide lies over it."""
        acts, wire = self._window.acts, self.view == "wire"
        for name in _ZOOMS:
            acts[name].setEnabled(bench and self.view in {"wire", "dry_fit"})
        for name in ("one_scale", "mating"):
            acts[name].setEnabled(bench and wire)
        for name in VIEWS:
            acts[name].setEnabled(bench)
            acts[name].setChecked(name == self.view)
        self._canvas.rest(resting=bench and not wire)
        self.end_steps.enter(self.view if bench else "wire")
        self._show_zoom()

    def _shown(self) -> "BenchView | FitView":
        return self._fitting if self.view == "dry_fit" else self._canvas

    def _on_zoom(self, name: str) -> None:
        getattr(self._shown(), name)()

    def _show_zoom(self, _zoom: float = 1.0) -> None:
        self._window.head.show_zoom(self._shown().zoom)

    # -- light and dark -----------------------------------------------------------------------

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
