"""Which acceptance in a plan covers a finding."""

from planner.checks.finding import Finding
from planner.model.plan import Acceptance, Plan


def acceptance_of(plan: Plan, finding: Finding) -> Acceptance | None:
    """Return the acceptance of a caution, found by its code and places; None if there is none."""
    if finding.weight != "caution":
        return None
    for acceptance in plan.acceptances:
        if acceptance.code == finding.code and acceptance.places == finding.place_keys:
            return acceptance
    return None
