"""What the Lead and Edit menus do."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from planner.app.actions import Actions
from planner.app.notice import Notice
from planner.app.panels.findings import FindingsPanel
from planner.app.workbench import Workbench
from planner.edits.by_signal import land_by_signal
from planner.edits.ends import turn_end
from planner.edits.shapes import add_leg, remove_leg
from planner.model.plan import Plan

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtGui import QUndoStack

TURN_DEG = 10.0


def next_label(plan: Plan) -> str:
    """Return a free label for a new end: B9 after B8, else C, D and so on."""
    taken = {end.id for end in plan.ends} | {split.id for split in plan.splits}
    numbered = [end.id for end in plan.ends if end.id[:1] == "B" and end.id[1:].isdigit()]
    candidates = [f"B{number}" for number in range(1, 100)] if numbered else []
    candidates += [chr(code) for code in range(ord("C"), ord("Z") + 1)]
    return next((name for name in candidates if name not in taken), "")


def turned(plan: Plan, *, end: str, by_deg: float) -> Plan:
    """Turn a plug by an angle, kept between -180 and 180 degrees."""
    return turn_end(plan, end=end, turn_deg=plan.end_by_id[end].turn_deg + by_deg)


class LeadActs(QObject):
    """Handle undo and redo, land by signal, legs, turns, and walking through the findings."""

    def __init__(
        self, workbench: Workbench, findings: FindingsPanel, notice: Notice, parent: QObject
    ) -> None:
        super().__init__(parent)
        self._workbench = workbench
        self._findings = findings
        self._notice = notice
        self._actions: Actions | None = None
        # Undo and redo act on what is looked at: the plan, or the readings of a unit.
        self.stack: Callable[[], QUndoStack] = lambda: workbench.undo_stack

    def connect_to(self, actions: Actions) -> None:
        """Take on the actions, and keep those enabled that can be done."""
        self._actions = actions
        bench = self._workbench
        for name, slot in (
            ("undo", lambda: self.stack().undo()),
            ("redo", lambda: self.stack().redo()),
            ("land_by_signal", self.land_by_signal),
            ("land_end_by_signal", self.land_end_by_signal),
            ("add_leg", self.add_leg),
            ("remove_leg", self.remove_leg),
            ("turn_left", partial(self.turn, TURN_DEG)),
            ("turn_right", partial(self.turn, -TURN_DEG)),
            ("go_finding", self._findings.go),
            ("mend_finding", self._findings.mend),
            ("next_finding", self._findings.next_finding),
            ("previous_finding", self._findings.previous_finding),
        ):
            actions.handle(name, slot)
        for signal in (
            bench.plan_changed,
            bench.selection_changed,
            bench.findings_changed,
            bench.undo_stack.indexChanged,
            bench.undo_stack.cleanChanged,
        ):
            signal.connect(self.renew)
        self.renew()

    def renew(self, *_what: object) -> None:
        """Enable what can be done now, and name what would be undone."""
        if self._actions is None:
            return
        stack, plan = self.stack(), self._workbench.plan
        end = self._workbench.selection.end
        for name, can in (
            ("undo", stack.canUndo()),
            ("redo", stack.canRedo()),
            ("land_by_signal", bool(plan.conductors)),
            ("land_end_by_signal", bool(plan.conductors) and end in plan.end_by_id),
            ("sheet", bool(plan.conductors)),
            ("add_leg", bool(plan.splits)),
            ("remove_leg", bool(plan.splits) and end in plan.end_by_id),
            ("turn_left", end in plan.end_by_id),
            ("turn_right", end in plan.end_by_id),
        ):
            self._actions[name].setEnabled(can)
        for name in ("go_finding", "mend_finding", "next_finding", "previous_finding"):
            self._actions[name].setEnabled(bool(self._findings.shown))
        for name, words, text in (
            ("undo", "&Undo", stack.undoText()),
            ("redo", "&Redo", stack.redoText()),
        ):
            shown = text[:1].lower() + text[1:]
            self._actions[name].setText(f"{words} {shown}".strip())

    def land_by_signal(self) -> None:
        """Land what is certain in the whole lead as one undo step, and say what it left."""
        self._land_certain("")

    def land_end_by_signal(self) -> None:
        """Do the same for the selected end alone."""
        self._land_certain(self._workbench.selection.end)

    def _land_certain(self, end: str) -> None:
        before = self._workbench.plan
        after, left = land_by_signal(before, end=end)
        landed = len(after.landings) - len(before.landings)
        self._workbench.put_back()
        if after != before:
            text = f"Land {end} by signal" if end else "Land by signal"
            self._workbench.do(text, lambda _plan: after)
        told = f"Landed {landed} by signal." if landed else "Nothing more is certain by signal."
        rest = " ".join(_sentence(text) for text in left)
        self._notice.say(f"{told} {rest}".strip(), stays=bool(left))

    def add_leg(self) -> None:
        """Add one more end at the split."""
        plan = self._workbench.plan
        label = next_label(plan)
        edit = partial(add_leg, end=label, split=plan.splits[0].id)
        self._workbench.do(f"Add leg {label}", edit)

    def remove_leg(self) -> None:
        """Take away the selected end and its cable."""
        end = self._workbench.selection.end
        self._workbench.do(f"Remove leg {end}", partial(remove_leg, end=end))

    def turn(self, by_deg: float) -> None:
        """Turn the selected plug."""
        end = self._workbench.selection.end
        if end in self._workbench.plan.end_by_id:
            self._workbench.do(f"Turn {end}", partial(turned, end=end, by_deg=by_deg))


def _sentence(text: str) -> str:
    begun = text[:1].upper() + text[1:]
    return begun if begun.endswith((".", "!", "?")) else f"{begun}."
