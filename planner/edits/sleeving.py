"""Putting on the sleeves and dabs that the dry fit asks for."""

from planner.dryfit.fit import fit_end
from planner.dryfit.sleeve_sizes import SleeveUse
from planner.dryfit.sleeves import SleevePlan, Spot, sleeves_for
from planner.edits.changing import the_end
from planner.edits.landings import dab, occupants, sleeve
from planner.model.plan import Plan
from planner.wiring.graph import Wiring


def take_sleeves(plan: Plan, *, end: str) -> Plan:
    """Put on every sleeve and dab that an end needs; what the builder has put on stays on.

    A liner is a part of its own and is not added. Taken twice it changes nothing more.
    """
    the_end(plan, end)
    fit = fit_end(plan, Wiring(plan), end)
    return plan if fit is None else put_on(plan, end=end, sleeves=sleeves_for(plan, fit))


def put_on(plan: Plan, *, end: str, sleeves: SleevePlan) -> Plan:
    """Put on the sleeves and dabs of a sleeve plan of this end."""
    mends: tuple[SleeveUse | Spot, ...] = (*sleeves.sleeves, *sleeves.dabs)
    for mend in mends:
        plan = put(plan, end=end, mend=mend)
    return plan


def put(plan: Plan, *, end: str, mend: SleeveUse | Spot) -> Plan:
    """Put on one sleeve of a sleeve plan of this end, or one of its dabs."""
    if isinstance(mend, SleeveUse):
        return sleeve(plan, end=end, conductor=mend.conductor, sleeved=True)
    for landing in occupants(plan, end, mend[0]):
        plan = dab(plan, end=end, conductor=landing.conductor, dabbed=True)
    return plan


def dab_instead(plan: Plan, *, end: str, contact: str) -> Plan:
    """Take the sleeves off a joint and put a dab of insulating compound on it."""
    for landing in occupants(plan, end, contact):
        plan = sleeve(plan, end=end, conductor=landing.conductor, sleeved=False)
        plan = dab(plan, end=end, conductor=landing.conductor, dabbed=True)
    return plan
