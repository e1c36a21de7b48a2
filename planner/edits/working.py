"""The rules of workmanship of a plan, and what it assumes of the gear."""

from planner.edits.changing import changed
from planner.model.plan import Plan


def set_workmanship(plan: Plan, **values: object) -> Plan:
    """Change rules of workmanship by name; NotAllowed if a value is out of its range."""
    return changed(plan, workmanship=changed(plan.workmanship, **values))


def set_assumed(plan: Plan, **values: object) -> Plan:
    """Change what is assumed of the gear, by name; NotAllowed if a value is out of its range."""
    return changed(plan, assumed=changed(plan.assumed, **values))
