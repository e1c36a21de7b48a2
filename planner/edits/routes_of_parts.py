"""From which end a part is threaded, and whether before that end's joint."""

from planner.edits.changing import changed, swapped, the_end, the_section
from planner.edits.parts import the_use
from planner.edits.refusal import NotAllowed
from planner.model.plan import Plan


def set_route(
    plan: Plan, *, use: str, comes_from: str, after_joint: bool = False, section: str = ""
) -> Plan:
    """Plan a part to come from an end; at a split also which section it rests round."""
    the_end(plan, comes_from)
    found = the_use(plan, use)
    if section:
        meeting = the_section(plan, section)
        if found.at not in {meeting.near, meeting.far}:
            raise NotAllowed(f"Section {section} does not meet {found.at}")
    new = changed(found, comes_from=comes_from, after_joint=after_joint, section=section)
    return plan.evolve(parts=swapped(plan.parts, lambda known: known is found, new))
