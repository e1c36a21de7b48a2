"""How the plan stands: the answer for the band, from the findings and what is left to land."""

from planner.app.answer import NEW_PLAN, Answer, answer_of
from planner.app.workbench import Workbench
from planner.checks.acceptance import acceptance_of
from planner.checks.finding import Finding
from planner.edits.progress import progress
from planner.model.plan import Plan


def is_new(plan: Plan) -> bool:
    """Tell whether there is nothing to land yet: no cable, or no plug."""
    return not plan.conductors or not any(end.connector for end in plan.ends)


def standing(workbench: Workbench) -> Answer:
    """Return the answer for the plan as it is."""
    plan = workbench.plan
    if is_new(plan):
        return NEW_PLAN

    def accepted(finding: object) -> bool:
        return isinstance(finding, Finding) and acceptance_of(plan, finding) is not None

    made = progress(plan, workbench.wiring)
    return answer_of(
        workbench.findings,
        landed=made.landed,
        to_land=made.wanted - made.landed,
        is_accepted=accepted,
    )
