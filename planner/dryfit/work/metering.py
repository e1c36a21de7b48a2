"""What is metered at an end while it is still open: afterwards no meter reaches it."""

from collections.abc import Iterable, Iterator, Sequence

from planner.dryfit.work.facts import WorkFacts
from planner.dryfit.work.step import Step, bold_list, span
from planner.model.plan import Conductor
from planner.wiring.graph import contact_node

# Up to so many contacts are metered each against each; more, each against those beside it.
EACH_TO_EACH = 8


def meter_steps(facts: WorkFacts, group: tuple[str, ...], made: tuple[str, ...]) -> Iterator[Step]:
    """Yield the steps with the meter, after all that is in `made`."""
    end = group[0]
    yield from _bridges(facts, group, made)
    for place, pairs in _dead_shields(facts, end).items():
        told = ", ".join(f"*{contact}* \u2194 {code}" for contact, code in pairs)
        kind = "meter_shield_split" if place not in facts.plan.end_by_id else "meter_shield_end"
        values = (("pairs", told), ("ends", span(facts.group_of.get(place, (place,)))))
        name = shield_meter(end, place)
        yield Step(name, kind, end, end, "close", values, (*made, *_reached(facts, place)), group)


def shield_meter(end: str, place: str) -> str:
    """Return the id of the step that meters the shields landed at an end that stop at a place."""
    return f"{end}/meter/{place}"


def shield_meters(facts: WorkFacts, place: str) -> tuple[str, ...]:
    """Return the steps that need an end or split still open, at whatever end they are done."""
    return tuple(
        shield_meter(end.id, place)
        for end in facts.plan.ends
        if place in _dead_shields(facts, end.id)
    )


def _reached(facts: WorkFacts, place: str) -> tuple[str, ...]:
    if place in facts.plan.end_by_id:
        return ()
    return tuple(f"{place}/open/{it.section}" for it in facts.lengths.openings)


def _dead_shields(facts: WorkFacts, end: str) -> dict[str, list[tuple[str, str]]]:
    """Return (contact, code) of shields that land here and nowhere else, by where they stop.

    Ends that share their steps are one place, named by the first.
    """
    codes, found = facts.codes(end), dict[str, list[tuple[str, str]]]()
    for conductor in _landed_shields(facts, end):
        contact = facts.plan.landing_at[end, conductor.id].contact
        for stop in facts.dead_ends(conductor):
            place = facts.group_of.get(stop, (stop,))[0]
            found.setdefault(place, []).append((contact, codes.get(conductor.id, conductor.id)))
    return found


def _landed_shields(facts: WorkFacts, end: str) -> Iterator[Conductor]:
    for conductor, _ in facts.plan.conductors_at.get(end, ()):
        if conductor.kind == "shield" and (end, conductor.id) in facts.plan.landing_at:
            yield conductor


def _bridges(facts: WorkFacts, group: tuple[str, ...], made: tuple[str, ...]) -> Iterator[Step]:
    end = group[0]
    nets = _nets(facts, end)
    if len(nets) > 1:
        few = len(nets) <= EACH_TO_EACH
        kind = ("meter_two" if len(nets) == 2 else "meter_bridge") if few else "meter_beside"
        apart = bold_list(contacts[0] for contacts in nets) if few else ""
        together = _together(contacts for contacts in nets if len(contacts) > 1)
        if together and not few:
            kind = "meter_beside_but"
        one, other = nets[0][0], nets[-1][0]
        values = (("contacts", apart), ("together", together), ("one", one), ("other", other))
        yield Step(f"{end}/meter", kind, end, end, "close", values, made, group)
    links = [link.contacts for link in facts.plan.links if link.end == end]
    if links:
        told = (("contacts", _together(links)),)
        yield Step(f"{end}/meter/links", "meter_links", end, end, "close", told, made, group)


def _nets(facts: WorkFacts, end: str) -> list[list[str]]:
    """Return the contacts of an end, those together that are joined anywhere in the lead."""
    connector = facts.plan.connector_of(end)
    nets: dict[int, list[str]] = {}
    for contact in connector.contacts if connector else ():
        net = facts.wiring.net_of(contact_node(end, contact.id))
        nets.setdefault(id(net), []).append(contact.id)
    return list(nets.values())


def _together(groups: Iterable[Sequence[str]]) -> str:
    return ", ".join(f"*{' + '.join(contacts)}*" for contacts in groups)
