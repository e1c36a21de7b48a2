"""What runs between the ends: cable, length, shield policy."""

from planner.edits.changing import changed, the_section, with_section
from planner.edits.refusal import NotAllowed
from planner.edits.routing import check_route, route
from planner.edits.settling import carrying, settled
from planner.edits.threads import rebuild, shared_node
from planner.model.cable import Cable
from planner.model.plan import Plan, Section, ShieldPolicy

__all__ = [
    "check_route",
    "choose_cable",
    "fan_out",
    "route",
    "set_length",
    "set_shield_policy",
]


def choose_cable(plan: Plan, *, section: str, cable: Cable) -> Plan:
    """Take a cable for a section; its cores also go on in the legs fanned out of it.

    A leg that was fanned out gets this cable of its own, spliced at the split. Conductors keep
    their ids, and landings their contacts, where the new cable has the same core.
    """
    record = the_section(plan, section)
    plan = carrying(plan, cables=cable)
    plan = with_section(plan, changed(record, cable=cable.id, fan_of=""))
    return settled(rebuild(plan, anew=_with_fans(plan, section)))


def fan_out(plan: Plan, *, section: str, trunk: str) -> Plan:
    """Let the trunk's own cores go on in a leg, out of their jacket, in place of a cable."""
    leg, above = the_section(plan, section), the_section(plan, trunk)
    split = shared_node(leg, above)
    source = plan.section_by_id.get(above.fan_of)
    turns_back = source is not None and split in {source.near, source.far}
    at_split = split in {known.id for known in plan.splits}
    if not at_split or turns_back or leg.id in _sources(plan, above):
        raise NotAllowed(f"{section} does not leave {trunk} at a split")
    plan = with_section(plan, changed(leg, cable="", fan_of=trunk))
    return settled(rebuild(plan, anew={section, *_with_fans(plan, trunk)}))


def _sources(plan: Plan, section: Section) -> list[str]:
    """Return a section and those from which its cores come, step by step."""
    found = [section.id]
    while plan.section_by_id[found[-1]].fan_of:
        found.append(plan.section_by_id[found[-1]].fan_of)
    return found


def _with_fans(plan: Plan, *sections: str) -> set[str]:
    found = set(sections)
    while True:
        more = {leg.id for leg in plan.sections if leg.fan_of in found and leg.fan_of} | found
        if more == found:
            return found
        found = more


def set_length(plan: Plan, *, section: str, length_mm: float) -> Plan:
    """Set the length of a section, mm."""
    return with_section(plan, changed(the_section(plan, section), length_mm=length_mm))


def set_shield_policy(plan: Plan, *, section: str, policy: ShieldPolicy | None) -> Plan:
    """Say where the shield of a section lands; a fanned-out leg follows its trunk."""
    owner: Section = the_section(plan, section)
    while owner.fan_of:
        owner = the_section(plan, owner.fan_of)
    return with_section(plan, changed(owner, shield_policy=policy))
