"""A plan keeps its own copies: say when the library has newer ones, and take them on request."""

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from planner.services.library import Meaning, Newer, meaning, newer, up_to_date

if TYPE_CHECKING:
    from planner.app.actions import Actions
    from planner.app.notice import Notice
    from planner.app.workbench import Workbench

AskNewer = Callable[[Sequence[Newer], Meaning], bool]


class NewerActs(QObject):
    """Handle *Newer definitions*; `ask` shows what they change and what that means."""

    def __init__(
        self, workbench: "Workbench", notice: "Notice", ask: AskNewer, parent: QObject
    ) -> None:
        super().__init__(parent)
        self._workbench, self._notice, self._ask = workbench, notice, ask

    def connect_to(self, actions: "Actions") -> None:
        """Take on the action."""
        actions.handle("newer", self.show)

    def found(self) -> tuple[Newer, ...]:
        """Return what the library has newer than the plan's copies."""
        return newer(self._workbench.plan, self._workbench.library)

    def tell(self) -> None:
        """Say once that there is something newer; the plan stays as it is."""
        found = self.found()
        if not found:
            return
        titles = ", ".join(it.known.title for it in found[:3]) + (
            " \u2026" if len(found) > 3 else ""
        )
        words = (
            f"The library has newer definitions than this plan: {titles}. The plan keeps its own. "
            "Lead, Newer definitions shows what they would change."
        )
        self._notice.say(words, stays=True)

    def show(self) -> None:
        """Show what is newer, and take it as one undo step if it is wanted."""
        found = self.found()
        if not found:
            self._notice.say("The plan has every definition as the library has it.")
            return
        plan, library = self._workbench.plan, self._workbench.library
        told = meaning(plan, [it.known for it in found], library)
        if self._ask(found, told):
            self._workbench.do("Take newer definitions", lambda it: up_to_date(it, found))
            self._notice.say("Taken. Ctrl+Z brings the plan\u2019s own definitions back.")
