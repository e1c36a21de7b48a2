"""The window: menus, regions and the parts of the shell; it knows nothing of plans.

It is shown empty and at once; `furnish` puts the workbench, the panels and the canvas into it.
"""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QMimeData, Qt, Signal
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent, QFontMetrics
from PySide6.QtWidgets import QMainWindow, QMenu, QWidget

from planner.app.action_specs import MENUS
from planner.app.actions import Actions
from planner.app.answer_band import AnswerBand
from planner.app.arrangement import SIZES, Arrangement, Form
from planner.app.canvas_head import CanvasHead
from planner.app.fonts import BODY
from planner.app.hints import HintsStrip
from planner.app.labels import label
from planner.app.lately import Lately
from planner.app.notice import Notice
from planner.app.regions import Regions
from planner.app.side_bars import BottomBar, LandingsHead, Rail
from planner.drawing.looks import Look

if TYPE_CHECKING:
    from collections.abc import Callable

NAME = "Cupwright"
FIRST_SIZE = (1440, 900)
LEAST_SIZE = (640, 400)
_PLAN_ENDINGS = {".json", ".cupwright"}


class Window(QMainWindow):
    """The shell. `may_close` is asked before it closes; `dropped` tells a file dragged in."""

    dropped = Signal(object)  # Path
    closing = Signal()

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look
        self.may_close: Callable[[], bool] = lambda: True
        self.acts = Actions(self)
        self.regions = Regions()
        self.band = AnswerBand(self.acts, look)
        self.head = CanvasHead(self.acts, look)
        self.hints = HintsStrip()
        self.rail = Rail(self.acts, look)
        self.landings_head = LandingsHead(self.acts, look)
        self.bar = BottomBar(look)
        self.lately = Lately(self.acts, look)
        self.corner_label = label("", BODY, role="second")
        self._bench_name = self._plan_line = ""
        self.menus: dict[str, QMenu] = {}
        self._build()
        self.notice = Notice(self.regions.holders["canvas"], look)

    def _build(self) -> None:
        self.setWindowTitle(NAME)
        self.setMinimumSize(*LEAST_SIZE)
        self.setAcceptDrops(True)
        self.setCentralWidget(self.regions)
        for name, part in self._parts().items():
            self.regions.holders[name].hold(part)
        self._build_menus()
        self.bar.chosen.connect(self.regions.enter)
        self.regions.arranged.connect(self._on_arranged)
        self.hints.show_state("")
        self._fit_menu(Form.WIDE)

    def _parts(self) -> dict[str, QWidget]:
        return {
            "band": self.band,
            "head": self.head,
            "rail": self.rail,
            "landings_bar": self.landings_head,
            "hints": self.hints,
            "bar": self.bar,
            "lately": self.lately,
        }

    # -- menus ------------------------------------------------------------------------------

    def _build_menus(self) -> None:
        bar = self.menuBar()
        bar.setNativeMenuBar(False)
        for title in MENUS:
            self.menus[title] = bar.addMenu(f"&{title}")
        self.menus["Recent"] = QMenu("Open &recent", self)
        self.menus["Demos"] = QMenu("De&mo plans", self)
        self.menus["Look"] = QMenu("Light or dar&k", self)
        for spec, action in self.acts:
            menu = self.menus[spec.menu]
            if spec.rule_above:
                menu.addSeparator()
            menu.addAction(action)
        plan = self.menus["Plan"]
        plan.insertMenu(self.acts["demo"], self.menus["Recent"])
        after_demo = plan.actions()[plan.actions().index(self.acts["demo"]) + 1]
        plan.insertMenu(after_demo, self.menus["Demos"])
        self.menus["View"].addSeparator()
        self.menus["View"].addMenu(self.menus["Look"])
        self.corner_label.setContentsMargins(0, 0, 16, 0)
        prove = self.menus["Prove"]
        first = prove.actions()[0]
        prove.insertAction(first, self.acts["prove"])
        prove.insertSeparator(first)
        bar.setCornerWidget(self.corner_label, Qt.Corner.TopRightCorner)

    def _fit_menu(self, form: Form) -> None:
        bar = self.menuBar()
        bar.setProperty("form", form.value)
        bar.style().unpolish(bar)
        bar.style().polish(bar)
        bar.setFixedHeight(SIZES[form].menu)

    # -- form and look ----------------------------------------------------------------------

    def _on_arranged(self, made: Arrangement) -> None:
        if self.menuBar().property("form") != made.form.value:
            self._fit_menu(made.form)
        self.band.set_form(made.form)
        self.head.set_form(made.form)
        folds = self.regions.folds
        if made.form is Form.COLUMN:
            self.bar.show_panel(folds.sheet)
        self.acts["shelf"].setChecked("shelf" in made.boxes)
        self.acts["landings"].setChecked("landings" in made.boxes)
        self.notice.place()
        self._show_corner()

    # -- what is told -----------------------------------------------------------------------

    def show_bench_name(self, name: str) -> None:
        """Show the name of the bench at the top right."""
        self._bench_name = name
        self._show_corner()

    def show_plan(self, title: str, order: str, revision: int) -> None:
        """Show which plan this is: in the band, or in the corner where the band is small."""
        self.band.show_plan(title, order, revision)
        told = f"{order}, revision {revision}" if order else ""
        self._plan_line = ", ".join(part for part in (title, told) if part)
        self._show_corner()

    def _show_corner(self) -> None:
        told = self.band.tells_plan
        parts = (self._bench_name,) if told else (self._plan_line, self._bench_name)
        words = " \u2013 ".join(part for part in parts if part)
        last = self.menuBar().actionGeometry(self.menus[MENUS[-1]].menuAction())
        room = self.width() - last.right() - 48
        shown = QFontMetrics(self.corner_label.font()).elidedText(
            words, Qt.TextElideMode.ElideRight, max(room, 0)
        )
        self.corner_label.setText(shown)
        self.corner_label.setToolTip(words if shown != words else "")
        self.corner_label.setFixedHeight(SIZES[self.regions.form].menu - 1)
        self.corner_label.adjustSize()
        self.menuBar().setCornerWidget(self.corner_label, Qt.Corner.TopRightCorner)

    def set_look(self, look: Look) -> None:
        """Draw the shell in another look."""
        self.look = look
        for part in (*self._parts().values(), self.notice, self.regions.holders["ends"].content):
            if part is not None and hasattr(part, "set_look"):
                part.set_look(look)

    # -- files dragged in, and closing ------------------------------------------------------

    @staticmethod
    def dropped_file(mime: QMimeData) -> Path | None:
        """Return the one plan file that is dragged, or None."""
        files = [Path(url.toLocalFile()) for url in mime.urls() if url.isLocalFile()]
        return files[0] if len(files) == 1 and files[0].suffix.lower() in _PLAN_ENDINGS else None

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take a plan file in."""
        if self.dropped_file(event.mimeData()) is not None:
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Open the plan file that was dropped."""
        path = self.dropped_file(event.mimeData())
        if path is not None:
            event.acceptProposedAction()
            self.dropped.emit(path)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Close, if what is not saved may go."""
        if self.may_close():
            self.closing.emit()
            event.accept()
        else:
            event.ignore()
