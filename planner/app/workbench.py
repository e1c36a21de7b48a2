"""The workbench: what every panel and the canvas share, so that none needs to know another.

It holds the document, the undo stack, the library, the findings, what is selected and what is in
hand. Panels call its methods and listen to its signals; they never change the document themselves.
Import it only after the first window is shown: it brings pydantic and networkx with it.
"""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoCommand, QUndoStack

from planner.checks.finding import Finding
from planner.edits import landings
from planner.library.collection import Library
from planner.model.document import Change, Document
from planner.model.place import Place
from planner.model.plan import Plan
from planner.problem import EditRefused
from planner.services.checking import check_plan
from planner.wiring.graph import Wiring

Edit = Callable[[Plan], Plan]


class PlanCommand(QUndoCommand):
    """One undo step: the plan before and after. Records are shared, so this costs little."""

    def __init__(self, document: Document, text: str, after: Plan) -> None:
        super().__init__(text)
        self._document = document
        self._before = document.plan
        self._after = after

    def redo(self) -> None:
        """Put the later plan in place."""
        self._document.replace(self._after)

    def undo(self) -> None:
        """Put the earlier plan in place."""
        self._document.replace(self._before)


@dataclass(frozen=True, slots=True)
class Ghost:
    """What a drop would do: whether it is allowed, why not, and which findings come and go."""

    allowed: bool
    reason: str = ""
    new: tuple[Finding, ...] = ()
    gone: tuple[Finding, ...] = ()


class Workbench(QObject):
    """Hold the state that the window's parts share, and be the one way to change the plan."""

    plan_changed = Signal(object)  # tuple[Change, ...]
    findings_changed = Signal()
    selection_changed = Signal()
    hand_changed = Signal()
    over_changed = Signal()
    lit_changed = Signal()
    library_changed = Signal()
    refused = Signal(str, str)  # reason, mend
    go_to = Signal(object)  # Place: scroll to it and show it

    def __init__(self, library: Library, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.library = library
        self.document = Document()
        self.undo_stack = QUndoStack(self)
        self.selection = Place()
        self.selected_section = ""
        self.hand: Place | None = None
        self.over = ""
        self.lit: frozenset[Place] = frozenset()
        self.findings: tuple[Finding, ...] = ()
        self.wiring = Wiring(self.document.plan)
        self._ghosts: dict[tuple[int, str, str, str, bool], Ghost] = {}
        self.document.subscribe(self._on_document_changed)
        self._derive()

    # -- the plan ---------------------------------------------------------------------------

    @property
    def plan(self) -> Plan:
        """The plan as it is now."""
        return self.document.plan

    def do(self, text: str, edit: Edit) -> bool:
        """Run an edit as one undo step; tell `refused` and return False if it refuses."""
        try:
            after = edit(self.plan)
        except EditRefused as refusal:
            self.refused.emit(refusal.reason, refusal.mend)
            return False
        if after is not self.plan and after != self.plan:
            self.undo_stack.push(PlanCommand(self.document, text, after))
        return True

    def open_plan(self, plan: Plan) -> None:
        """Begin with another plan; the undo history starts anew."""
        self.put_back()
        self.selection, self.selected_section = Place(), ""
        self.undo_stack.clear()
        self.document.reset(plan)
        self.selection_changed.emit()

    def preview(self, edit: Edit) -> Ghost:
        """Tell what an edit would do, without doing it."""
        try:
            after = edit(self.plan)
        except EditRefused as refusal:
            return Ghost(allowed=False, reason=refusal.reason)
        later = check_plan(after, self.library.pinouts())
        before = {(finding.code, finding.where) for finding in self.findings}
        then = {(finding.code, finding.where) for finding in later}
        new = tuple(found for found in later if (found.code, found.where) not in before)
        gone = tuple(found for found in self.findings if (found.code, found.where) not in then)
        return Ghost(allowed=True, new=new, gone=gone)

    # -- what is in hand --------------------------------------------------------------------

    def pick_up(self, end: str, conductor: str) -> None:
        """Take a conductor's tip at an end in hand."""
        self.hand = Place(end=end, conductor=conductor)
        self.select(self.hand)
        self.hand_changed.emit()

    def put_back(self) -> None:
        """Let go without changing anything."""
        if self.hand is not None:
            self.hand = None
            self.hover("")
            self.hand_changed.emit()

    def hover(self, contact: str) -> None:
        """Say over which contact of its end the thing in hand is held; empty for none."""
        if contact != self.over:
            self.over = contact
            self.over_changed.emit()

    def ghost(self, contact: str, *, exchange: bool = False) -> Ghost:
        """Tell what dropping what is in hand on `contact` (at the same end) would do."""
        if self.hand is None:
            return Ghost(allowed=False, reason="nothing is in hand")
        end, conductor = self.hand.end, self.hand.conductor
        key = (self.document.edition, f"{end}/{conductor}", contact, "", exchange)
        if key not in self._ghosts:
            self._ghosts[key] = self.preview(self._landing_edit(end, conductor, contact, exchange))
        return self._ghosts[key]

    def land(self, end: str, conductor: str, contact: str, *, exchange: bool = False) -> bool:
        """Land a conductor on a contact of an end, or exchange it with what is there."""
        self.put_back()
        edit = self._landing_edit(end, conductor, contact, exchange)
        return self.do(f"Land {conductor} on {end} {contact}", edit)

    def lift(self, end: str, conductor: str) -> bool:
        """Take a conductor off its contact at an end."""
        self.put_back()
        return self.do(
            f"Lift {conductor} at {end}", partial(landings.lift, end=end, conductor=conductor)
        )

    @staticmethod
    def _landing_edit(end: str, conductor: str, contact: str, exchange: bool) -> Edit:  # noqa: FBT001
        edit = landings.exchange if exchange else landings.land
        return partial(edit, end=end, conductor=conductor, contact=contact)

    # -- selection and light ----------------------------------------------------------------

    def select(self, place: Place, section: str = "") -> None:
        """Select an end, a contact, a conductor at an end, or a section of cable."""
        if (place, section) != (self.selection, self.selected_section):
            self.selection, self.selected_section = place, section
            self.selection_changed.emit()

    def light(self, place: Place | None) -> None:
        """Light the whole net of a contact or conductor across the lead; None puts it out."""
        lit = self.wiring.net_places(place) if place is not None else frozenset()
        if lit != self.lit:
            self.lit = lit
            self.lit_changed.emit()

    # -- derived ----------------------------------------------------------------------------

    def _on_document_changed(self, changes: tuple[Change, ...]) -> None:
        self._ghosts.clear()
        self._derive()
        self.plan_changed.emit(changes)
        self.findings_changed.emit()

    def _derive(self) -> None:
        self.wiring = Wiring(self.plan)
        self.findings = check_plan(self.plan, self.library.pinouts(), self.wiring)
