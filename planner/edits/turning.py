"""Turn a plug to its cable as worked out, with the cores that change places; one edit."""

from planner.dryfit.turning import Turning
from planner.edits.changing import (
    changed,
    the_conductor,
    the_contact,
    the_end,
    with_end,
    with_landings,
)
from planner.model.plan import Plan


def apply_turning(plan: Plan, *, turning: Turning) -> Plan:
    """Turn the plug of an end, and let alike cores change places there.

    Cores that take each other's part do so at all other ends too, so the wiring stays what it is.
    A core keeps its sleeve or dab. Raises `NotThere` if the plan has no such end, core or contact.
    """
    end = the_end(plan, turning.end)
    for conductor, contact in turning.swaps:
        the_conductor(plan, conductor)
        the_contact(plan, end.id, contact)
    if end.turn_deg != turning.turn_deg:
        plan = with_end(plan, changed(end, turn_deg=turning.turn_deg))
    if not turning.swaps and not turning.roles:
        return plan
    return _exchanged(plan, turning)


def _exchanged(plan: Plan, turning: Turning) -> Plan:
    contact_of = dict(turning.swaps)
    taker = {was: conductor for conductor, was in turning.roles}
    landings = []
    for it in plan.landings:
        if it.end == turning.end:
            landings.append(it.evolve(contact=contact_of.get(it.conductor, it.contact)))
        else:
            landings.append(it.evolve(conductor=taker.get(it.conductor, it.conductor)))
    caps = tuple(
        it if it.end == turning.end else it.evolve(conductor=taker.get(it.conductor, it.conductor))
        for it in plan.caps
    )
    return with_landings(plan.evolve(caps=caps), landings)
