"""What the dry fit's view looks at: the end, its turn just now, the fit there, the joint."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from planner.app.fitting.errands import Errands
from planner.app.fitting.slow_facts import MANY, SlowFacts, slow_facts
from planner.dryfit.dial import Dial, dial
from planner.dryfit.fit import EndFit, fit_end
from planner.dryfit.site import Site, site_of
from planner.edits.ends import turn_end
from planner.geometry.views import half_turn_deg
from planner.model.place import Place

if TYPE_CHECKING:
    from planner.app.workbench import Workbench
    from planner.model.connector import Connector
    from planner.model.plan import Plan


def whole_turn(turn_deg: float) -> float:
    """Return a turn between -180 and 180 degrees, to a hundredth."""
    turned = round(half_turn_deg(turn_deg), 2)
    return 0.0 if turned == 0 else turned


class Fitting(QObject):
    """Follow one end of the workbench's plan; nothing is computed while nobody looks."""

    changed = Signal()  # another end, another plan: everything but the slow facts
    ready = Signal()  # the slow facts are there: order, room for the iron, advice on sleeves
    end_changed = Signal()
    turned = Signal()  # only the turn, under the hand
    dial_changed = Signal()
    joint_changed = Signal()

    def __init__(self, workbench: "Workbench", parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.workbench = workbench
        self.end = ""
        self.fit: EndFit | None = None
        self.dial: Dial | None = None
        self._live: float | None = None
        self._pointed = ""
        self._awake = False
        self.slow = SlowFacts()
        self._errands, self._slow_errands = Errands(self), Errands(self)
        self._errands.done.connect(self._on_dial)
        self._slow_errands.done.connect(self._on_slow)
        self._dial_of: Site | None = None
        workbench.plan_changed.connect(self._on_plan_changed)
        workbench.selection_changed.connect(self._on_selection_changed)

    # -- what is looked at --------------------------------------------------------------------

    @property
    def plan(self) -> "Plan":
        """The plan as it is kept; the turn under the hand is not in it yet."""
        return self.workbench.plan

    @property
    def connector(self) -> "Connector | None":
        """The connector at the end, or None while none is chosen."""
        return self.plan.connector_of(self.end) if self.end in self.plan.end_by_id else None

    @property
    def turn_deg(self) -> float:
        """How far the plug is turned: under the hand, else as the plan has it."""
        if self._live is not None:
            return self._live
        record = self.plan.end_by_id.get(self.end)
        return record.turn_deg if record is not None else 0.0

    @property
    def is_turning(self) -> bool:
        """Tell whether the turn shown is not the plan's own."""
        return self._live is not None

    def look_at(self, end: str) -> None:
        """Look at another end."""
        if end != self.end:
            self.end, self._live, self._pointed = end, None, ""
            self.slow = SlowFacts()
            self.end_changed.emit()
            self._renew()

    def wake(self, *, awake: bool) -> None:
        """Begin to compute, or rest while the view is not shown."""
        if awake != self._awake:
            self._awake = awake
            self._live, self._pointed = None, ""
            self._renew()

    def let_go(self) -> None:
        """Stop what is under way."""
        self._awake = False
        self._errands.let_go()
        self._slow_errands.let_go()

    # -- turning ------------------------------------------------------------------------------

    def turn_to(self, turn_deg: float) -> None:
        """Show the end at another turn, with all gaps, and leave the plan as it is."""
        wanted = whole_turn(turn_deg)
        if self.fit is None or wanted == self.turn_deg:
            return
        self._live = wanted
        self.fit = self._fit_at(wanted)
        self.turned.emit()

    def settle(self) -> None:
        """Put the turn under the hand into the plan, as one undo step."""
        live, end = self._live, self.end
        self._live = None
        if live is not None and end in self.plan.end_by_id:
            self.workbench.do(f"Turn {end}", lambda plan: turn_end(plan, end=end, turn_deg=live))
            if self.fit is not None and self.fit.turn_deg != self.turn_deg:
                self._renew_fit()

    def leave_turn(self) -> None:
        """Go back to the turn that the plan has."""
        if self._live is not None:
            self._live = None
            self._renew_fit()

    def _fit_at(self, turn_deg: float) -> EndFit | None:
        if self.connector is None:
            return None
        plan = self.plan
        if turn_deg != plan.end_by_id[self.end].turn_deg:
            plan = turn_end(plan, end=self.end, turn_deg=turn_deg)
        return fit_end(plan, self.workbench.wiring, self.end)

    # -- joints -------------------------------------------------------------------------------

    @property
    def joints(self) -> tuple[str, ...]:
        """The contacts that are soldered, in the order of soldering."""
        return self.slow.order if self.fit is not None else ()

    @property
    def is_large(self) -> bool:
        """Tell whether so much is landed that it can't all be worked out between two frames."""
        return self.fit is not None and len(self.fit.leads) > MANY

    @property
    def joint(self) -> str:
        """The joint that is looked at: under the pointer, else the selected contact."""
        if self._pointed:
            return self._pointed
        chosen = self.workbench.selection
        return chosen.contact if chosen.end == self.end and chosen.contact in self.joints else ""

    def point_at(self, contact: str) -> None:
        """Look at what lies under the pointer; empty for nothing."""
        if contact != self._pointed:
            self._pointed = contact
            place = Place(end=self.end, contact=contact) if contact else None
            self.workbench.light(place)
            self.joint_changed.emit()

    def choose(self, contact: str) -> None:
        """Select a contact, and light its net."""
        place = Place(end=self.end, contact=contact)
        self.workbench.select(place)
        self.workbench.light(place)

    def step_joint(self, by: int) -> None:
        """Choose the joint that comes so many later in the order of soldering."""
        order = self.joints
        if not order:
            return
        here = self.joint
        at = order.index(here) + by if here in order else 0 if by > 0 else len(order) - 1
        self._pointed = ""
        self.choose(order[min(max(at, 0), len(order) - 1)])

    def _on_selection_changed(self) -> None:
        if self._awake:
            self.joint_changed.emit()

    # -- heard ----------------------------------------------------------------------------------

    def _on_plan_changed(self, _changes: object) -> None:
        self._live, self._pointed = None, ""
        self._renew()

    def _renew(self) -> None:
        if self._awake:
            self._renew_fit()
            self._seek_dial()

    def _renew_fit(self) -> None:
        plan, fit = self.plan, self._fit_at(self.turn_deg)
        self.fit = fit
        self._slow_errands.call_off()
        if fit is None:
            self.slow = SlowFacts()
        elif not self.is_large:
            self.slow = slow_facts(plan, fit)
        self.changed.emit()
        if fit is not None and self.is_large:
            self._slow_errands.start(lambda _progress, _off: slow_facts(plan, fit))
        else:
            self.ready.emit()

    def _on_slow(self, made: SlowFacts) -> None:
        self.slow = made
        self.ready.emit()

    def _seek_dial(self) -> None:
        """Have the dial made anew, unless only the turn has changed: it is the same for all."""
        plan, wiring, end = self.plan, self.workbench.wiring, self.end
        site = site_of(plan, wiring, end) if end in plan.end_by_id else None
        if site is not None and site == self._dial_of:
            return
        other = site is None or self._dial_of is None or site.end != self._dial_of.end
        self._dial_of = site
        self._errands.call_off()
        if other:
            self.dial = None
            self.dial_changed.emit()
        if site is not None:
            self._errands.start(
                lambda progress, off: dial(plan, wiring, end, progress=progress, cancelled=off)
            )

    def _on_dial(self, made: Dial | None) -> None:
        self.dial = made
        self.dial_changed.emit()
