"""The window's regions: holders for the panels, laid out by `arrange`, folded and stacked."""

from dataclasses import replace

from PySide6.QtCore import QRect, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QApplication, QFrame, QStackedWidget, QVBoxLayout, QWidget

from planner.app.arrangement import PANELS, Arrangement, Folds, Form, arrange, form_of
from planner.app.fonts import HEAD
from planner.app.labels import label

REGIONS = (
    "band", "head", "ends", "canvas", "rail", "shelf", "landings", "landings_bar", "findings",
    "in_hand", "lately", "hints", "bar",
)  # fmt: skip
PANEL_NAMES = {
    "shelf": "Shelf",
    "canvas": "Bench",
    "landings": "Landings",
    "findings": "Findings",
    "in_hand": "In hand",
}
# Room for the rules that the style sheet draws at a region's edges: left, top, right, bottom.
_RULES = {
    "shelf": (0, 0, 1, 0),
    "rail": (0, 0, 1, 0),
    "findings": (1, 0, 0, 0),
    "in_hand": (1, 1, 0, 0),
    "lately": (1, 1, 0, 0),
    "landings": (0, 1, 0, 0),
    "landings_bar": (0, 1, 0, 0),
    "band": (0, 0, 0, 1),
    "hints": (0, 1, 0, 0),
    "bar": (0, 1, 0, 0),
}
_AT_FIRST = {
    Form.WIDE: Folds(),
    Form.COMPACT: Folds(shelf=True, landings=True),
    Form.COLUMN: Folds(),
}


