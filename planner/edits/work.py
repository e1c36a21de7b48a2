"""The builder's own order of work, within what has to come before what."""

from planner.dryfit.precedence import places
from planner.dryfit.work import steps, usual_order
from planner.edits.refusal import NotAllowed, NotThere
from planner.model.plan import Plan
from planner.problem import did_you_mean
from planner.wiring.graph import Wiring


class StepHeld(NotAllowed):
    """A step that would come before what it needs, or after what needs it: the step `by`."""

    def __init__(self, reason: str, mend: str, *, by: str) -> None:
        super().__init__(reason, mend)
        self.by = by


def move_step(plan: Plan, *, step: str, to: int) -> Plan:
    """Give a step another number, from 1; the others keep their order, and it is kept.

    A number beyond either end of the list is that end. Moved back to where all steps are as usual
    the plan keeps no order of its own. Refuses with the step that holds it.
    """
    found = steps(plan, Wiring(plan))
    order = [it.id for it in found]
    if step not in order:
        raise NotThere(f"There is no step {step}", did_you_mean(step, order))
    place, here = min(max(to - 1, 0), len(order) - 1), order.index(step)
    needs = {it.id: it.needs for it in found}
    free = places(order, needs, step)
    if place not in free:
        raise _held(order, needs, step, place)
    order.insert(place, order.pop(here))
    usual = usual_order(plan, Wiring(plan))
    wish = () if tuple(order) == usual else tuple(order)
    return plan if wish == plan.step_order else plan.evolve(step_order=wish)


def _held(order: list[str], needs: dict[str, tuple[str, ...]], step: str, place: int) -> StepHeld:
    """Return the refusal that names the nearest step that it may not pass."""
    here = order.index(step)
    if place < here:
        by = max(needs[step], key=order.index)
        word = "after"
    else:
        by = min((it for it in order if step in needs[it]), key=order.index)
        word = "before"
    reason = f"Step {here + 1} has to come {word} step {order.index(by) + 1}"
    return StepHeld(reason, "Move that one first.", by=by)
