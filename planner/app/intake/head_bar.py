"""The acts of the library: the frequent ones as buttons, the others in a menu beside them."""

from collections.abc import Callable, Mapping

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QHBoxLayout, QMenu, QWidget

from planner.app.panels.widgets.labels import button

# Name, words, keys, whether it is a button of its own.
_ACTS = (
    ("new_pinout", "New pinout\u2026", "Ctrl+N", True),
    ("new_connector", "New connector\u2026", "Ctrl+Shift+N", True),
    ("measure", "Measure a sample\u2026", "Ctrl+M", True),
    ("confirm", "Confirm on the part\u2026", "Ctrl+Shift+M", False),
    ("revise", "Next revision\u2026", "Ctrl+E", True),
    ("draw_alike", "One like it\u2026", "Ctrl+D", False),
    ("retitle", "Another title\u2026", "F2", False),
    ("retire", "Retire\u2026", "Ctrl+R", False),
    ("export", "Export\u2026", "Ctrl+Shift+S", False),
    ("take_in", "Take in a parcel\u2026", "Ctrl+O", False),
)


class HeadBar(QWidget):
    """Every act works by its key while the library is browsed."""

    def __init__(self, window: QWidget, handlers: Mapping[str, Callable[[], object]]) -> None:
        super().__init__()
        self.acts: dict[str, QAction] = {}
        self.menu = QMenu(self)
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 8, 12, 8)
        row.setSpacing(8)
        for name, words, keys, alone in _ACTS:
            act = QAction(words, window)
            act.setShortcut(QKeySequence(keys))
            act.triggered.connect(lambda _on=False, do=handlers[name]: do())
            window.addAction(act)
            self.acts[name] = act
            if alone:
                made = button(words, act.trigger, "primary" if name == "new_pinout" else "", keys)
                act.changed.connect(lambda a=act, b=made: b.setEnabled(a.isEnabled()))
                row.addWidget(made)
            else:
                self.menu.addAction(act)
        self.more = button(
            "More", self._show_menu, "", "Confirm, copy, rename, retire, export, take in"
        )
        row.addWidget(self.more)
        row.addStretch(1)

    def _show_menu(self) -> None:
        self.menu.popup(self.more.mapToGlobal(self.more.rect().bottomLeft()))

    def allow(self, names: Mapping[str, bool]) -> None:
        """Enable acts, or not."""
        for name, can in names.items():
            self.acts[name].setEnabled(can)
