"""Doubled cores: the opposite cores of a star quad land together on one contact."""

from collections import Counter

from planner.edits.changing import reaches, the_contact
from planner.edits.landings import land, occupants
from planner.edits.lines import doubled_group, free_cores, open_lines
from planner.model.plan import Landing, Plan
from planner.wiring.graph import Wiring

Spot = tuple[str, str]  # (end, contact)


def double_cores(plan: Plan) -> Plan:
    """Land each free core beside the one it is doubled with, at every end, or none of them at all.

    A quad with one leg doubled and the other not is no longer alike on both legs, and that is what
    rejects hum; so where one contact has no room the whole second pair stays loose.
    """
    beside = partners(plan)
    if full_spot(plan, beside):
        return plan
    for conductor, landings in beside.items():
        for it in landings:
            plan = land(plan, end=it.end, conductor=conductor, contact=it.contact)
    return plan


def partners(plan: Plan) -> dict[str, tuple[Landing, ...]]:
    """Return each free core that may be doubled, with the landings of the one it goes beside.

    None while a signal is still to be wired: that may want the core for itself.
    """
    free = [it for it in free_cores(plan) if doubled_group(plan, it) is not None]
    if not free or open_lines(Wiring(plan))[0]:
        return {}
    whole = {}
    for conductor in plan.conductors:
        landed = tuple(it for it in plan.landings if it.conductor == conductor.id)
        ends = [it.id for it in plan.ends if reaches(plan, it.id, conductor.id)]
        if len(landed) == len(ends) > 1:
            whole[doubled_group(plan, conductor)] = landed
    found = {it.id: whole.get(doubled_group(plan, it), ()) for it in free}
    return {
        name: landed
        for name, landed in found.items()
        if landed and all(reaches(plan, it.end, name) for it in landed)
    }


def full_spot(plan: Plan, beside: dict[str, tuple[Landing, ...]]) -> Spot | None:
    """Return the first contact that would not take all its doubled cores, or None."""
    coming = Counter((it.end, it.contact) for landings in beside.values() for it in landings)
    for (end, contact), count in coming.items():
        takes = the_contact(plan, end, contact).terminal.takes
        if len(occupants(plan, end, contact)) + count > takes:
            return (end, contact)
    return None
