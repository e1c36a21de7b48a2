"""Open the owner's window, at what is looked at: a row of the shelf, an end's pinout, a finding."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from planner.model.definition import kind_name

if TYPE_CHECKING:
    from planner.app.furnish import Bench
    from planner.app.intake.asking import OwnerAsk
    from planner.app.intake.window import LibraryWindow
    from planner.checks.finding import Finding
    from planner.model.definition import Definition


class LibraryActs(QObject):
    """Make the window with its first use, and keep it in the look that is on."""

    def __init__(self, bench: "Bench") -> None:
        super().__init__(bench)
        self._bench = bench
        self.window: LibraryWindow | None = None
        self.ask: OwnerAsk | None = None  # a test puts its own here
        bench.window.acts.handle("library", lambda: self.open(self._looked_at()))
        bench.shelf.looked_up.connect(self.open)
        bench.findings.looked_up.connect(lambda found: self.open(self._used_at(found)))
        bench.theme.changed.connect(self._on_look_changed)

    def open(self, record: "Definition | None" = None) -> None:
        """Show the window, at a definition if one is given."""
        if self.window is None:
            self.window = self._make()
        if record is not None:
            self.window.look_at(record.id, kind_name(record))
        self.window.show()
        self.window.raise_()
        self.window.activateWindow()

    def let_go(self) -> None:
        """Stop what the window works out."""
        if self.window is not None:
            self.window.sample.sample.let_go()

    def _make(self) -> "LibraryWindow":
        from planner.app.intake.asking import OwnerAsk  # noqa: PLC0415 - seldom used
        from planner.app.intake.window import LibraryWindow  # noqa: PLC0415 - seldom used

        bench = self._bench
        ask = self.ask or OwnerAsk(bench.settings)
        return LibraryWindow(bench.workbench, bench.settings, ask, bench.theme.look, bench.window)

    def _looked_at(self) -> "Definition | None":
        """Return what the keyboard stands on in the shelf, else what the selected end has."""
        shelf, bench = self._bench.shelf, self._bench.workbench
        if shelf.isAncestorOf(self._bench.window.focusWidget()) and shelf.record is not None:
            return shelf.record
        end = bench.plan.end_by_id.get(bench.selection.end)
        return self._of_end(end.id) if end is not None else None

    def _used_at(self, found: "Finding") -> "Definition | None":
        ends = [place.end for place in found.where if place.end]
        return self._of_end(ends[0]) if ends else None

    def _of_end(self, end: str) -> "Definition | None":
        plan = self._bench.workbench.plan
        return plan.pinout_of(end) or plan.connector_of(end)

    def _on_look_changed(self) -> None:
        if self.window is not None:
            self.window.set_look(self._bench.theme.look)
