"""The order in which the joints of an end are soldered."""

from collections.abc import Sequence

from planner.dryfit.access import soldering_at
from planner.edits.changing import the_contact, the_end, with_end
from planner.edits.landings import occupants
from planner.edits.refusal import NotAllowed
from planner.model.plan import Plan
from planner.wiring.graph import Wiring


def set_solder_order(plan: Plan, *, end: str, contacts: Sequence[str]) -> Plan:
    """Fix the order of soldering; what is not named comes after, in the best order.

    No contacts: the best order, worked out anew after every edit. Raises `NotThere`, or
    `NotAllowed` for a contact named twice, one with no joint, or a shield's joint out of its place.
    """
    record = the_end(plan, end)
    for contact in contacts:
        spoken = the_contact(plan, end, contact).spoken
        if contacts.count(contact) > 1:
            raise NotAllowed(f"{spoken} stands twice in the order", "Name each joint once.")
        if not occupants(plan, end, contact):
            raise NotAllowed(f"There is no joint on {spoken} at {end}", "Land a core there first.")
    _check_shields(plan, end, contacts)
    order = tuple(contacts)
    if order == record.solder_order:
        return plan
    return with_end(plan, record.evolve(solder_order=order))


def _check_shields(plan: Plan, end: str, contacts: Sequence[str]) -> None:
    """Refuse an order that the workmanship's rule on shields would change."""
    rule = plan.workmanship.shield_joint
    shields = {conductor.id for conductor in plan.conductors if conductor.kind == "shield"}
    here = [landing for landing in plan.landings if landing.end == end]
    shielded = {landing.contact for landing in here if landing.conductor in shields}
    joints = (*contacts, *sorted({landing.contact for landing in here} - set(contacts)))
    ordered = [contact in shielded for contact in joints]
    # What is not named comes last, in any order: it may only break the rule against what is.
    rest = sorted(ordered[len(contacts) :], reverse=rule == "first")
    ordered[len(contacts) :] = rest
    if contacts and rule != "free" and ordered != sorted(ordered, reverse=rule == "first"):
        raise NotAllowed(
            f"A shield's joint is soldered {rule} here", "Change that rule of workmanship first."
        )


def move_joint(plan: Plan, *, end: str, contact: str, to: int) -> Plan:
    """Move a joint to a place in the order, counted from 1; the order is then fixed as it stands.

    A place beyond either end of the order is that end. Refuses as `set_solder_order` does.
    """
    the_contact(plan, end, contact)
    found = soldering_at(plan, Wiring(plan), end)
    others = [it for it in (found.order.contacts if found else ()) if it != contact]
    others.insert(max(to - 1, 0), contact)
    return set_solder_order(plan, end=end, contacts=others)


def take_best_order(plan: Plan, *, end: str) -> Plan:
    """Fix the order of soldering as the best one; taken twice it changes nothing more."""
    record = the_end(plan, end)
    found = soldering_at(plan, Wiring(plan), end, own=False)
    if found is None or found.order.contacts == record.solder_order:
        return plan
    return with_end(plan, record.evolve(solder_order=found.order.contacts))
