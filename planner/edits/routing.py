"""The way of each core through the splits: default routing, leading one core elsewhere."""

from collections.abc import Iterable

from planner.edits.changing import swapped, the_conductor, the_contact, the_section
from planner.edits.refusal import LandedElsewhere, OutOfReach
from planner.edits.threads import fanned_legs, rebuild, shared_node
from planner.model.plan import Plan, Run, Section


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
    left = _left_sections(plan, runs, leg)
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
    left = _left_sections(plan, {run.section for run in record.runs}, leg)
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


def can_join(plan: Plan, conductor: str, ends: Iterable[str]) -> bool:
    """Tell whether a conductor comes out at all these ends, or can be led so that it does."""
    at_ends = [plan.section_at[end] for end in ends if end in plan.section_at]
    runs = {run.section for run in the_conductor(plan, conductor).runs}
    landed = {plan.section_at[end].id for end, name in plan.landing_at if name == conductor}
    for leg in at_ends:
        if leg.id in runs:
            continue
        if not leg.fan_of or leg.fan_of not in runs:
            return False
        left = _left_sections(plan, runs, leg)
        if left & landed:
            return False
        runs = (runs - left) | {leg.id}
    return all(leg.id in runs for leg in at_ends)


def _left_sections(plan: Plan, runs: set[str], leg: Section) -> set[str]:
    """Return the sections that a conductor with these runs leaves when it goes on in `leg`."""
    if leg.id in runs:
        legs = [one for node in (leg.near, leg.far) for one in fanned_legs(plan, leg, node)]
        first = [one for one in legs if one.id in runs]
        nodes = [shared_node(leg, one) for one in first]
    else:
        trunk = plan.section_by_id[leg.fan_of]
        split = shared_node(trunk, leg)
        beside = [one for one in plan.sections if split in {one.near, one.far}]
        first = [one for one in beside if one.id in runs and one.id != trunk.id]
        nodes = [split for _ in first]
    left = zip(first, nodes, strict=True)
    return {beyond for one, node in left for beyond in _beyond(plan, one, node)}


def _beyond(plan: Plan, section: Section, node: str) -> set[str]:
    """Return a section and all that lie beyond it, away from a node."""
    found, far = {section.id}, section.far if node == section.near else section.near
    for further in plan.sections:
        if further.id != section.id and far in {further.near, further.far}:
            found |= _beyond(plan, further, far)
    return found
