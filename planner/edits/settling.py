"""Keep a plan whole after its structure changed: nothing refers to what is not there any more."""

from planner.edits.changing import changed, node_ids, with_landings
from planner.model.plan import Definitions, End, Landing, Link, Plan


def settled(plan: Plan) -> Plan:
    """Drop landings, caps, links, orders and parts of what is gone, and unused definitions."""
    at_ends = {(end, it.id) for end, pairs in plan.conductors_at.items() for it, _ in pairs}
    contacts = {(end.id, contact) for end in plan.ends for contact in _contacts(plan, end.id)}
    landings = [it for it in plan.landings if _holds(it, at_ends, contacts)]
    landed = {(it.end, it.conductor) for it in landings}
    caps = tuple(it for it in plan.caps if (it.end, it.conductor) in at_ends - landed)
    nodes = node_ids(plan)
    parts = tuple(it for it in plan.parts if {it.at, it.comes_from} <= nodes)
    ends = tuple(_ordered(end, contacts, at_ends) for end in plan.ends)
    tidy = plan.evolve(ends=ends, caps=caps, parts=parts, links=_links(plan, contacts))
    return pruned(with_landings(tidy, landings))


def _contacts(plan: Plan, end: str) -> tuple[str, ...]:
    connector = plan.connector_of(end)
    return tuple(connector.by_id) if connector is not None else ()


def _holds(it: Landing, at_ends: set[tuple[str, str]], contacts: set[tuple[str, str]]) -> bool:
    return (it.end, it.conductor) in at_ends and (it.end, it.contact) in contacts


def _links(plan: Plan, contacts: set[tuple[str, str]]) -> tuple[Link, ...]:
    links = []
    for link in plan.links:
        left = tuple(contact for contact in link.contacts if (link.end, contact) in contacts)
        if len(left) == len(link.contacts):
            links.append(link)
        elif len(left) > 1:
            links.append(link.evolve(contacts=left))
    return tuple(links)


def _ordered(end: End, contacts: set[tuple[str, str]], at_ends: set[tuple[str, str]]) -> End:
    known = contacts | at_ends
    order = tuple(name for name in end.solder_order if (end.id, name) in known)
    return end if order == end.solder_order else end.evolve(solder_order=order)


def pruned(plan: Plan) -> Plan:
    """Drop the copies of definitions that nothing in the plan uses."""
    carried = plan.definitions
    connectors = {end.connector for end in plan.ends}
    pinouts = {end.pinout for end in plan.ends}
    cables = {section.cable for section in plan.sections}
    parts = {use.part for use in plan.parts}
    lean = Definitions(
        connectors=tuple(it for it in carried.connectors if it.id in connectors),
        pinouts=tuple(it for it in carried.pinouts if it.id in pinouts),
        cables=tuple(it for it in carried.cables if it.id in cables),
        parts=tuple(it for it in carried.parts if it.id in parts),
    )
    return plan if lean == carried else plan.evolve(definitions=lean)


def carrying(plan: Plan, **records: object) -> Plan:
    """Put copies of definitions into the plan, in the place of those with the same id.

    Keywords are the lists of `Definitions`, each with one record: `cables=record`.
    """
    lists = {}
    for name, record in records.items():
        others = [it for it in getattr(plan.definitions, name) if it.id != record.id]  # type: ignore[attr-defined] # every definition has an id
        lists[name] = tuple(sorted((*others, record), key=lambda it: it.id))
    return plan.evolve(definitions=changed(plan.definitions, **lists))
