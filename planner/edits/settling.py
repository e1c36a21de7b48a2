"""Keep a plan whole after its structure changed: nothing refers to what is not there any more."""

from planner.edits.changing import changed, node_ids, with_landings
from planner.model.connector import Connector
from planner.model.pinout import PinoutRecord
from planner.model.plan import Definitions, End, Landing, Link, Plan


def settled(plan: Plan) -> Plan:
    """Drop what refers to something gone or does not fit any more, and unused definitions."""
    plan = plan.evolve(ends=tuple(_fitted(plan, end) for end in plan.ends))
    at_ends = {(end, it.id) for end, pairs in plan.conductors_at.items() for it, _ in pairs}
    contacts = {(end.id, contact) for end in plan.ends for contact in _contacts(plan, end.id)}
    landings = [it for it in plan.landings if _holds(it, at_ends, contacts)]
    landed = {(it.end, it.conductor) for it in landings}
    caps = tuple(it for it in plan.caps if (it.end, it.conductor) in at_ends - landed)
    nodes, ends = node_ids(plan), plan.end_by_id
    parts = tuple(
        it if it.section in {"", *plan.section_by_id} else it.evolve(section="")
        for it in plan.parts
        if it.at in nodes and it.comes_from in ends
    )
    order = tuple(step for step in plan.step_order if _belongs(step, nodes))
    links = _links(plan, contacts)
    tidy = plan.evolve(caps=caps, parts=parts, links=links, step_order=order)
    return pruned(with_landings(tidy, landings))


def _fitted(plan: Plan, end: End) -> End:
    """Drop a pinout that is for other hardware, and contacts from the order that are not there."""
    connector, pinout = plan.connector_of(end.id), plan.pinout_of(end.id)
    known = connector.by_id if connector is not None else {}
    fits = connector is not None and pinout is not None and fit(connector, pinout)
    order = tuple(contact for contact in end.solder_order if contact in known)
    if order == end.solder_order and (fits or not end.pinout):
        return end
    return end.evolve(solder_order=order, pinout=end.pinout if fits else "")


def fit(connector: Connector, pinout: PinoutRecord) -> bool:
    """Tell whether a pinout record is for this hardware and names only contacts that it has."""
    return connector.id in pinout.fits and set(pinout.signals) <= set(connector.by_id)


def _contacts(plan: Plan, end: str) -> tuple[str, ...]:
    connector = plan.connector_of(end)
    return tuple(connector.by_id) if connector is not None else ()


def _holds(it: Landing, at_ends: set[tuple[str, str]], contacts: set[tuple[str, str]]) -> bool:
    return (it.end, it.conductor) in at_ends and (it.end, it.contact) in contacts


def _belongs(step: str, nodes: set[str]) -> bool:
    """Tell whether a step is done to the whole lead, or at an end or split that is there."""
    return step.partition("/")[0] in {*nodes, "lead", "prove"}


def _links(plan: Plan, contacts: set[tuple[str, str]]) -> tuple[Link, ...]:
    links = []
    for link in plan.links:
        left = tuple(contact for contact in link.contacts if (link.end, contact) in contacts)
        if len(left) == len(link.contacts):
            links.append(link)
        elif len(left) > 1:
            links.append(link.evolve(contacts=left))
    return tuple(links)


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
