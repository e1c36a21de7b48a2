"""What the pages on which a draft is written have alike: a form that scrolls, a foot, undo."""

from collections.abc import Callable, Iterable, Mapping
from typing import TYPE_CHECKING, Generic, TypeVar

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QSplitter, QVBoxLayout, QWidget

from planner.app.intake.drafting import Drafting
from planner.app.panels.widgets.labels import button, line
from planner.app.panels.widgets.scrolled import scrolled
from planner.library.store import NEW
from planner.model.base import Record

if TYPE_CHECKING:
    from planner.app.intake.owner import Owner
    from planner.drawing.looks import Look
    from planner.library.store import Saved
    from planner.model.connector import Side

Draft = TypeVar("Draft", bound=Record)
_FORM_WIDTH = 400


class EditorPage(QWidget, Generic[Draft]):
    """Write one draft; `done` tells the id of what was saved, or nothing."""

    done = Signal(str)

    def __init__(self, owner: "Owner", look: "Look", draft: Draft, parent: QWidget | None) -> None:
        super().__init__(parent)
        self.owner, self.look = owner, look
        self.drafting: Drafting[Draft] = Drafting(draft, self)
        self.basis_digest = NEW
        self.cancel = button("Leave it", lambda: self.done.emit(""))

    def lay_out(self, left: QSplitter, form: QWidget, said: QWidget, save: QPushButton) -> None:
        """Put the drawing left, the form right, and under it what is said and the two buttons."""
        right = QWidget()
        column = QVBoxLayout(right)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        self.form = scrolled(form, least=_FORM_WIDTH)
        column.addWidget(self.form, 1)
        column.addWidget(line())
        column.addLayout(_foot(said, self.cancel, save))
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(left, 5)
        whole.addWidget(right, 4)
        add_keys(self, {"Ctrl+Return": save.click} | undo_keys(self.drafting))

    def answer_side(self, side: "Side") -> None:
        """Write from which side it is seen."""
        self.drafting.do(f"Seen from the {side} side", lambda draft: draft.evolve(seen_from=side))

    def set_text(self, name: str, value: str) -> str:
        """Write one key of the draft, whatever it says."""
        self.drafting.do(name.capitalize(), lambda draft: draft.evolve(**{name: value}))
        return ""

    def finish(self, saved: "Saved | None") -> None:
        """Leave the page, if it was saved."""
        if saved is not None:
            self.drafting.undo_stack.setClean()
            self.done.emit(saved.record.id)


def form_of(parts: Iterable[QWidget]) -> QWidget:
    """Put parts under each other on a panel."""
    form = QWidget()
    form.setProperty("surface", "panel")
    column = QVBoxLayout(form)
    column.setContentsMargins(16, 12, 16, 12)
    column.setSpacing(8)
    for part in parts:
        column.addWidget(part)
    column.addStretch(1)
    return form


def upright(above: QWidget, below: QWidget, heights: tuple[int, int]) -> QSplitter:
    """Put two parts above each other, with a line between that can be dragged."""
    made = QSplitter(Qt.Orientation.Vertical)
    for at, part in enumerate((above, below)):
        made.addWidget(part)
        made.setStretchFactor(at, heights[at])
    made.setSizes(heights)
    return made


def undo_keys(drafting: Drafting[Draft]) -> dict[str, Callable[[], object]]:
    """Return the keys that undo and redo acts of a draft."""
    stack = drafting.undo_stack
    return {"Ctrl+Z": stack.undo, "Ctrl+Shift+Z": stack.redo}


def add_keys(page: QWidget, acts: Mapping[str, Callable[[], object]]) -> None:
    """Let keys act while a page, or something on it, has the keyboard."""
    for keys, act in acts.items():
        shortcut = QShortcut(QKeySequence(keys), page, act)
        shortcut.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)


def _foot(said: QWidget, *buttons: QPushButton) -> QVBoxLayout:
    foot = QVBoxLayout()
    foot.setContentsMargins(16, 8, 16, 10)
    foot.addWidget(said)
    row = QHBoxLayout()
    row.setSpacing(8)
    row.addStretch(1)
    for each in buttons:
        row.addWidget(each)
    foot.addLayout(row)
    return foot
