"""Turn a plug to its cable as worked out, with the cores that change places; one edit."""

from collections.abc import Mapping
from typing import TypeVar

from planner.dryfit.turning import Turning
from planner.edits.changing import (
    changed,
    the_conductor,
    the_end,
    with_end,
    with_landings,
)
from planner.edits.threads import rebuild
from planner.model.plan import Cap, Conductor, Landing, Plan

Put = TypeVar("Put", Landing, Cap)


def apply_turning(plan: Plan, *, turning: Turning) -> Plan:
    """Turn the plug of an end, and let alike cores change places there.

    Cores that take each other's part do so at all ends, and in the other's legs where the cable
    fans out, so the wiring stays what it is. A sleeve or dab stays at its contact. Raises
    `NotThere` if the plan has no such end or core.
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
    led = _led(plan, {conductor: place_of for place_of, conductor in there.items()})
    moved = with_landings(led.evolve(caps=caps), [taken(it) for it in plan.landings])
    return rebuild(moved) if led is not plan else moved


def _led(plan: Plan, place_of: Mapping[str, str]) -> Plan:
    """Lead each core through the sections of the one whose place it takes."""
    known = plan.conductor_by_id

    def led(one: Conductor) -> Conductor:
        other = known[place_of.get(one.id, one.id)]
        if {run.section for run in one.runs} == {run.section for run in other.runs}:
            return one
        core = one.runs[0].core
        return one.evolve(runs=tuple(run.evolve(core=core) for run in other.runs))

    conductors = tuple(led(one) for one in plan.conductors)
    return plan if conductors == plan.conductors else plan.evolve(conductors=conductors)
