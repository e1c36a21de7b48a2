"""What the order of work looks at: steps, threading and cuts of the plan, and what is chosen."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from planner.app.following import Follower
from planner.app.order_of_work.facts import WorkFacts, work_facts
from planner.dryfit.parts import proposals
from planner.dryfit.work import movable
from planner.edits.parts import remove_part, take_parts
from planner.edits.routes_of_parts import set_route
from planner.edits.work import move_step
from planner.model.place import Place

if TYPE_CHECKING:
    from planner.app.fitting.errands import Work as Errand
    from planner.app.workbench import Workbench
    from planner.dryfit.work.step import Step
    from planner.model.plan import PartUse


class Work(Follower):
    """Follow the workbench's plan, its steps, threading and cuts."""

    changed = Signal()  # the facts are there, or others are
    step_changed = Signal()
    part_changed = Signal()
    leads_changed = Signal()

    def __init__(self, workbench: "Workbench", parent: QObject | None = None) -> None:
        super().__init__(workbench, parent)
        self.facts = WorkFacts()
        self.step = self.part = ""
        self.leads = 1
        self.stays_on: frozenset[str] = frozenset()

    def _renew(self) -> None:
        self.stays_on &= frozenset(self.plan.end_by_id)
        super()._renew()

    def _work(self) -> "Errand":
        plan, wiring, stays_on = self.plan, self.workbench.wiring, self.stays_on
        return lambda _progress, _off: work_facts(plan, wiring, stays_on)

    def _on_done(self, made: WorkFacts) -> None:
        self.facts = made
        self.changed.emit()

    # -- view state: never in the plan ------------------------------------------------------------

    def set_leads(self, leads: int) -> None:
        """Say how many leads the run has."""
        if leads != self.leads:
            self.leads = leads
            self.leads_changed.emit()

    def keep_on(self, end: str, *, stays: bool) -> None:
        """Say whether an end's plug stays soldered on, for what a rework can still thread."""
        self.stays_on = self.stays_on | {end} if stays else self.stays_on - {end}
        self._renew()

    # -- steps ------------------------------------------------------------------------------------

    def place_of(self, step: str) -> int:
        """Return the number of a step, from 1; 0 where there is none."""
        ids = [it.id for it in self.facts.steps]
        return ids.index(step) + 1 if step in ids else 0

    def choose_step(self, step: str) -> None:
        """Choose a step, and select what it is done at."""
        if step != self.step:
            self.step = step
            self.step_changed.emit()
        found = next((it for it in self.facts.steps if it.id == step), None)
        if found is not None and found.end in self.plan.end_by_id:
            self.workbench.select(place_of(found))

    def may_go(self, step: str) -> range:
        """Return the numbers that a step may have, from 1, within what has to come before."""
        return movable(self.plan, self.workbench.wiring, step)

    def move(self, step: str, to: int) -> None:
        """Give a step another number; refused with the step that has to come before."""
        here = self.place_of(step)
        to = min(max(to, 1), len(self.facts.steps))
        if here and to != here:
            self.choose_step(step)
            self.workbench.do("Move a step", partial(move_step, step=step, to=to))

    def reset_order(self) -> None:
        """Do the steps in the order that is computed again."""
        if not self.plan.step_order:
            self.said.emit("The steps are in the computed order already.")
        else:
            self.workbench.do("Computed order", lambda plan: plan.evolve(step_order=()))

    # -- parts ------------------------------------------------------------------------------------

    def choose_part(self, use: str) -> None:
        """Choose a part of the lead, by the id of its use."""
        if use != self.part:
            self.part = use
            self.part_changed.emit()

    @property
    def use(self) -> "PartUse | None":
        """The part that is chosen."""
        return next((use for use in self.plan.parts if use.id == self.part), None)

    def route(self, *, comes_from: str = "", after_joint: bool | None = None) -> None:
        """Thread the chosen part from another end, or before or after that end's joint."""
        use = self.use
        if use is not None:
            edit = partial(
                set_route,
                use=use.id,
                comes_from=comes_from or use.comes_from,
                after_joint=use.after_joint if after_joint is None else after_joint,
                section=use.section,
            )
            self.workbench.do("Thread a part otherwise", edit)

    def take_off(self) -> None:
        """Take the chosen part off the lead."""
        if self.use is not None:
            self.workbench.do("Take a part off", partial(remove_part, use=self.part))

    def take_proposed(self) -> None:
        """Take the parts that the ends and splits still want, as one undo step."""
        wanted = proposals(self.plan, self.workbench.library.parts())
        if not wanted:
            self.said.emit("No more parts are proposed.")
            return
        self.workbench.do("Parts as proposed", partial(take_parts, proposals=wanted))
        self.said.emit("Taken: " + "; ".join(it.part.title for it in wanted) + ".")


def place_of(step: "Step") -> Place:
    """Return the place of a step: its end, with the contact where it is done at one."""
    contact = step.contacts[0] if len(step.contacts) == 1 else ""
    return Place(end=step.end, contact=contact)
