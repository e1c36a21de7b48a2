"""Turn a plug to its cable as worked out, with the cores that change places; one edit."""

from typing import TypeVar

from planner.dryfit.turning import Turning
from planner.edits.changing import (
    changed,
    the_conductor,
    the_end,
    with_end,
    with_landings,
)
from planner.model.plan import Cap, Landing, Plan

Put = TypeVar("Put", Landing, Cap)


def apply_turning(plan: Plan, *, turning: Turning) -> Plan:
    """Turn the plug of an end, and let alike cores change places there.

    Cores that take each other's part do so at all ends, so the wiring stays what it is. A sleeve or
    dab stays at its contact. Raises `NotThere` if the plan has no such end or core.
    """
    end = the_end(plan, turning.end)
    for exchange in turning.exchanges:
        the_conductor(plan, exchange.conductor)
        the_conductor(plan, exchange.place_of)
    if end.turn_deg != turning.turn_deg:
        plan = with_end(plan, changed(end, turn_deg=turning.turn_deg))
    return _exchanged(plan, turning) if turning.exchanges else plan


def _exchanged(plan: Plan, turning: Turning) -> Plan:
    here = {it.place_of: it.conductor for it in turning.exchanges}
    there = {it.place_of: it.conductor for it in turning.exchanges if it.everywhere}

    def taken(it: Put) -> Put:
        takers = here if it.end == turning.end else there
        conductor = takers.get(it.conductor, it.conductor)
        return it if conductor == it.conductor else it.evolve(conductor=conductor)

    caps = tuple(taken(it) for it in plan.caps)
    return with_landings(plan.evolve(caps=caps), [taken(it) for it in plan.landings])
