"""Furnish the shown window: library, workbench, panels and canvas. All that is heavy comes in here."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from planner.app.workbench import Workbench
from planner.library.loading import load_library

if TYPE_CHECKING:
    from planner.app.shell import Shell


class Bench(QObject):
    """What stands in the window once it is furnished."""

    def __init__(self, shell: "Shell") -> None:
        super().__init__(shell)
        self.shell = shell
        self.workbench = Workbench(load_library(shell.settings.folders), self)

    def begin(self, plan: Path | None, *, demo: bool) -> None:
        """Open what was asked for on the command line."""
