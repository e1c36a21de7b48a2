"""What all edits share: looking records up by id and putting changed ones in their place."""

from collections.abc import Callable, Iterable
from typing import Any, TypeVar

from pydantic import ValidationError

from planner.edits.refusal import NotAllowed, NotThere
from planner.model.base import Record
from planner.model.connector import Connector, Contact
from planner.model.plan import Conductor, End, Landing, Plan, Section
from planner.problem import did_you_mean

AnyRecord = TypeVar("AnyRecord", bound=Record)
Item = TypeVar("Item")


def changed(record: AnyRecord, **changes: Any) -> AnyRecord:  # noqa: ANN401 - any field may change
    """Return `record` with `changes`; refuse with a sentence what the record cannot hold."""
    try:
        return record.evolve(**changes)
    except ValidationError as error:
        first = error.errors()[0]
        field = " ".join(str(part) for part in first["loc"]).replace("_", " ")
        said = first["msg"].removeprefix("Value error, ")
        raise NotAllowed(f"{field}: {said[:1].lower()}{said[1:]}") from error


def swapped(records: Iterable[Item], same: Callable[[Item], bool], new: Item) -> tuple[Item, ...]:
    """Return `records` with `new` in the place of the one that is the `same`."""
    return tuple(new if same(record) else record for record in records)


def node_ids(plan: Plan) -> set[str]:
    """Return the ids of ends and splits, which share one set of names."""
    return {end.id for end in plan.ends} | {split.id for split in plan.splits}


def the_end(plan: Plan, end: str) -> End:
    """Look up an end, or refuse."""
    if end not in plan.end_by_id:
        raise NotThere(f"There is no end {end}", did_you_mean(end, plan.end_by_id))
    return plan.end_by_id[end]


def the_section(plan: Plan, section: str) -> Section:
    """Look up a section, or refuse."""
    if section not in plan.section_by_id:
        raise NotThere(f"There is no section {section}", did_you_mean(section, plan.section_by_id))
    return plan.section_by_id[section]


def the_conductor(plan: Plan, conductor: str) -> Conductor:
    """Look up a conductor, or refuse."""
    known = plan.conductor_by_id
    if conductor not in known:
        raise NotThere(f"There is no conductor {conductor}", did_you_mean(conductor, known))
    return known[conductor]


def the_connector(plan: Plan, end: str) -> Connector:
    """Return the hardware at an end, or refuse while it is not chosen."""
    the_end(plan, end)
    connector = plan.connector_of(end)
    if connector is None:
        raise NotThere(f"{end} has no connector yet", "Choose one from the shelf.")
    return connector


def the_contact(plan: Plan, end: str, contact: str) -> Contact:
    """Look up a contact of the connector at an end, or refuse."""
    known = the_connector(plan, end).by_id
    if contact not in known:
        raise NotThere(f"{end} has no contact {contact}", did_you_mean(contact, known))
    return known[contact]


def with_end(plan: Plan, end: End) -> Plan:
    """Put a changed end in its place."""
    return plan.evolve(ends=swapped(plan.ends, lambda known: known.id == end.id, end))


def with_section(plan: Plan, section: Section) -> Plan:
    """Put a changed section in its place."""
    return plan.evolve(
        sections=swapped(plan.sections, lambda known: known.id == section.id, section)
    )


def with_landings(plan: Plan, landings: Iterable[Landing]) -> Plan:
    """Replace all landings, kept in one order whatever the order of the acts was."""
    ends = {end.id: place for place, end in enumerate(plan.ends)}
    conductors = {conductor.id: place for place, conductor in enumerate(plan.conductors)}
    ordered = sorted(landings, key=lambda it: (ends[it.end], conductors[it.conductor]))
    return plan.evolve(landings=tuple(ordered))


def reaches(plan: Plan, end: str, conductor: str) -> bool:
    """Tell whether a conductor comes out of the cable at an end."""
    return any(found.id == conductor for found, _ in plan.conductors_at.get(end, ()))


def answered(plan: Plan) -> set[tuple[str, str]]:
    """Return (end, conductor) for all that is landed or capped."""
    return set(plan.landing_at) | {(cap.end, cap.conductor) for cap in plan.caps}


def spoken_count(count: int) -> str:
    """Say a small number of cores in words: `one core`, `two cores`."""
    words = ("no", "one", "two", "three", "four", "five", "six")
    word = words[count] if count < len(words) else str(count)
    return f"{word} core" if count == 1 else f"{word} cores"
