"""What is derived from a plan for the order of work, in one go and off the UI thread."""

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from planner.dryfit.cutting import CutList, cut_list
from planner.dryfit.threading import Threading, thread
from planner.dryfit.work import steps

if TYPE_CHECKING:
    from planner.dryfit.work.step import Step
    from planner.model.plan import Plan
    from planner.wiring.graph import Wiring

_NO_CUTS = CutList((), (), (), ())


@dataclass(frozen=True)
class WorkFacts:
    """Steps in order, parts in threading order, cuts; `stays_on` is what the threading is for."""

    steps: "tuple[Step, ...]" = ()
    threading: Threading = field(default_factory=lambda: Threading((), (), ()))
    cuts: CutList = _NO_CUTS
    stays_on: frozenset[str] = frozenset()


def work_facts(plan: "Plan", wiring: "Wiring", stays_on: frozenset[str]) -> WorkFacts:
    """Work out all that the view tells of a plan."""
    return WorkFacts(
        steps(plan, wiring) if plan.landings else (),
        thread(plan, stays_on=stays_on),
        cut_list(plan),
        stays_on,
    )
