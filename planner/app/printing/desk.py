"""What the sheet dialog works on: one plan, the options of its sheet, the pages they make."""

from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from planner.app.fitting.errands import Errands
from planner.app.session import file_name_for
from planner.files.atomic import write_atomic
from planner.services.cutting import write_cut_list
from planner.services.sheets import sheet_files, sheet_title
from planner.sheet.page import Page, sheet_pages

if TYPE_CHECKING:
    from collections.abc import Sequence

    from planner.app.settings import Settings
    from planner.checks.finding import Finding
    from planner.model.plan import Plan
    from planner.sheet.paper import PaperName
    from planner.sheet.words import Language

MOST_LEADS, MOST_DATE = 10_000, 40


@dataclass(frozen=True, slots=True)
class SheetOptions:
    """How a sheet is made; `date` is printed as it is written."""

    paper: "PaperName" = "a4"
    language: "Language" = "en"
    outlines: bool = False
    leads: int = 1
    date: str = ""


class SheetDesk(QObject):
    """Make the pages of a plan's sheet off the UI thread, and write them."""

    changed = Signal()  # other pages are under way
    ready = Signal()  # they are there

    def __init__(
        self,
        plan: "Plan",
        findings: "Sequence[Finding]",
        settings: "Settings",
        *,
        date: str = "",
        leads: int = 1,
    ) -> None:
        super().__init__()
        self.plan, self.findings = plan, tuple(findings)
        self._settings = settings
        self.options = SheetOptions(settings.paper, settings.language, date=date, leads=leads)
        self.written: tuple[Path, ...] = ()
        self.printed = False
        self.pages: tuple[Page, ...] = ()
        self._wanted: SheetOptions | None = None
        self._errands = Errands(self)
        self._errands.done.connect(self._on_done)

    @property
    def stopped(self) -> bool:
        """Tell whether the plan must not be soldered from."""
        return any(finding.weight == "stop" for finding in self.findings)

    @property
    def busy(self) -> bool:
        """Tell whether the pages are still under way."""
        return self._errands.busy

    def begin(self) -> None:
        """Have the pages made for the options that are chosen, unless they are there."""
        # Outlines look the same as letters: they ask for no other pages.
        wanted = replace(self.options, outlines=False)
        if wanted != self._wanted:
            self._wanted = wanted
            self._errands.start(lambda _progress, _off: self._pages(wanted))
            self.changed.emit()

    def _on_done(self, made: tuple[Page, ...]) -> None:
        self.pages = made
        self.ready.emit()

    def let_go(self) -> None:
        """Stop what is under way."""
        self._errands.let_go()

    def _pages(self, options: SheetOptions) -> tuple[Page, ...]:
        return sheet_pages(
            self.plan,
            self.findings,
            paper=options.paper,
            date=options.date,
            language=options.language,
            leads=options.leads,
        )

    def choose(self, **options: object) -> None:
        """Choose other options; paper and language are kept for the next sheet."""
        chosen = replace(self.options, **options)  # type: ignore[arg-type] # named by the dialog
        if chosen != self.options:
            self.options = chosen
            self._settings.choose("paper", chosen.paper)
            self._settings.choose("language", chosen.language)
            self.begin()

    def file_name(self, ending: str) -> str:
        """Suggest a file name with an ending such as `.pdf`."""
        return f"{file_name_for(self.plan)}{ending}"

    def write(self, path: Path) -> tuple[Path, ...]:
        """Write the sheet as PDF or SVG, or the cut list as CSV; InputError where it can't be."""
        if path.suffix.lower() == ".csv":
            made = write_cut_list(self.plan, self.findings, path, leads=self.options.leads)
        else:
            made = self._write_sheet(path)
        self.written += tuple(name for name in made if name not in self.written)
        return made

    def _write_sheet(self, path: Path) -> tuple[Path, ...]:
        title, outlines = sheet_title(self.plan), self.options.outlines
        contents = sheet_files(self.pages, path, title=title, outlines=outlines)
        for target, data in contents:
            write_atomic(target, data)
        return tuple(target for target, _ in contents)
