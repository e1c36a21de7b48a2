"""Parts threaded on the cable: which, where they rest, from which end they come."""

from collections.abc import Iterable

from planner.dryfit.proposing import Proposal
from planner.edits.changing import changed, node_ids, the_end
from planner.edits.refusal import NotThere
from planner.edits.settling import carrying, pruned
from planner.model.part import Part
from planner.model.plan import PartUse, Plan
from planner.problem import did_you_mean


def add_part(
    plan: Plan, *, part: Part, at: str, comes_from: str, after_joint: bool = False
) -> Plan:
    """Plan a part next to an end or split, threaded from an end; the plan takes a copy."""
    the_end(plan, comes_from)
    if at not in node_ids(plan):
        raise NotThere(f"There is no end or split {at}", did_you_mean(at, node_ids(plan)))
    blank = PartUse(id="part", part=part.id, at=at, comes_from=comes_from)
    use = changed(blank, id=_free_id(plan, part.id), after_joint=after_joint)
    plan = carrying(plan, parts=part)
    return plan.evolve(parts=(*plan.parts, use))


def take_parts(plan: Plan, *, proposals: Iterable[Proposal]) -> Plan:
    """Plan what is proposed, all in one; a part that is at its place already is passed over."""
    for proposal in proposals:
        here = {(use.part, use.at) for use in plan.parts}
        if (proposal.part.id, proposal.at) not in here:
            plan = add_part(
                plan, part=proposal.part, at=proposal.at, comes_from=proposal.comes_from
            )
    return plan


def _free_id(plan: Plan, wanted: str) -> str:
    used = {use.id for use in plan.parts}
    tries = [wanted, *(f"{wanted[:58]}-{number}" for number in range(2, len(used) + 3))]
    return next(name for name in tries if name not in used)


def remove_part(plan: Plan, *, use: str) -> Plan:
    """Take a part off the plan, by the id of its use."""
    found = the_use(plan, use)
    return pruned(plan.evolve(parts=tuple(it for it in plan.parts if it is not found)))


def the_use(plan: Plan, use: str) -> PartUse:
    """Look up a part of the lead, or refuse."""
    for known in plan.parts:
        if known.id == use:
            return known
    raise NotThere(f"There is no part {use} on this lead")
