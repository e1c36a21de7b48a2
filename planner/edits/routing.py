"""The way of each core through the splits: default routing, leading one core elsewhere."""

from planner.edits.changing import swapped, the_conductor, the_contact, the_section
from planner.edits.refusal import LandedElsewhere, OutOfReach
from planner.edits.threads import fanned_legs, rebuild, shared_node
from planner.model.plan import Conductor, Plan, Run, Section


def leg_for(plan: Plan, conductor: str, end: str) -> str | None:
    """Return the fanned-out leg by which a conductor could be led to an end, or None."""
    section = plan.section_at.get(end)
    if section is None or not section.fan_of:
        return None
    runs = {run.section for run in the_conductor(plan, conductor).runs}
    return section.id if section.fan_of in runs else None


def check_route(plan: Plan, *, conductor: str, section: str) -> None:
    """Refuse when the conductor cannot go on in that section, or is landed where it would leave."""
    record, leg = the_conductor(plan, conductor), the_section(plan, section)
    runs = {run.section for run in record.runs}
    if leg.id not in runs and leg.fan_of not in runs:
        raise OutOfReach(
            f"{conductor} cannot go on in {section}", "Only a fanned-out leg takes cores over."
        )
    left = _left_sections(plan, record, leg)
    for end, at in plan.section_at.items():
        landing = plan.landing_at.get((end, conductor))
        if at.id in left and landing is not None:
            spoken = the_contact(plan, end, landing.contact).spoken
            raise LandedElsewhere(
                f"{conductor} runs to {end} and is landed there on {spoken}", "Lift it there first."
            )


def route(plan: Plan, *, conductor: str, section: str) -> Plan:
    """Lead a conductor into another fanned-out leg; its own trunk as `section` ends it there.

    Raises `OutOfReach`, or `LandedElsewhere` when it is landed at the end that it would leave.
    """
    check_route(plan, conductor=conductor, section=section)
    record, leg = the_conductor(plan, conductor), the_section(plan, section)
    left = _left_sections(plan, record, leg)
    kept = tuple(run for run in record.runs if run.section not in left)
    runs = {run.section for run in kept}
    if leg.id not in runs:
        kept += _onward(plan, leg, next(run.core for run in kept if run.section == leg.fan_of))
    if kept == record.runs:
        return plan
    led = record.evolve(runs=kept)
    conductors = swapped(plan.conductors, lambda known: known.id == conductor, led)
    return rebuild(plan.evolve(conductors=conductors))


def _onward(plan: Plan, leg: Section, core: str) -> tuple[Run, ...]:
    """Return the runs of a core in a leg and, where that splits again, in its first legs."""
    runs: tuple[Run, ...] = (Run(section=leg.id, core=core),)
    for node in (leg.near, leg.far):
        further = fanned_legs(plan, leg, node)
        if further:
            runs += _onward(plan, further[0], core)
    return runs


def _left_sections(plan: Plan, conductor: Conductor, leg: Section) -> set[str]:
    """Return the sections that a conductor leaves when it goes on in `leg`."""
    runs = {run.section for run in conductor.runs}
    if leg.id in runs:
        legs = [one for node in (leg.near, leg.far) for one in fanned_legs(plan, leg, node)]
        first = [one for one in legs if one.id in runs]
    else:
        trunk = plan.section_by_id[leg.fan_of]
        beside = fanned_legs(plan, trunk, shared_node(trunk, leg))
        first = [one for one in beside if one.id in runs]
    return {beyond for one in first for beyond in _with_legs(plan, one)}


def _with_legs(plan: Plan, leg: Section) -> set[str]:
    found = {leg.id}
    for node in (leg.near, leg.far):
        for further in fanned_legs(plan, leg, node):
            found |= _with_legs(plan, further)
    return found
