"""The one ask object: every question to the builder goes through it, so that a test can answer."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from PySide6.QtWidgets import QApplication, QFileDialog, QWidget

from planner.app.dialogs.message import Choice, Message

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter

    from planner.app.actions import Actions
    from planner.app.dialogs.details import Details
    from planner.app.printing.desk import SheetDesk
    from planner.app.settings import Settings
    from planner.model.plan import Plan
    from planner.problem import Problem
    from planner.services.library import Meaning, Newer

Unsaved = Literal["save", "discard", "cancel"]
Recover = Literal["open", "discard", "later"]

PLAN_FILES = "Plans (*.json)"
SHEET_FILES = ("PDF (*.pdf)", "SVG (*.svg)")
TONE_FILES = ("Sound (*.wav)",)
CUT_FILES = ("Comma-separated values (*.csv)",)
READING_FILES = "Readings (*.csv *.txt *.tsv);;All files (*)"


def ending_of(kind: str) -> str:
    """Return the ending that a kind of file names: `pdf` of `PDF (*.pdf)`."""
    return kind.rpartition("*.")[2].rstrip(")")


class Ask:
    """Ask by dialogs over the window."""

    def __init__(self, parent: QWidget, settings: "Settings") -> None:
        self._parent = parent
        self._settings = settings

    # -- files ------------------------------------------------------------------------------

    def plan_to_open(self) -> Path | None:
        """Ask which plan file to open."""
        name, _ = QFileDialog.getOpenFileName(
            self._parent, "Open a plan", str(self._settings.last_folder), PLAN_FILES
        )
        return self._chosen(name)

    def where_to_save(self, suggested: str) -> Path | None:
        """Ask where to save the plan."""
        return self._where("Save the plan", suggested, (PLAN_FILES,))

    def where_to_write_sheet(self, suggested: str) -> Path | None:
        """Ask where to write the bench sheet; its ending says PDF or SVG."""
        return self._where("Write the bench sheet", suggested, SHEET_FILES)

    def where_to_write_cuts(self, suggested: str) -> Path | None:
        """Ask where to write the cut list."""
        return self._where("Write the cut list", suggested, CUT_FILES)

    def readings_to_open(self) -> Path | None:
        """Ask for a file of readings."""
        return self._file("Import readings", READING_FILES)

    def file_to_attach(self) -> Path | None:
        """Ask for a photo or another file to keep with a unit."""
        return self._file("Attach a file to the unit", "All files (*)")

    def where_to_write_form(self, suggested: str) -> Path | None:
        """Ask where to write the empty form of the readings."""
        return self._where("Write the empty form", suggested, CUT_FILES)

    def where_to_write_certificate(self, suggested: str) -> Path | None:
        """Ask where to write the pages of a unit; the ending says PDF or SVG."""
        return self._where("Write the pages of the unit", suggested, SHEET_FILES)

    def where_to_write_summary(self, suggested: str) -> Path | None:
        """Ask where to write the summary of all units."""
        return self._where("Write the summary of all units", suggested, CUT_FILES)

    def where_to_write_tones(self, suggested: str) -> Path | None:
        """Ask where to write the test tones."""
        return self._where("Write the test tones", suggested, TONE_FILES)

    def _file(self, title: str, kinds: str) -> Path | None:
        """Ask for a file that is there."""
        name, _ = QFileDialog.getOpenFileName(
            self._parent, title, str(self._settings.last_folder), kinds
        )
        return self._chosen(name)

    def _where(self, title: str, suggested: str, kinds: tuple[str, ...]) -> Path | None:
        """Ask for a file to write. The dialog adds the ending, so it asks before it replaces."""
        over = QApplication.activeModalWidget() or self._parent
        dialog = QFileDialog(over, title, str(self._settings.last_folder))
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setNameFilters(kinds)
        dialog.filterSelected.connect(lambda kind: dialog.setDefaultSuffix(ending_of(kind)))
        dialog.setDefaultSuffix(ending_of(kinds[0]))
        dialog.selectFile(suggested)
        names = dialog.selectedFiles() if dialog.exec() else []
        dialog.deleteLater()
        return self._chosen(names[0] if names else "")

    def library_folder(self) -> Path | None:
        """Ask for a folder of the builder's own definitions."""
        name = QFileDialog.getExistingDirectory(
            self._parent, "A folder of definitions", str(self._settings.last_folder)
        )
        return Path(name) if name else None

    def _chosen(self, name: str) -> Path | None:
        if not name:
            return None
        path = Path(name)
        self._settings.last_folder = path.parent
        return path

    # -- questions --------------------------------------------------------------------------

    def unsaved(self, name: str) -> Unsaved:
        """Ask what is to become of changes that are not saved."""
        question = Message(
            self._parent,
            f"Save the changes to {name}?",
            "They are lost if you go on without saving.",
            (
                Choice("save", "Save", primary=True),
                Choice("discard", "Discard"),
                Choice("cancel", "Cancel", escape=True),
            ),
        )
        answer = question.ask()
        return "save" if answer == "save" else "discard" if answer == "discard" else "cancel"

    def recover(self, names: Sequence[str]) -> Recover:
        """Ask what is to become of work that was not saved when the program ended."""
        one = len(names) == 1
        question = Message(
            self._parent,
            "Take up the work that was not saved?",
            "Cupwright ended before it was saved: "
            + "; ".join(names)
            + (". It can be opened as it was." if one else ". The latest can be opened as it was."),
            (
                Choice("open", "Open it" if one else "Open the latest", primary=True),
                Choice("discard", "Discard it" if one else "Discard all"),
                Choice("later", "Ask later", escape=True),
            ),
        )
        answer = question.ask()
        return "open" if answer == "open" else "discard" if answer == "discard" else "later"

    # -- what went wrong --------------------------------------------------------------------

    def trouble(
        self, headline: str, problems: "Sequence[Problem]", said: str = "Nothing was changed."
    ) -> None:
        """Show what is wrong with files: place, what, mend; and `said`, what that means."""
        Message(
            self._parent,
            headline,
            said,
            (Choice("ok", "Close", primary=True, escape=True),),
            problems=problems,
        ).ask()

    def mishap(self, sentence: str) -> bool:
        """Tell of a fault of the program itself; True where a copy of the plan is to be saved."""
        question = Message(
            self._parent,
            "Something in Cupwright went wrong",
            f"{sentence} The plan is as it was before. Save a copy now to be safe, then go on.",
            (Choice("copy", "Save a copy", primary=True), Choice("on", "Go on", escape=True)),
        )
        return question.ask() == "copy"

    # -- larger dialogs ---------------------------------------------------------------------

    def details(self, plan: "Plan") -> "Details | None":
        """Ask for title, order, revision and remarks."""
        from planner.app.dialogs.details import DetailsDialog  # noqa: PLC0415 - seldom used

        return DetailsDialog(self._parent, plan).ask()

    def workmanship(self, plan: "Plan") -> "dict[str, object] | None":
        """Ask which rules of workmanship hold; None where all stays."""
        from planner.app.dialogs.workmanship import WorkmanshipDialog  # noqa: PLC0415 - seldom used

        return WorkmanshipDialog(self._parent, plan.workmanship).ask()

    def newer(self, found: "Sequence[Newer]", told: "Meaning") -> bool:
        """Show what the library has newer; True to take it into the plan."""
        from planner.app.dialogs.newer import NewerDialog  # noqa: PLC0415 - seldom used

        return NewerDialog(self._parent, found, told).ask()

    def sheet(self, desk: "SheetDesk") -> None:
        """Show the sheet as it prints, with its options; it is printed and saved from there."""
        from planner.app.printing.dialog import SheetDialog  # noqa: PLC0415 - seldom used

        dialog = SheetDialog(self._parent, desk, self)
        dialog.exec()
        dialog.deleteLater()

    def printer(self, parent: QWidget, printer: "QPrinter", pages: int) -> bool:
        """Ask which printer to use, and for which of so many pages."""
        from PySide6.QtPrintSupport import QPrintDialog  # noqa: PLC0415 - seldom used

        printer.setFromTo(1, pages)
        dialog = QPrintDialog(printer, parent)
        dialog.setMinMax(1, pages)
        chosen = bool(dialog.exec())
        dialog.deleteLater()
        return chosen

    def settings(self) -> None:
        """Let the builder change the settings."""
        from planner.app.dialogs.settings import SettingsDialog  # noqa: PLC0415 - seldom used

        SettingsDialog(self._parent, self._settings, self.library_folder).exec()

    def show_keys(self, actions: "Actions") -> None:
        """Show every key."""
        from planner.app.dialogs.keys import KeysDialog  # noqa: PLC0415 - seldom used

        KeysDialog(self._parent, actions).exec()

    def about(self) -> None:
        """Say which version this is, and under which licence."""
        from planner.app.dialogs.about import about_text  # noqa: PLC0415 - seldom used

        Message(
            self._parent,
            "Cupwright",
            about_text(),
            (Choice("ok", "Close", primary=True, escape=True),),
        ).ask()
