"""Land by signal: put every conductor where the pinouts leave no doubt, and say what is left."""

from planner.edits import said
from planner.edits.changing import answered, reaches, the_end
from planner.edits.doubling import double_cores
from planner.edits.landings import land, occupants
from planner.edits.lines import (
    Line,
    assign,
    carriers,
    free_cores,
    joins_outputs,
    open_lines,
)
from planner.edits.routing import can_join, route
from planner.edits.signal_shields import land_a_return, land_shields, return_shield
from planner.model.plan import Plan
from planner.model.signals import GROUNDS
from planner.wiring.graph import Wiring


def land_by_signal(plan: Plan, *, end: str = "") -> tuple[Plan, tuple[str, ...]]:
    """Land all that is certain, of the whole lead or at one end; return also what is left and why.

    What is landed stays. A second call changes nothing and says the same. A conductor goes only to
    a contact that carries its signal.
    """
    if not end:
        full = _completed(plan)
        return full, said.left(full)
    the_end(plan, end)
    after = _only_at(plan, _completed(plan), end)
    # What is left once the other ends follow: that is not what they would be with all free yet.
    return after, said.left(_completed(after), end)


def _completed(plan: Plan) -> Plan:
    """Land all that is certain at all ends."""
    while True:
        before = plan
        plan = double_cores(land_a_return(land_shields(_new_lines(_continued(before)))))
        if plan == before:
            return plan


def _only_at(plan: Plan, full: Plan, end: str) -> Plan:
    """Take over from the whole what it lands at one end, with the ways of those conductors."""
    new = [it for it in full.landings if it.end == end and it not in plan.landings]
    for landing in new:
        for run in full.conductor_by_id[landing.conductor].runs:
            there = {it.section for it in plan.conductor_by_id[landing.conductor].runs}
            if run.section not in there:
                plan = route(plan, conductor=landing.conductor, section=run.section)
        plan = land(plan, end=end, conductor=landing.conductor, contact=landing.contact)
    return plan


def known_signals(wiring: Wiring, conductor: str) -> frozenset[str]:
    """Return what a conductor carries, grounds left out; nothing if its contacts disagree.

    A joined return says all that the conductor may carry, since the join is made there already.
    """
    landed = [it for it in wiring.plan.landings if it.conductor == conductor]
    sets = [wiring.signals_at(it.end, it.contact) - GROUNDS for it in landed]
    widest = max(sets, key=len, default=frozenset())
    return widest if all(one <= widest and one for one in sets) else frozenset()


def _continued(plan: Plan) -> Plan:
    """Carry the signal of each landed core on to the other ends."""
    for conductor in plan.conductors:
        if conductor.kind == "core":
            for end in plan.ends:
                plan = _continued_at(plan, conductor.id, end.id)
    return plan


def _continued_at(plan: Plan, conductor: str, end: str) -> Plan:
    wiring = Wiring(plan)
    known = known_signals(wiring, conductor)
    if (end, conductor) in answered(plan) or not known or not can_join(plan, conductor, [end]):
        return plan
    if not reaches(plan, end, conductor) and not _better_there(wiring, conductor, known, end):
        return plan
    contact = next_contact(wiring, end, known)
    return land(plan, end=end, conductor=conductor, contact=contact) if contact else plan


def _better_there(wiring: Wiring, conductor: str, known: frozenset[str], end: str) -> bool:
    """Tell whether a core should be led to an end: no use where it goes, and wanted there."""
    plan = wiring.plan
    landed = {it.end for it in plan.landings if it.conductor == conductor}
    capped = any(it.conductor == conductor for it in plan.caps)
    for here in wiring.ends_of(conductor):
        if here not in landed and carriers(wiring, here, known):
            return False
    contact = next_contact(wiring, end, known)
    return not capped and bool(contact) and not occupants(plan, end, contact)


def next_contact(wiring: Wiring, end: str, known: frozenset[str]) -> str:
    """Choose the contact for a conductor with known signals at an end: empty if none is certain."""
    if any(len(carriers(wiring, end, {signal})) > 1 for signal in known):
        return ""
    roomy = [
        it
        for it in carriers(wiring, end, known)
        if has_room(wiring.plan, end, it) and not joins_outputs(wiring, end, it)
    ]
    empty = [it for it in roomy if not occupants(wiring.plan, end, it)]
    return next(iter((*empty, *roomy)), "")


def has_room(plan: Plan, end: str, contact: str) -> bool:
    """Tell whether a contact takes one more conductor."""
    connector = plan.connector_of(end)
    takes = connector.by_id[contact].terminal.takes if connector is not None else 0
    return len(occupants(plan, end, contact)) < takes


def _new_lines(plan: Plan) -> Plan:
    """Wire what no metal joins yet with cores that are still free."""
    wiring = Wiring(plan)
    lines = tuple(
        line
        for line in open_lines(wiring)[0]
        if not _is_pending(wiring, line)
        and not any(joins_outputs(wiring, *spot) for spot in (line.near, line.far))
    )
    too_many = max(len(lines) - len(free_cores(plan)), 0)
    by_shield = [line for line in lines if return_shield(wiring, line)]
    spared = by_shield[max(len(by_shield) - too_many, 0) :]
    lines = tuple(line for line in lines if line not in spared)
    for line, conductor in assign(plan, lines).items():
        if has_room(plan, *line.near) and has_room(plan, *line.far):
            for end, contact in (line.far, line.near):
                plan = land(plan, end=end, conductor=conductor, contact=contact)
    return plan


def _is_pending(wiring: Wiring, line: Line) -> bool:
    """Tell whether a core with this signal is landed at one side and only cannot get on."""
    plan = wiring.plan
    for (end, contact), (other, _) in ((line.near, line.far), (line.far, line.near)):
        for landing in occupants(plan, end, contact):
            known = known_signals(wiring, landing.conductor)
            loose = (other, landing.conductor) not in plan.landing_at
            core = plan.conductor_by_id[landing.conductor].kind == "core"
            waits = core and loose and not _is_used(plan, landing.conductor)
            if waits and known & line.signals and can_join(plan, landing.conductor, [end, other]):
                return True
    return False


def _is_used(plan: Plan, conductor: str) -> bool:
    """Tell whether a core joins two ends already."""
    return sum(it.conductor == conductor for it in plan.landings) > 1
