"""What the library has newer than a plan: each change, and what it means for the landings."""

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QDialog, QWidget

from planner.app.dialogs.framed import framed, lines_pane, written
from planner.app.dialogs.message import Choice

if TYPE_CHECKING:
    from planner.services.library import Meaning, Newer

_SIZE = (640, 560)
_MOST = 40


class NewerDialog(QDialog):
    """Enter or Esc leaves the plan as it is: to take something newer is to be said."""

    def __init__(self, parent: QWidget | None, found: "Sequence[Newer]", told: "Meaning") -> None:
        super().__init__(parent)
        self.setWindowTitle("Newer definitions")
        self.resize(*_SIZE)
        lines = [
            written(words, bold=bold, role="" if bold else "second")
            for words, bold in (*_changes(found), *_means(told))
        ]
        self.take, self.keep = framed(
            self,
            "Newer definitions",
            lines_pane(lines, "What is newer, and what it means"),
            Choice("take", "Take them"),
            Choice("keep", "Keep the plan\u2019s own", primary=True),
        )

    def ask(self) -> bool:
        """Show, wait, and tell whether they are to be taken."""
        taken = bool(self.exec())
        self.deleteLater()
        return taken


def _changes(found: "Sequence[Newer]") -> Iterator[tuple[str, bool]]:
    for each in found:
        was, now = each.carried.revision, each.known.revision
        step = f"revision {was} to {now}" if each.revised else f"both call it revision {now}"
        yield f"{each.known.title}: {step}", True
        for change in each.changes[:_MOST]:
            yield (
                f"{change.key}: {change.first or 'nothing'} \u2192 {change.second or 'nothing'}",
                False,
            )
        if len(each.changes) > _MOST:
            yield f"and {len(each.changes) - _MOST} more", False


def _means(told: "Meaning") -> Iterator[tuple[str, bool]]:
    yield "What it means for this lead", True
    if told.harmless:
        yield "No landing is touched, and no finding comes up.", False
    for words in (*told.lost, *told.moved):
        yield words, False
    for found in told.appeared:
        yield f"New {found.weight}: {found.what}", False
    for found in told.cured:
        yield f"Goes away: {found.what}", False