class Holder(QFrame):
    """One region: it holds one widget, and its name in words until there is one."""

    def __init__(self, name: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.setObjectName(name)
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(*_RULES.get(name, (0, 0, 0, 0)))
        self._column.setSpacing(0)
        self.content: QWidget | None = None
        self._first: QWidget | None = None
        self._corner: QWidget | None = None
        if name in PANEL_NAMES and name != "canvas":
            self._first = label(PANEL_NAMES[name], HEAD, bold=True, parent=self)
            self._first.move(16, 10)

    def set_corner(self, widget: QWidget) -> None:
        """Keep a small widget in the top right corner, over what is held."""
        widget.setParent(self)
        widget.show()
        self._corner = widget
        self._move_corner()

    def _move_corner(self) -> None:
        if self._corner is not None:
            self._corner.move(self.width() - self._corner.width() - 8, 6)
            self._corner.raise_()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the corner in its place."""
        super().resizeEvent(event)
        self._move_corner()

    def hold(self, widget: QWidget) -> None:
        """Put a widget in place of what is held."""
        for old in (self._first, self.content):
            if old is not None and old is not widget:
                self._column.removeWidget(old)
                old.hide()
                old.deleteLater()
        self._first, self.content = None, widget
        self._column.addWidget(widget)
        widget.show()  # at once: a layout would show it only with the next event
        self._move_corner()


class Regions(QWidget):
    """Lay out the holders for the size of the window; tell `arranged` when the form changes."""

    arranged = Signal(object)  # Arrangement
    panel_entered = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("regions")
        self.holders = {name: Holder(name, self) for name in REGIONS}
        self.form = Form.WIDE
        self._folds = dict(_AT_FIRST)
        self._put_aside: dict[Form, Folds] = {}
        self._panel = ""
        self.arrangement = Arrangement(Form.WIDE, {})
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.focusChanged.connect(self._on_focus_changed)

    # -- layout -----------------------------------------------------------------------------

    @property
    def folds(self) -> Folds:
        """What is folded in the form that is on."""
        return self._folds[self.form]

    def fold(self, **changes: bool | str) -> None:
        """Fold or open: shelf, landings (bool), sheet (a panel's name)."""
        self._folds[self.form] = replace(self.folds, **changes)  # type: ignore[arg-type] # by name
        self.lay_out()

    def set_aside(self, *, aside: bool) -> None:
        """Fold shelf and landings while a view needs neither; afterwards they are as before.

        What is opened or folded meanwhile holds for as long as the view is on.
        """
        if aside and not self._put_aside:
            self._put_aside = dict(self._folds)
            self._folds = {
                form: replace(it, shelf=True, landings=True) for form, it in self._folds.items()
            }
        elif not aside and self._put_aside:
            for form, before in self._put_aside.items():
                now = self._folds[form]
                self._folds[form] = replace(now, shelf=before.shelf, landings=before.landings)
            self._put_aside = {}
        self.lay_out()

    def show_lately(self, *, shown: bool) -> None:
        """Show what was on the bench lately beside a new plan, in whichever form."""
        self._folds = {form: replace(it, lately=shown) for form, it in self._folds.items()}
        self.lay_out()

    def show_ends(self, *, shown: bool) -> None:
        """Show the steps from end to end, in whichever form."""
        if self.folds.ends != shown or any(it.ends != shown for it in self._folds.values()):
            self._folds = {form: replace(it, ends=shown) for form, it in self._folds.items()}
            self.lay_out()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay out anew."""
        self.lay_out()

    def lay_out(self) -> None:
        """Place every holder; the form follows the window's size."""
        window = self.window()
        self.form = form_of(window.width(), window.height())
        made = arrange(self.width(), self.height(), self.folds, self.form)
        if made == self.arrangement:
            return
        if self.property("form") != made.form.value:
            self.setProperty("form", made.form.value)
            self._restyle()
        self._place(made)
        self.arrangement = made
        self.arranged.emit(made)

    def _place(self, made: Arrangement) -> None:
        for name, holder in self.holders.items():
            box = made.boxes.get(name)
            if box is not None:
                holder.setGeometry(QRect(*box))
            holder.setVisible(box is not None)
        for name in made.over:
            self.holders[name].raise_()

    def _restyle(self) -> None:
        for name in PANELS:
            holder = self.holders[name]
            holder.style().unpolish(holder)
            holder.style().polish(holder)

    # -- focus ------------------------------------------------------------------------------

    @property
    def panel(self) -> str:
        """The panel that has the focus, or had it last."""
        return self._panel

    def panel_of(self, widget: QWidget | None) -> str:
        """Return the region that a widget lies in, or empty."""
        while widget is not None:
            if isinstance(widget, Holder):
                return widget.objectName()
            widget = widget.parentWidget()
        return ""

    def show_panel(self, name: str) -> None:
        """Unfold a panel, or bring it up as the sheet."""
        if self.form is Form.COLUMN:
            self.fold(sheet=name if name in PANELS else "canvas")
        elif name in {"shelf", "landings"} and getattr(self.folds, name):
            self.fold(**{name: False})

    def enter(self, name: str) -> None:
        """Show a panel and give it the keyboard."""
        self.show_panel(name)
        target = self._first_stop(self.holders[name])
        if target is not None:
            target.setFocus(Qt.FocusReason.ShortcutFocusReason)

    @staticmethod
    def _first_stop(holder: Holder) -> QWidget | None:
        content = holder.content
        if isinstance(content, QStackedWidget):
            content = content.currentWidget()
        if content is None:
            return None
        if content.focusProxy() is not None or content.focusPolicy() != Qt.FocusPolicy.NoFocus:
            return content
        stops = (
            child
            for child in content.findChildren(QWidget)
            if child.isVisibleTo(holder)
            and child.isEnabled()
            and child.focusPolicy() & Qt.FocusPolicy.TabFocus
        )
        return next(stops, None)

    def order(self) -> tuple[str, ...]:
        """Name the panels that F6 goes through, in order."""
        return ("shelf", "canvas", "landings", "findings", "in_hand", "band")

    def step(self, by: int) -> str:
        """Enter the next panel (1) or the one before (-1) that can take the keyboard."""
        order = self.order()
        at = order.index(self._panel) if self._panel in order else -1 if by > 0 else 0
        for count in range(1, len(order) + 1):
            name = order[(at + by * count) % len(order)]
            self.show_panel(name)
            if self._first_stop(self.holders[name]) is not None:
                self.enter(name)
                return name
        return ""

    def _on_focus_changed(self, _old: QWidget | None, now: QWidget | None) -> None:
        name = self.panel_of(now)
        if not name or now is None or now.window() is not self.window():
            return
        self._panel = name
        if self.form is Form.COMPACT and name in {"canvas", "landings", "findings", "in_hand"}:
            self._fold_what_lies_over()
        self.panel_entered.emit(name)

    def _fold_what_lies_over(self) -> None:
        if not self.folds.shelf:
            self.fold(shelf=True)
