"""The questions of the owner's window, in one place so that a test can answer them."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QDialog, QFileDialog, QWidget

from planner.app.dialogs.framed import framed
from planner.app.dialogs.message import Choice, Message
from planner.app.panels.widgets.text_line import TextLine
from planner.model.source import SUFFIXES
from planner.problem import Problem

if TYPE_CHECKING:
    from collections.abc import Sequence

    from planner.app.settings import Settings
    from planner.library.arriving import Answer, Arrival
    from planner.library.store import Conflict
    from planner.model.pinout import PinoutRecord
    from planner.model.source import Confirmation

_PARCELS = "Parcels (*.parcel.json *.json)"
_PAPERS = "Papers and pictures ({})".format(" ".join(f"*{it}" for it in SUFFIXES.values()))


class OwnerAsk:
    """Ask by dialogs over the owner's window."""

    def __init__(self, settings: "Settings") -> None:
        self.parent: QWidget | None = None
        self._settings = settings

    def paper_to_keep(self) -> Path | None:
        """Ask for a paper or picture of which a copy is to be kept."""
        return self._to_open("A paper or picture to keep", _PAPERS)

    def picture_to_trace(self) -> Path | None:
        """Ask for a scan or photo to draw over."""
        return self._to_open("A picture to draw over", "Pictures (*.png *.jpg *.jpeg *.webp)")

    def parcel_to_take_in(self) -> Path | None:
        """Ask for a file that somebody exported."""
        return self._to_open("A parcel of definitions", _PARCELS)

    def where_to_export(self, name: str) -> Path | None:
        """Ask where to write a definition with all that belongs to it."""
        dialog = QFileDialog(self.parent, "Export", str(self._settings.last_folder), _PARCELS)
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setDefaultSuffix("json")
        dialog.selectFile(f"{name}.parcel.json")
        names = dialog.selectedFiles() if dialog.exec() else []
        dialog.deleteLater()
        return Path(names[0]) if names else None

    def arrivals(self, found: "Sequence[Arrival]") -> "dict[str, Answer] | None":
        """Show what a parcel brings; what is to become of each that differs, None to leave it."""
        from planner.app.intake.arrivals import ArrivalsDialog  # noqa: PLC0415 - seldom used

        return ArrivalsDialog(self.parent, found).ask()

    def _to_open(self, title: str, kinds: str) -> Path | None:
        folder = str(self._settings.last_folder)
        name, _ = QFileDialog.getOpenFileName(self.parent, title, folder, kinds)
        if not name:
            return None
        self._settings.last_folder = Path(name).parent
        return Path(name)

    def trouble(self, headline: str, problems: "Sequence[Problem]") -> None:
        """Show what could not be done."""
        close = Choice("ok", "Close", primary=True, escape=True)
        Message(self.parent, headline, "Nothing was changed.", (close,), problems=problems).ask()

    def leave_draft(self) -> bool:
        """Ask whether a draft that is not saved may be left."""
        question = Message(
            self.parent,
            "Leave what is not saved?",
            "What was written since the last save is lost.",
            (Choice("leave", "Leave it"), Choice("stay", "Go on", primary=True, escape=True)),
        )
        return question.ask() == "leave"

    def conflict(self, conflict: "Conflict") -> bool:
        """Show what somebody else changed meanwhile; True to write ours as the next revision."""
        problems = [
            Problem(
                f"{each.second or 'nothing'} there, {each.first or 'nothing'} here", each.key, ""
            )
            for each in conflict.difference
        ]
        question = Message(
            self.parent,
            conflict.problems[0].what[:1].upper() + conflict.problems[0].what[1:],
            "Nothing was saved. What differs, theirs first:",
            (
                Choice("over", "Save mine after theirs"),
                Choice("back", "Look at it again", primary=True, escape=True),
            ),
            problems=problems,
        )
        return question.ask() == "over"

    def confirmation(
        self, record: "PinoutRecord", proposed: tuple[str, str, str]
    ) -> "Confirmation | None":
        """Ask who found on a part that a record is right, when and how."""
        from planner.app.intake.confirm_dialog import ConfirmDialog  # noqa: PLC0415 - seldom used

        return ConfirmDialog(self.parent, record, proposed).ask()

    def reason(self, headline: str, first: str = "") -> str:
        """Ask for one line, such as a reason; empty where it was left."""
        dialog = QDialog(self.parent)
        dialog.setWindowTitle("Cupwright")
        dialog.setMinimumWidth(480)
        line = TextLine()
        line.setAccessibleName(headline)
        line.setText(first)
        line.setMaxLength(200)
        ok = Choice("ok", "OK", primary=True)
        framed(dialog, headline, line, ok, Choice("cancel", "Cancel", escape=True))
        said = line.text().strip() if dialog.exec() else ""
        dialog.deleteLater()
        return said
