"""What is done to an end in the dry fit: turns, orders, sleeves; each is one undo step."""

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QObject, Signal

from planner.app.fitting.glide import Glide
from planner.app.fitting.seeker import Seeker
from planner.app.fitting.state import whole_turn
from planner.app.fitting.words import order_said, turning_said
from planner.dryfit.access import soldering_at
from planner.dryfit.turning import Turning, best_turn
from planner.edits.ends import turn_end
from planner.edits.landings import sleeve
from planner.edits.sleeving import take_sleeves
from planner.edits.soldering import move_joint, take_best_order
from planner.edits.turning import apply_turning
from planner.wiring.graph import Wiring

if TYPE_CHECKING:
    from planner.app.fitting.errands import Cancelled, Progress
    from planner.app.fitting.state import Fitting
    from planner.app.workbench import Edit
    from planner.model.plan import Plan

NOTHING = "Nothing is landed here yet."
_UNDER_WAY = "Best turn"


class FitActs(QObject):
    """Do what the view, the keys and the menu ask for, at the end that is looked at."""

    said = Signal(str)

    def __init__(self, state: "Fitting") -> None:
        super().__init__(state)
        self.state, self.workbench = state, state.workbench
        self.free = False
        self.seeker = Seeker(state.workbench, self)
        self.glide = Glide(state)

    # -- turns ----------------------------------------------------------------------------------

    def best_turn(self) -> None:
        """Seek the best turn; it is taken when it is found."""
        end, free = self.state.end, self.free
        if self.state.fit is None:
            self.said.emit(NOTHING)
            return
        self.state.leave_turn()

        def search(
            plan: "Plan", wiring: Wiring, progress: "Progress", cancelled: "Cancelled"
        ) -> object:
            return best_turn(plan, wiring, end, free=free, progress=progress, cancelled=cancelled)

        self.seeker.seek(_UNDER_WAY, search, self._take_turning)

    def _take_turning(self, found: object) -> None:
        turning = cast("Turning | None", found)
        if turning is None:
            return
        before = self.state.turn_deg
        said = turning_said(self.workbench.plan, turning, before)
        self.workbench.do(f"Best turn of {turning.end}", partial(apply_turning, turning=turning))
        self.said.emit(said)
        self.glide.go_from(before)

    def set_turn(self, turn_deg: float) -> None:
        """Turn the plug to an angle that was typed, or back to 0."""
        end = self.state.end
        self.state.leave_turn()
        before = self.state.turn_deg
        if self.state.fit is not None:
            edit = partial(turn_end, end=end, turn_deg=whole_turn(turn_deg))
            self.workbench.do(f"Turn {end}", edit)
            self.glide.go_from(before)

    # -- order ----------------------------------------------------------------------------------

    def best_order(self) -> None:
        """Seek the order in which the iron reaches every joint best."""
        end = self.state.end
        if self.state.fit is None:
            self.said.emit(NOTHING)
            return
        self._change("Best order", lambda plan: take_best_order(plan, end=end), self._order_said)

    def _order_said(self, plan: "Plan") -> str:
        found = soldering_at(plan, Wiring(plan), self.state.end)
        return order_said(found.order) if found is not None else ""

    def move_joint(self, by: int) -> None:
        """Solder the joint that is looked at earlier (-1) or later (1)."""
        here, order = self.state.joint, self.state.joints
        if here in order:
            self.put_joint(here, order.index(here) + by)

    def put_joint(self, contact: str, place: int) -> None:
        """Solder a joint at a place of the order, from 0."""
        here = self.state.joints.index(contact)
        place = min(max(place, 0), len(self.state.joints) - 1)
        if place != here:
            edit = partial(move_joint, end=self.state.end, contact=contact, to=place + 1)
            self.workbench.do(f"Order of soldering at {self.state.end}", edit)
            self.state.choose(contact)

    # -- sleeves --------------------------------------------------------------------------------

    def toggle_sleeve(self) -> None:
        """Put an insulating sleeve over the joint that is looked at, or take it off."""
        end, fit, contact = self.state.end, self.state.fit, self.state.joint
        if fit is None or not contact:
            self.said.emit("Choose a joint first: \u2191 \u2193, or click it.")
            return
        here = [lead.landing for lead in fit.leads if lead.landing.contact == contact]
        sleeved = not all(landing.sleeved for landing in here)

        def edit(plan: "Plan") -> "Plan":
            for landing in here:
                plan = sleeve(plan, end=end, conductor=landing.conductor, sleeved=sleeved)
            return plan

        word = "Sleeve" if sleeved else "No sleeve"
        self.workbench.do(f"{word} on {end} {contact}", edit)

    def sleeve_advised(self) -> None:
        """Take the sleeves and dabs that are advised for the whole end."""
        end = self.state.end
        if self.state.fit is None:
            self.said.emit(NOTHING)
            return
        self._change("Sleeves as advised", lambda plan: take_sleeves(plan, end=end))

    # -- all ------------------------------------------------------------------------------------

    def _change(
        self, what: str, edit: "Edit", told: Callable[["Plan"], str] = lambda _plan: ""
    ) -> None:
        """Work an edit out off the UI thread, then take it as one undo step and tell of it."""
        end = self.state.end

        def search(
            plan: "Plan", _wiring: Wiring, _progress: "Progress", _off: "Cancelled"
        ) -> "tuple[Plan, str]":
            after = edit(plan)
            return after, told(after)

        def take(found: object) -> None:
            after, said = cast("tuple[Plan, str]", found)
            before = self.workbench.plan
            self.workbench.do(f"{what} at {end}", lambda _plan: after)
            same = self.workbench.plan is before
            self.said.emit(f"{what}: it is so already." if same else said)

        self.seeker.seek(what, search, take)

    def call_off(self) -> bool:
        """Call off what is under way; False where nothing is."""
        called_off = self.seeker.call_off()
        if called_off:
            self.said.emit(f"{self.seeker.what}: called off, nothing was changed.")
        if self.glide.running:
            self.glide.stop()
            self.state.leave_turn()
        elif self.state.is_turning:
            self.state.leave_turn()
        else:
            return called_off
        return True

    def let_go(self) -> None:
        """Stop for good."""
        self.glide.stop()
        self.seeker.let_go()
