"""A draft under way: one value, each act one undo step, a drag one step."""

from collections.abc import Callable
from typing import Generic, TypeVar

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoCommand, QUndoStack

from planner.problem import EditRefused

Draft = TypeVar("Draft")
_GESTURE = 7401  # what Qt asks to merge by; any number of ours


class _Step(QUndoCommand):
    """The draft before and after. Steps of one gesture merge into one."""

    def __init__(self, drafting: "Drafting[Draft]", text: str, after: Draft, gesture: str) -> None:
        super().__init__(text)
        self._drafting, self._before = drafting, drafting.draft
        self.after, self.gesture = after, gesture

    def redo(self) -> None:
        self._drafting.put(self.after)

    def undo(self) -> None:
        self._drafting.put(self._before)

    def id(self) -> int:
        return _GESTURE if self.gesture else -1

    def mergeWith(self, other: QUndoCommand) -> bool:
        if not isinstance(other, _Step) or other.gesture != self.gesture:
            return False
        self.after = other.after
        self.setObsolete(self.after == self._before)
        return True


class Drafting(QObject, Generic[Draft]):
    """Hold a draft; `do` changes it by an edit that takes a draft and returns another."""

    changed = Signal()
    refused = Signal(str, str)  # reason, mend

    def __init__(self, draft: Draft, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.draft = draft
        self.undo_stack = QUndoStack(self)

    @property
    def dirty(self) -> bool:
        """Tell whether something was changed that is not saved."""
        return not self.undo_stack.isClean()

    def begin(self, draft: Draft) -> None:
        """Begin with another draft; the undo history starts anew."""
        self.undo_stack.clear()
        self.put(draft)

    def put(self, draft: Draft) -> None:
        """Put a draft in place; for the undo steps."""
        self.draft = draft
        self.changed.emit()

    def do(self, text: str, edit: Callable[[Draft], Draft], *, gesture: str = "") -> bool:
        """Run an edit as one undo step; tell `refused` and return False if it refuses.

        Steps with the same `gesture` in a row are one: name each drag anew.
        """
        try:
            after = edit(self.draft)
        except EditRefused as refusal:
            self.refused.emit(refusal.reason, refusal.mend)
            return False
        if after != self.draft:
            self.undo_stack.push(_Step(self, text, after, gesture))
        return True
