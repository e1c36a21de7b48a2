"""Every key on one page, made from the actions themselves."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import (
    QDialog,
    QGridLayout,
    QHBoxLayout,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from planner.app.actions import Actions
from planner.app.dialogs.message import Choice, buttons_row
from planner.app.fonts import BODY, GUIDE, HEAD, SMALL
from planner.app.hints import GESTURE_KEYS, Hint
from planner.app.labels import label


def key_table(actions: Actions) -> dict[str, tuple[Hint, ...]]:
    """Return (keys, words) under each menu's name, then those of the bench and the landings."""
    found: dict[str, list[Hint]] = {}
    for spec, _action in actions:
        if spec.keys:
            native = QKeySequence.SequenceFormat.NativeText
            keys = " or ".join(QKeySequence(key).toString(native) for key in spec.keys)
            found.setdefault(spec.menu, []).append((keys, spec.tip))
    return {name: tuple(hints) for name, hints in found.items()} | {"By hand": GESTURE_KEYS}


class KeysDialog(QDialog):
    """Show the table in two columns."""

    def __init__(self, parent: QWidget | None, actions: Actions) -> None:
        super().__init__(parent)
        self.setWindowTitle("Keys")
        table = key_table(actions)
        inner = QWidget()
        columns = QHBoxLayout(inner)
        columns.setContentsMargins(0, 0, 16, 0)
        columns.setSpacing(40)
        names = list(table)
        for part in (names[:3], names[3:]):
            column = QVBoxLayout()
            column.setSpacing(6)
            for name in part:
                column.addWidget(label(name, HEAD, bold=True))
                column.addLayout(self._grid(table[name]))
                column.addSpacing(12)
            column.addStretch(1)
            columns.addLayout(column)
        self._frame(inner)

    @staticmethod
    def _grid(hints: tuple[Hint, ...]) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(4)
        for row, (keys, words) in enumerate(hints):
            cap = label(keys, SMALL, bold=True, role="key")
            cap.setFixedHeight(20)
            grid.addWidget(cap, row, 0, Qt.AlignmentFlag.AlignLeft)
            grid.addWidget(label(words, BODY), row, 1)
        grid.setColumnStretch(1, 1)
        return grid

    def _frame(self, inner: QWidget) -> None:
        area = QScrollArea()
        area.setWidget(inner)
        area.setWidgetResizable(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 20, 24, 20)
        column.setSpacing(12)
        column.addWidget(label("Keys", GUIDE, bold=True))
        words = "Single letters work while the bench or the landings have the keyboard."
        column.addWidget(label(words, BODY, role="second"))
        column.addWidget(area, 1)
        row, (close,) = buttons_row((Choice("ok", "Close", primary=True, escape=True),))
        close.clicked.connect(self.accept)
        column.addLayout(row)
        wanted = inner.sizeHint()
        room = self.screen().availableSize()
        width, height = wanted.width() + 80, wanted.height() + 170
        self.resize(min(width, room.width() - 40), min(height, room.height() - 40))
