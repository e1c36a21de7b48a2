"""Bring the definitions that a plan carries up to date, and say what went with it."""

from collections.abc import Iterable, Iterator

from planner.edits.cables import choose_cable
from planner.edits.changing import changed
from planner.edits.ends import default_channel
from planner.edits.refusal import NotThere
from planner.edits.settling import carrying, settled
from planner.model.cable import Cable
from planner.model.definition import SHELVES, Definition, kind_name
from planner.model.plan import End, Plan
from planner.problem import did_you_mean


def carried(plan: Plan, record: Definition) -> Definition | None:
    """Return the plan's own copy of a definition, or None if it carries none of that id."""
    return next((it for it in _copies(plan, record) if it.id == record.id), None)


def _copies(plan: Plan, record: Definition) -> tuple[Definition, ...]:
    """Return all copies of the record's kind that the plan carries."""
    copies: tuple[Definition, ...] = getattr(plan.definitions, SHELVES[kind_name(record)])
    return copies


def update_definitions(plan: Plan, *, records: Iterable[Definition]) -> Plan:
    """Put other revisions in the place of the copies that the plan carries, all in one.

    Landings, links and pinouts that do not fit any more are dropped; `lost` says which.
    """
    wanted = tuple(records)
    for record in wanted:
        if carried(plan, record) is None:
            known = (it.id for it in _copies(plan, record))
            raise NotThere(f"The plan does not use {record.id}", did_you_mean(record.id, known))
    older = plan
    for record in wanted:
        plan = carrying(plan, **{SHELVES[kind_name(record)]: record})
    for record in wanted:
        if isinstance(record, Cable) and _other_cores(carried(older, record), record):
            plan = _recabled(plan, record)
    return settled(plan.evolve(ends=tuple(_with_channel(plan, end) for end in plan.ends)))


def lost(before: Plan, after: Plan) -> tuple[str, ...]:
    """Say in sentences which landings, links and pinouts an update has dropped."""
    return tuple(dict.fromkeys(_lost(before, after)))


def _lost(before: Plan, after: Plan) -> Iterator[str]:
    for end in before.ends:
        if end.pinout and not after.end_by_id[end.id].pinout:
            yield f"{end.id}: the pinout {end.pinout} does not fit its connector any more"
    kept = {(it.end, it.conductor, it.contact) for it in after.landings}
    for it in before.landings:
        if (it.end, it.conductor, it.contact) not in kept:
            why = _why(after, it.end, it.contact)
            yield f"{it.end}: {it.conductor} is not landed any more, {why}"
    links = {(it.end, it.contacts) for it in after.links}
    for link in before.links:
        if (link.end, link.contacts) not in links:
            yield f"{link.end}: the link of {', '.join(link.contacts)} is not whole any more"
    names = {it.id for it in after.conductors}
    for conductor in before.conductors:
        if conductor.id not in names:
            yield f"the cable has no {conductor.id} any more"


def _why(plan: Plan, end: str, contact: str) -> str:
    connector = plan.connector_of(end)
    if connector is None or contact not in connector.by_id:
        return f"contact {contact} is gone"
    return "the cable does not bring it there"


def _other_cores(older: Definition | None, cable: Cable) -> bool:
    assert isinstance(older, Cable)
    return [*older.core_by_id, *older.shield_by_id] != [*cable.core_by_id, *cable.shield_by_id]


def _recabled(plan: Plan, cable: Cable) -> Plan:
    """Lay a cable whose cores are others now in each section that it runs in."""
    for section in plan.sections:
        if section.cable == cable.id:
            plan = choose_cable(plan, section=section.id, cable=cable)
    return plan


def _with_channel(plan: Plan, end: End) -> End:
    """Bind a channel where the record leaves it open now, and none where it names its own."""
    pinout = plan.pinout_of(end.id)
    if pinout is None or pinout.one_channel == bool(end.channel):
        return end
    return changed(end, channel=default_channel(plan, end.id) if pinout.one_channel else "")
